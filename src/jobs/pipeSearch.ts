import type { PipeSearchAnswer } from '../balance/pipeSearch.ts'
import { defineJob } from './job.ts'

export interface PipeSearchOrder {
  /** the craft file */
  text: string
  /** tried values by path, SI */
  tried?: Readonly<Record<string, number | string | boolean>>
  /** which engine of the file, from 0 */
  engine: number
  /** rev/min the pipe shall suit; the jet's own load decides when left out */
  rpm?: number
  /** 0: all for the speeds the jet holds it at; 1: all for a wide curve. Default 0.3 */
  width?: number
}

/**
 * The pipe that gives the most thrust on this craft. `context.early` gets a first answer (`final: false`) in some
 * seconds: the handbook pipe with its length set right; the last answer is the job's own.
 */
export const pipeSearchJob = defineJob<PipeSearchOrder, PipeSearchAnswer>('pipe-search', () => {
  throw new RangeError('pipe-search: not yet')
})
