/**
 * A rider as a filled figure. Segment lengths over stature: R. Drillis and R. Contini, "Body Segment Parameters" (1966), as
 * reproduced in D. A. Winter, Biomechanics and Motor Control of Human Movement, figure 4.1 (from memory); postures are drawn by eye.
 */
import { circle, polygon } from './marks.ts'
import type { Mark, Style } from './sheet.ts'

const body = '#e9e3d3'

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

/** Half breadths of each part at its two ends, over stature: drawn by eye. */
const half = {
  foot: [0.018, 0.014],
  shank: [0.024, 0.033],
  thigh: [0.036, 0.05],
  trunk: [0.058, 0.066],
  neck: [0.028, 0.028],
  upperArm: [0.03, 0.023],
  forearm: [0.022, 0.015],
} as const

type Point = readonly [number, number]

/** A limb from a to b, round at both ends, as a ring of points. */
function limb([ax, ay]: Point, [bx, by]: Point, ra: number, rb: number): Point[] {
  const along = Math.atan2(by - ay, bx - ax)
  const round = (cx: number, cy: number, r: number, from: number): Point[] =>
    Array.from({ length: 9 }, (_, i) => {
      const angle = from + (Math.PI * i) / 8
      return [cx + r * Math.cos(angle), cy + r * Math.sin(angle)]
    })
  return [...round(bx, by, rb, along - Math.PI / 2), ...round(ax, ay, ra, along + Math.PI / 2)]
}

/** A limb of the figure over its stature: from, to and the half breadths there; ahead and up of the point that is "at" its place. */
export interface Limb {
  name: keyof typeof half
  from: Point
  to: Point
  breadths: readonly [number, number]
}

export interface Body {
  limbs: readonly Limb[]
  head: { at: Point; r: number }
}

/** The parts of a body of stature 1 in a posture: its feet, knees or seat at 0, its lowest point at 0. */
export function bodyOf(posture: Posture): Body {
  const p = postures[posture]
  const step = (from: Point, length: number, angle: number): Point => [
    from[0] + length * Math.cos(angle),
    from[1] + length * Math.sin(angle),
  ]
  const foot: Point = [0, 0]
  const knee = step(foot, part.shank, p.shank)
  const hip = step(knee, part.thigh, p.thigh)
  const shoulder = step(hip, part.trunk, p.trunk)
  const head = step(shoulder, 0.117, posture === 'prone' ? 0.5 : p.trunk)
  const elbow = step(shoulder, part.upperArm, p.arm - 0.5)
  const hand = step(elbow, part.forearm, p.arm + 0.5)
  const toe: Point =
    posture === 'kneeling' || posture === 'prone'
      ? step(foot, ankle, Math.PI)
      : [foot[0] + 0.1, foot[1] - 0.012]
  const limbs: [keyof typeof half, Point, Point][] = [
    ['foot', foot, toe],
    ['shank', foot, knee],
    ['thigh', knee, hip],
    ['trunk', hip, shoulder],
    ['neck', shoulder, head],
    ['upperArm', shoulder, elbow],
    ['forearm', elbow, hand],
  ]
  const skull = part.head * 0.5
  const lowest = Math.min(
    head[1] - skull,
    ...limbs.flatMap(([name, a, b]) => [a[1] - half[name][0], b[1] - half[name][1]]),
  )
  // the point that is "at" the place: between heel and toe, on the knees, or under the seat
  const at =
    posture === 'kneeling'
      ? (knee[0] + foot[0]) / 2
      : posture === 'sitting' || posture === 'prone'
        ? hip[0]
        : toe[0] / 2
  const put = ([a, b]: Point): Point => [a - at, b - lowest]
  return {
    limbs: limbs.map(([name, a, b]) => ({ name, from: put(a), to: put(b), breadths: half[name] })),
    head: { at: put(head), r: skull },
  }
}

/**
 * The filled figure with the middle of its feet, knees or seat at x on a deck at height z. `stature` and the result are in the drawing's
 * lengths; add the marks as they are. The style's stroke goes round the whole figure, its fill into it.
 */
export function riderFigure(posture: Posture, x: number, z: number, stature: number, style: Style): Mark[] {
  const { limbs, head } = bodyOf(posture)
  const put = ([a, b]: Point): Point => [x + stature * a, z + stature * b]
  const fill = style.fill ?? body
  // the outline of all parts first, then their fill over it: what is left of it goes round the whole
  const outlines: Style = { ...style, fill, width: 2 * (style.width ?? 0.3) }
  const drawn = (look: Style): Mark[] => [
    ...limbs.map(({ from, to, breadths: [ra, rb] }) =>
      polygon(limb(put(from), put(to), stature * ra, stature * rb).flat(), look, 'mark'),
    ),
    circle(...put(head.at), stature * head.r, look, 'mark'),
  ]
  return [...drawn(outlines), ...drawn({ fill })]
}
