import type { PlaningCase, PlaningState } from './planing.ts'

/** Bow-down moment left over, N·m, with the centre of gravity at `centre` (m forward of the transom) in state `s`. */
export function bowDownMoment(c: PlaningCase, s: PlaningState, centre: number): number {
  return (s.normal + s.thrust * Math.sin(c.thrustAngle)) * (centre - s.neededCentre)
}
