/**
 * A range for an answer of a cheap model: each doubtful value is put to both its bounds by itself, the effects are summed (in
 * logarithms where the answer stays above nought, so that shares multiply), and draws of the sum give median and ends
 * (ISO/IEC Guide 98-3/Suppl. 1:2008; the sum of single effects stands in for the model). Two-sided, skewed where the answer is.
 */
import { effectAt, effectThrough, percentile } from '../numerics/effects.ts'
import { spreadPoint } from '../numerics/lowDiscrepancy.ts'
import type { Range } from './solved.ts'

/** A value with its bounds; a value at one of its bounds is fine. */
export interface Bounded {
  readonly value: number
  readonly low: number
  readonly high: number
}

const draws = 1024

/**
 * The range of `answer`, given the values in the order of `doubts`. NaN ends where the answer at the values is no finite number.
 * No single value at its bound leaves the range.
 */
export function rangeOf(answer: (values: readonly number[]) => number, doubts: readonly Bounded[]): Range {
  const values = doubts.map((d) => d.value)
  const here = answer(values)
  if (!Number.isFinite(here)) return { value: here, low: Number.NaN, high: Number.NaN }
  const moved = doubts.map((d, i) => {
    if (!(d.high > d.low)) return []
    const place = Math.min(1, Math.max(-1, (2 * (d.value - d.low)) / (d.high - d.low) - 1))
    // a value next to a bound is that end itself; the middle then shows the bend
    const ends = place < -0.8 ? [1, 0] : place > 0.8 ? [-1, 0] : [1, -1]
    return [
      [place, here] as const,
      ...ends.map((x) => [x, answer(values.with(i, d.low + ((x + 1) / 2) * (d.high - d.low)))] as const),
    ].filter(([, y]) => Number.isFinite(y))
  })
  const all = moved.flat().map(([, y]) => y)
  const positive = here > 0 && all.every((y) => y > 0)
  const to = positive ? Math.log : (y: number) => y
  const back = positive ? Math.exp : (y: number) => y
  const effects = moved.flatMap((points) =>
    points.length < 2 ? [] : [effectThrough(points.map(([x, y]) => [x, to(y) - to(here)] as const))],
  )
  if (effects.length === 0) return { value: here, low: here, high: here }
  const drawn = Array.from({ length: draws }, (_, i) => {
    const u = spreadPoint(i, effects.length, 3)
    return back(effects.reduce((sum, e, k) => sum + effectAt(e, 2 * u[k]! - 1), to(here)))
  }).sort((a, b) => a - b)
  return {
    value: percentile(drawn, 0.5),
    low: Math.min(percentile(drawn, 0.025), ...all),
    high: Math.max(percentile(drawn, 0.975), ...all),
  }
}
