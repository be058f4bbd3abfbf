/**
 * The air of the engine bay, as every trade takes it that has parts there: foam and printed parts beside hot ones, fuel in its lines.
 * The trade bay works it out; a craft file that says nothing of its bay is given a usual one (judgement, no source).
 */
import type { Sentence } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'

export interface BayAir {
  /** K, with the ends of its likely range: a hard run in its steady state */
  value: number
  low: number
  high: number
  /** K: the hottest it gets in the minutes after the engines stop */
  soak: number
  /** worked out from the file's bay; false for the usual one that stands in */
  known: boolean
  /** where it comes from, as a fact that drives a finding */
  says: Sentence
  /** craft path of what it comes from */
  link: string
}

/** K over the air outside in a bay nobody has described: middle and ends */
const usualRise = { value: 15, low: 5, high: 40 }

/** The bay's air where the file says nothing of a bay. */
export function assumedBayAir(craft: Pick<Craft, 'place'>): BayAir {
  const air = craft.place.airTemperature
  return {
    value: air.value + usualRise.value,
    low: air.low + usualRise.low,
    high: air.high + usualRise.high,
    soak: air.value + usualRise.high,
    known: false,
    says: 'still air of a bay that the file does not describe: 15 K above that outside, 5 to 40 K (judgement, no source)',
    link: 'place.air temperature',
  }
}
