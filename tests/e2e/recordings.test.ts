import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { inventedRun } from '../../src/trades/sound/invented.ts'
import { writeWav } from '../../src/trades/sound/wav.ts'
import { type Bench, openBrowser, profileFolder, serveApp } from './browser.ts'
import { goTo, openExample, openExampleOn, openMore } from './steps.ts'

/** Every kind of file, whole and broken, as the page takes it; and what the page keeps through reloads and without a server. */
let served: Awaited<ReturnType<typeof serveApp>>
let profile: ReturnType<typeof profileFolder>
let bench: Bench
let folder: string
let page: Page
const file = (name: string) => join(folder, name)
const ffmpeg = (...args: string[]) => execFileSync('ffmpeg', ['-v', 'error', '-y', ...args])
const part = (from: string, to: string, of = 0.6) => {
  const bytes = readFileSync(file(from))
  writeFileSync(file(to), bytes.subarray(0, Math.floor(of * bytes.length)))
}
/** the WAV file with one number of its header changed */
const lying = (to: string, at: number, value: number) => {
  const bytes = Buffer.from(readFileSync(file('run.wav')))
  bytes.writeUInt32LE(value, at)
  writeFileSync(file(to), bytes)
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'recordings-'))
  const clip = inventedRun({ rotations: [105], locked: false, firingsPerTurn: 1, seed: 20 })
  writeFileSync(file('run.wav'), writeWav([clip.samples.subarray(19 * clip.rate, 26 * clip.rate)], clip.rate))
  const from = (...args: string[]) => ffmpeg('-i', file('run.wav'), ...args)
  from('-c:a', 'pcm_u8', file('u8.wav'))
  from('-c:a', 'pcm_s24le', file('s24.wav'))
  from('-c:a', 'pcm_f32le', file('float.wav'))
  from('-ar', '96000', file('r96.wav'))
  from('-ac', '6', file('six.wav'))
  from('-ac', '6', file('six.flac'))
  from('-c:a', 'pcm_alaw', file('alaw.wav'))
  from(file('run.mp3'))
  from(file('run.flac'))
  from('-c:a', 'libopus', file('run.ogg'))
  from('-c:a', 'libopus', file('run.webm'))
  from('-c:a', 'aac', file('run.m4a'))
  const picture = ['-f', 'lavfi', '-i', 'testsrc=s=64x48:r=5:d=7', '-i', file('run.wav')]
  ffmpeg(...picture, '-c:v', 'mpeg4', '-c:a', 'aac', '-movflags', '+faststart', file('run.mp4'))
  const slow = ['-f', 'lavfi', '-i', 'testsrc=s=64x48:r=5:d=14', '-i', file('run.wav')]
  ffmpeg(...slow, '-c:v', 'mpeg4', '-c:a', 'aac', file('slow.mp4'))
  for (const name of ['run.mp3', 'run.flac', 'run.ogg', 'run.webm', 'run.m4a', 'run.mp4'])
    part(name, `cut-${name}`)
  writeFileSync(file('flac.wav'), readFileSync(file('run.flac')))
  writeFileSync(file('video.mp3'), readFileSync(file('run.mp4')))
  lying('little.wav', 40, 1000)
  lying('much.wav', 40, 4_000_000_000)
  lying('none.wav', 40, 0)
  lying('norate.wav', 24, 0)
  served = await serveApp()
  profile = profileFolder()
  bench = await openBrowser(profile.folder)
})
afterAll(async () => {
  await bench.kill()
  profile.remove()
  await served.stop()
  rmSync(folder, { recursive: true })
})
afterEach(async () => {
  await page.context().close()
  bench.complaints.length = 0
})

async function runsPage(before?: () => void, address = served.address) {
  bench.complaints.length = 0
  page = await bench.freshPage(address, before)
  await openExampleOn(page, 'Heron', 'runs')
}
const open = async (name: string) => page.getByLabel('Recording', { exact: true }).setInputFiles(file(name))
const heard = () => page.getByRole('heading', { name: 'What happened' }).waitFor()
const rpm = async () =>
  Number(/mostly at (\d+) rpm/.exec((await page.locator('.answer h1').textContent())!)?.[1])
const flags = async () => (await page.locator('.flags').allTextContents()).join(' ')

/** Waits until what the browser keeps of the run on the bench says this: a reload before that would lose it. */
const keptOnBench = (words: RegExp) =>
  expect
    .poll(() =>
      page.evaluate(async () => {
        const asked = <T>(request: IDBRequest<T>) =>
          new Promise<T>((done, fail) => {
            request.onsuccess = () => done(request.result)
            request.onerror = () => fail(request.error)
          })
        const database = await asked(indexedDB.open('wakewright'))
        const all = await asked(database.transaction('settings').objectStore('settings').getAll())
        database.close()
        return all
          .map((value: { name?: string; notes?: string } | undefined) => `${value?.name} ${value?.notes}`)
          .join()
      }),
    )
    .toMatch(words)

/** Opens several files after one another and gives what the page made of each. */
async function each(names: readonly string[]): Promise<Record<string, { rpm: number; flags: string }>> {
  await runsPage()
  const out: Record<string, { rpm: number; flags: string }> = {}
  for (const name of names) {
    await open(name)
    await page
      .getByText(`“${name}”`)
      .or(page.locator('.job'))
      .first()
      .waitFor()
      .catch(() => {})
    await page.locator('.job').waitFor({ state: 'detached' })
    await heard()
    out[name] = { rpm: await rpm(), flags: await flags() }
    await page.getByRole('button', { name: 'Put it away' }).click()
  }
  expect(bench.complaints).toEqual([])
  return out
}

test('sound of every depth, rate and channel count, and of a wrong name, is read without a word about loss', async () => {
  const names = [
    'u8.wav',
    's24.wav',
    'float.wav',
    'r96.wav',
    'six.wav',
    'six.flac',
    'alaw.wav',
    'none.wav',
    'slow.mp4',
  ]
  const got = await each([...names, 'flac.wav', 'video.mp3'])
  for (const [name, { rpm, flags }] of Object.entries(got)) {
    expect([name, Math.abs(rpm / 6300 - 1) < 0.03]).toEqual([name, true])
    if (name === 'slow.mp4') expect(flags).toMatch(/picture lasts 14\.0 s and the sound 7\.\d s.*slowed down/)
    else if (['flac.wav', 'video.mp3'].includes(name))
      expect(flags).toMatch(/The name ends in \.(wav|mp3), but this is/)
    else expect([name, flags]).toEqual([name, ''])
  }
})

test('what was cut off, or lies about its length, gives what is there and says what is missing', async () => {
  const got = await each([
    'cut-run.mp3',
    'cut-run.flac',
    'cut-run.ogg',
    'cut-run.webm',
    'cut-run.mp4',
    'little.wav',
    'much.wav',
  ])
  for (const [name, { rpm }] of Object.entries(got))
    expect([name, Math.abs(rpm / 6300 - 1) < 0.03]).toEqual([name, true])
  for (const name of ['cut-run.mp3', 'cut-run.flac', 'cut-run.webm', 'cut-run.mp4'])
    expect([name, got[name]!.flags]).toEqual([
      name,
      expect.stringMatching(/[34]\.\d s could be read of 7\.\d s announced/),
    ])
  expect(got['cut-run.ogg']!.flags).toMatch(/breaks off without its end mark/)
  expect(got['little.wav']!.flags).toMatch(/announces 0\.0 s of sound, but it goes on for 7\.0 s/)
  expect(got['much.wav']!.flags).toMatch(/7\.0 s are there of 125\u202F000 s announced/)
})

test('a file whose sound cannot be found says why, and leaves the run on the bench alone', async () => {
  await runsPage()
  await open('run.wav')
  await heard()
  for (const [name, says] of [
    ['cut-run.m4a', /cut off before its index was written/],
    ['norate.wav', /claims 0 samples a second/],
  ] as const) {
    await open(name)
    await expect.poll(() => page.getByRole('alert').textContent()).toMatch(says)
    expect(Math.abs((await rpm()) / 6300 - 1)).toBeLessThan(0.03)
  }
})

test.each(['run.mp4', 'run.m4a', 'run.webm', 'run.ogg', 'run.mp3', 'run.flac'])(
  '%s is read bit by bit as well as at once, with the same speed',
  async (name) => {
    // without a decoder for whole files only the reading bit by bit, which long recordings take, is left
    await runsPage(() => {
      Reflect.deleteProperty(window, 'OfflineAudioContext')
    })
    await open(name)
    await heard()
    expect(Math.abs((await rpm()) / 6300 - 1)).toBeLessThan(0.03)
  },
)

test('what was laid by hand, seen and written is there after a reload, and so is the sound', async () => {
  await runsPage()
  await open('run.wav')
  await heard()
  await openMore(page, 'hand')
  await page.getByRole('slider', { name: 'Moment of the recording' }).fill('3')
  await page.getByRole('button', { name: /^Lock A at the cursor/ }).click()
  await page.getByRole('button', { name: 'Line A turns half as fast' }).click()
  await page.locator('.job').waitFor({ state: 'detached' })
  await openMore(page, 'told')
  await page.getByLabel('How was the cooling water stream?').selectOption('weak')
  await page.getByLabel('In your own words').fill('reeds on the left')
  await keptOnBench(/reeds on the left/)
  await page.reload()
  await heard()
  await expect
    .poll(() => page.locator('.more[data-fold="told"] .result').textContent())
    .toBe('1 answer, a note')
  await openMore(page, 'told', 'hand')
  await expect.poll(() => page.getByLabel('In your own words').inputValue()).toBe('reeds on the left')
  await expect.poll(() => page.getByLabel('How was the cooling water stream?').inputValue()).toBe('weak')
  await page.getByText(/Line A turns half as fast, 0:0/).waitFor()
  await expect.poll(() => page.locator('.handle').count()).toBe(1)
  expect((await rpm()) / 3150).toBeCloseTo(1, 1)
  // its worker has gone with the page: the sound is read again for one engine alone
  await page.getByRole('button', { name: 'Engine alone' }).click()
  await page.locator('button[aria-pressed="true"]', { hasText: 'Engine alone' }).waitFor()
  // taking the marks away brings the first reading back
  await page.getByRole('button', { name: /^Take away: line A turns half as fast/ }).click()
  await page.getByRole('button', { name: /^Take away the point/ }).click()
  await page.getByRole('button', { name: 'Follow the engines again' }).click()
  await expect.poll(rpm).toBeGreaterThan(6000)
})

test('a recording that was being listened to when the page went is listened to again', async () => {
  await runsPage()
  await open('run.mp3')
  await page.locator('.runview').waitFor()
  await keptOnBench(/run\.mp3/)
  await page.reload()
  await heard()
  expect(Math.abs((await rpm()) / 6300 - 1)).toBeLessThan(0.03)
})

test('each craft keeps its own run on the bench', async () => {
  await runsPage()
  await open('run.wav')
  await heard()
  await keptOnBench(/run\.wav/)
  await goTo(page, 'craft')
  await page.getByRole('button', { name: 'File and units' }).click()
  await page.getByRole('menuitem', { name: 'All crafts, new craft, examples' }).click()
  await openExample(page, 'Teal')
  await goTo(page, 'runs')
  await page.getByText('No run on the bench yet').waitFor()
})

test('the page reads recordings with the server gone', async () => {
  const own = await serveApp()
  await runsPage(undefined, own.address)
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready
  })
  await page.reload()
  await own.stop()
  await page.reload()
  for (const name of ['run.wav', 'run.mp4']) {
    await open(name)
    await page.locator('.job').waitFor({ state: 'detached' })
    await heard()
    expect(Math.abs((await rpm()) / 6300 - 1)).toBeLessThan(0.03)
  }
})
