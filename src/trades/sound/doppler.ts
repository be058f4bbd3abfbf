/**
 * What moving past the listener does to the pitch.
 * Moving source, still air: f_heard = f_source c / (c - v), v the closing speed. A. D. Pierce, Acoustics (1981), section 9-1.
 */
import type { Solved } from '../../base/answers/solved.ts'

/** Speed of sound in air, m/s, at `celsius` °C (about -20 … 50): 331.3 + 0.606 T, the linear fit in common use. */
export const soundSpeed = (celsius: number) => 331.3 + 0.606 * celsius

/** Heard over sent frequency; `closing` m/s toward the listener (negative = away), |closing| < c. */
export function dopplerFactor(closing: number, c = soundSpeed(20)): number {
  if (!(Math.abs(closing) < c))
    throw new RangeError(`closing: ${closing} m/s; must be slower than sound, ${c} m/s`)
  return c / (c - closing)
}

/** Frequency or rpm at the source from the one heard. */
export const atSource = (heard: number, closing: number, c = soundSpeed(20)) =>
  heard / dopplerFactor(closing, c)

/** Speed of a craft that passes close by at constant rpm, m/s, from the pitch before and after. */
export function passSpeed(before: number, after: number, c = soundSpeed(20)): number {
  if (!(before > 0 && after > 0))
    throw new RangeError(`pitch before and after must be above 0, got ${before} and ${after}`)
  return (c * (before - after)) / (before + after)
}

/** Pitch of a pass; times in s, rates in Hz with 0 where nothing was heard. */
export interface PassReading {
  speed: number
  /** s, when the craft was closest */
  closest: number
}

/**
 * Speed from a fly-by: needs a level pitch of at least 1 s before and after the fall around `closest` s, the
 * earlier one higher. Not converged when the pitch is not level (the rpm may have changed) or too short.
 */
export function readPass(
  time: ArrayLike<number>,
  rate: ArrayLike<number>,
  closest: number,
  c = soundSpeed(20),
): Solved<PassReading> {
  const level = (from: number, to: number) => {
    const v: number[] = []
    for (let i = 0; i < rate.length; i++)
      if (rate[i]! > 0 && time[i]! >= from && time[i]! <= to) v.push(rate[i]!)
    v.sort((a, b) => a - b)
    const q = (p: number) => v[Math.floor(p * (v.length - 1))] ?? Number.NaN
    return { middle: q(0.5), spread: (q(0.9) - q(0.1)) / q(0.5), n: v.length }
  }
  const before = level(closest - 4, closest - 2)
  const after = level(closest + 2, closest + 4)
  const speed = before.n > 0 && after.n > 0 ? passSpeed(before.middle, after.middle, c) : Number.NaN
  const spread = Math.max(before.spread, after.spread)
  const converged = before.n >= 20 && after.n >= 20 && spread < 0.012 && speed > 0.3 && speed < 40
  return { value: { speed, closest }, converged, iterations: 1, residual: spread }
}
