/**
 * Any sample rate to the analysis rate by a windowed-sinc filter, one stretch at a time.
 * Kaiser-windowed sinc with a table of phases: J. O. Smith, Digital Audio Resampling (CCRMA), section
 * "Theory of ideal bandlimited interpolation".
 */
/** samples a second of the signal that is analysed */
export const ANALYSIS_RATE = 4000

const ZEROS = 14
const BETA = 8
const PHASES = 256

function besselI0(x: number): number {
  let sum = 1
  let term = 1
  for (let k = 1; k < 40; k++) {
    term *= (x / (2 * k)) ** 2
    sum += term
  }
  return sum
}

/** Half of the impulse response, PHASES points a zero crossing, one guard point. */
const kernel = (() => {
  const out = new Float64Array(ZEROS * PHASES + 2)
  for (let i = 0; i <= ZEROS * PHASES; i++) {
    const x = i / PHASES
    const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x)
    out[i] = (sinc * besselI0(BETA * Math.sqrt(1 - (x / ZEROS) ** 2))) / besselI0(BETA)
  }
  return out
})()

export interface Resampler {
  /** takes the next stretch of the recording, gives the resampled samples that are ready */
  push: (x: Float32Array | Float64Array) => Float32Array
  /** the samples still held back; call once at the end */
  flush: () => Float32Array
}

/** Filter taps for one fractional position; taps run from the oldest sample to the newest. */
function tapsAt(part: number, reach: number, cut: number): Float64Array {
  const taps = new Float64Array(2 * reach)
  let sum = 0
  for (let k = 0; k < 2 * reach; k++) {
    const at = Math.abs(k - (reach - 1) - part) * cut * PHASES
    const i = Math.floor(at)
    const v = i >= ZEROS * PHASES ? 0 : kernel[i]! + (at - i) * (kernel[i + 1]! - kernel[i]!)
    taps[k] = v
    sum += v
  }
  for (let k = 0; k < taps.length; k++) taps[k]! /= sum
  return taps
}

/**
 * Resampler from `from` to `to` samples a second (both > 0). Output sample k stands at time k / to.
 * The pass band ends at 0.45 of the lower rate.
 */
export function makeResampler(from: number, to: number): Resampler {
  const ratio = from / to
  const cut = Math.min(1, to / from) * 0.92
  const reach = Math.ceil(ZEROS / cut)
  // phases repeat exactly when the ratio is a fraction of small numbers
  const tables = new Map<number, Float64Array>()
  let held = new Float64Array(4 * reach + 4096)
  let count = reach // samples in `held`; the first `reach` are the silence before the start
  let first = -reach // input index of held[0]
  let made = 0

  const grow = (need: number) => {
    if (need <= held.length) return
    const bigger = new Float64Array(Math.max(need, 2 * held.length))
    bigger.set(held.subarray(0, count))
    held = bigger
  }
  const drain = (): Float32Array => {
    const newest = first + count - 1
    const ready = Math.max(0, Math.floor((newest - reach) / ratio + 1e-9) - made + 1)
    const out = new Float32Array(ready)
    for (let i = 0; i < ready; i++) {
      const at = (made + i) * ratio
      const whole = Math.floor(at + 1e-9)
      // a thousandth of a sample is finer than any use of the result
      const phase = Math.max(0, Math.round((at - whole) * 1024))
      let taps = tables.get(phase)
      if (!taps) {
        taps = tapsAt(phase / 1024, reach, cut)
        tables.set(phase, taps)
      }
      const base = whole - (reach - 1) - first
      let sum = 0
      for (let k = 0; k < taps.length; k++) sum += taps[k]! * held[base + k]!
      out[i] = sum
    }
    made += ready
    // keep only what later outputs still reach
    const oldest = Math.floor(made * ratio) - reach
    const drop = Math.min(count, Math.max(0, oldest - first))
    if (drop > 0) {
      held.copyWithin(0, drop, count)
      count -= drop
      first += drop
    }
    return out
  }
  return {
    push: (x) => {
      grow(count + x.length)
      held.set(x, count)
      count += x.length
      return drain()
    },
    flush: () => {
      grow(count + reach)
      held.fill(0, count, count + reach)
      count += reach
      return drain()
    },
  }
}

/** One array of all the stretches, in their order. */
export function joined(parts: readonly Float32Array[]): Float32Array {
  const out = new Float32Array(parts.reduce((n, p) => n + p.length, 0))
  let at = 0
  for (const p of parts) {
    out.set(p, at)
    at += p.length
  }
  return out
}
