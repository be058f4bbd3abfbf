import { mapStore, type SimulatedEngine } from '../whole/breath/engineAnswers.ts'
import { type Judged, type TrialRequest, tryPipe } from '../whole/breath/pipeTrial.ts'
import { prepareTrial, type Trial } from '../whole/breath/trial.ts'
import { defineJob } from './job.ts'
import { craftOf, type PipeSearchOrder, trialOf } from './pipeSearchJob.ts'

export interface PipeTrialsOrder extends PipeSearchOrder {
  /** engines simulated before, so that this thread need not do it again */
  known: readonly (readonly [key: string, engine: SimulatedEngine])[]
  requests: readonly TrialRequest[]
}

/** the last trial set up in this thread: a search asks many times for the same one */
let last: { key: string; trial: Trial } | undefined

function trialFor({ requests: _, known, ...order }: PipeTrialsOrder): Trial {
  const key = JSON.stringify(order)
  if (last?.key !== key) {
    const store = mapStore(8)
    for (const [k, engine] of known) store.set(k, engine)
    last = { key, trial: prepareTrial(craftOf(order), { ...trialOf(order), store }) }
  }
  return last.trial
}

/** Some pipes of a search, tried in this thread: how a search is spread over several. */
export const pipeTrialsJob = defineJob<PipeTrialsOrder, Judged[]>('pipe-trials', (order, context) => {
  const trial = trialFor(order)
  return order.requests.map((request, i) => {
    context.progress(i / order.requests.length, `${request.name}, ${request.cells} cells`)
    return tryPipe(trial, request)
  })
})
