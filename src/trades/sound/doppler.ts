/**
 * What moving past the listener does to the pitch.
 * Moving source, still air: f_heard = f_source c / (c - v), v the closing speed. A. D. Pierce, Acoustics (1981), section 9-1.
 */

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
