import type { RankOrder } from '../../../../jobs/rankRunJob.ts'
import type { RunRanking } from '../../../../whole/faults/rankingTypes.ts'
import { callJob } from '../../work/call.ts'

type Progress = (part: number, says: string) => void
interface Waiting {
  order: RankOrder
  progress: Progress
  resolve: (ranking: RunRanking | undefined) => void
  reject: (error: unknown) => void
}

let busy = false
let next: Waiting | undefined

/**
 * One ranking at a time, and after it the latest that was asked for: a worker in the middle of one is not ended, as it keeps what it
 * reckoned of the craft. One that was overtaken answers undefined.
 */
function ask(order: RankOrder, progress: Progress): Promise<RunRanking | undefined> {
  return new Promise((resolve, reject) => {
    next?.resolve(undefined)
    next = { order, progress, resolve, reject }
    void work()
  })
}

async function work(): Promise<void> {
  if (busy) return
  busy = true
  while (next) {
    const { order, progress, resolve, reject } = next
    next = undefined
    try {
      resolve(await callJob('rank-run', order, progress).done)
    } catch (error) {
      reject(error)
    }
  }
  busy = false
}

export const ranker = { ask }
