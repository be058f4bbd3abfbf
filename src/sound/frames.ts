/** Walks the analysis-rate signal frame by frame. */
import { FRAME, HOP } from './settings.ts'

/** Copies the frame centred on hop `i` into `out`; samples outside the signal are 0. */
export function copyFrame(signal: Float32Array, i: number, out: Float64Array, offset = 0): void {
  const start = i * HOP - FRAME / 2 - offset
  const from = Math.max(0, -start)
  const to = Math.min(FRAME, signal.length - start)
  if (from > 0) out.fill(0, 0, Math.min(from, FRAME))
  for (let k = from; k < to; k++) out[k] = signal[start + k]!
  if (to < FRAME) out.fill(0, Math.max(0, to))
}

/** Number of frames of a signal of `length` samples: one at every hop from 0 to the end. */
export const frameCount = (length: number) => (length > 0 ? Math.floor((length - 1) / HOP) + 1 : 0)
