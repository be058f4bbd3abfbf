import type { Finding } from '../answers/finding.ts'
import { MapStore } from '../balance/fromCraft.ts'
import { tryValues } from '../balance/solve.ts'
import type { Balance } from '../balance/types.ts'
import { formatProblem, readCraft } from '../craft/index.ts'
import { lookAt } from '../registry/findings.ts'
import { defineJob } from './job.ts'

export interface BalanceInput {
  /** the craft file */
  text: string
  /** tried values by path, SI */
  tried: Readonly<Record<string, number | string | boolean>>
}

export interface BalanceOutput {
  findings: Finding[]
  balance?: Balance
}

/** pump maps outlive one job: the next try mostly turns the same impeller */
const maps = new MapStore()

/** The full answer with ranges, changes and every trade's findings. */
export const balanceJob = defineJob<BalanceInput, BalanceOutput>(
  'balance',
  ({ text, tried }, { progress }) => {
    progress(0, 'Reading the craft')
    const { craft, problems } = readCraft(text)
    if (!craft) throw new Error(problems.map(formatProblem).join('\n'))
    progress(0.1, 'Solving engines, jet and hull')
    return lookAt(tryValues(craft, tried), { maps })
  },
)
