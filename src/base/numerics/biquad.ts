/**
 * Second-order recursive filters in place.
 * Coefficients by the bilinear transform of the analogue prototypes, as in J. O. Smith,
 * Introduction to Digital Filters (2007), chapter "Bilinear transformation".
 */
export interface Biquad {
  b0: number
  b1: number
  b2: number
  a1: number
  a2: number
}

/** Low-pass, `corner` Hz below half of `rate`; q 0.707 is flattest. */
export function lowPass(corner: number, q: number, rate: number): Biquad {
  const k = Math.tan((Math.PI * Math.min(corner, 0.49 * rate)) / rate)
  const norm = 1 / (1 + k / q + k * k)
  return {
    b0: k * k * norm,
    b1: 2 * k * k * norm,
    b2: k * k * norm,
    a1: 2 * (k * k - 1) * norm,
    a2: (1 - k / q + k * k) * norm,
  }
}

/** High-pass, `corner` Hz below half of `rate`. */
export function highPass(corner: number, q: number, rate: number): Biquad {
  const k = Math.tan((Math.PI * Math.min(corner, 0.49 * rate)) / rate)
  const norm = 1 / (1 + k / q + k * k)
  return { b0: norm, b1: -2 * norm, b2: norm, a1: 2 * (k * k - 1) * norm, a2: (1 - k / q + k * k) * norm }
}

/** Band-pass with gain 1 at `centre` Hz and quality `q`. */
export function bandPass(centre: number, q: number, rate: number): Biquad {
  const k = Math.tan((Math.PI * Math.min(centre, 0.49 * rate)) / rate)
  const norm = 1 / (1 + k / q + k * k)
  return {
    b0: (k / q) * norm,
    b1: 0,
    b2: -(k / q) * norm,
    a1: 2 * (k * k - 1) * norm,
    a2: (1 - k / q + k * k) * norm,
  }
}

/** Runs the filter over `x` into a new array; starts from rest. */
export function filtered(x: Float64Array, f: Biquad): Float64Array {
  const y = new Float64Array(x.length)
  const { b0, b1, b2, a1, a2 } = f
  let z1 = 0
  let z2 = 0
  for (let i = 0; i < x.length; i++) {
    const v = x[i]!
    const out = b0 * v + z1
    z1 = b1 * v - a1 * out + z2
    z2 = b2 * v - a2 * out
    y[i] = out
  }
  return y
}
