import { useMemo } from 'react'
import type { Range } from '../../../answers/solved.ts'
import { atFullThrottle, tiedUpPrediction, underWayPrediction } from '../../../balance/heardRun.ts'
import { withExpected } from '../../../sound/expecting.ts'
import { type CraftExpects, expectsOf } from '../../../sound/fromCraft.ts'
import { closingSpeeds, isMatch, type SpeedTrace, speedsOf, syncLag } from '../../../sound/gpx.ts'
import type { Hearing } from '../../../sound/hearing.ts'
import { type Pull, parseReadings, readPull } from '../../../sound/pull.ts'
import type { Prediction } from '../../../sound/residuals.ts'
import type { Craft } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import type { Told } from './told.ts'

export interface Expected {
  /** the hearing, its octaves settled by what the craft can do; absent before there is one */
  hearing: Hearing | undefined
  /** the same without what ran far below the prediction */
  compared: Hearing | undefined
  expects: CraftExpects
  prediction: Prediction | undefined
  /** m/s toward the phone at a moment of the recording; absent without a track, or with the phone on the craft */
  closing: ((time: number) => number) | undefined
  pull: { read: Pull; predicted: Range } | undefined
  /** how the GPX track was laid beside the sound; absent without one */
  sync: { lag: number; matched: boolean; likeness: number } | undefined
  /** why there is no prediction, or what it rests on */
  says: string
}

/** What the craft should have run at, by what was told of the run, and the hearing settled by it. */
export function useExpected(heard: Hearing | undefined, told: Told, craft: Craft): Expected {
  const looked = useApp((s) => s.looked)
  const balance = looked?.craft === craft ? looked.balance : undefined
  const { kind, gpx, observed, readings, phone } = told
  const throttle = observed.find((o) => o.id === 'throttle')?.state
  const expects = useMemo(() => expectsOf(craft), [craft])
  // matching is a matter of the track and the sound only
  const track = useMemo(
    () => (gpx.length < 3 ? undefined : { trace: speedsOf(gpx), closing: closingSpeeds(gpx) }),
    [gpx],
  )
  const match = useMemo(
    () =>
      track && heard
        ? syncLag(track.trace, heard.time, heard.tracks[0]?.rpm ?? new Float32Array(0))
        : undefined,
    [track, heard],
  )
  const matched = match !== undefined && isMatch(match)
  const lag = told.lag ?? (matched ? match.lag : 0)
  return useMemo(() => {
    const read = readPull(parseReadings(readings))
    const pull = read && balance?.ranged ? { read, predicted: balance.pull } : undefined
    const sync = match && { lag, matched: told.lag === undefined && matched, likeness: match.correlation }
    const settled = (
      prediction: Prediction | undefined,
      says: string,
      closing?: Expected['closing'],
    ): Expected => {
      const hearing = heard && withExpected(heard, expects, prediction)
      return {
        hearing,
        compared: hearing && prediction ? atFullThrottle(hearing, prediction) : hearing,
        expects,
        prediction,
        closing,
        pull,
        sync,
        says,
      }
    }
    const none = (says: string) => settled(undefined, says)
    if (!heard || heard.verdict.code === 'no engine') return none('')
    if (kind === 'not said')
      return none(
        'Say whether the craft was tied up or under way, and the predicted speed stands beside the heard one.',
      )
    if (throttle === 'half')
      return none('The prediction is for full throttle; this run was at half throttle.')
    if (!balance)
      return none('How the craft should go is still being worked out, or cannot be: see the Push page.')
    if (kind === 'tied up') return settled(tiedUpPrediction(balance), 'Predicted tied up, full throttle.')
    if (!track)
      return none('Add the GPX track of the run: the predicted speed depends on how fast the craft went.')
    const closing = phone === 'on shore' ? closingAt(track.trace, track.closing, lag) : undefined
    const how =
      told.lag !== undefined
        ? `set by hand to begin ${lagText(lag)} the recording`
        : matched
          ? `matched to the sound: it begins ${lagText(lag)} the recording`
          : 'which could not be matched to the sound, so both are taken to begin together'
    return settled(
      underWayPrediction(balance, track.trace, lag),
      `Predicted at the speed of the GPX track, ${how}. ${
        closing
          ? 'The heard speed is corrected for the craft’s coming and going (Doppler), the phone taken to stand where the track begins.'
          : 'The phone was on the craft, so its motion does not change the pitch.'
      }`,
      closing,
    )
  }, [heard, kind, track, match, matched, lag, told.lag, balance, throttle, readings, phone, expects])
}

const lagText = (lag: number) =>
  lag === 0 ? 'with' : `${Math.abs(lag).toFixed(1)} s ${lag > 0 ? 'after' : 'before'}`

/** Closing speed at a moment of the recording; 0 where the track does not reach. */
function closingAt(trace: SpeedTrace, closing: Float64Array, lag: number): (time: number) => number {
  const last = trace.time.length - 1
  return (time) => {
    const t = time - lag
    if (t < trace.time[0]! || t > trace.time[last]!) return 0
    let low = 0
    let high = last
    while (high - low > 1) {
      const mid = (low + high) >> 1
      if (trace.time[mid]! <= t) low = mid
      else high = mid
    }
    const span = trace.time[high]! - trace.time[low]!
    const part = span > 0 ? (t - trace.time[low]!) / span : 0
    return closing[low]! + part * (closing[high]! - closing[low]!)
  }
}
