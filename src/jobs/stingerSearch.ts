import { mapStore, remembering } from '../balance/engineAnswers.ts'
import { MapStore } from '../balance/fromCraft.ts'
import { CalledOff } from '../balance/pipeSearch.ts'
import { findStinger, type StingerSearchAnswer } from '../balance/stingerSearch.ts'
import { Cancelled, defineJob } from './job.ts'
import { craftOf } from './pipeSearch.ts'
import { triesShared } from './shareOut.ts'

export interface StingerSearchOrder {
  text: string
  tried?: Readonly<Record<string, number | string | boolean>>
  engine: number
}

const kept = mapStore(8)
const maps = new MapStore(8)

/** The present pipe with other stingers: pull, temperature and risk against bore; the best one by fine cells. */
export const stingerSearchJob = defineJob<StingerSearchOrder, StingerSearchAnswer>(
  'stinger-search',
  async (order, context) => {
    const engines = remembering(kept)
    try {
      return await findStinger(
        craftOf(order),
        { index: order.engine, store: engines, maps },
        {
          progress: (part, says) => context.progress(part, says),
          early: (answer) => context.early?.(answer),
          cancelled: () => context.cancelled(),
          ...triesShared(order, engines, context),
        },
      )
    } catch (error) {
      throw error instanceof CalledOff ? new Cancelled() : error
    }
  },
)
