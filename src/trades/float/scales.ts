/**
 * The craft's own weight and centre from a luggage scale at two places, and how the weights list is brought to agree.
 * Source: moments about the transom; uncertainties combined as independent (JCGM 100:2008, 5.1.2).
 */

import { inDegrees, inKg } from '../../base/answers/amounts.ts'
import { printed, say } from '../../base/answers/sentence.ts'
import {
  centreByTwoScales,
  centreByTwoScalesGive,
  heightByTilting,
  type Weight,
  weightSum,
} from '../../hull/aboard/masses.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'

export interface ScaleReadings {
  /** m forward of the transom, and kg read there, craft level */
  aft: { at: number; reads: number }
  fore: { at: number; reads: number }
  /** kg and m either way */
  giveReading: number
  giveTape: number
  /** kg read again at the same places with the bow raised by `angle` (rad), and how high the hooks are above the keel, m */
  tilted?: { angle: number; aft: number; fore: number; hooks: number }
}

export interface ScaleResult {
  /** kg */
  mass: number
  giveMass: number
  /** m forward of the transom */
  forward: number
  giveForward: number
  /** m above the keel, with its ±; absent without a tilted reading */
  up?: number
  giveUp?: number
}

/** Weight and centre; RangeError on readings that are not above 0, places that are too close, or a tilt outside 5 to 45 degrees. */
export function weighed(r: ScaleReadings): ScaleResult {
  const { aft, fore, giveReading, giveTape, tilted } = r
  if (!(aft.reads > 0 && fore.reads > 0))
    throw new RangeError(`scale readings: ${aft.reads} and ${fore.reads} kg, expected both above 0`)
  if (!(fore.at - aft.at > 0.2))
    throw new RangeError(
      `places: ${aft.at} and ${fore.at} m, expected the second at least 0.2 m ahead of the first`,
    )
  const centre = (a: number, f: number) => centreByTwoScales(aft.at, a, fore.at, f)
  const doubt = (a: number, f: number) => centreByTwoScalesGive(aft.at, a, fore.at, f, giveReading, giveTape)
  const level = centre(aft.reads, fore.reads)
  const out: ScaleResult = {
    mass: aft.reads + fore.reads,
    giveMass: Math.SQRT2 * giveReading,
    forward: level,
    giveForward: doubt(aft.reads, fore.reads),
  }
  if (!tilted) return out
  const { angle, hooks } = tilted
  if (!(angle >= Math.PI / 36 && angle <= Math.PI / 4))
    throw new RangeError(printed(say`tilt: ${inDegrees(angle)}, expected 5 to 45°`))
  if (!(tilted.aft > 0 && tilted.fore > 0))
    throw new RangeError(`tilted readings: ${tilted.aft} and ${tilted.fore} kg, expected both above 0`)
  const moved = centre(tilted.aft, tilted.fore)
  // the tape's part is the same in both readings and falls out
  const each = centreByTwoScalesGive(aft.at, aft.reads, fore.at, fore.reads, giveReading, 0)
  return {
    ...out,
    up: hooks + heightByTilting(level, moved, angle),
    giveUp: (Math.SQRT2 * each) / Math.tan(angle),
  }
}

export interface ListMatch {
  /** which item takes up the difference */
  index: number
  /** kg and m it then has */
  mass: number
  at: [number, number, number]
}

/**
 * The heaviest item changed so that the whole list has the weighed mass and centre: what is missing is most likely spread over
 * the hull. RangeError when the list would need that item to weigh nothing or less.
 */
export function listMatching(list: readonly Weight[], r: ScaleResult): ListMatch {
  if (list.length === 0) throw new RangeError('weights: the list is empty')
  const index = list.reduce((a, w, i) => (w.mass > list[a]!.mass ? i : a), 0)
  const item = list[index]!
  const others = weightSum(list.filter((_, i) => i !== index))
  const mass = r.mass - others.mass
  if (!(mass > 0))
    throw new RangeError(
      printed(
        say`weights: all but ${item.name} already weigh ${inKg(others.mass)}, more than the ${inKg(r.mass)} weighed`,
      ),
    )
  const solve = (whole: number, k: number) => (r.mass * whole - others.mass * others.centre[k]!) / mass
  const up: Vec3 = item.at
  return {
    index,
    mass,
    at: [solve(r.forward, 0), up[1], r.up === undefined ? up[2] : solve(r.up, 2)],
  }
}
