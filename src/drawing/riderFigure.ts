/**
 * A rider as a stick figure. Segment lengths over stature: R. Drillis and R. Contini, "Body Segment Parameters" (1966), as
 * reproduced in D. A. Winter, Biomechanics and Motor Control of Human Movement, figure 4.1 (from memory); postures are drawn by eye.
 */
import { circle, polyline } from './marks.ts'
import type { Mark, Style } from './sheet.ts'

export type Posture = 'standing' | 'crouching' | 'kneeling' | 'sitting' | 'prone'

const part = { shank: 0.246, thigh: 0.245, trunk: 0.288, head: 0.13, upperArm: 0.186, forearm: 0.146 }
const ankle = 0.039

/** Directions of shank, thigh, trunk and arm, rad from ahead, anticlockwise; the rider looks ahead, to the right. */
const postures: Record<Posture, { shank: number; thigh: number; trunk: number; arm: number }> = {
  standing: { shank: 1.4, thigh: 1.85, trunk: 1.4, arm: -0.9 },
  crouching: { shank: 0.95, thigh: 2.5, trunk: 1.0, arm: -0.7 },
  kneeling: { shank: 0.02, thigh: 2.35, trunk: 1.35, arm: -0.8 },
  sitting: { shank: 2.4, thigh: 3.5, trunk: 1.5, arm: -0.6 },
  prone: { shank: 0.02, thigh: 0.03, trunk: 0.06, arm: -0.1 },
}

/**
 * The figure with the middle of its feet, knees or seat at x on a deck at height z. `stature` and the result are in the drawing's
 * lengths; add the marks as they are.
 */
export function riderFigure(posture: Posture, x: number, z: number, stature: number, style: Style): Mark[] {
  const p = postures[posture]
  const step = (from: readonly [number, number], length: number, angle: number): [number, number] => [
    from[0] + stature * length * Math.cos(angle),
    from[1] + stature * length * Math.sin(angle),
  ]
  const foot: [number, number] = [
    0,
    posture === 'standing' || posture === 'crouching' || posture === 'sitting'
      ? stature * ankle
      : stature * 0.02,
  ]
  const knee = step(foot, part.shank, p.shank)
  const hip = step(knee, part.thigh, p.thigh)
  const shoulder = step(hip, part.trunk, p.trunk)
  const head = step(shoulder, 0.117, posture === 'prone' ? 0.5 : p.trunk)
  const elbow = step(shoulder, part.upperArm, p.arm - 0.5)
  const hand = step(elbow, part.forearm, p.arm + 0.5)
  const toe: [number, number] =
    posture === 'kneeling' || posture === 'prone' ? step(foot, ankle, Math.PI) : [foot[0] + stature * 0.1, 0]
  const lowest = Math.min(
    foot[1],
    knee[1],
    hip[1],
    toe[1],
    elbow[1],
    hand[1],
    head[1] - stature * part.head * 0.5,
  )
  // the point that is "at" x: between heel and toe, on the knees, or under the seat
  const at =
    posture === 'kneeling'
      ? (knee[0] + foot[0]) / 2
      : posture === 'sitting'
        ? hip[0]
        : posture === 'prone'
          ? hip[0]
          : toe[0] / 2
  const put = ([a, b]: readonly [number, number]): [number, number] => [
    x + a - at,
    z + b - Math.min(0, lowest),
  ]
  const line = (...points: [number, number][]) => polyline(points.flatMap(put), style, 'mark')
  const [hx, hz] = put(head)
  return [
    line(toe, foot, knee, hip, shoulder),
    line(shoulder, elbow, hand),
    line(shoulder, step(shoulder, 0.052, posture === 'prone' ? 0.5 : p.trunk)),
    circle(hx, hz, stature * part.head * 0.5, style, 'mark'),
  ]
}
