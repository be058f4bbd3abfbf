/** The craft answering while its rider is dragged along the deck: everything made once, each place settled from the last. */

import { weightSum } from '../../hull/aboard/masses.ts'
import { riderCentre, type Stance } from '../../hull/aboard/riderBody.ts'
import { floaterOf, reloaded } from '../../hull/afloat/load.ts'
import { type Attitude, metacentricHeight, settle } from '../../hull/afloat/settle.ts'
import { deckHeight } from '../../hull/lines/hullBody.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import { heightAbove } from '../../physics/solid/waterFrame.ts'
import { type FloatInput, slackOf } from './input.ts'

export interface LiveState {
  attitude: Attitude
  /** it stays: settled, upright and level within 45° */
  stays: boolean
  /** m */
  draftAft: number
  draftFore: number
  freeboard: number
  /** lowest opening above water, Infinity without openings */
  opening: number
  gm: number
  /** where the rider's weight acts, m */
  rider: Vec3
}

/** A function of the rider's place (m forward, m to port) and stance; undefined off the deck. About a millisecond a call. */
export function liveFloat(
  input: FloatInput,
): (x: number, y: number, stance?: Stance) => LiveState | undefined {
  const craft = weightSum(input.weights)
  const base = floaterOf({
    bodies: [{ name: 'hull', mesh: input.hull.mesh, share: 1 }],
    mass: craft.mass,
    centre: craft.centre,
    density: input.water,
    liquids: slackOf(input),
  })
  let last: Attitude | undefined
  return (x, y, stance = input.rider.stance) => {
    const deck = deckHeight(input.hull.mesh, x, y)
    if (deck === undefined) return undefined
    const c = riderCentre(stance, input.rider.stature)
    const rider: Vec3 = [x, y, deck + (c.balances ? 0 : c.height)]
    const mass = craft.mass + input.rider.mass
    const centre = [0, 1, 2].map(
      (k) => (craft.mass * craft.centre[k]! + input.rider.mass * rider[k]!) / mass,
    ) as [number, number, number]
    const rest = settle(reloaded(base, mass, centre), last, { tolerance: 1e-7, giveUp: 0.8, compass: false })
    const stays =
      rest.converged && Math.max(Math.abs(rest.value.heel), Math.abs(rest.value.trim)) < Math.PI / 4
    last = stays ? rest.value : undefined
    const over = (p: Vec3) => heightAbove(rest.state.frame, rest.value.h, ...p)
    return {
      attitude: rest.value,
      stays,
      draftAft: -over([0, 0, 0]),
      draftFore: -over([input.hull.length, 0, 0]),
      freeboard: Math.min(...input.hull.edge.flatMap((p) => [over(p), over([p[0], -p[1], p[2]])])),
      opening: Math.min(
        Infinity,
        ...input.openings.filter((o) => o.kind !== 'shaft seal').map((o) => over(o.at)),
      ),
      gm: metacentricHeight(rest.state),
      rider,
    }
  }
}
