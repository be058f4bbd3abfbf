/** What a ranking is made from: a craft, what was heard, seen and found, and what its log says. */
import type { Craft } from '../../craft/schema/craftSchema.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import type { Hearing } from '../../trades/sound/hearingTypes.ts'
import type { Observed } from '../../trades/sound/observations.ts'
import type { LogEntry } from '../log/logTypes.ts'
import type { Balance } from '../push/balanceTypes.ts'

/** What the builder saw; of one episode by its id, or of the whole day. */
export interface SessionObserved extends Observed {
  episode?: string
  /** how far it is to be trusted, 0 to 1; left out: as one who was there */
  sure?: number
}

/** A check made and what it found: ids of `NextCheck`. */
export interface AnsweredCheck {
  check: string
  outcome: string
}

export interface RunSession {
  craft: Craft
  /** absent while it is worked out or where the craft cannot be balanced */
  balance?: Balance | undefined
  /** torque curves worked out elsewhere, by engine index */
  solved?: SolvedCurves | undefined
  /** of a run without a recording there is none */
  hearing?: Hearing | undefined
  kind?: 'not said' | 'tied up' | 'under way'
  observed?: readonly SessionObserved[]
  /** N, read on a scale at full throttle, tied up */
  pull?: number | undefined
  log?: readonly LogEntry[]
  answered?: readonly AnsweredCheck[]
  /** weights beforehand of causes by id, edited by the builder */
  weights?: Readonly<Record<string, number>>
}
