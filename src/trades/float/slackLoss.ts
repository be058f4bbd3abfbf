/** What the liquid in the tanks takes from stability: the same craft with it running and with it frozen where it lies. */
import { surfaceLoss } from '../../hull/aboard/liquids.ts'
import { rightingAt } from './heeled.ts'
import { aboardOf, type FloatInput, slackOf } from './input.ts'
import type { LoadCase } from './loadCase.ts'

/** What running liquid takes: GM upright and righting arm at 20°, m. */
export interface SlackLoss {
  gm: number
  arm: number
}

/** rad, where the righting arms are compared */
export const slackHeel = Math.PI / 9

/** The craft with its liquids running beside the same frozen; undefined without tanks. `ridden` is how it lies. */
export function slackLoss(input: FloatInput, ridden: LoadCase): SlackLoss | undefined {
  if ((input.tanks ?? []).length === 0 || ridden.sinks) return undefined
  const { tanks: _, ...rest } = input
  const frozen: FloatInput = { ...rest, weights: aboardOf(input) }
  return {
    gm: surfaceLoss(slackOf(input), ridden.mass),
    arm: rightingAt(frozen, slackHeel, ridden.attitude) - rightingAt(input, slackHeel, ridden.attitude),
  }
}
