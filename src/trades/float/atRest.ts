/** The craft at rest with nobody aboard and as ridden: settled once for all who ask, by the identity of what it is made from. */
import type { FloatInput } from './input.ts'
import { type Afloat, afloatOn, caseOf, craftOf, intactBodies, type LoadCase } from './loadCase.ts'
import { heightOver } from './openingHeights.ts'

export interface AtRest {
  /** the dry hull with its weights, for further loads */
  on: Afloat
  nobody: LoadCase
  ridden: LoadCase
}

const settled = new WeakMap<FloatInput, AtRest>()

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

/** Height of each opening above the water at rest, m, negative when under: the lower of nobody aboard and as ridden. Infinity where neither floats. */
export function openingsAtRest(input: FloatInput): number[] {
  const { nobody, ridden } = atRest(input)
  const afloat = [nobody, ridden].filter((c) => Number.isFinite(c.attitude.h))
  return input.openings.map((o) => Math.min(...afloat.map((c) => heightOver(c.attitude, o.at))))
}
