/**
 * Where a planing hull settles: with the rider in one place, and with the rider in the best place.
 * Both are searches over λ (see planing.ts). Statics derived here; nothing borrowed.
 */

import { minimumIn } from '../../base/numerics/minimum.ts'
import { brent } from '../../base/numerics/roots.ts'
import { gravity } from '../../physics/fluid/water.ts'
import {
  flatPlateLift,
  lambdaAtTrim,
  liftFunction,
  type PlaningCase,
  type PlaningState,
  planingAt,
} from './planing.ts'

const degrees = 180 / Math.PI
/** rad, trims looked at */
export const trimRange: readonly [number, number] = [0.5 / degrees, 20 / degrees]

export type Balance = 'balanced' | 'bow down' | 'mushing'

/** λ from the steepest trim looked at to the whole bottom wet; `unsupported` when even that does not carry the weight at 20°. */
export interface Window {
  low: number
  high: number
  unsupported: boolean
}

/** The λ open to a hull of `length` m, with at least `keepWet` m of bottom wet under a strip `keepWidth` m wide (the intake), trimmed no steeper than `steepestTrim` rad. */
export function lambdaWindow(
  c: PlaningCase,
  length: number,
  keepWet = 0,
  keepWidth = 0,
  steepestTrim = trimRange[1],
): Window {
  const Cv = c.speed / Math.sqrt(gravity * c.beam)
  const flat = flatPlateLift(c.weight / (0.5 * c.density * (c.speed * c.beam) ** 2), c.deadrise)
  const spreadAt = (lambda: number) => {
    const trim = (flat / liftFunction(lambda, Cv)) ** (1 / 1.1) / degrees
    return (c.beam * Math.tan(c.deadrise)) / (Math.PI * Math.tan(Math.min(1.2, trim)))
  }
  // wetted length in a strip `part` of the beam wide, keel to edge of the strip
  const solveLength = (target: number, part: number) => {
    const f = (lambda: number) => lambda * c.beam + (0.5 - part) * spreadAt(lambda) - target
    const r = brent(f, 1e-3, 2 * (target / c.beam) + 1, { tolerance: 1e-6 })
    return r.converged ? r.value : target / c.beam
  }
  const longest = solveLength(length, 0)
  const flattest = lambdaAtTrim(flat, trimRange[0], Cv)
  const high = Math.min(longest, flattest)
  const steepest = lambdaAtTrim(flat, steepestTrim, Cv)
  const unsupported = steepest > 0.9 * high
  let low = unsupported ? 0.5 * high : steepest
  if (keepWet > 0) low = Math.min(0.98 * high, Math.max(low, solveLength(keepWet, keepWidth / c.beam)))
  return { low, high, unsupported }
}

/** λ of least drag in the window, wherever the centre of gravity must be for it. */
export function easiestLambda(c: PlaningCase, window: Window, scratch: PlaningState): number {
  const drag = (lambda: number) => planingAt(c, lambda, scratch).drag
  return minimumIn(drag, window.low, window.high, { tolerance: 3e-4 * window.high }).value
}

const rungs = 14

/**
 * Settles with the centre of gravity at `centre` (m forward of the transom): the flattest balance, which is the stable one.
 * Leaves the state in `out`. 'bow down' when the hull would lie deeper by the nose than its wetted length allows, 'mushing' when
 * the centre is too far aft for any balance below 20°: then the state at the limit is left.
 */
export function settle(c: PlaningCase, centre: number, window: Window, out: PlaningState): Balance {
  const short = (lambda: number) => planingAt(c, lambda, out).neededCentre - centre
  let above = window.high
  let fAbove = short(above)
  if (fAbove < 0) return 'bow down'
  const ratio = (window.low / window.high) ** (1 / rungs)
  let before = above
  for (let i = 1; i <= rungs; i++) {
    const lambda = i === rungs ? window.low : above * ratio
    const f = short(lambda)
    if (f <= 0) {
      const r = brent(short, lambda, above, { tolerance: 1e-9 })
      planingAt(c, r.value, out)
      return 'balanced'
    }
    // the needed centre turns back towards the bow: the flattest balance is lost at the dip
    if (f > fAbove) {
      const dip = minimumIn(short, lambda, before, { tolerance: 1e-5 })
      const f = short(dip.value)
      if (f <= 0) {
        planingAt(c, brent(short, dip.value, before, { tolerance: 1e-9 }).value, out)
        return 'balanced'
      }
      return 'mushing'
    }
    before = above
    above = lambda
    fAbove = f
  }
  planingAt(c, window.low, out)
  return 'mushing'
}

/**
 * Settles in the state of least drag `easiest` (λ) that a centre of gravity within [aft, fore] can hold: that state itself when its
 * centre is inside the range, else the state at the nearer end.
 */
export function settleBest(
  c: PlaningCase,
  easiest: number,
  aft: number,
  fore: number,
  window: Window,
  out: PlaningState,
): Balance {
  const needed = planingAt(c, easiest, out).neededCentre
  if (needed >= aft && needed <= fore) {
    // stable only where more trim makes the moment more bow-down: the needed centre must grow with λ
    const nudged = planingAt(c, easiest * 1.001, out).neededCentre
    planingAt(c, easiest, out)
    if (nudged > needed) return 'balanced'
    return settle(c, fore, window, out)
  }
  return settle(c, needed > fore ? fore : aft, window, out)
}
