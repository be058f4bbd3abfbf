import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inWords } from '../../base/answers/printFinding.ts'
import { printed } from '../../base/answers/sentence.ts'
import type { Hearing } from './hearingTypes.ts'
import { readPull } from './pull.ts'
import type { RunEvent } from './shaftEvents.ts'
import { heardTracks, steadyTrack, toldOfRun } from './sound.testkit.ts'
import { runInputs, soundTrade } from './soundTrade.ts'

const event: RunEvent = {
  kind: 'fall',
  time: 3,
  lasts: 2,
  engine: 'A',
  says: 'from 6000 rpm to 4500 rpm for 2.0 s, and back',
  value: 4500,
  confidence: 0.9,
}
const run = {
  hearing: heardTracks([steadyTrack('A', 5400)], { events: [event] }),
  prediction: { time: [0], rpm: [6300], low: [6200], high: [6400] },
  pull: { read: readPull([12, 13])!, predicted: { value: 230, low: 210, high: 250 } },
}

test('a run is told by one headline, which is a finding, and by what it found, each with what to do next', () => {
  const found = toldOfRun(run)
  expect(inWords(found).map((f) => [f.id, f.standing, f.says])).toEqual([
    ['runs.headline', 'good', 'One engine ran, mostly at 5400 rpm; it lost speed once at 0:03.0.'],
    [
      'runs.fall',
      'watch',
      'The engine at 0:03.0: its speed falls from 6000 rpm to 4500 rpm for 2.0 s, and back.',
    ],
    [
      'runs.pull',
      'watch',
      'The scale read 12.5 kg where 23.5 kg was expected tied up (−47 %; −11 % to +11 % would be no surprise).',
    ],
    [
      'runs.residual-A',
      'watch',
      'The engine ran at 5400 rpm where 6300 rpm was expected (−14.3 %; −2.0 % to +2.0 % would be no surprise).',
    ],
  ])
  for (const f of found) if (f.standing !== 'good') expect(f.measureNext).toBeDefined()
})

test('a reader of inches finds no metric figure, and every number is carried as a number', () => {
  const found = toldOfRun(run)
  const pull = inWords(found, 'inch').find((f) => f.id === 'runs.pull')!
  expect(pull.says).toContain('read 27.6 lb where 51.7 lb')
  expect(pull.because[0]!.says).toMatch(/^middle of 2 readings: 27\.6 lbf \(/)
  for (const f of inWords(found, 'inch'))
    for (const text of [f.says, ...f.because.map((b) => b.says)])
      expect(text).not.toMatch(/\d (kg|N|km\/h|m\/s|mm)\b/)
  expect(pull.amounts!.map((a) => a.unit)).toEqual(['N', 'N', '1', '1', '1'])
})

test('the tables give the numbers of the headline, and the pictures are drawn with and without a prediction', () => {
  for (const known of [run, { hearing: run.hearing }]) {
    const inputs = runInputs(known)
    const now = { inputs, answer: soundTrade.answer(inputs) }
    const tables = soundTrade.numbers!(now)
    expect(tables.map((t) => t.caption)).toEqual([
      'Engines',
      'Speed over time',
      ...('prediction' in known ? ['Heard against predicted'] : []),
    ])
    expect(printed([tables[0]!.rows[0]![1]!])).toBe('5400 rpm')
    for (const figure of soundTrade.figures!) {
      const sheet = figure.draw(now, undefined, { width: 160, system: 'metric' })
      expect(sheet.marks.length).toBeGreaterThan(10)
      expect(JSON.stringify(sheet.marks.map((m) => (m.kind === 'image' ? m.kind : m)))).not.toMatch(
        /NaN|null/,
      )
    }
  }
})

const labels = fc.constantFrom<('A' | 'B')[]>([], ['A'], ['A', 'B'])
const speed = fc.oneof(fc.constant(0), fc.integer({ min: 1300, max: 14_000 }))
const anyHearing: fc.Arbitrary<Hearing> = fc
  .record({
    labels,
    speeds: fc.tuple(speed, speed),
    confidence: fc.constantFrom(0, 0.3, 0.6, 1),
    code: fc.constantFrom('no engine' as const, 'one' as const, 'two' as const, 'cannot tell' as const),
    duration: fc.constantFrom(0.4, 3, 10),
    octave: fc.boolean(),
  })
  .map(({ labels: names, speeds, confidence, code, duration, octave }) =>
    heardTracks(
      names.map((label, i) => {
        const t = steadyTrack(label, speeds[i]!)
        t.confidence.fill(confidence)
        return t
      }),
      {
        duration,
        verdict: { code, says: 'heard.', coupling: 'unknown' },
        octaves: octave ? [{ label: 'A', from: 1, to: 9, factor: 0.5 }] : [],
      },
    ),
  )

test('whatever was heard, beside whatever was expected, no sentence holds what is no word or number', () => {
  const expected = fc.constantFrom(0, 60, 6300, 1e5)
  fc.assert(
    fc.property(anyHearing, expected, fc.constantFrom(0, 1e-6, 230, 1e9), (hearing, rpm, pull) => {
      const found = toldOfRun({
        hearing,
        prediction: { time: [0], rpm: [rpm], low: [0.9 * rpm], high: [1.1 * rpm] },
        pull: { read: readPull([22])!, predicted: { value: pull, low: 0.9 * pull, high: 1.1 * pull } },
      })
      expect(found[0]!.id).toBe('runs.headline')
      for (const f of inWords(found))
        for (const text of [f.says, ...f.because.map((b) => b.says)])
          expect(text).not.toMatch(/NaN|Infinity|undefined|\[object|—/)
    }),
    { numRuns: 200 },
  )
})
