import { printed, type Sentence } from './sentence.ts'
/** What every solver returns. `value` means something only when `converged` is true. */
export interface Solved<T = number> {
  value: T
  converged: boolean
  iterations: number
  /** size of what is left of the equation, in its own units */
  residual: number
}

/** A best value with the ends of its likely range (about nineteen cases in twenty), SI. */
export interface Range {
  value: number
  low: number
  high: number
}

/** A warning as data; `path` names the input it is about where there is one. */
export interface Flag {
  code: string
  text: string
  /** the same with its numbers, where it has any */
  says?: Sentence
  path?: string
}

/** A warning from a sentence. */
export function flagOf(code: string, says: Sentence, path?: string): Flag {
  return { code, text: printed(says), says, ...(path === undefined ? {} : { path }) }
}
