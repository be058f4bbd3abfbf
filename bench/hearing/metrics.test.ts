import { expect, test } from 'vitest'
import { evaluate, evaluationClips, firstReportingSeed, firstTuningSeed } from './evaluation.ts'
import { accuracy, noManyScore, noOneScore, scoreEvents, scoreMany, scoreOne } from './metrics.ts'

test('scoreOne counts right, gross, octave and false frames', () => {
  const s = noOneScore()
  scoreOne([100, 100, 100, 100, 0, 0], [100.5, 102, 200, 0, 0, 50], s)
  expect(s).toEqual({ on: 4, within3: 2, within1: 1, gross: 2, octave: 1, off: 2, falseOn: 1 })
})

test('scoreMany matches one to one, counts equal speeds once, and finds the best assignment of labels', () => {
  const s = noManyScore()
  scoreMany(
    [
      [100, 100, 100],
      [120, 100.1, 0],
    ],
    [
      [120, 100, 100],
      [100, 0, 130],
    ],
    s,
  )
  expect(s.truePositive).toBe(4)
  expect(s.falsePositive).toBe(1)
  expect(s.falseNegative).toBe(0)
  expect(accuracy(s)).toBeCloseTo(0.8, 9)
  expect(s.labelled).toBe(1)
  expect(s.labelledRight).toBe(1)
})

test('events match once each, within the tolerance', () => {
  const s = { hit: 0, missed: 0, extra: 0 }
  scoreEvents([1, 5], [1.2, 1.3, 9], 0.5, s)
  expect(s).toEqual({ hit: 1, missed: 1, extra: 2 })
})

test('clips for tuning and for reporting come from different seeds, and each comes out the same again', () => {
  expect(firstReportingSeed).toBeGreaterThan(firstTuningSeed + 1000)
  const [a] = evaluationClips('steady', 5, 'usual', [10])
  expect(evaluationClips('steady', 5, 'usual', [10])[0]!.samples).toEqual(a!.samples)
  expect(evaluationClips('steady', 6, 'usual', [10])[0]!.samples).not.toEqual(a!.samples)
})

test('noise takes away, never adds: the share of right frames falls from 10 to -5 dB on fixed seeds', () => {
  const r = evaluate({
    firstSeed: firstTuningSeed,
    seeds: 1,
    snrs: [10, -5],
    severity: 'usual',
    kinds: ['bogcut'],
  })
  const share = r.map((x) => x.one.within3 / x.one.on)
  expect(share[0]).toBeGreaterThan(0.95)
  expect(share[1]).toBeLessThan(share[0]! + 0.02)
  expect(r[0]!.count['single']!.clips).toBe(1)
})
