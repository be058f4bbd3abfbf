import { MapStore } from '../whole/push/craftModel.ts'
import { designAnswer } from '../whole/push/designAnswer.ts'
import type { TryDesigns } from '../whole/push/designSearch.ts'
import type { TrialRequest, TrialResult } from '../whole/push/designTrials.ts'
import type { DesignAnswer } from '../whole/push/designTypes.ts'
import { craftToSearch, type DesignOf, type DesignTrialsOrder, trialsFor } from './designTrialsJob.ts'
import { Cancelled, defineJob, type JobContext } from './job.ts'
import { shareOut } from './shareOut.ts'

export interface DesignSearchOrder extends DesignOf {
  /** joint draws of what is doubtful; usual when left out */
  draws?: number
}

const maps = new MapStore()

/** Requests worked out in this thread and, where there is one to spare, every second one in another. */
function shared(of: DesignOf, { second, cancelled }: JobContext): TryDesigns {
  const here = (request: TrialRequest) => {
    if (cancelled()) throw new Cancelled()
    return trialsFor(of).run(request)
  }
  if (!second) return async (requests) => requests.map(here)
  const elsewhere = async (requests: TrialRequest[]) =>
    (await second('design-trials', { ...of, requests } satisfies DesignTrialsOrder)) as TrialResult[]
  return (requests) => shareOut(requests, here, elsewhere)
}

/**
 * The best impeller and nozzle of a craft. `context.early` gets the best so far (`final: false`), first within a second: whoever calls
 * the search off keeps that.
 */
export const designSearchJob = defineJob<DesignSearchOrder, DesignAnswer>(
  'design-search',
  (order, context) => {
    const { draws, ...of } = order
    return designAnswer(craftToSearch(of), {
      maps,
      ...(of.solved ? { solved: new Map(of.solved) } : {}),
      ...(draws === undefined ? {} : { draws }),
      progress: (part, says) => context.progress(part, says),
      early: (answer) => context.early?.(answer),
      check: () => {
        if (context.cancelled()) throw new Cancelled()
      },
      tryMany: shared(of, context),
    })
  },
)
