import type { FileChange, Gain } from '../../base/answers/decision.ts'
import type { Sentence } from '../../base/answers/sentence.ts'
import type { Range } from '../../base/answers/solved.ts'
import type { Design } from './design.ts'
import type { Wants } from './merit.ts'

/** What one design does, SI: solved with the whole balance on the craft as written, ranges over joint draws. */
export interface Does {
  /** N; nought when the engines cannot turn it */
  pull: Range
  /** m/s; NaN when it lies beyond the hull model */
  topSpeed: Range
  /** engine rotation tied up, rev/s; NaN when they cannot turn it */
  rotation: Range
  /** the same on every draw, for pictures */
  draws: { pull: number[]; topSpeed: number[] }
}

/** Pitches of one kind of blade that do about as well as its best. */
export interface PitchBand {
  /** its pitch is the best */
  design: Design
  low: number
  high: number
  /** most that any of them loses against the best pitch, with the engines at either end */
  within: number
  /** peak power of the first engine at those ends, W; absent when the engines are not in doubt */
  power?: { low: number; high: number }
}

export interface DesignOption extends Does {
  id: 'pitch' | 'blades' | 'blade-cut' | 'nozzle' | 'ratio' | 'together'
  /** what it is, in words that go on from "fit" */
  says: Sentence
  design: Design
  /** SI by path, and the same as one would type it */
  values: Readonly<Record<string, number>>
  changes: FileChange[]
  /** against what is fitted; absent while that is not decided */
  gain?: Required<Gain>
  /** how much better it does what the builder wants, over all draws, a share */
  worth: number
  /** worth doing: it buys something and does not lower pull and speed both */
  offered: boolean
  band?: PitchBand
}

/** Pull and top speed over pitch for one blade number, on the craft as written. */
export interface PitchLine {
  blades: number
  nozzle: number
  pitch: number[]
  pull: number[]
  topSpeed: number[]
}

export interface DesignAnswer {
  /** false for answers on the way */
  final: boolean
  wants: Wants
  /** balances solved so far, draws counted */
  balances: number
  draws: number
  now: Does & { design: Design }
  /** the best first; everything that was compared, offered or not */
  options: DesignOption[]
  /** pitches of the blades that are fitted */
  fitted: PitchBand | undefined
  lines: PitchLine[]
}
