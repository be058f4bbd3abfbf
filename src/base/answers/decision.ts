/** What a builder acts on: one line for each thing to do, know or decide, resting on findings. */
import type { Sentence } from './sentence.ts'
import type { Range } from './solved.ts'

/** What leaving it undone may do, worst first. */
export type Harm = 'before the water' | 'will stop the run' | 'costs speed' | 'comfort'

/** One value of the craft file to change, as one would type it. */
export interface FileChange {
  path: string
  from: string
  to: string
}

/** What a change buys, the whole balance solved again with it made: N and m/s. */
export interface Gain {
  pull: Range
  /** absent where one of the two top speeds is beyond the model */
  topSpeed?: Range
}

export interface Decision {
  id: string
  says: Sentence
  /** what to do, with a number in it */
  act?: Sentence
  changes?: readonly FileChange[]
  gain?: Gain
  harm?: Harm
  /** ids of the findings it rests on */
  findings: readonly string[]
}

/** Worst first. */
export const harms: readonly Harm[] = ['before the water', 'will stop the run', 'costs speed', 'comfort']
