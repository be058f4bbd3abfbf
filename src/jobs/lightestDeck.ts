import { strengthFromCraft } from '../strength/fromCraft.ts'
import { type LightestAnswer, lightestDeck } from '../strength/lightest.ts'
import { searchFor } from '../strength/pageAnswer.ts'
import { Cancelled, defineJob } from './job.ts'
import { craftOf } from './pipeSearch.ts'

export interface LightestDeckOrder {
  /** the craft file */
  text: string
  /** tried values by path, SI */
  tried?: Readonly<Record<string, number | string | boolean>>
  /** which bay of the deck, from 0 */
  bay: number
  /** greatest deflection under a standing rider over the short side; 1/50 when left out */
  deflection?: number
}

/** The lightest deck of a bay that holds its rider, and the best of each kind of build. */
export const lightestDeckJob = defineJob<LightestDeckOrder, LightestAnswer>(
  'lightest-deck',
  (order, context) => {
    const inputs = strengthFromCraft(craftOf(order))
    const bay = inputs.bays[order.bay]
    if (!bay) throw new RangeError(`bay: ${order.bay}, expected 0 to ${inputs.bays.length - 1}`)
    const search = searchFor(bay, inputs.riderHigh)
    let seen = 0
    let off = false
    const answer = lightestDeck(
      { ...search, ...(order.deflection === undefined ? {} : { deflection: order.deflection }) },
      () => {
        seen++
        if (seen % 8 === 0) context.progress(partOf(seen), `${seen} builds tried, lightest first`)
        off ||= context.cancelled()
        return off
      },
    )
    if (off) throw new Cancelled()
    context.progress(1, 'Done')
    return answer
  },
)

/** how many builds there are is the search's own affair: the bar slows down towards an end it has not met yet */
const partOf = (seen: number) => 1 - Math.exp(-seen / 120)
