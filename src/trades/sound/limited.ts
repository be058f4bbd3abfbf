/**
 * A frame cut off at twice its own median magnitude, before anything is looked for in it. Drops, ticks, cracks and slaps are a few loud
 * moments whose even spectra pass for combs; an engine is there all the time and loses nothing. Common practice against impulsive
 * noise, no source; the level by paired trials on tuning seeds: at the median itself the
 * lines of a throttle worked fast broke in two. Twice the samples are cut off, and each pair's mean taken along the cut-off
 * line: cutting each sample by itself would fold lines of a steady engine back as a comb of another rate (J. Parker, V. Zavalishin
 * and E. Le Bivic, "Reducing the aliasing of nonlinear waveshaping", DAFx-16, 2016).
 */

/** the cut-off line over the median magnitude */
const OVER = 2
/** every so many samples are looked at for the median */
const EVERY = 4
/** weights of the samples 1/2, 3/2 … away from a place midway, of a Hann-windowed sinc */
const WAYS = 8
const midway = Float64Array.from({ length: WAYS }, (_, k) => {
  const x = Math.PI * (k + 0.5)
  return (Math.sin(x) / x) * (0.5 + 0.5 * Math.cos(x / WAYS))
})

/** Area under the cut-off line from 0 to `v`. */
const area = (v: number, most: number) =>
  Math.abs(v) <= most ? 0.5 * v * v : most * (Math.abs(v) - 0.5 * most)

/** Mean of the cut-off line between two samples. */
function between(a: number, b: number, most: number): number {
  if (Math.abs(b - a) <= 1e-3 * most) return Math.max(-most, Math.min(most, 0.5 * (a + b)))
  return (area(b, most) - area(a, most)) / (b - a)
}

export interface Limiter {
  /** cuts `x` off in place; ln of the amplitude it lost; silence stays silence */
  cut: (x: Float64Array) => number
}

/** A limiter for frames of `length` samples. */
export function makeLimiter(length: number): Limiter {
  const size = new Float64Array(Math.ceil(length / EVERY))
  const pad = 2 * WAYS
  const dense = new Float64Array(2 * length + 2 * pad)
  const cutOff = new Float64Array(dense.length)
  return {
    cut: (x) => {
      for (let i = 0; i < size.length; i++) size[i] = Math.abs(x[i * EVERY] ?? 0)
      size.sort()
      const most = OVER * size[size.length >> 1]!
      for (let i = 0; i < length; i++) dense[pad + 2 * i] = x[i]!
      for (let i = 0; i < length; i++) {
        const at = pad + 2 * i + 1
        let sum = 0
        for (let k = 0; k < WAYS; k++)
          sum += midway[k]! * ((dense[at - 2 * k - 1] ?? 0) + (dense[at + 2 * k + 1] ?? 0))
        dense[at] = sum
      }
      for (let j = 1; j < dense.length; j++) cutOff[j] = between(dense[j - 1]!, dense[j]!, most)
      let before = 0
      let after = 0
      for (let i = 0; i < length; i++) {
        const at = pad + 2 * i
        let sum = cutOff[at]!
        for (let k = 0; k < WAYS; k++)
          sum += midway[k]! * (cutOff[at - 2 * k - 1]! + (cutOff[at + 2 * k + 1] ?? 0))
        before += x[i]! * x[i]!
        x[i] = 0.5 * sum
        after += x[i]! * x[i]!
      }
      return after > 0 ? 0.5 * Math.log(before / after) : 0
    },
  }
}
