/**
 * What is doubtful of how a craft lies at rest: weights and where they are, the rider, the hull's main measures, the places of openings,
 * and what a home list leaves out. A hull a little longer or wider than written is the same mesh stretched, so its draft and trim are
 * those of the hull as written under a load that is less by as much (exact for a stretched body); a little more deadrise lowers the keel
 * by a quarter of the chine beam times its rise (a flat vee). Checked against the whole thing, draw by draw: restRanges.test.ts.
 */
import type { Bounded } from '../../base/answers/rangeOf.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { Aboard } from '../../hull/aboard/aboard.ts'
import { liquidWeight } from '../../hull/aboard/liquids.ts'
import type { Weight } from '../../hull/aboard/masses.ts'

/** Lists made at home are light by up to this share (common practice, no source). */
export const leftOutOfLists: Bounded = { value: 1, low: 1, high: 1.08 }

/** A weight that may be off in mass, kg, and place along and across, m. */
export interface DoubtfulWeight {
  mass: Bounded
  x: Bounded
  y: Bounded
}

export interface RestDoubts {
  weights: readonly DoubtfulWeight[]
  rider: DoubtfulWeight
  /** factor on the mass of the list */
  left: Bounded
  /** hull measures as shares of what is written */
  length: Bounded
  beam: Bounded
  /** m that the keel lies lower for more deadrise */
  keel: Bounded
  /** each opening's place, m */
  openings: readonly (readonly [x: Bounded, y: Bounded, z: Bounded])[]
}

const about = (value: number, give: number): Bounded => ({ value, low: value - give, high: value + give })
const share = ({ value, low, high }: Bounded): Bounded =>
  value > 0 ? { value: 1, low: low / value, high: high / value } : { value: 1, low: 1, high: 1 }

const fromWeight = (w: Weight): DoubtfulWeight => ({
  mass: about(w.mass, Math.min(w.mass, w.give ?? 0)),
  x: about(w.at[0], w.giveAt ?? 0),
  y: about(w.at[1], 0),
})

/** The doubts of a craft; weights in the order of `aboard`, the liquids of its tanks after them. */
export function restDoubts(craft: Craft, { weights, assumed, tanks }: Aboard): RestDoubts {
  const { hull, rider } = craft
  const listed = assumed
    ? weights.map(fromWeight)
    : craft.weights.map((w): DoubtfulWeight => ({ mass: w.mass, x: w.at[0], y: w.at[1] }))
  const rise = (angle: number) => (hull.chineBeam.value / 4) * Math.tan(angle)
  const { value, low, high } = hull.deadrise
  return {
    weights: [...listed, ...tanks.flatMap((t) => liquidWeight(t) ?? []).map(fromWeight)],
    rider: { mass: rider.mass, x: rider.position, y: rider.offCentre },
    left: assumed ? { value: 1, low: 1, high: 1 } : leftOutOfLists,
    length: share(hull.length),
    beam: share(hull.chineBeam),
    keel: { value: 0, low: rise(low) - rise(value), high: rise(high) - rise(value) },
    openings: craft.openings.map((o) => [o.at[0], o.at[1], o.at[2]]),
  }
}
