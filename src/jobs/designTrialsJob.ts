import { type Craft, type CraftFiles, formatProblem, giveFiles, readCraft, whatIf } from '../craft/index.ts'
import type { TorqueCurve } from '../trades/engine/curve.ts'
import { decided } from '../whole/push/decided.ts'
import { DesignTrials, type TrialRequest, type TrialResult } from '../whole/push/designTrials.ts'
import { defineJob } from './job.ts'

/** The craft that a search is for, as plain data. */
export interface DesignOf {
  /** the craft file */
  text: string
  /** tried values by path: SI numbers, words, flags */
  tried?: Readonly<Record<string, number | string | boolean>>
  /** what the craft names, such as its hull mesh */
  files?: CraftFiles
  /** torque curves that were simulated, by engine index */
  solved?: readonly (readonly [engine: number, curve: TorqueCurve])[]
}

export interface DesignTrialsOrder extends DesignOf {
  requests: readonly TrialRequest[]
}

/** The craft of an order with its open choices made; Error with the located lines where it does not read. */
export function craftToSearch({ text, tried, files, solved }: DesignOf): Craft {
  const { craft, problems } = readCraft(text)
  if (!craft) throw new Error(problems.map(formatProblem).join('\n'))
  if (files) giveFiles(craft, files)
  return decided(tried ? whatIf(craft, tried) : craft, solved && new Map(solved)).craft
}

/** the craft this thread tried designs on last: a search asks several times for the same one */
let last: { key: string; trials: DesignTrials } | undefined

export function trialsFor(of: DesignOf): DesignTrials {
  const { text, tried, files, solved } = of
  const key = JSON.stringify([
    text,
    tried,
    files && Object.keys(files),
    solved?.map(([i, c]) => [i, c.powerPeak]),
  ])
  if (last?.key !== key)
    last = { key, trials: new DesignTrials(craftToSearch(of), solved && new Map(solved)) }
  return last.trials
}

/** Some designs of a search, tried in this thread: how a search is spread over several. */
export const designTrialsJob = defineJob<DesignTrialsOrder, TrialResult[]>(
  'design-trials',
  (order, context) => {
    const { requests, ...of } = order
    const trials = trialsFor(of)
    return requests.map((request, i) => {
      context.progress(i / requests.length, `${request.designs.length} designs`)
      return trials.run(request)
    })
  },
)
