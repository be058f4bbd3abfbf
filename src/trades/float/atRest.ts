/** The craft at rest with nobody aboard and as ridden: settled once for all who ask, by the identity of what it is made from. */

import { reloaded, wholeMass } from '../../hull/afloat/load.ts'
import { type Attitude, settle } from '../../hull/afloat/settle.ts'
import type { FloatInput } from './input.ts'
import {
  type Afloat,
  afloatOn,
  caseOf,
  craftOf,
  intactBodies,
  type LoadCase,
  placed,
  together,
} from './loadCase.ts'
import { heightOver } from './openingHeights.ts'
import { swampedBodies } from './swamped.ts'

export interface AtRest {
  /** the dry hull with its weights, for further loads */
  on: Afloat
  nobody: LoadCase
  ridden: LoadCase
}

const settled = new WeakMap<FloatInput, AtRest>()
const aft = new WeakMap<FloatInput, { attitude: Attitude | undefined }>()

/** RangeError on weights or a rider out of range. */
export function atRest(input: FloatInput): AtRest {
  let rest = settled.get(input)
  if (!rest) {
    const on = afloatOn(input, craftOf(input), intactBodies(input))
    rest = { on, nobody: caseOf(on, 'nobody', undefined), ridden: caseOf(on, 'as ridden', input.rider) }
    settled.set(input, rest)
  }
  return rest
}

/** Tells that another input differs in nothing that weighs or floats. */
export function shareRest(from: FloatInput, to: FloatInput): void {
  const rest = settled.get(from)
  if (rest) settled.set(to, { ...rest, on: { ...rest.on, input: to } })
  const known = aft.get(from)
  if (known) aft.set(to, known)
}

/** Height of each opening above the water at rest, m, negative when under: the lower of nobody aboard and as ridden. Infinity where neither floats. */
export function openingsAtRest(input: FloatInput): number[] {
  const { nobody, ridden } = atRest(input)
  const afloat = [nobody, ridden].filter((c) => Number.isFinite(c.attitude.h))
  return input.openings.map((o) => Math.min(...afloat.map((c) => heightOver(c.attitude, o.at))))
}

/** As ridden, but with the rider's feet at `x`, m, amidships, and heel or trim held where they are given; undefined where it does not float so. */
export function heldAt(
  input: FloatInput,
  x: number,
  hold: { heel?: number; trim?: number } = {},
): Attitude | undefined {
  const { on, ridden } = atRest(input)
  const p = placed(input, { ...input.rider, x, y: 0 })
  const all = together(on.craft.fixed, p.mass, p.feet)
  const f = reloaded(on.floater, all.mass, all.centre)
  if (!(wholeMass(f) < f.mostLift)) return undefined
  const start = { ...ridden.attitude, heel: hold.heel ?? 0 }
  if (!Number.isFinite(start.h)) return undefined
  if (hold.trim !== undefined) start.trim = hold.trim
  const rest = settle(f, start, { freeHeel: false, freeTrim: hold.trim === undefined })
  return rest.converged ? rest.value : undefined
}

/** Swamped, nobody aboard. RangeError on weights out of range. */
export const swampedAlone = (input: FloatInput): LoadCase =>
  caseOf(afloatOn(input, atRest(input).on.craft, swampedBodies(input)), 'swamped, nobody', undefined)

/** With the rider right aft; settled once for all who ask. */
export function riderAft(input: FloatInput): Attitude | undefined {
  let known = aft.get(input)
  if (!known) {
    known = { attitude: heldAt(input, 0.12 * input.hull.length) }
    aft.set(input, known)
  }
  return known.attitude
}
