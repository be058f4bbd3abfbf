import type { Finding, Question } from '../../../base/answers/finding.ts'
import type { JobInput, JobOutput } from '../../../jobs/jobs.ts'
import { type Call, callJob } from '../work/call.ts'
import { triedValues, tryOn } from './craftFile.ts'
import { hullFilesOf, onHullFile, refreshed } from './hullFiles.ts'
import type { AppStore } from './store.ts'

/** milliseconds of quiet before the whole craft is looked at again */
const quiet = 150

/** One look in a worker; a test hands in its own. */
type CallLook = (
  order: JobInput<'look'>,
  onProgress: (part: number, says: string) => void,
  onEarly: (answer: JobOutput<'look'>) => void,
) => Pick<Call<JobOutput<'look'>>, 'done'>

const inWorker: CallLook = (order, onProgress, onEarly) => callJob('look', order, onProgress, [], onEarly)

/** Looks at the craft in a worker whenever it or what is tried changes, for the marks across the top and the findings. */
export function keepLooking(store: AppStore, call: CallLook = inWorker): void {
  let seenCraft = store.get().craft
  let seenTried = store.get().triedCraft
  let timer: ReturnType<typeof setTimeout> | undefined
  let busy = false
  let again = false
  /** the craft whose pages may have found something of their own */
  let seenWork = store.get().work?.id
  const ownFindings = () => pagesOwn(store.get().findings)

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
        const solved = new Map(answer.solved)
        const triedSolved = answer.triedSolved && new Map(answer.triedSolved)
        const { balance, triedBalance, decisions, triedDecisions, coarse = false } = answer
        const of = { craft, triedCraft, balance, triedBalance, solved, triedSolved }
        if (answer.first) return store.set({ first: { ...of, headline: answer.now.find(isPush) } })
        store.set({
          findings: lookedAt(answer.now, ownFindings()),
          triedFindings: answer.tried ? byQuestion(answer.tried) : {},
          looked: { ...of, decisions, triedDecisions, coarse },
          first: undefined,
        })
      }
      // first answers: how it goes by few draws, then all from coarsely simulated engines; with something tried that would be half of one
      const early = (answer: JobOutput<'look'>) => {
        if (answer.first || work.tried.length === 0) tell(answer)
      }
      tell(await call(order, (part, says) => store.set({ looking: { part, says } }), early).done)
    } catch (error) {
      store.set({
        findings: ownFindings(),
        triedFindings: {},
        notice: `The craft could not be looked at: ${(error as Error).message}`,
      })
    }
    store.set({ looking: undefined })
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
    // what was found of another craft's runs is not this one's
    const { work } = store.get()
    if (work?.id !== seenWork) store.set({ findings: {}, triedFindings: {} })
    seenWork = work?.id
    if (!craft) return void store.set({ findings: {}, triedFindings: {} })
    clearTimeout(timer)
    timer = setTimeout(() => {
      if (busy) again = true
      else void look()
    }, quiet)
  })
}

const isPush = (f: Finding) => f.id === 'push.headline'

type ByQuestion = Partial<Record<Question, readonly Finding[]>>

/** What a look at the craft cannot give, because a page found it in something else: of runs, in a recording. */
const pagesOwn = ({ runs }: ByQuestion): ByQuestion => (runs ? { runs } : {})

/** Findings of a look, with what pages found themselves left as it was. */
export const lookedAt = (findings: readonly Finding[], own: ByQuestion): ByQuestion => ({
  ...own,
  ...byQuestion(findings),
})

function byQuestion(findings: readonly Finding[]): ByQuestion {
  const sorted: Partial<Record<Question, Finding[]>> = {}
  for (const finding of findings) (sorted[finding.question] ??= []).push(finding)
  return sorted
}
