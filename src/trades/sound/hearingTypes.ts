/** What comes out of listening to a recording. */
import type { Flag } from '../../base/answers/solved.ts'
import type { BladePass } from './orders.ts'
import type { RunEvent } from './shaftEvents.ts'

/** One engine over the recording; arrays on the hearing's time grid. */
export interface Track {
  label: 'A' | 'B'
  /** rev/min; 0 = not heard */
  rpm: Float32Array
  /** firings a second; 0 = not heard */
  firing: Float32Array
  /** 0 … 1 */
  confidence: Float32Array
  /** rev/min a second, from the warp, not from differences */
  change: Float32Array
}

/** How evenly an engine fires over a stretch of a few seconds in which it sounds alone. */
export interface FiringQuality {
  label: 'A' | 'B'
  from: number
  to: number
  /** level of the half orders over their floor, dB */
  halfOrders: number
  /** share of cycles that hardly fired */
  weak: number
  reads: 'even' | 'some misfires' | 'misfires' | 'four-stroking'
}

/** A recording's picture: level over time and frequency. */
export interface Spectrogram {
  /** s between columns, Hz between rows; column-major, row 0 at 0 Hz */
  timeStep: number
  hertzStep: number
  columns: number
  rows: number
  /** 0 … 255, half a decibel a step */
  level: Uint8Array
}

export type VerdictCode = 'no engine' | 'one' | 'two' | 'cannot tell'

export interface Verdict {
  code: VerdictCode
  /** a sentence */
  says: string
  /** independent engines, one line (one engine or a rigidly coupled pair), or unknown */
  coupling: 'independent' | 'one line' | 'unknown' | 'none'
}

export interface Hearing {
  /** s of sound that was read */
  duration: number
  /** s */
  step: number
  time: Float32Array
  tracks: Track[]
  /** what may have been an engine and counts as none: from when (s), and its speed frame by frame (rev/min) */
  perhaps?: { from: number; rpm: Float32Array }[]
  /** engines heard at each moment: 0, 1 or 2 */
  count: Uint8Array
  events: RunEvent[]
  quality: FiringQuality[]
  verdict: Verdict
  /** stretches whose speed may be off by an octave: times and the factor to the other reading */
  octaves: { label: 'A' | 'B'; from: number; to: number; factor: number }[]
  /** s after which the labels A and B may be exchanged */
  labelsUncertainAfter: number[]
  /** mean difference of two near engines' firing, Hz: they beat at this rate */
  beat?: number
  bladePass?: BladePass & { label: 'A' | 'B' }
  spectrogram: Spectrogram
  flags: Flag[]
  /** the listening was stopped before the end */
  cancelled: boolean
}
