/**
 * What is doubtful of how a craft lies at rest: weights and where they are, the rider, the measures of the hull, the places of openings,
 * and what a home list leaves out.
 */
import type { Bounded } from '../../base/answers/rangeOf.ts'
import { quantitiesOf, whatIf } from '../../craft/index.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { Aboard } from '../../hull/aboard/aboard.ts'
import { liquidWeight } from '../../hull/aboard/liquids.ts'
import type { Weight } from '../../hull/aboard/masses.ts'
import type { Hull } from '../../hull/lines/hullBody.ts'
import { hullMeshFromCraft } from '../../hull/mesh/hullFromCraft.ts'

/** Lists made at home are light by up to this share (common practice, no source). */
export const leftOutOfLists: Bounded = { value: 1, low: 1, high: 1.08 }

/** A weight that may be off in mass, kg, and place along and across, m. */
export interface DoubtfulWeight {
  mass: Bounded
  x: Bounded
  y: Bounded
}

/** A measure of the hull, and the hull with another value of it; RangeError where that makes none. */
export interface DoubtfulMeasure extends Bounded {
  made: (value: number) => Hull
}

export interface RestDoubts {
  weights: readonly DoubtfulWeight[]
  rider: DoubtfulWeight
  /** factor on the mass of the list */
  left: Bounded
  /** measures of the hull that move its draft by more than a fraction of a millimetre */
  hull: readonly DoubtfulMeasure[]
  /** each opening's place, m */
  openings: readonly (readonly [x: Bounded, y: Bounded, z: Bounded])[]
}

const about = (value: number, give: number): Bounded => ({ value, low: value - give, high: value + give })
const fromWeight = (w: Weight): DoubtfulWeight => ({
  mass: about(w.mass, Math.min(w.mass, w.give ?? 0)),
  x: about(w.at[0], w.giveAt ?? 0),
  y: about(w.at[1], 0),
})

/** lengths known to this share of themselves move nothing */
const sureLength = 0.01

/** by the hull section they are of: a craft with other weights, or its rider elsewhere, shares them and the hulls that were made */
const known = new WeakMap<Craft['hull'], DoubtfulMeasure[]>()

/** The measures that a hull without a mesh or stations is made from; the others stay where they are while one is another. */
function hullMeasures(craft: Craft, made: Hull): DoubtfulMeasure[] {
  if (made.from.startsWith('the mesh')) return []
  const before = known.get(craft.hull)
  if (before) return before
  const own = [...quantitiesOf(craft)].filter((q) => /^hull\.[a-z ]+$/.test(q.path))
  const still = Object.fromEntries(own.map((q) => [q.path, q.value]))
  const measures = own
    .filter((q) => q.high > q.low && (q.kind !== 'length' || q.high - q.low > sureLength * Math.abs(q.value)))
    .map(({ path, value, low, high }): DoubtfulMeasure => {
      const hulls = new Map<number, Hull>()
      return {
        value,
        low,
        high,
        made: (v) => {
          const hull = hulls.get(v) ?? hullMeshFromCraft(whatIf(craft, { ...still, [path]: v }))
          hulls.set(v, hull)
          return hull
        },
      }
    })
  known.set(craft.hull, measures)
  return measures
}

/** The doubts of a craft whose hull is `made`; weights in the order of `aboard`, the liquids of its tanks after them. */
export function restDoubts(craft: Craft, made: Hull, { weights, assumed, tanks }: Aboard): RestDoubts {
  const { rider } = craft
  const listed = assumed
    ? weights.map(fromWeight)
    : craft.weights.map((w): DoubtfulWeight => ({ mass: w.mass, x: w.at[0], y: w.at[1] }))
  return {
    weights: [...listed, ...tanks.flatMap((t) => liquidWeight(t) ?? []).map(fromWeight)],
    rider: { mass: rider.mass, x: rider.position, y: rider.offCentre },
    left: assumed ? { value: 1, low: 1, high: 1 } : leftOutOfLists,
    hull: hullMeasures(craft, made),
    openings: craft.openings.map((o) => [o.at[0], o.at[1], o.at[2]]),
  }
}
