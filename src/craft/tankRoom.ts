/** What a tank of the craft file holds: from its inside measures and how full it is said to be. */
import type { Craft } from './schema/craftSchema.ts'

type Tank = Craft['tanks'][number]

/** Inside volume, m³. */
export function tankCapacity(t: Tank): number {
  if (t.kind === 'box') return t.length.value * t.width.value * t.height.value
  const long = t.kind === 'lying cylinder' ? t.length.value : t.height.value
  return (Math.PI / 4) * t.diameter.value ** 2 * long
}

/** Liquid in it, m³, with its likely range; never more than the tank holds. The amount counts where it is given, else the share. */
export function tankLiquid(t: Tank): { value: number; low: number; high: number } {
  const most = tankCapacity(t)
  const held = (v: number) => Math.min(most, Math.max(0, v))
  if (t.liquid) return { value: held(t.liquid.value), low: held(t.liquid.low), high: held(t.liquid.high) }
  const { value, low, high } = t.filled
  return { value: held(value * most), low: held(low * most), high: held(high * most) }
}

/** Words that a weight carries fuel, and words that it is something beside it. */
const fuelWords = /\b(fuel|petrol|gasoline|benzine?|mixture|premix)\b/i
const otherWords =
  /\b(empty|dry|without|no|pump|line|lines|hose|filter|tap|cap|can|canister|spare|bulb|gauge)\b/i

/** Weights of the list that seem to carry the liquid of the tanks again: named after fuel and no lighter than it. By index. */
export function countedTwice(craft: Craft): number[] {
  const fuel = craft.tanks.filter((t) => t.holds !== 'water' && t.holds !== 'other')
  const mass = fuel.reduce((m, t) => m + t.density.value * tankLiquid(t).value, 0)
  if (!(mass > 0)) return []
  return craft.weights.flatMap((w, i) =>
    fuelWords.test(w.name) && !otherWords.test(w.name) && w.mass.value >= 0.5 * mass ? [i] : [],
  )
}
