/**
 * Elbows of straight pieces, in a cylinder or through a cone: N joints share the turn, the end pieces are half as long as the middle ones.
 * Handbooks of sheet-metal pattern drafting; the cut curve of a cylinder is R tan φ cos(s/R).
 */
import { inCount, inDegrees, inMm } from '../base/answers/amounts.ts'
import { say } from '../base/answers/sentence.ts'
import type { Sheeting } from './development.ts'
import { type Mitre, type MitredPipe, mitredPipe } from './mitredPipe.ts'
import { extremes, mustLie, ShapeFault } from './shapeFault.ts'

export interface ElbowShape {
  /** mean radii of start and end, m; equal for a cylinder */
  startRadius: number
  endRadius: number
  /** of the axis, m */
  bendRadius: number
  /** of the whole elbow, rad */
  turn: number
  joints: number
}

/** Lengths of an elbow. m, rad. */
export interface ElbowNumbers {
  /** half the turn at one joint */
  half: number
  /** along the axis, an end piece and a middle piece */
  endPiece: number
  middlePiece: number
  /** of a middle piece in the throat and on the back */
  throat: number
  back: number
  /** along the straight pieces of the axis, and along the round axis it stands for */
  length: number
  arc: number
}

/** Piece lengths of an elbow. ShapeFault naming the radii, turn, joints or bendRadius: the axis must bend wider than the pipe. */
export function elbowNumbers(e: ElbowShape): ElbowNumbers {
  mustLie('startRadius', e.startRadius, 0, extremes.most)
  mustLie('endRadius', e.endRadius, 0, extremes.most)
  mustLie('turn', e.turn, 1e-3, 2 * Math.PI, inDegrees)
  mustLie('joints', e.joints, 1, 60, inCount)
  mustLie('joints', e.joints, Math.ceil(e.turn / ((2 * Math.PI) / 3)), 60, inCount)
  mustLie('bendRadius', e.bendRadius, extremes.least, extremes.most)
  const radius = Math.max(e.startRadius, e.endRadius)
  const joints = Math.round(e.joints)
  if (!(e.bendRadius > radius))
    throw new ShapeFault(
      'bendRadius',
      e.bendRadius,
      radius,
      say`An axis bent to ${inMm(e.bendRadius, 0.1)} is tighter than its own pipe of ${inMm(radius, 0.1)} radius.`,
      say`Bend the axis to more than ${inMm(radius * 1.25)}.`,
    )
  const half = e.turn / (2 * joints)
  const tan = Math.tan(half)
  return {
    half,
    endPiece: e.bendRadius * tan,
    middlePiece: 2 * e.bendRadius * tan,
    throat: 2 * (e.bendRadius - radius) * tan,
    back: 2 * (e.bendRadius + radius) * tan,
    length: 2 * joints * e.bendRadius * tan,
    arc: e.bendRadius * e.turn,
  }
}

/** The joints of an elbow toward one side (rad about the axis), begun so far (m) along the pipe. */
export function elbowMitres(e: ElbowShape, clock = 0, from = 0): Mitre[] {
  const { half, endPiece } = elbowNumbers(e)
  return Array.from({ length: Math.round(e.joints) }, (_, k) => ({
    at: from + endPiece * (1 + 2 * k),
    turn: 2 * half,
    clock,
  }))
}

/** Patterns of an elbow toward a side (rad). Errors as elbowNumbers and mitredPipe. */
export function developElbow(e: ElbowShape, sheeting: Sheeting, clock = 0): MitredPipe {
  const { length } = elbowNumbers(e)
  const cone = { startRadius: e.startRadius, endRadius: e.endRadius, height: length }
  return mitredPipe(cone, elbowMitres(e, clock), sheeting)
}
