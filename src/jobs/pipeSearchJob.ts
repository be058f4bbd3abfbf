import { type Craft, formatProblem, readCraft, whatIf } from '../craft/index.ts'
import { mapStore, remembering } from '../whole/breath/engineAnswers.ts'
import { CalledOff, findPipe, type PipeSearchAnswer, type SearchWork } from '../whole/breath/pipeSearch.ts'
import type { TrialOrder } from '../whole/breath/trial.ts'
import { MapStore } from '../whole/push/craftModel.ts'
import { Cancelled, defineJob, type JobContext } from './job.ts'
import { triesShared } from './shareOut.ts'

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

const kept = mapStore(8)
const maps = new MapStore(8)

/** What a trial is set up by, from an order. */
export const trialOf = (order: Pick<PipeSearchOrder, 'engine' | 'rpm' | 'width'>) => ({
  index: order.engine,
  ...(order.rpm === undefined ? {} : { aim: order.rpm }),
  ...(order.width === undefined ? {} : { width: order.width }),
})

/** The craft of an order; Error with the located lines where it does not read. */
export function craftOf(order: Pick<PipeSearchOrder, 'text' | 'tried'>) {
  const { craft, problems } = readCraft(order.text)
  if (!craft) throw new Error(problems.map(formatProblem).join('\n'))
  return order.tried ? whatIf(craft, order.tried) : craft
}

/** Runs a search on the craft of an order with what this thread keeps: engines simulated before, pump maps, a second thread. */
export async function runSearch<Answer>(
  order: PipeSearchOrder,
  context: JobContext,
  find: (craft: Craft, trial: TrialOrder, work: SearchWork<Answer>) => Promise<Answer>,
): Promise<Answer> {
  const engines = remembering(kept)
  try {
    return await find(
      craftOf(order),
      { ...trialOf(order), store: engines, maps },
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
}

/**
 * The pipe that gives the most thrust on this craft. `context.early` gets a first answer (`final: false`) in some
 * seconds: the handbook pipe with its length set right; the last answer is the job's own.
 */
export const pipeSearchJob = defineJob<PipeSearchOrder, PipeSearchAnswer>('pipe-search', (order, context) =>
  runSearch(order, context, findPipe),
)
