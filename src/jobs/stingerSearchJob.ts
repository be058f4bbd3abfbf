import { findStinger, type StingerSearchAnswer } from '../whole/breath/stingerSearch.ts'
import { defineJob } from './job.ts'
import { type PipeSearchOrder, runSearch } from './pipeSearchJob.ts'

export type StingerSearchOrder = Pick<PipeSearchOrder, 'text' | 'tried' | 'engine'>

/** The present pipe with other stingers: pull, temperature and risk against bore; the best one by fine cells. */
export const stingerSearchJob = defineJob<StingerSearchOrder, StingerSearchAnswer>(
  'stinger-search',
  (order, context) => runSearch(order, context, findStinger),
)
