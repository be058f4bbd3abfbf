/** What stands at each tooth and midway between, frame by frame, once the tracks are known. */
import { copyFrame } from './frames.ts'
import { FRAME, MASK, TEETH_FROM, TEETH_TO } from './settings.ts'
import type { FrameTrack } from './tracks.ts'
import type { Warper } from './warp.ts'

/** multiples of half the firing rate kept: 1/2, 1, 3/2 … 12 */
export const HALF_TEETH = 24

/** ln Z at the multiples of half the rate, frames × HALF_TEETH; NaN outside the band or on another engine's tooth. */
export type ToothProfile = Float32Array

/** Reads the profile of every track; `signal` is the front signal the warp reads. */
export function toothProfiles(
  signal: Float32Array,
  tracks: readonly FrameTrack[],
  warper: Warper,
  cancelled: () => boolean = () => false,
): ToothProfile[] {
  const n = tracks[0]?.rate.length ?? 0
  const out = tracks.map(() => new Float32Array(n * HALF_TEETH).fill(Number.NaN))
  const frame = new Float64Array(FRAME)
  for (let i = 0; i < n; i++) {
    if (!tracks.some((t) => t.rate[i]! > 0)) continue
    if (i % 400 === 0 && cancelled()) break
    copyFrame(signal, i, frame)
    const slopes = tracks.map((t) => t.slope[i]!)
    warper.two(frame, slopes[0]!, slopes[1] ?? slopes[0]!)
    tracks.forEach((t, k) => {
      const f = t.rate[i]!
      if (f <= 0) return
      const others = tracks.filter(
        (o, j) => j !== k && o.rate[i]! > 0 && Math.abs(Math.log(o.rate[i]! / f)) > 0.004,
      )
      for (let h = 1; h <= HALF_TEETH; h++) {
        const at = 0.5 * h * f
        if (at < TEETH_FROM || at > TEETH_TO) continue
        if (others.some((o) => onTooth(at, o.rate[i]!))) continue
        out[k]![i * HALF_TEETH + h - 1] = warper.level(slopes[k]!, at)
      }
    })
  }
  return out
}

/** True when `hertz` lies within MASK of a multiple of `rate`. */
export function onTooth(hertz: number, rate: number): boolean {
  const n = Math.round(hertz / rate)
  return n > 0 && Math.abs(hertz - n * rate) < MASK
}
