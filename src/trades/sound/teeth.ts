/** What stands at each tooth and midway between, frame by frame, once the tracks are known. */
import { parabolaTop } from './comb.ts'
import { FRAME, MASK, TEETH_FROM, TEETH_TO } from './settings.ts'
import { copyFrame } from './soundFrames.ts'
import type { FrameTrack } from './tracks.ts'
import type { Warper } from './warp.ts'

/** multiples of half the firing rate kept: 1/2, 1, 3/2 … 12 */
export const HALF_TEETH = 24

/** ln Z at the multiples of half the rate, frames × HALF_TEETH; NaN outside the band or on another engine's tooth. */
export type ToothProfile = Float32Array

/** widest correction of a rate, ln, and the steps tried on each side */
const REFINE_SPAN = 0.015
const REFINE_STEPS = 10
const REFINE_TEETH = 14

/**
 * The rate near `f` at which the teeth stand highest, read from spectra that are not clipped (the comb's score
 * is flat where every tooth is strong). Teeth that belong to an engine of `others` are left out.
 */
export function refineRate(f: number, others: readonly number[], level: (hertz: number) => number): number {
  const sumAt = (g: number) => {
    let sum = 0
    let weight = 0
    for (let h = Math.floor(TEETH_FROM / f) + 1, n = 0; h * g < TEETH_TO && n < REFINE_TEETH; h++, n++) {
      if (others.some((o) => onTooth(h * f, o))) continue
      const w = 1 / (1 + ((h * f) / 350) ** 2)
      sum += w * Math.max(-0.7, Math.min(9, level(h * g)))
      weight += w
    }
    return weight > 0 ? sum / weight : -9
  }
  let best = 0
  let top = Number.NEGATIVE_INFINITY
  for (let k = -REFINE_STEPS; k <= REFINE_STEPS; k++) {
    const v = sumAt(f * Math.exp((k / REFINE_STEPS) * REFINE_SPAN))
    if (v > top) {
      top = v
      best = k
    }
  }
  // an edge is no maximum
  if (Math.abs(best) === REFINE_STEPS || top < -8) return f
  const at = (k: number) => sumAt(f * Math.exp((k / REFINE_STEPS) * REFINE_SPAN))
  return f * Math.exp(((best + parabolaTop(at(best - 1), top, at(best + 1))) / REFINE_STEPS) * REFINE_SPAN)
}

/** Reads the profile of every track; `signal` is the front signal the warp reads. */
export function toothProfiles(
  signal: Float32Array,
  tracks: readonly FrameTrack[],
  warper: Warper,
  cancelled: () => boolean = () => false,
  refine = false,
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
    if (refine) {
      const rates = tracks.map((t) => t.rate[i]!)
      tracks.forEach((t, k) => {
        const others = rates.filter((r, j) => j !== k && r > 0)
        // two lines on top of each other cannot be told apart here
        if (rates[k]! <= 0 || others.some((o) => Math.abs(Math.log(o / rates[k]!)) < 0.045)) return
        t.rate[i] = refineRate(rates[k]!, others, (hertz) => warper.level(slopes[k]!, hertz))
      })
    }
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
