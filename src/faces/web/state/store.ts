import type { Decision } from '../../../base/answers/decision.ts'
import type { Finding, Question } from '../../../base/answers/finding.ts'
import type { SolvedCurves } from '../../../trades/engine/enginesFromCraft.ts'
import type { Balance } from '../../../whole/push/balanceTypes.ts'
import { type Craft, type Problem, readText, tryOn } from './craftFile.ts'
import type { OpenedFile } from './openedFiles.ts'
import type { Role } from './tabs.ts'
import type { Work } from './work.ts'

export type UnitSystem = 'metric' | 'inch'
type Saving = 'saved' | 'pending' | 'failed'

export interface FileFault {
  file: OpenedFile
  problems: readonly Problem[]
}

export interface AppState {
  /** false until the browser's store has been asked for the last craft */
  ready: boolean
  work: Work | undefined
  /** what is wrong with the text as it stands; empty when it reads */
  problems: readonly Problem[]
  /** the craft of the text, or of the last text that could be read */
  craft: Craft | undefined
  /** the craft with the tried values in it; absent when nothing is tried */
  triedCraft: Craft | undefined
  role: Role
  saving: Saving
  units: UnitSystem
  /** one sentence for the user, read out when it changes */
  notice: string
  /** a file that was not opened, and why */
  fault: FileFault | undefined
  /** starts using a newer build that waits */
  newVersion: (() => void) | undefined
  /** what the page says the tried values should do; goes to the log when they are kept */
  expects: string
  /** findings of each page as last worked out, for the marks across the top */
  findings: Partial<Record<Question, readonly Finding[]>>
  /** the page shows the tried craft's findings beside these while something is tried */
  triedFindings: Partial<Record<Question, readonly Finding[]>>
  /** the last full look, with ranges, and the crafts it was of: a page shows it only while those stand */
  looked: Looked | undefined
  /** how it goes by few draws, and the crafts that is of, until the full look is there */
  first: First | undefined
  /** the look under way, 0 to 1 */
  looking: { part: number; says: string } | undefined
}

export interface First {
  craft: Craft
  triedCraft: Craft | undefined
  headline: Finding | undefined
  balance: Balance | undefined
  triedBalance: Balance | undefined
  solved: SolvedCurves
  triedSolved: SolvedCurves | undefined
}

export interface Looked {
  craft: Craft
  triedCraft: Craft | undefined
  /** what to do, worst first, of the craft and of what is tried */
  decisions: readonly Decision[]
  triedDecisions: readonly Decision[] | undefined
  balance: Balance | undefined
  triedBalance: Balance | undefined
  /** simulated torque curves by engine index, of the craft and of what is tried */
  solved: SolvedCurves
  triedSolved: SolvedCurves | undefined
  /** the curves are coarse ones; the fine ones are being worked out */
  coarse: boolean
}

const emptyState: AppState = {
  ready: false,
  work: undefined,
  problems: [],
  craft: undefined,
  triedCraft: undefined,
  role: 'writer',
  saving: 'saved',
  units: 'metric',
  notice: '',
  fault: undefined,
  newVersion: undefined,
  expects: '',
  findings: {},
  triedFindings: {},
  looked: undefined,
  first: undefined,
  looking: undefined,
}

const nothingFound = { findings: {}, triedFindings: {}, looked: undefined, first: undefined }

export interface AppStore {
  get(): AppState
  set(part: Partial<AppState>): void
  /** puts a work in, with everything that follows from it */
  setWork(work: Work | undefined): void
  subscribe(listener: () => void): () => void
}

/** State with `work` in it: text read, craft and tried craft derived. What did not change keeps its identity. */
function withWork(state: AppState, work: Work | undefined): AppState {
  if (work === state.work) return state
  if (!work)
    return {
      ...state,
      ...{ work, problems: [], craft: undefined, triedCraft: undefined },
      ...nothingFound,
    }
  const old = state.work
  const sameText = old?.id === work.id && old.text === work.text
  let { problems, craft } = state
  let kept = work
  if (!sameText) {
    const reading = readText(work.text, work.fileName)
    problems = reading.problems
    if (reading.craft) {
      craft = reading.craft
      if (work.goodText !== work.text) kept = { ...work, goodText: work.text }
    } else if (old?.id !== work.id || work.goodText !== old.goodText)
      craft = readText(work.goodText, work.fileName).craft
  } else if (work.goodText !== old.goodText) kept = { ...work, goodText: old.goodText }
  // what was found of another craft says nothing of this one
  const fresh = old?.id === work.id ? {} : nothingFound
  const sameTried = sameText && old.tried === work.tried
  const triedCraft = sameTried ? state.triedCraft : craft && tryOn(craft, work.tried)
  return { ...state, ...fresh, work: kept, problems, craft, triedCraft }
}

/** The store itself: one state, replaced whole, and those who listen. */
export function createStore(start: AppState = emptyState): AppStore {
  let state = start
  const listeners = new Set<() => void>()
  const put = (next: AppState) => {
    if (next === state) return
    state = next
    for (const listener of listeners) listener()
  }
  return {
    get: () => state,
    set: (part) => put({ ...state, ...part }),
    setWork: (work) => put(withWork(state, work)),
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
  }
}
