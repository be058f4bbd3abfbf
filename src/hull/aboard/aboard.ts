/**
 * All that is on board, read once: the weights with their sizes, tanks with what is in them, the rider, foam, and the room that all of
 * it takes. Drag, float, foam and picture go by this one list. The foam's own mass is taken to stand in the weights list, as a
 * hull is weighed with its foam in.
 */
import { keptBy } from '../../base/numerics/keep.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { Taken } from './boxes.ts'
import { type Compartment, compartmentsOf, type FoamBlock, foamBlocksOf } from './foamBlocks.ts'
import { type Item, itemsOf } from './items.ts'
import type { Tank } from './liquids.ts'
import type { Weight } from './masses.ts'
import type { Stance } from './riderBody.ts'
import { takenRoom } from './takenRoom.ts'
import { liquidsFromCraft, tanksFromCraft } from './tanksFromCraft.ts'

export interface Rider {
  /** kg, m */
  mass: number
  stature: number
  stance: Stance
  /** feet, knees or seat: forward of the transom and to port, m */
  x: number
  y: number
}

/** kg, and m forward of and up from the foot of the transom */
export interface Centred {
  mass: number
  x: number
  z: number
}

/** What weighs. */
export interface Carried {
  /** the weights list as the file has it, with sizes */
  items: readonly Item[]
  /** true when the file lists no weight and a usual one stands in */
  assumed: boolean
  /** what floats: the list, or the usual weight that stands in for it; without liquids and rider */
  weights: readonly (Weight & { sealed?: boolean })[]
  tanks: readonly Tank[]
  /** the liquid in them as it lies in the level craft */
  liquids: readonly Weight[]
  /** weights and liquids together */
  whole: Centred
  rider: Rider
}

/** What weighs, what lifts when swamped, and what takes room. */
export interface Aboard extends Carried {
  foam: readonly FoamBlock[]
  compartments: readonly Compartment[]
  /** room that things and hands need, where no more foam can go */
  taken: readonly Taken[]
}

/** A craft that lists no weights is taken to weigh this much, kg, a square metre of length times beam: judgement, from sleds with a metal deck and one or two small engines; wide doubt. */
const usualLoading = 33

/** What stands in for a missing list; the liquids are part of it, as a usual weight is that of a craft ready to go. */
function usualWeight({ length, beam, depth }: Craft['hull'], liquids: readonly Weight[]): Weight {
  const all = usualLoading * length.value * beam.value
  const liquid = liquids.reduce((m, w) => m + w.mass, 0)
  return {
    name: 'the craft, a usual weight for its size',
    mass: Math.max(0.3 * all, all - liquid),
    at: [0.42 * length.value, 0, 0.55 * depth.value],
    give: 0.4 * all,
  }
}

function centreOf(list: readonly Weight[]): Centred {
  const mass = list.reduce((m, w) => m + w.mass, 0)
  const mean = (k: 0 | 2) => (mass > 0 ? list.reduce((s, w) => s + w.mass * w.at[k], 0) / mass : 0)
  return { mass, x: mean(0), z: mean(2) }
}

/** What weighs on a craft; a search that moves other values shares it. */
export const carriedOn: (craft: Craft) => Carried = keptBy(
  8,
  (c: Craft) => [c.weights, c.tanks, c.hull, c.rider],
  (craft): Carried => {
    const items = itemsOf(craft)
    const liquids = liquidsFromCraft(craft)
    const assumed = !items.some((w) => w.mass > 0)
    const weights = assumed ? [usualWeight(craft.hull, liquids)] : items.map(asWeight)
    return {
      items,
      assumed,
      weights,
      tanks: tanksFromCraft(craft),
      liquids,
      whole: centreOf([...weights, ...liquids]),
      rider: riderOf(craft.rider),
    }
  },
)

/** A guessed size is good for a picture and for room, not for inertia or for what keeps water out. */
function asWeight({ name, mass, at, give, giveAt, sealed, size, sizeGuessed }: Item) {
  return {
    name,
    mass,
    at,
    sealed,
    ...(give === undefined ? {} : { give }),
    ...(giveAt === undefined ? {} : { giveAt }),
    ...(sizeGuessed ? {} : { size }),
  }
}

const riderOf = (r: Craft['rider']): Rider => ({
  mass: r.mass.value,
  stature: r.height.value,
  stance: r.stance,
  x: r.position.value,
  y: r.offCentre.value,
})

/** All that is on board of a craft; kept by the identity of the sections it is read from. */
export const aboard: (craft: Craft) => Aboard = keptBy(
  8,
  (c: Craft) => [c.weights, c.tanks, c.hull, c.rider, c.foam, c.compartments, c.openings, c.jet],
  (craft): Aboard => {
    const carried = carriedOn(craft)
    return {
      ...carried,
      foam: foamBlocksOf(craft),
      compartments: compartmentsOf(craft),
      taken: takenRoom(craft, carried.items),
    }
  },
)
