import type { BayAir } from '../hull/site/airOfBay.ts'
import { searchFor } from '../trades/strength/deckAnswer.ts'
import { type DeckAnswer, deckBay } from '../trades/strength/deckBay.ts'
import {
  type LightestAnswer,
  lightestDeck,
  mostDeflection,
  searchTerms,
} from '../trades/strength/lightest.ts'
import { strengthFromCraft } from '../trades/strength/strengthFromCraft.ts'
import { bayAirOf } from '../whole/bayAir.ts'
import { Cancelled, defineJob } from './job.ts'
import { craftOf } from './pipeSearchJob.ts'

export interface LightestDeckOrder {
  /** the craft file */
  text: string
  /** tried values by path, SI */
  tried?: Readonly<Record<string, number | string | boolean>>
  /** which bay of the deck, from 0 */
  bay: number
  /** greatest deflection under a standing rider over the short side; 1/50 when left out */
  deflection?: number
  /** the air of the engine bay as the page that asks knows it; worked out at full power when left out */
  bayAir?: BayAir
}

/** The search's answer beside the bay as it is, looked at in the same way for the same rider. */
export interface LightestDeckAnswer extends LightestAnswer {
  own: DeckAnswer
  /** kg, the heaviest the rider may be */
  rider: number
  /** m, greatest deflection that is let pass */
  most: number
  /** the search is still going on */
  early: boolean
}

/** The lightest deck of a bay that holds its rider, and the best of each kind of build. */
export const lightestDeckJob = defineJob<LightestDeckOrder, LightestDeckAnswer>(
  'lightest-deck',
  (order, context) => {
    const craft = craftOf(order)
    const inputs = strengthFromCraft(craft, order.bayAir ?? bayAirOf({ craft }))
    const bay = inputs.bays[order.bay]
    if (!bay) throw new RangeError(`bay: ${order.bay}, expected 0 to ${inputs.bays.length - 1}`)
    const { deflection } = order
    const search = {
      ...searchFor(bay, inputs.riderHigh, inputs.hot, inputs.bayAir),
      ...(deflection === undefined ? {} : { deflection }),
    }
    const own = deckBay(bay, search.rider, search.temperature, searchTerms)
    const whole = (answer: LightestAnswer, early: boolean): LightestDeckAnswer => ({
      ...answer,
      own,
      rider: search.rider,
      most: mostDeflection(search),
      early,
    })
    const answer = lightestDeck(search, {
      cancelled: () => context.cancelled(),
      progress: (seen, of, holding) => {
        if (seen % 4 === 0)
          context.progress(seen / of, `${seen} of ${of} builds looked over, lightest first; ${holding} hold`)
      },
      early: (found) => context.early?.(whole(found, true)),
    })
    if (context.cancelled()) throw new Cancelled()
    context.progress(1, 'Done')
    return whole(answer, false)
  },
)
