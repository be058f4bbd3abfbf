import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { makeClip } from '../../src/trades/sound/synth/clip.ts'
import { CONTROL_RATE, type EngineScript } from '../../src/trades/sound/synth/scriptTypes.ts'
import { writeWav } from '../../src/trades/sound/wav.ts'
import { type Bench, openBrowser, profileFolder, serveApp } from './browser.ts'
import { openExampleOn } from './steps.ts'

/** The live tachometer with a microphone that hears two engines. */
const SPEEDS = [6300, 5400]
const LONG = 30
let served: Awaited<ReturnType<typeof serveApp>>
let profile: ReturnType<typeof profileFolder>
let bench: Bench
let page: Page
let folder: string

const steady = (rpm: number, k: number): EngineScript => {
  const n = LONG * CONTROL_RATE
  const still = new Float64Array(n)
  return {
    rpm: new Float64Array(n).fill(rpm),
    load: new Float64Array(n).fill(1),
    alternate: still,
    every: 2,
    misfire: still,
    phase: 0.37 * k,
    gain: k === 0 ? 1 : 0.9,
  }
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'tachometer-'))
  const clip = makeClip(
    { kind: 'steady', duration: LONG, engines: SPEEDS.map(steady), events: [] },
    { snr: 20 },
    7,
  )
  writeFileSync(join(folder, 'two.wav'), writeWav([clip.samples], clip.rate))
  served = await serveApp()
  profile = profileFolder()
  bench = await openBrowser(profile.folder, { microphone: join(folder, 'two.wav') })
})
afterAll(async () => {
  await bench.kill()
  profile.remove()
  await served.stop()
  rmSync(folder, { recursive: true })
})
beforeEach(async () => {
  bench.complaints.length = 0
  page = await bench.freshPage(served.address, () => {
    // the test may want to pull the microphone out
    const devices = navigator.mediaDevices as MediaDevices | undefined
    if (!devices) return
    const get = devices.getUserMedia.bind(devices)
    devices.getUserMedia = async (wish) => {
      const stream = await get(wish)
      Object.assign(window, { heard: stream.getAudioTracks()[0] })
      return stream
    }
  })
  await page.context().grantPermissions(['microphone'], { origin: new URL(served.address).origin })
  await openExampleOn(page, 'Teal', 'runs')
})
afterEach(async () => {
  await page.context().close()
  expect(bench.complaints).toEqual([])
})

const dial = async (label: 'A' | 'B') =>
  Number(await page.getByRole('meter', { name: `Speed of engine ${label}` }).getAttribute('aria-valuenow'))
const start = async () => {
  await page.getByRole('button', { name: 'Start listening' }).click()
  await page.getByRole('meter', { name: 'Speed of engine A' }).waitFor()
}
const record = async (seconds: number) => {
  await page.getByRole('button', { name: 'Record', exact: true }).click()
  await expect
    .poll(async () => Number(/0:(\d\d)/.exec((await page.locator('.recording').textContent())!)?.[1]))
    .toBeGreaterThanOrEqual(seconds)
}

test('two engines in, two figures out', async () => {
  await start()
  await expect
    .poll(async () =>
      [await dial('A'), await dial('B')]
        .sort((a, b) => b - a)
        .map((v, i) => Math.abs(v / SPEEDS[i]! - 1) < 0.02),
    )
    .toEqual([true, true])
})

test.each([
  ['upright', 390, 844],
  ['on its side', 844, 390],
  ['small', 320, 568],
])('on a phone %s each figure stands in its box and in sight', async (_, width, height) => {
  await page.setViewportSize({ width, height })
  await start()
  await expect.poll(async () => [await dial('A'), await dial('B')].every((v) => v > 0)).toBe(true)
  const boxes = await page.evaluate(() =>
    [...document.querySelectorAll('.dial')].map((d) => {
      const outer = d.getBoundingClientRect()
      const inner = [...d.querySelectorAll('span')].map((s) => s.getBoundingClientRect())
      const top = document.elementFromPoint(inner[1]!.x + 4, inner[1]!.y + 4)
      return {
        inside: inner.every(
          (r) => r.left >= outer.left && r.right <= outer.right && r.bottom <= outer.bottom,
        ),
        inSight: outer.top >= 0 && inner[1]!.bottom <= innerHeight && outer.right <= innerWidth,
        uncovered: top !== null && d.contains(top),
      }
    }),
  )
  const good = { inside: true, inSight: true, uncovered: true }
  expect(boxes).toEqual([good, good])
})

test('a recording of both engines is read to both speeds', async () => {
  await start()
  await record(8)
  await page.getByRole('button', { name: 'Stop recording and read it' }).click()
  await page.getByRole('heading', { name: 'What happened' }).waitFor()
  const says = (await page.locator('.answer h1').textContent())!
  const speeds = [...says.matchAll(/(\d{4}) rpm/g)].map((m) => Number(m[1])).sort((a, b) => b - a)
  expect(speeds.map((v, i) => Math.abs(v / SPEEDS[i]! - 1) < 0.01)).toEqual([true, true])
  // nothing is left behind on the browser's disk
  expect(
    await page.evaluate(async () => {
      const root = await navigator.storage.getDirectory()
      const folder = await root.getDirectoryHandle('recordings')
      const names: string[] = []
      for await (const name of (folder as unknown as { keys(): AsyncIterable<string> }).keys())
        names.push(name)
      return names
    }),
  ).toEqual([])
})

test('a recording broken off by a reload is offered and read', async () => {
  await start()
  await record(10)
  await page.reload()
  // what was on the disk: all but the last four seconds, and more where the reload took long
  const brokenOff = page.getByText(/A recording of 0:\d\d\.\d begun .* was broken off/)
  expect(Number(/0:(\d\d)/.exec((await brokenOff.textContent())!)?.[1])).toBeGreaterThanOrEqual(8)
  await page.getByRole('button', { name: 'Read it', exact: true }).click()
  await page.getByRole('heading', { name: 'What happened' }).waitFor()
  await expect.poll(() => page.getByRole('button', { name: 'Read it', exact: true }).count()).toBe(0)
})

test('a microphone pulled out is said, and what was recorded is read', async () => {
  await start()
  await record(4)
  await page.evaluate(() => {
    ;(window as unknown as { heard: MediaStreamTrack }).heard.dispatchEvent(new Event('ended'))
  })
  await page.getByText('The microphone is gone').waitFor()
  await page.locator('.runview').waitFor()
})

test('a microphone that opens only after the page was left is closed again', async () => {
  await page.evaluate(() => {
    const devices = navigator.mediaDevices
    const get = devices.getUserMedia.bind(devices)
    devices.getUserMedia = async (wish) => {
      await new Promise<void>((go) => Object.assign(window, { allow: go }))
      return get(wish)
    }
  })
  await page.getByRole('button', { name: 'Start listening' }).click()
  await page.getByText('Waiting for the microphone').waitFor()
  await page.evaluate(() => {
    location.hash = '#/craft'
  })
  await page.getByRole('heading', { name: 'The craft file' }).waitFor()
  await page.evaluate(() => (window as unknown as { allow(): void }).allow())
  await expect
    .poll(() => page.evaluate(() => (window as unknown as { heard?: MediaStreamTrack }).heard?.readyState))
    .toBe('ended')
})

test.each([
  ['NotFoundError', 'No microphone was found'],
  ['NotReadableError', 'Another program is using the microphone'],
  ['NotAllowedError', 'was not allowed to use the microphone'],
])('%s is said plainly', async (name, says) => {
  await page.evaluate((kind) => {
    navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('no', kind))
  }, name)
  await page.getByRole('button', { name: 'Start listening' }).click()
  await page.getByText(says).waitFor()
})
