/**
 * The weights list as things with a size. What the file gives no size gets one from its mass and a usual density; what is spread over
 * the whole craft, or has its measures elsewhere in the file, is no box.
 * Densities: judgement, no source (an engine with its pipe and mounts, a tank with what is round it, other gear, as boxes).
 */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import type { Weight } from './masses.ts'

/** `spread`: a hull is round everything, a jet, its shaft and foam have their own measures. */
export type ItemKind = 'engine' | 'tank' | 'spread' | 'gear'

export interface Item extends Weight {
  kind: ItemKind
  /** craft path */
  path: string
  /** sides of the box round it, m */
  size: Vec3
  /** the file gives no size; `size` is a guess */
  sizeGuessed: boolean
  /** no water gets in when the craft is flooded */
  sealed: boolean
  /** takes room of its own: false where it is spread, or is the shell of a tank that the file has in its own section */
  box: boolean
}

/** kg/m³ of the box round a thing whose size is not given */
const density: Readonly<Record<ItemKind, number>> = { engine: 900, tank: 600, spread: 500, gear: 500 }

const kindWords: readonly (readonly [ItemKind, RegExp])[] = [
  ['engine', /engine|motor/],
  ['tank', /tank|fuel|petrol/],
  ['spread', /hull|deck|foam|jet|shaft|impeller|everything|rider/],
]

/** What a weight is, by the first telling word of its name: "engine and pipe" is an engine, "hull with engine bed" is not. */
export function kindOf(name: string): ItemKind {
  const found = kindWords
    .map(([kind, words]) => [kind, name.toLowerCase().search(words)] as const)
    .filter(([, at]) => at >= 0)
    .sort((a, b) => a[1] - b[1])
  return found[0]?.[0] ?? 'gear'
}

/** Sides, m, of a box longer than wide and wider than tall round a thing of a mass (kg). */
function usualSize(kind: ItemKind, mass: number): Vec3 {
  const side = Math.cbrt(mass / density[kind])
  return [1.25 * side, side, 0.8 * side]
}

/** The weights list of a craft file. */
export function itemsOf(craft: Pick<Craft, 'weights' | 'tanks'>): Item[] {
  return craft.weights.map((w, i): Item => {
    const kind = kindOf(w.name)
    const given = w.size
    return {
      name: w.name,
      path: `weights.${i}`,
      kind,
      mass: w.mass.value,
      at: [w.at[0].value, w.at[1].value, w.at[2].value],
      give: (w.mass.high - w.mass.low) / 2,
      giveAt: 0.02,
      size: given ? [given[0].value, given[1].value, given[2].value] : usualSize(kind, w.mass.value),
      sizeGuessed: given === undefined,
      sealed: w.sealed,
      box: given !== undefined || !(kind === 'spread' || (kind === 'tank' && craft.tanks.length > 0)),
    }
  })
}
