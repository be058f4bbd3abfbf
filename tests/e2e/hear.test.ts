import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { inventedRun } from '../../src/trades/sound/invented.ts'
import { writeWav } from '../../src/trades/sound/wav.ts'
import { root, wakewright } from './commandLine.ts'

let folder: string
const file = (name: string) => join(folder, name)
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'hear-'))
  const clip = inventedRun({ rotations: [105], locked: false, firingsPerTurn: 1, seed: 20 })
  writeFileSync(file('run.wav'), writeWav([clip.samples], clip.rate))
  writeFileSync(file('silence.wav'), writeWav([new Float32Array(3 * 8000)], 8000))
  writeFileSync(file('words.wav'), 'not a sound')
})
afterAll(() => rmSync(folder, { recursive: true }))

interface Heard {
  verdict: { code: string }
  tracks: { label: string; rpm: number[] }[]
  events: { kind: string }[]
  findings: { id: string }[]
}

test('hear --json tells the speed that was in the recording, with its events and findings', async () => {
  const { code, out } = await wakewright([
    'hear',
    file('run.wav'),
    '--json',
    '--craft',
    join(root, 'demo/heron.yaml'),
  ])
  const heard = JSON.parse(out) as Heard
  expect([0, 1]).toContain(code)
  expect(heard.verdict.code).toBe('one')
  const pulling = heard.tracks[0]!.rpm.slice(120, 160).sort((a, b) => a - b)
  expect(pulling[20]! / (105 * 60)).toBeCloseTo(1, 1)
  expect(heard.events.map((e) => e.kind)).toEqual(expect.arrayContaining(['start', 'flare', 'stop']))
  expect(heard.findings.map((f) => f.id)).toContain('runs.headline')
})

test('a phone video is heard through ffmpeg as the recording in it is', async () => {
  execFileSync('ffmpeg', ['-v', 'error', '-y', '-i', file('run.wav'), '-c:a', 'aac', file('run.mp4')])
  const { out, code } = await wakewright(['hear', file('run.mp4'), '--engines', '1'])
  expect([0, 1]).toContain(code)
  expect(out).toMatch(/Engine A {2}mostly 6[2-4]\d0 rpm \(\d+ to \d+ rpm\)/)
})

test('silence is an answer, not an error', async () => {
  const { out, code } = await wakewright(['hear', file('silence.wav')])
  expect(code).toBe(0)
  expect(out).toContain('No engine was heard')
  expect(out).toContain('silent')
})

test.each([
  ['words.wav', [], /could not be read/],
  ['missing.wav', [], /no such file/],
  ['run.wav', ['--engines', '5'], /--engines "5" is not 1, 2 or auto/],
  ['run.wav', ['--cylinders', 'many'], /--cylinders "many" is not 1 to 8/],
])('%s %j is bad input with a sentence', async (name, more, says) => {
  const { code, err, out } = await wakewright(['hear', file(name), ...more])
  expect(code).toBe(2)
  expect(out).toBe('')
  expect(err).toMatch(says)
})
