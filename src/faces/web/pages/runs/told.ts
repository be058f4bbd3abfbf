import type { HandMark } from '../../../../trades/sound/byHand.ts'
import type { GpxPoint } from '../../../../trades/sound/gpx.ts'
import type { LockedPoint } from '../../../../trades/sound/listener.ts'
import type { AnsweredCheck, SessionObserved } from '../../../../whole/faults/session.ts'

/** How the craft ran; decides which predicted speed stands beside the heard one. */
export type RunKind = 'not said' | 'tied up' | 'under way'

/** Who carried the GPX receiver, and where the recording phone was. */
export type PhonePlace = 'on shore' | 'on the craft'

/** What the user tells of a run, beside its sound. */
export interface Told {
  kind: RunKind
  engines: 'auto' | 1 | 2
  locks: readonly LockedPoint[]
  /** stretches called a voice, or moved an octave */
  marks: readonly HandMark[]
  /** what was seen and tried, of an episode where one is named */
  observed: readonly SessionObserved[]
  /** weights beforehand of causes, where the builder put them another way */
  weights: Readonly<Record<string, number>>
  /** checks made since, and what they found */
  answered: readonly AnsweredCheck[]
  notes: string
  /** luggage-scale readings as typed, kg */
  readings: string
  gpxName: string
  gpx: readonly GpxPoint[]
  /** where the phone that recorded was */
  phone: PhonePlace
  /** s that a moment stands later in the recording than in the GPX track; undefined = matched by the page */
  lag: number | undefined
}

export const nothingTold: Told = {
  kind: 'not said',
  engines: 'auto',
  locks: [],
  marks: [],
  observed: [],
  weights: {},
  answered: [],
  notes: '',
  readings: '',
  gpxName: '',
  gpx: [],
  phone: 'on shore',
  lag: undefined,
}
