import type { Finding } from '../base/answers/finding.ts'
import { type CraftFiles, giveFiles } from '../craft/index.ts'
import type { SolvedCurves } from '../trades/engine/enginesFromCraft.ts'
import type { RunRanking } from '../whole/faults/rankingTypes.ts'
import { craftLog } from '../whole/log/craftLog.ts'
import { type NextChange, nextChange } from '../whole/next/nextChange.ts'
import { type RunPlan, runPlan } from '../whole/plan/runPlan.ts'
import type { Balance } from '../whole/push/balanceTypes.ts'
import { defineJob } from './job.ts'
import { craftOf } from './pipeSearchJob.ts'

export interface RunPlanOrder {
  /** the craft file, what it names, and its log */
  text: string
  files?: CraftFiles
  log: string
  balance: Balance
  findings: readonly Finding[]
  solved?: SolvedCurves
  ranking?: RunRanking
}

export interface RunPlanned {
  plan: RunPlan
  next: NextChange
}

/** The plan of the next run and the next change. */
export const runPlanJob = defineJob<RunPlanOrder, RunPlanned>('run-plan', (order) => {
  const craft = craftOf(order)
  if (order.files) giveFiles(craft, order.files)
  const { findings, balance, solved, ranking } = order
  const known = ranking ? { ranking } : {}
  const log = craftLog(craft, order.log)
  return {
    plan: runPlan(craft, balance, { findings, log, ...known, ...(solved ? { solved } : {}) }),
    next: nextChange(craft, balance, { findings, log, ...known }),
  }
})
