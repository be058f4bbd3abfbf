import type { EngineStore, SimulatedEngine } from '../whole/breath/engineAnswers.ts'
import { type Judged, type TrialRequest, type TryMany, tryPipe } from '../whole/breath/pipeTrial.ts'
import type { JobContext } from './job.ts'
import type { PipeTrialsOrder } from './pipeTrialsJob.ts'

/**
 * Answers in the order of the items, every second one worked out elsewhere while the others are worked out here. Who works
 * an item out changes nothing in its answer. One item alone stays here.
 */
export async function shareOut<T, R>(
  items: readonly T[],
  here: (item: T) => R,
  elsewhere: (items: T[]) => Promise<R[]>,
): Promise<R[]> {
  if (items.length < 2) return items.map(here)
  // the others are asked first: what is worked out here keeps this thread from hearing anything
  const theirs = elsewhere(items.filter((_, i) => i % 2 === 1))
  // a failure there is told below; until then it must not count as one that nobody hears
  theirs.catch(() => {})
  const mine = items.filter((_, i) => i % 2 === 0).map(here)
  const others = await theirs
  return items.map((_, i) => (i % 2 === 0 ? mine : others)[i >> 1]!)
}

/** Tries pipes in this thread and, where there is one to spare, in a second one that is told what is known of the engines. */
export function triesShared(
  order: Omit<PipeTrialsOrder, 'known' | 'requests'>,
  store: EngineStore & { all(): [key: string, engine: SimulatedEngine][] },
  { second }: JobContext,
): { tryMany?: TryMany } {
  if (!second) return {}
  const elsewhere = async (requests: TrialRequest[]) =>
    (await second('pipe-trials', {
      ...order,
      known: store.all(),
      requests,
    } satisfies PipeTrialsOrder)) as Judged[]
  return {
    tryMany: (requests, trial) => shareOut(requests, (request) => tryPipe(trial, request), elsewhere),
  }
}
