import type { FileChange, Gain, Harm } from './decision.ts'
import type { Sentence } from './sentence.ts'

/** The eight questions; they are the app's pages and the findings' chapters. */
export type Question = 'craft' | 'push' | 'breath' | 'float' | 'strength' | 'fuel' | 'make' | 'runs'

/** How an answer stands, best first; `unknown` means the model could not say. */
export type Standing = 'good' | 'watch' | 'stop' | 'unknown'

/** A fact that drives a finding; `link` is a craft path (`jet.rotor.pitch`) or `result:` and a result's name. */
export interface Because {
  says: Sentence
  link?: string
}

/** The measurement that would narrow a finding most. */
export interface MeasureNext {
  what: string
  with: string
  minutes: number
  /** craft path the reading goes to */
  path?: string
}

/** One answer, the same object on every page, the command line and the book. Numbers are SI. */
export interface Finding {
  id: string
  question: Question
  /** one sentence made from the numbers, which it carries */
  says: Sentence
  value?: number
  low?: number
  high?: number
  /** name of the SI unit of value, low and high */
  unit?: string
  standing: Standing
  because: Because[]
  measureNext?: MeasureNext
  /** what to do about it, with a number in it */
  act?: Sentence
  /** what leaving it may do; by its standing and question where left out */
  harm?: Harm
  /** values of the craft file to change, as one would type them, and what that buys */
  changes?: readonly FileChange[]
  gain?: Gain
  /** findings that are the same thing at several places (front, rear; port, starboard) share this word and become one decision */
  twin?: string
  sources: string[]
}

const gravity: Record<Standing, number> = { stop: 0, watch: 1, unknown: 2, good: 3 }

/** Findings with the worst first; equal standings keep their order. */
export function worstFirst(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((a, b) => gravity[a.standing] - gravity[b.standing])
}

/** The worst standing among findings, `good` when there are none. */
export function worstStanding(findings: readonly Finding[]): Standing {
  return worstFirst(findings)[0]?.standing ?? 'good'
}
