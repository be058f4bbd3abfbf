/** A fault as the ranking knows it: how likely it is beforehand, what it does to the model of the craft, and which signs it shows. */
import type { Sentence } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'

/** Ends of a factor from slight to severe. */
export type Span = readonly [slight: number, severe: number]

/** What a fault does to the model of the craft; a factor left out is 1. */
export interface ModelChange {
  /** torque of the engines it reaches */
  torque?: Span
  /** rotations of their torque curve */
  rotation?: Span
  /** torque the impeller takes, and thrust it gives, at a rotation */
  load?: Span
  thrust?: Span
  /** drag of the hull */
  drag?: Span
  /** top speed over the one that goes with the pull, drag apart */
  pace?: Span
  /** the engine it reaches does not fire */
  dead?: true
  /** the shaft is open behind this many engines */
  open?: number
}

/** Likelihoods of an observable's states, in their order; one left out is as usual. */
export type Signs = Readonly<Record<string, readonly number[]>>

/** One way in which a cause comes about: what is mended differs. */
export interface Way {
  id: string
  says: string
  /** share of the cause beforehand */
  share: number
  /** minutes to mend it, without the run that tries it again */
  mend: number
  signs?: Signs
  change?: ModelChange
  /** which engines it reaches, where that differs from the cause's */
  reach?: Cause['reach']
  /** it reaches all engines, and one of them stops firing over it */
  oneStops?: true
}

export interface Cause {
  id: string
  /** what happened, without a full stop */
  says: Sentence
  /** weight beforehand, beside those of the others */
  prior: number
  reach: 'one' | 'all' | 'craft'
  change: ModelChange
  signs: Signs
  ways: readonly Way[]
  /** it is gone after a rest, and comes back later */
  rests?: true
  /** the craft can have it at all; left out: every craft */
  can?: (craft: Craft) => boolean
  /** mended, and what to do */
  mendSays: string
}
