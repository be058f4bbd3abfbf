import type { StingerSearchAnswer } from '../balance/pipeSearch.ts'
import { defineJob } from './job.ts'

export interface StingerSearchOrder {
  text: string
  tried?: Readonly<Record<string, number | string | boolean>>
  engine: number
}

/** The present pipe with other stingers: pull, temperature and risk against bore; the best one by fine cells. */
export const stingerSearchJob = defineJob<StingerSearchOrder, StingerSearchAnswer>('stinger-search', () => {
  throw new RangeError('stinger-search: not yet')
})
