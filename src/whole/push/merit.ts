/**
 * What a builder wants, as one number to compare impellers by: over the hump first, then pull and top speed weighed alike,
 * unless the craft file says which counts. Limits lower it in proportion to how far they are passed, so that of several that pass
 * one the least bad is found. The margin of 1.25 at the hump and the weights are judgement; only shares of the best are ever shown.
 */
import type { Craft } from '../../craft/index.ts'
import { bladeLoad } from '../../trades/jet/bladeStrength.ts'
import type { JetSpec } from '../../trades/jet/jetTypes.ts'
import { fatigueIndex, printMaterials } from '../../trades/jet/printed.ts'
import { fastest, type QuickSums } from './quickSums.ts'

/** thrust over drag wanted at the hump (common practice, no source) */
export const humpWanted = 1.25

export type Wants = NonNullable<Craft['wants']> | 'both'

export const wantsOf = (craft: Craft): Wants => craft.wants ?? 'both'

/** In words, for sentences: "most pull and speed". */
export const wantsSays: Readonly<Record<Wants, string>> = {
  both: 'pull and speed together',
  pull: 'pull',
  speed: 'top speed',
  plane: 'getting on the plane',
}

/** Use of the blades over what the print bears for long (1 is the line); NaN for materials that are not printed. */
export function strengthUse(material: string, spec: JetSpec, sums: QuickSums): number {
  const print = printMaterials[material]
  const thickness = spec.rotor.rootThickness
  if (!print || !sums.tied || thickness === undefined) return Number.NaN
  const { T, gH } = sums.tied
  return fatigueIndex(print, bladeLoad(spec.rotor, T, gH, spec.water.density, thickness).stress)
}

/** a part over its limit, nought below it or where it is not known */
const over = (use: number) => (use > 1 ? use - 1 : 0)

/** Merit, above zero for anything that runs; only its ratios mean something. */
export function meritOf(wants: Wants, sums: QuickSums, strength = Number.NaN): number {
  if (!(sums.pull > 0)) return 0
  const speed = Number.isFinite(sums.topSpeed) ? Math.max(sums.topSpeed, 0.1) : fastest
  const short = Number.isFinite(sums.hump) ? Math.max(0, Math.log(humpWanted / Math.max(sums.hump, 0.05))) : 0
  const gains: Record<Wants, number> = {
    both: 0.5 * Math.log(sums.pull) + 0.5 * Math.log(speed),
    pull: Math.log(sums.pull),
    speed: Math.log(speed),
    // where there is no hump the push through the low speeds is what is left to compare
    plane: Number.isFinite(sums.hump) ? Math.log(Math.max(sums.hump, 0.05)) : Math.log(sums.pull),
  }
  const limits = 15 * over(sums.ofRedline) + 0.3 * over(strength) + (sums.choked ? 0.05 : 0)
  return Math.exp(gains[wants] - 2 * short - limits)
}
