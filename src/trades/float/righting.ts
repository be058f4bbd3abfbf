/**
 * Righting arm over heel: at each heel the craft finds its own draft and trim, and the arm is the distance by which
 * buoyancy stands to the low side of the weight. Definitions: E. V. Lewis (ed.), Principles of Naval Architecture vol. I (1988), ch. II.
 */

import type { Floater } from '../../hull/afloat/load.ts'
import { type Attitude, metacentricHeight, settle } from '../../hull/afloat/settle.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import { heightAbove } from '../../physics/solid/waterFrame.ts'

export interface RightingOptions {
  /** rad; 0, π and 2° when left out */
  from?: number
  to?: number
  step?: number
  /** false holds the upright trim */
  freeTrim?: boolean
  /** places where water gets in: name and place */
  openings?: readonly { name: string; at: Vec3 }[]
  /** the deck edge, port side; both sides are looked at */
  edge?: readonly Vec3[]
}

export interface RightingCurve {
  /** rad */
  heel: Float64Array
  /** m, positive when it rights */
  arm: Float64Array
  trim: Float64Array
  h: Float64Array
  /** potential energy over g, kg·m, above the first point's */
  energy: Float64Array
  /** all points settled */
  converged: boolean
  /** slope at upright, m */
  gm: number
  greatest: { arm: number; heel: number }
  /** rad: where the arm falls through 0; undefined when it does not within the range */
  vanishing?: number
  /** rad: stable resting heels inside the range other than 0: the angle of loll, or upside down */
  rests: number[]
  /** m·rad to 30° */
  areaTo30: number
  deckEdge?: number
  /** first opening to go under */
  flooding?: { heel: number; name: string }
}

/** The curve; the first point is settled from `start` or afresh. Heel to port is positive. */
export function rightingCurve(f: Floater, start?: Attitude, options: RightingOptions = {}): RightingCurve {
  const from = options.from ?? 0
  const to = options.to ?? Math.PI
  const step = options.step ?? Math.PI / 90
  const count = Math.round((to - from) / step) + 1
  const heel = new Float64Array(count)
  const arm = new Float64Array(count)
  const trim = new Float64Array(count)
  const h = new Float64Array(count)
  const energy = new Float64Array(count)
  const freeTrim = options.freeTrim ?? true
  let at = settle(f, start === undefined ? undefined : { ...start, heel: from }, {
    freeHeel: false,
    freeTrim: true,
  })
  let converged = at.converged
  const gm = metacentricHeight(at.state)
  let deckEdge: number | undefined
  let flooding: RightingCurve['flooding']
  for (let i = 0; i < count; i++) {
    heel[i] = from + i * step
    const back = i >= 2
    // start where the last two points lead
    const guess = {
      h: back ? 2 * h[i - 1]! - h[i - 2]! : at.value.h,
      trim: back && freeTrim ? 2 * trim[i - 1]! - trim[i - 2]! : at.value.trim,
      heel: heel[i]!,
    }
    at = settle(f, guess, { freeHeel: false, freeTrim, tolerance: 1e-9 })
    converged &&= at.converged
    const s = at.state
    trim[i] = at.value.trim
    h[i] = at.value.h
    energy[i] = s.energy
    arm[i] = s.g2 / (s.mass * Math.cos(at.value.trim))
    const over = (p: Vec3, side: number) => heightAbove(s.frame, at.value.h, p[0], side * p[1], p[2])
    if (deckEdge === undefined && (options.edge ?? []).some((p) => over(p, 1) <= 0 || over(p, -1) <= 0))
      deckEdge = heel[i]!
    const wet = flooding === undefined ? options.openings?.find((o) => over(o.at, 1) <= 0) : undefined
    if (wet !== undefined) flooding = { heel: heel[i]!, name: wet.name }
  }
  const base = energy[0]!
  for (let i = 0; i < count; i++) energy[i]! -= base
  return {
    heel,
    arm,
    trim,
    h,
    energy,
    converged,
    gm,
    ...marks(heel, arm),
    ...(deckEdge === undefined ? {} : { deckEdge }),
    ...(flooding === undefined ? {} : { flooding }),
  }
}

function marks(
  heel: Float64Array,
  arm: Float64Array,
): Pick<RightingCurve, 'greatest' | 'rests' | 'areaTo30'> & { vanishing?: number } {
  let top = 0
  let area = 0
  const rests: number[] = []
  let vanishing: number | undefined
  const limit = Math.PI / 6 + 1e-9
  for (let i = 0; i < heel.length; i++) {
    if (arm[i]! > arm[top]!) top = i
    if (i === 0) continue
    if (heel[i]! <= limit) area += ((heel[i]! - heel[i - 1]!) * (arm[i]! + arm[i - 1]!)) / 2
    // crossings, by a straight line between neighbours; the first point is an equilibrium and starts none
    const a = arm[i - 1]!
    const b = arm[i]!
    const at = heel[i - 1]! + ((heel[i]! - heel[i - 1]!) * a) / (a - b)
    if (a < 0 && b >= 0 && i > 1) rests.push(at)
    if (a > 0 && b <= 0 && vanishing === undefined && i > 1) vanishing = at
  }
  return {
    greatest: { arm: arm[top]!, heel: heel[top]! },
    rests,
    areaTo30: area,
    ...(vanishing === undefined ? {} : { vanishing }),
  }
}

/** Righting arm of a wall-sided hull, m: sin φ (GM + ½ BM tan² φ), until the deck dips or the chine lifts. Principles of Naval Architecture, ch. II. */
export function wallSidedArm(gm: number, bm: number, heel: number): number {
  return Math.sin(heel) * (gm + 0.5 * bm * Math.tan(heel) ** 2)
}

/** Angle of loll of a wall-sided hull with GM below 0, rad; 0 when GM is not. Same source. */
export function angleOfLoll(gm: number, bm: number): number {
  return gm < 0 ? Math.atan(Math.sqrt((-2 * gm) / bm)) : 0
}
