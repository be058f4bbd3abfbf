import type { Craft, CraftFiles } from '../craft/index.ts'
import { giveFiles } from '../craft/index.ts'
import type { RunRanking } from '../whole/faults/rankingTypes.ts'
import { rankRun } from '../whole/faults/rankRun.ts'
import type { RunSession } from '../whole/faults/session.ts'
import { craftLog } from '../whole/log/craftLog.ts'
import { defineJob } from './job.ts'
import { craftOf } from './pipeSearchJob.ts'

export interface RankOrder {
  /** the craft file, what it names, and its log */
  text: string
  files?: CraftFiles
  log: string
  /** tells one balance from another: the same number, the same balance */
  balanced: number
  session: Omit<RunSession, 'craft' | 'log'>
}

type Known = Pick<RunSession, 'balance' | 'solved'>

/** What the last order was of, so that the roots of its faults are found once. */
let last: { text: string; balanced: number; craft: Craft; known: Known } | undefined

/** What may have gone wrong in a run; weighed again at once where craft and balance are those of the order before. */
export const rankRunJob = defineJob<RankOrder, RunRanking>('rank-run', (order, { progress }) => {
  const { text, balanced, session } = order
  if (!last || last.text !== text || last.balanced !== balanced) {
    progress(0.05, 'Reckoning what each fault would do')
    const craft = craftOf(order)
    if (order.files) giveFiles(craft, order.files)
    const { balance, solved } = session
    last = { text, balanced, craft, known: { balance, solved } }
  }
  const { craft, known } = last
  const log = craftLog(craft, order.log).entries.map(({ entry }) => entry)
  return rankRun({ ...session, ...known, craft, log }, undefined, progress)
})
