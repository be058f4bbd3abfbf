import type { Finding, Question } from '../../../base/answers/finding.ts'
import type { JobOutput } from '../../../jobs/jobs.ts'
import { callJob } from '../work/call.ts'
import { triedValues, tryOn } from './craftFile.ts'
import { hullFilesOf, onHullFile, refreshed } from './hullFiles.ts'
import type { AppStore } from './store.ts'

/** milliseconds of quiet before the whole craft is looked at again */
const quiet = 150

/** Looks at the craft in a worker whenever it or what is tried changes, for the marks across the top and the findings. */
export function keepLooking(store: AppStore): void {
  let seenCraft = store.get().craft
  let seenTried = store.get().triedCraft
  let timer: ReturnType<typeof setTimeout> | undefined
  let busy = false
  let again = false

  const look = async () => {
    const { craft, triedCraft, work } = store.get()
    if (!craft || !work) return
    busy = true
    again = false
    const tried = work.tried.length > 0 ? { tried: triedValues(work.tried) } : {}
    try {
      const order = { text: work.goodText, ...tried, ...hullFilesOf(craft, triedCraft) }
      const tell = (answer: JobOutput<'look'>) => {
        if (store.get().work?.id !== work.id) return
        store.set({
          findings: byQuestion(answer.now),
          triedFindings: answer.tried ? byQuestion(answer.tried) : {},
          looked: {
            craft,
            triedCraft,
            decisions: answer.decisions,
            triedDecisions: answer.triedDecisions,
            balance: answer.balance,
            triedBalance: answer.triedBalance,
            solved: new Map(answer.solved),
            triedSolved: answer.triedSolved && new Map(answer.triedSolved),
          },
        })
      }
      // a first answer comes from coarsely simulated engines, where there are any; with something tried it would be half of one
      const early = work.tried.length > 0 ? () => {} : tell
      tell(await callJob('look', order, () => {}, [], early).done)
    } catch (error) {
      store.set({
        findings: {},
        triedFindings: {},
        notice: `The craft could not be looked at: ${(error as Error).message}`,
      })
    }
    busy = false
    if (again) void look()
  }

  // a hull file that comes in makes it another craft for whatever draws or floats it
  onHullFile(() => {
    const { craft, triedCraft, work } = store.get()
    if (!craft || (craft.hull.mesh === undefined && triedCraft?.hull.mesh === undefined)) return
    const again = refreshed(craft)
    store.set({ craft: again, triedCraft: work && tryOn(again, work.tried) })
  })

  store.subscribe(() => {
    const { craft, triedCraft } = store.get()
    if (craft === seenCraft && triedCraft === seenTried) return
    seenCraft = craft
    seenTried = triedCraft
    if (!craft) return void store.set({ findings: {}, triedFindings: {} })
    clearTimeout(timer)
    timer = setTimeout(() => {
      if (busy) again = true
      else void look()
    }, quiet)
  })
}

function byQuestion(findings: readonly Finding[]): Partial<Record<Question, readonly Finding[]>> {
  const sorted: Partial<Record<Question, Finding[]>> = {}
  for (const finding of findings) (sorted[finding.question] ??= []).push(finding)
  return sorted
}
