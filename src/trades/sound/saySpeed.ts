/** Speeds of what was heard, in sentences: tracks are in rev/min, as they are listened to. */
import { inRpm } from '../../base/answers/amounts.ts'
import type { Amount } from '../../base/answers/sentence.ts'

/** A speed given in rev/min. */
export const atRpm = (rpm: number): Amount => inRpm(rpm / 60)

/** The value below which part `q` (0 to 1) of what was heard lies; 0 where nothing was. */
export function percentile(values: Float32Array | Float64Array, q: number): number {
  const v = values.filter((x) => x > 0).sort()
  return v[Math.min(v.length - 1, Math.floor(q * v.length))] ?? 0
}
