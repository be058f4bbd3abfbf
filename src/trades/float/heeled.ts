/** Righting arms of a whole craft, with its rider balancing, held stiff, or nobody aboard. */

import { type BuoyantBody, type Floater, floaterOf, wholeMass } from '../../hull/afloat/load.ts'
import { type Attitude, settle } from '../../hull/afloat/settle.ts'
import type { FloatInput } from './input.ts'
import { craftOf, loadOf, placed } from './loadCase.ts'
import { type RightingCurve, rightingCurve } from './righting.ts'

/**
 * Righting arm over heel, with the rider as the file has it (weight over feet, knees or seat unless prone) or with nobody aboard.
 * Apart from `floatAnswer`, as only its own picture needs it. An empty curve when it sinks.
 */
export function rightingOf(input: FloatInput, aboard: 'rider' | 'stiff rider' | 'nobody'): RightingCurve {
  const f = floaterFor(input, aboard)
  if (!(wholeMass(f) < f.mostLift)) return sunkenCurve()
  return rightingCurve(f, undefined, { edge: input.hull.edge, openings: input.openings })
}

/** Righting arm with the rider balancing at one heel (rad), m, the craft finding its own draft and trim from `near`; NaN where it sinks or does not settle. */
export function rightingAt(input: FloatInput, heel: number, near: Attitude): number {
  const f = floaterFor(input, 'rider')
  if (!(wholeMass(f) < f.mostLift)) return Number.NaN
  const at = settle(f, { ...near, heel }, { freeHeel: false, tolerance: 1e-9 })
  return at.converged ? at.state.g2 / (at.state.mass * Math.cos(at.value.trim)) : Number.NaN
}

function floaterFor(input: FloatInput, aboard: 'rider' | 'stiff rider' | 'nobody'): Floater {
  const who = aboard === 'nobody' ? undefined : placed(input, input.rider)
  const at = who && (who.balances && aboard === 'rider' ? who.feet : who.at)
  const body: BuoyantBody = { name: 'hull', mesh: input.hull.mesh, share: 1 }
  return floaterOf(loadOf(input, craftOf(input), [body], who?.mass, at))
}

function sunkenCurve(): RightingCurve {
  const none = new Float64Array(0)
  const marks = { greatest: { arm: Number.NaN, heel: Number.NaN }, rests: [], areaTo30: Number.NaN }
  return {
    heel: none,
    arm: none,
    trim: none,
    h: none,
    energy: none,
    converged: false,
    gm: Number.NaN,
    ...marks,
  }
}
