import { expect, test } from 'vitest'
import { STEP } from './settings.ts'
import type { FrameTrack } from './tracks.ts'
import { trimEnds } from './trims.ts'

/** a track of pieces, each so many s at a rate (0 = silent) and a score */
function track(...pieces: readonly [seconds: number, rate: number, score: number][]): FrameTrack {
  const rate: number[] = []
  const score: number[] = []
  for (const [seconds, f, s] of pieces)
    for (let i = 0; i < Math.round(seconds / STEP); i++) {
      rate.push(f)
      score.push(s)
    }
  return {
    rate: Float64Array.from(rate),
    score: Float64Array.from(score),
    slope: new Uint8Array(rate.length),
  }
}
const soundsFrom = (t: FrameTrack) => STEP * t.rate.findIndex((f) => f > 0)
const soundsTo = (t: FrameTrack) => STEP * (t.rate.findLastIndex((f) => f > 0) + 1)

test('noise that the path took in before a start is trimmed, at the leap to the engine’s own speed', () => {
  const t = track([1, 0, 0], [0.8, 200, 2.2], [5, 50, 6], [1, 0, 0])
  trimEnds(t)
  expect(soundsFrom(t)).toBeCloseTo(1.8, 1)
  expect(soundsTo(t)).toBeCloseTo(6.8, 1)
})

test('an engine that is clear at once and leaps up keeps its start', () => {
  const t = track([1, 0, 0], [0.8, 50, 6], [5, 80, 6], [1, 0, 0])
  trimEnds(t)
  expect(soundsFrom(t)).toBeCloseTo(1, 1)
})

test('what fades at both ends is taken off, and a locked stretch is left as it is', () => {
  const faded = () => track([1, 0, 0], [0.5, 50, 1], [5, 50, 6], [0.5, 50, 1], [1, 0, 0])
  const t = faded()
  trimEnds(t)
  expect(soundsFrom(t)).toBeCloseTo(1.5, 0)
  expect(soundsTo(t)).toBeCloseTo(6.5, 0)
  expect(soundsTo(t) - soundsFrom(t)).toBeLessThan(5.4)
  const held = faded()
  trimEnds(held, [{ frame: Math.round(1.1 / STEP), rate: 50 }])
  expect(soundsFrom(held)).toBeCloseTo(1, 1)
  expect(soundsTo(held)).toBeCloseTo(7, 1)
})

test('a sudden rise of level marks the start where the speed gives no sign', () => {
  const t = track([1, 0, 0], [0.6, 50, 2.5], [5, 50, 6], [1, 0, 0])
  const power = Float64Array.from(t.rate, (_, i) => (i * STEP < 1.6 ? 1 : 10))
  trimEnds(t, [], power)
  // within the four frames that the level is compared over
  expect(Math.abs(soundsFrom(t) - 1.6)).toBeLessThan(0.11)
})
