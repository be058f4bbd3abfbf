/** What the ranking of causes hands to the page, the command line, the plan of the next run and the sheet to ask with. */
import type { Finding } from '../../base/answers/finding.ts'
import type { Sentence } from '../../base/answers/sentence.ts'

/** A stretch of a session in which nothing changed that matters: from and to in seconds of the recording. */
export interface Episode {
  id: string
  /** `both-pulling`, `one-dragged`, `load-lost`, `cold-start`, `restart`, `will-not-rev`, `choke-on`, … */
  kind: string
  from: number
  to: number
  says: Sentence
}

/** One cause with its odds and what speaks for and against it. */
export interface RankedCause {
  id: string
  says: Sentence
  /** probability that it is part of what happened, 0 to 1 */
  share: number
  /** weight beforehand, beside those of the others; the builder can put it another way */
  weight: number
  /** id of the episode it begins with */
  since?: string
  /** the engine it is at, where one is likelier than not, and how sure that is once the cause is so */
  engine?: { name: string; share: number }
  /** in which way it came about, likeliest first; shares sum to 1 */
  ways: readonly { id: string; says: string; share: number }[]
  /** what mends it, an order */
  mend: string
  for: readonly Sentence[]
  against: readonly Sentence[]
}

/** A check to make: what it costs, what it tells apart, and its answers. */
export interface NextCheck {
  id: string
  /** the order: what to do */
  act: Sentence
  minutes: number
  /** what it saves on average less what it costs, minutes; the list is sorted by it */
  worth: number
  /** ids of the causes it tells apart */
  separates: readonly string[]
  cautions: readonly string[]
  /** `share`: how likely that outcome is now */
  outcomes: readonly { id: string; says: string; share: number }[]
}

/** Speeds of one stretch, rev/s: heard, and as the likeliest story has them. */
export interface BesideEpisode {
  from: number
  to: number
  heard: readonly number[]
  told: readonly number[]
}

export interface RunRanking {
  episodes: readonly Episode[]
  /** likeliest first */
  causes: readonly RankedCause[]
  /** an engine stopped firing, whatever the reason: the likelier one and its share, the share of any, and since which episode */
  stopped?: { engine: string; share: number; any: number; since?: string; sinceShare?: number }
  /** probability that it is none of these */
  none: number
  /** what this run cannot say, each with what to do so that the next one can */
  cannotSay: readonly Finding[]
  checks: readonly NextCheck[]
  /** what was heard beside the likeliest story; empty without a recording or where the craft cannot be balanced */
  beside: readonly BesideEpisode[]
  /** evidence that fights, readings that cannot be, a run that may be another craft's */
  doubts: readonly Finding[]
  /** the likeliest cause is far enough ahead to be called the answer */
  decided: boolean
}
