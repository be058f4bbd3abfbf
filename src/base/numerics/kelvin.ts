/**
 * Kelvin functions of order zero, ker and kei, and their derivatives.
 * Source: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), 9.9.10 to 9.9.12, power series; good to
 * about 1e-9 of the greatest term for 0 < x ≤ 10, where both functions have died away.
 */
const euler = 0.5772156649015329

export interface Kelvin {
  ker: number
  kei: number
  kerSlope: number
  keiSlope: number
}

/** ker, kei, ker′ and kei′ at x, 0 < x ≤ 10 (RangeError outside). */
export function kelvin(x: number): Kelvin {
  if (!(x > 0 && x <= 10)) throw new RangeError(`kelvin: ${x} is outside 0 to 10`)
  const half = x / 2
  const q = half * half
  let ber = 0
  let bei = 0
  let berSlope = 0
  let beiSlope = 0
  let sum0 = 0
  let sum1 = 0
  let slope0 = 0
  let slope1 = 0
  // term m carries (x/2)^2m/(m!)² with its harmonic number; even m feed ber and ker, odd m bei and kei, signs alternate in pairs
  let term = 1
  let harmonic = 0
  for (let m = 0; m < 120; m++) {
    if (m > 0) {
      term *= q / (m * m)
      harmonic += 1 / m
    }
    const sign = (m >> 1) % 2 === 0 ? 1 : -1
    const value = sign * term
    const slope = (value * 2 * m) / x
    if (m % 2 === 0) {
      ber += value
      berSlope += slope
      sum0 += harmonic * value
      slope0 += harmonic * slope
    } else {
      bei += value
      beiSlope += slope
      sum1 += harmonic * value
      slope1 += harmonic * slope
    }
    if (term * (1 + harmonic) < 1e-18 && m > q) break
  }
  const log = Math.log(half) + euler
  return {
    ker: -log * ber + (Math.PI / 4) * bei + sum0,
    kei: -log * bei - (Math.PI / 4) * ber + sum1,
    kerSlope: -log * berSlope - ber / x + (Math.PI / 4) * beiSlope + slope0,
    keiSlope: -log * beiSlope - bei / x - (Math.PI / 4) * berSlope + slope1,
  }
}
