/** What the float side is asked with, in plain SI numbers: hull, weights, rider, openings, foam, tanks. */

import type { Rider } from '../../hull/aboard/aboard.ts'
import type { Taken } from '../../hull/aboard/boxes.ts'
import type { Compartment, FoamBlock } from '../../hull/aboard/foamBlocks.ts'
import { liquidsOf, liquidWeight, type Tank } from '../../hull/aboard/liquids.ts'
import type { Weight } from '../../hull/aboard/masses.ts'
import type { SlackLiquid } from '../../hull/afloat/load.ts'
import type { Hull } from '../../hull/lines/hullBody.ts'
import type { Opening } from './openingHeights.ts'
import type { RestDoubts } from './restDoubts.ts'

/** An exhaust outlet's height that stands in the file beside its place among the openings. */
export interface StatedOutlet {
  /** name of its engine */
  engine: string
  path: string
  /** index among the openings */
  opening: number
  /** m, lowest lip over still water as ridden, and half its likely range */
  lip: number
  give: number
}

export interface FloatInput {
  hull: Hull
  /** kg/m³ */
  water: number
  weights: readonly (Weight & { sealed?: boolean })[]
  rider: Rider
  openings: readonly Opening[]
  outlets?: readonly StatedOutlet[]
  /** how sure weights, hull and places are; without it how it lies has no range */
  doubts?: RestDoubts
  foam: readonly FoamBlock[]
  compartments: readonly Compartment[]
  /** room that machinery and hands need, where no more foam can go */
  taken?: readonly Taken[]
  /** tanks with liquid whose weight is NOT in the weights list */
  tanks?: readonly Tank[]
}

/** The liquids that run, all cells of all tanks. */
export function slackOf(input: Pick<FloatInput, 'tanks'>): SlackLiquid[] {
  return (input.tanks ?? []).flatMap(liquidsOf)
}

/** Everything aboard but the rider as weights: the list, and each tank's liquid as it lies in the level craft. */
export function aboardOf(input: Pick<FloatInput, 'tanks' | 'weights'>): Weight[] {
  return [...input.weights, ...(input.tanks ?? []).flatMap((t) => liquidWeight(t) ?? [])]
}
