import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { readPull } from '../../trades/sound/pull.ts'
import { heardTracks, noiseOnly, pulseTrain, steadyTrack, sum } from '../../trades/sound/sound.testkit.ts'
import { runInputs, soundTrade } from '../../trades/sound/soundTrade.ts'
import { writeWav } from '../../trades/sound/wav.ts'
import { hearCommand, runHear } from './hearCommand.ts'
import { hearingText } from './hearText.ts'

const dir = mkdtempSync(join(tmpdir(), 'hear-'))
afterAll(() => rmSync(dir, { recursive: true }))
const file = (name: string, bytes: Uint8Array) => {
  const path = join(dir, name)
  writeFileSync(path, bytes)
  return path
}
const program = 'ffmpeg'
const hasFfmpeg = spawnSync(program, ['-version']).status === 0
const convert = (...args: string[]) => spawnSync(program, ['-nostdin', '-v', 'error', '-y', ...args]).status
const engine = (rate: number) => sum(pulseTrain(95, 3, rate), noiseOnly(3, rate, 4, 0.03))
const median = (x: Float32Array) => x.slice().sort()[x.length >> 1]!

test('a WAV recording is heard at its speed, whatever its rate and channel count', async () => {
  for (const [rate, channels] of [
    [8000, 1],
    [44100, 2],
    [192000, 6],
  ] as const) {
    const x = engine(rate)
    const h = await runHear(
      file(
        'a.wav',
        writeWav(
          Array.from({ length: channels }, () => x),
          rate,
        ),
      ),
      { engines: 1 },
    )
    expect(h.exitCode).toBe(0)
    expect(Math.abs(median(h.hearing!.tracks[0]!.rpm) / 5700 - 1)).toBeLessThan(0.003)
    expect(h.text).toMatch(/mostly 5(69|70|71)0/)
  }
})

test('the channel in which the engine stands out is the one listened to', async () => {
  const x = engine(16000)
  const loud = noiseOnly(3, 16000, 7, 0.4)
  const h = await runHear(file('b.wav', writeWav([loud, x], 16000)), { engines: 1 })
  expect(Math.abs(median(h.hearing!.tracks[0]!.rpm) / 5700 - 1)).toBeLessThan(0.003)
})

test('the JSON answer carries tracks, events, findings and units, and no picture', async () => {
  const h = await runHear(file('c.wav', writeWav([engine(8000)], 8000)))
  const json = JSON.parse(JSON.stringify(h.json)) as Record<string, unknown>
  expect(Object.keys(json)).toEqual(
    expect.arrayContaining([
      'recording',
      'verdict',
      'tracks',
      'events',
      'findings',
      'units',
      'time',
      'count',
    ]),
  )
  expect(json).not.toHaveProperty('spectrogram')
})

test('the text is in the reader’s units, and ends with what to do next', () => {
  const pull = { read: readPull([21, 22])!, predicted: { value: 430, low: 400, high: 460 } }
  const inputs = runInputs({ hearing: heardTracks([steadyTrack('A', 6000)]), pull })
  const run = { inputs, answer: soundTrade.answer(inputs), besideSays: 'Predicted tied up.' }
  const metric = hearingText('x.wav', run, 'metric')
  expect(metric).toContain('The scale read 21.5 kg where 43.8 kg was expected')
  expect(metric).toMatch(/\nNext: read the pull twice more .* \(luggage scale, 10 min\)\.\n$/)
  const inch = hearingText('x.wav', run, 'inch')
  expect(inch).toContain('The scale read 47.4 lb where 96.7 lb was expected')
  expect(inch).not.toMatch(/\d (kg|N|km\/h)\b/)
})

test('units that are none are named', async () => {
  await expect(hearCommand('nowhere.wav', { units: 'cubits' })).rejects.toMatchObject({
    lines: ['hear: --units "cubits" is not metric or inch'],
  })
})

test('what is no recording is refused with exit code 2 and a sentence', async () => {
  const says = async (name: string, bytes: Uint8Array) => {
    const h = await runHear(file(name, bytes))
    expect(h.exitCode).toBe(2)
    return h.text
  }
  expect(await says('empty.wav', new Uint8Array(0))).toContain('The file is empty.')
  expect(await says('text.wav', new TextEncoder().encode('only words in here, '.repeat(20)))).toContain(
    'could not be read',
  )
  expect((await runHear(join(dir, 'nowhere.wav'))).text).toContain('There is no such file.')
  expect((await runHear(dir)).text).toContain('This is a folder')
})

test('without ffmpeg other files are refused with the way out', async () => {
  const h = await runHear(file('d.ogg', new TextEncoder().encode('OggS'.repeat(30))), {
    ffmpeg: 'no-such-program-here',
  })
  expect(h.exitCode).toBe(2)
  expect(h.text).toContain('save the recording as WAV')
})

test.skipIf(!hasFfmpeg)(
  'compressed recordings, and ones with a wrong name, are heard through ffmpeg',
  async () => {
    const wav = file('e.wav', writeWav([engine(16000)], 16000))
    for (const [name, ...codec] of [
      ['e.m4a', '-c:a', 'aac'],
      ['e.flac'],
      ['e.ogg', '-c:a', 'libvorbis'],
      ['e.mp3'],
    ] as const) {
      if (convert('-i', wav, ...codec, join(dir, name)) !== 0) continue
      const h = await runHear(join(dir, name), { engines: 1 })
      expect(Math.abs(median(h.hearing!.tracks[0]!.rpm) / 5700 - 1), name).toBeLessThan(0.004)
    }
    expect(convert('-i', wav, '-f', 'flac', join(dir, 'lies.wav'))).toBe(0)
    expect((await runHear(join(dir, 'lies.wav'))).exitCode).toBe(0)
  },
)

test.skipIf(!hasFfmpeg)('a video without sound is said to have none', async () => {
  const path = join(dir, 'mute.mp4')
  if (convert('-f', 'lavfi', '-i', 'color=c=blue:s=64x64:d=1', '-an', path) !== 0) return
  const h = await runHear(path)
  expect(h.exitCode).toBe(2)
  expect(h.text).toContain('There is no sound in this file')
})
