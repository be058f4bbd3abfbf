import { expect, test } from 'vitest'
import type { Hearing } from '../../trades/sound/hearingTypes.ts'
import { atFullThrottle } from '../../trades/sound/residuals.ts'
import type { Balance } from '../push/balanceTypes.ts'
import { rpmAt, tiedUpPrediction, underWayPrediction } from './heardRun.ts'

const balance = {
  ranged: true,
  tiedUpRotation: { value: 100, low: 96, high: 105 },
  curve: { speed: [0, 4, 8], rpm: [6000, 6200, 6800] },
} as unknown as Balance
const trace = { time: Float64Array.of(0, 10), speed: Float64Array.of(2, 20), from: 'receiver' as const }

test('tied up, the prediction is the balance’s own rotation with its range, in rev/min', () => {
  expect(tiedUpPrediction(balance)).toEqual({ time: [0], rpm: [6000], low: [5760], high: [6300] })
})

test('without ranges there is no prediction', () => {
  expect(tiedUpPrediction({ ...balance, ranged: false })).toBeUndefined()
  expect(underWayPrediction({ ...balance, ranged: false }, trace, 0)).toBeUndefined()
})

test('engine speed is read between the table’s speeds and stays at its end beyond it', () => {
  expect(rpmAt(balance, 2)).toBe(6100)
  expect(rpmAt(balance, 8)).toBe(6800)
  expect(rpmAt(balance, 30)).toBe(6800)
})

test('under way, times are shifted by the lag and doubt is the same part as tied up', () => {
  const p = underWayPrediction(balance, trace, 1.5)!
  expect(p.time).toEqual([1.5, 11.5])
  expect(p.rpm).toEqual([6100, 6800])
  expect(p.low[0]! / p.rpm[0]!).toBeCloseTo(0.96, 12)
})

test('what ran below three quarters of the prediction counts as part throttle', () => {
  const h = {
    tracks: [{ rpm: Float32Array.of(2000, 5000), confidence: Float32Array.of(1, 1) }],
    events: [],
  } as unknown as Hearing
  const kept = atFullThrottle(h, tiedUpPrediction(balance)!)
  expect([...kept.tracks[0]!.confidence]).toEqual([0, 1])
})
