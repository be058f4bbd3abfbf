import { answerEngines } from '../whole/breath/engineAnswers.ts'
import { decidingOf, joinDeciding } from '../whole/deciding.ts'
import type { Deciding } from '../whole/decidingSays.ts'
import { craftToSearch, type DesignOf } from './designTrialsJob.ts'
import { Cancelled, defineJob } from './job.ts'

export interface DecidingOrder extends Omit<DesignOf, 'solved'> {
  /** every `of`-th value from the `hand`-th on; all, shared with a second thread where there is one, when left out */
  hand?: number
  of?: number
}

/** Which values would change a decision; `context.early` gets what was found so far, for whoever calls off. */
export const decidingJob = defineJob<DecidingOrder, Deciding>('deciding', async (order, context) => {
  const { hand, of, ...craftOf } = order
  const shared = of === undefined && context.second !== undefined
  // asked first: what is worked out here keeps this thread from hearing anything
  const other = shared
    ? context.second!('deciding', { ...craftOf, hand: 1, of: 2 } satisfies DecidingOrder)
    : undefined
  // a failure there is told below; until then it must not count as one that nobody hears
  other?.catch(() => {})
  const craft = craftToSearch(craftOf)
  const engines = answerEngines(craft, { cancelled: () => context.cancelled() })
  if (!engines) throw new Cancelled()
  const mine = decidingOf(craft, {
    engines,
    ...(shared ? { hand: 0, of: 2 } : of === undefined ? {} : { hand: hand ?? 0, of }),
    progress: (part, says) => context.progress(part, says),
    early: (answer) => context.early?.(answer),
    check: () => {
      if (context.cancelled()) throw new Cancelled()
    },
  })
  return other ? joinDeciding([mine, (await other) as Deciding]) : mine
})
