/** Where this craft's rider may be: the map of envelope.ts for the craft as it is, its liquids running. */

import { weightSum } from '../../hull/aboard/masses.ts'
import { riderCentre } from '../../hull/aboard/riderBody.ts'
import type { EnvelopeInput } from './envelope.ts'
import { type FloatInput, slackOf } from './input.ts'
import { type RoomEnds, roomEnds } from './roomEnds.ts'

/** m between the places of the map */
export const roomGrid = 0.05

export interface RoomLimits {
  /** rad, m */
  heelLimit: number
  trimLimit: number
  /** m, least height of any opening */
  reserve: number
}

/** What the map is worked out from; the rider's weight acts where his stance puts it. */
export function roomInput(input: FloatInput, limits: RoomLimits, grid = roomGrid): EnvelopeInput {
  const fixed = weightSum(input.weights)
  const c = riderCentre(input.rider.stance, input.rider.stature)
  return {
    hull: input.hull,
    craft: {
      bodies: [{ name: 'hull', mesh: input.hull.mesh, share: 1 }],
      mass: fixed.mass,
      centre: fixed.centre,
      density: input.water,
      liquids: slackOf(input),
    },
    rider: input.rider.mass,
    riderHeight: c.balances ? 0 : c.height,
    openings: input.openings,
    grid,
    ...limits,
  }
}

const known = new WeakMap<FloatInput, { limits: RoomLimits; ends: RoomEnds }>()

/** Ends of the room within the limits, for a rider where the file puts him; the last answer for an input is kept. */
export function roomWithin(input: FloatInput, limits: RoomLimits): RoomEnds {
  const before = known.get(input)
  const same = (name: keyof RoomLimits) => before?.limits[name] === limits[name]
  if (before && same('heelLimit') && same('trimLimit') && same('reserve')) return before.ends
  const ends = roomEnds(roomInput(input, limits), input.rider.x)
  known.set(input, { limits, ends })
  return ends
}
