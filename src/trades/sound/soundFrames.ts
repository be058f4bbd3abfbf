/** Walks the analysis-rate signal frame by frame. */
import { ANALYSIS_RATE } from './resample.ts'
import { FRAME, FRONT_TOP, HOP } from './settings.ts'

const REACH = 24
/** Blackman-windowed low-pass at FRONT_TOP; symmetric, so it delays nothing */
const taps = (() => {
  const out = new Float64Array(2 * REACH + 1)
  const cut = FRONT_TOP / ANALYSIS_RATE
  for (let k = -REACH; k <= REACH; k++) {
    const x = 2 * cut * k
    const window =
      0.42 + 0.5 * Math.cos((Math.PI * k) / (REACH + 1)) + 0.08 * Math.cos((2 * Math.PI * k) / (REACH + 1))
    out[k + REACH] = 2 * cut * (k === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x)) * window
  }
  return out
})()

/** The part of the signal that the warp may read; same length, nothing above FRONT_TOP. */
export function frontSignal(signal: Float32Array): Float32Array {
  const out = new Float32Array(signal.length)
  const padded = new Float64Array(signal.length + 2 * REACH)
  padded.set(signal, REACH)
  for (let i = 0; i < out.length; i++) {
    let sum = 0
    for (let k = 0; k <= 2 * REACH; k++) sum += taps[k]! * padded[i + k]!
    out[i] = sum
  }
  return out
}

/** One frame of that: `raw` has REACH samples more at each end than `out`. */
export function frontFrame(raw: Float64Array, out: Float64Array): void {
  for (let i = 0; i < out.length; i++) {
    let sum = 0
    for (let k = 0; k <= 2 * REACH; k++) sum += taps[k]! * raw[i + k]!
    out[i] = sum
  }
}

/** Copies the frame centred on hop `i` into `out`; samples outside the signal are 0. */
export function copyFrame(signal: Float32Array, i: number, out: Float64Array, offset = 0): void {
  const start = i * HOP - FRAME / 2 - offset
  const from = Math.max(0, -start)
  const to = Math.min(FRAME, signal.length - start)
  if (from > 0) out.fill(0, 0, Math.min(from, FRAME))
  for (let k = from; k < to; k++) out[k] = signal[start + k]!
  if (to < FRAME) out.fill(0, Math.max(0, to))
}
