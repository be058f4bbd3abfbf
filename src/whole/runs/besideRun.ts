/** A heard run laid beside what the craft should have done: which prediction, matched how, and the hearing settled by it. */
import { inSeconds } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import type { Range } from '../../base/answers/solved.ts'
import { withExpected } from '../../trades/sound/expecting.ts'
import {
  closingAt,
  closingSpeeds,
  type GpxPoint,
  isMatch,
  speedsOf,
  syncLag,
} from '../../trades/sound/gpx.ts'
import type { Hearing } from '../../trades/sound/hearingTypes.ts'
import { type Pull, parseReadings, readPull } from '../../trades/sound/pull.ts'
import type { Prediction } from '../../trades/sound/residuals.ts'
import type { CraftExpects } from '../../trades/sound/soundFromCraft.ts'
import type { Balance } from '../push/balanceTypes.ts'
import { tiedUpPrediction, underWayPrediction } from './heardRun.ts'

/** What is told of a run beside its sound. */
export interface ToldOfRun {
  kind: 'not said' | 'tied up' | 'under way'
  /** 'half' when the throttle was not opened fully */
  throttle?: string | undefined
  /** luggage-scale readings as typed, kg */
  readings: string
  gpx: readonly GpxPoint[]
  /** s that a moment stands later in the recording than in the GPX track; undefined = to be matched */
  lag?: number | undefined
  /** where the phone that recorded was */
  phone: 'on shore' | 'on the craft'
}

export interface BesideRun {
  /** the hearing, its octaves settled by what the craft can do */
  hearing: Hearing | undefined
  prediction: Prediction | undefined
  /** m/s toward the phone at a moment of the recording; absent without a track, or with the phone on the craft */
  closing: ((time: number) => number) | undefined
  pull: { read: Pull; predicted: Range } | undefined
  /** what may be heard of the craft */
  expects: CraftExpects
  /** why there is no prediction, or what it rests on */
  says: Sentence
}

/** How a GPX track was laid beside the sound. */
export interface TrackMatch {
  lag: number
  matched: boolean
  likeness: number
}

/** Lays a track beside the sound; undefined with fewer than three points. */
export function matchTrack(heard: Hearing | undefined, gpx: readonly GpxPoint[]): TrackMatch | undefined {
  if (!heard || gpx.length < 3) return undefined
  const m = syncLag(speedsOf(gpx), heard.time, heard.tracks[0]?.rpm ?? new Float32Array(0))
  const matched = isMatch(m)
  return { lag: matched ? m.lag : 0, matched, likeness: m.correlation }
}

/** Lays a run beside the model. `match` from `matchTrack`; `balance` undefined while it is not known. */
export function besideRun(
  heard: Hearing | undefined,
  told: ToldOfRun,
  expects: CraftExpects,
  balance: Balance | undefined,
  match: TrackMatch | undefined,
): BesideRun {
  const read = readPull(parseReadings(told.readings))
  // the predicted pull is that of full throttle too
  const pull =
    read && balance?.ranged && told.throttle !== 'half' ? { read, predicted: balance.pull } : undefined
  const settled = (says: Sentence, prediction?: Prediction, closing?: BesideRun['closing']): BesideRun => {
    const hearing = heard && withExpected(heard, expects, prediction)
    return { hearing, expects, prediction, closing, pull, says }
  }
  if (!heard || heard.verdict.code === 'no engine') return settled('')
  if (told.kind === 'not said')
    return settled(
      'Say whether the craft was tied up or under way, and the predicted speed stands beside the heard one.',
    )
  if (told.throttle === 'half')
    return settled('The prediction is for full throttle; this run was at half throttle.')
  if (!balance)
    return settled('How the craft should go is still being worked out, or cannot be: see the Push page.')
  if (told.kind === 'tied up') return settled('Predicted tied up, full throttle.', tiedUpPrediction(balance))
  if (!match)
    return settled('Add the GPX track of the run: the predicted speed depends on how fast the craft went.')
  const trace = speedsOf(told.gpx)
  const lag = told.lag ?? match.lag
  const closing = told.phone === 'on shore' ? closingAt(trace, closingSpeeds(told.gpx), lag) : undefined
  const how =
    told.lag !== undefined
      ? say`set by hand to begin ${lagSays(lag)} the recording`
      : match.matched
        ? say`matched to the sound: it begins ${lagSays(lag)} the recording`
        : 'which could not be matched to the sound, so both are taken to begin together'
  return settled(
    say`Predicted at the speed of the GPX track, ${how}. ${
      closing
        ? 'The heard speed is corrected for the craft’s coming and going (Doppler), the phone taken to stand where the track begins.'
        : 'The phone was on the craft, so its motion does not change the pitch.'
    }`,
    underWayPrediction(balance, trace, lag),
    closing,
  )
}

const lagSays = (lag: number): Sentence =>
  lag === 0 ? 'with' : say`${inSeconds(Math.abs(lag))} ${lag > 0 ? 'after' : 'before'}`
