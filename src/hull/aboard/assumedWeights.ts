/** All that is aboard but the rider, summed up; and what stands in where a craft file lists no weights. */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { liquidsFromCraft } from './tanksFromCraft.ts'

/** Total and centre of everything aboard but the rider, the weights list and the liquid in the tanks as it lies level: kg and m. */
export function weightsOf(craft: Craft): { mass: number; x: number; z: number } {
  let mass = 0
  let x = 0
  let z = 0
  const add = (m: number, forward: number, up: number) => {
    mass += m
    x += m * forward
    z += m * up
  }
  for (const w of craft.weights) add(w.mass.value, w.at[0].value, w.at[2].value)
  // without a list the usual weight of a craft stands in, its fuel included
  if (!(mass > 0)) return { mass: 0, x: 0, z: 0 }
  for (const w of liquidsFromCraft(craft)) add(w.mass, w.at[0], w.at[2])
  return { mass, x: x / mass, z: z / mass }
}

/** A craft that lists no weights is taken to weigh this much a square metre of length times beam: judgement, from sleds with a metal deck and one or two small engines; wide doubt. */
const usualLoading = 33

/** What stands in for a missing list of weights: kg and m. Whoever uses it says so. */
export function assumedWeights(craft: Craft): { mass: number; x: number; z: number } {
  const { length, beam, depth } = craft.hull
  return { mass: usualLoading * length.value * beam.value, x: 0.42 * length.value, z: 0.55 * depth.value }
}
