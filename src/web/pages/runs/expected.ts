import { useMemo } from 'react'
import { tiedUpPrediction, underWayPrediction } from '../../../balance/heardRun.ts'
import { closingSpeeds, type SpeedTrace, speedsOf, syncLag } from '../../../sound/gpx.ts'
import type { Hearing } from '../../../sound/hearing.ts'
import type { Prediction } from '../../../sound/residuals.ts'
import { useApp } from '../../state/hooks.ts'
import type { Told } from './bench.ts'

export interface Expected {
  prediction: Prediction | undefined
  /** m/s toward the phone at a moment of the recording; absent without a track */
  closing: ((time: number) => number) | undefined
  /** why there is no prediction, or what it rests on */
  says: string
}

/** What the craft should have run at, by what was told of the run. */
export function useExpected(hearing: Hearing | undefined, told: Told): Expected {
  const craft = useApp((s) => s.craft)
  const looked = useApp((s) => s.looked)
  const balance = craft && looked?.craft === craft ? looked.balance : undefined
  const { kind, gpx, observed } = told
  const throttle = observed.find((o) => o.id === 'throttle')?.state
  return useMemo(() => {
    const none = (says: string): Expected => ({ prediction: undefined, closing: undefined, says })
    if (!hearing || hearing.verdict.code === 'no engine') return none('')
    if (kind === 'not said')
      return none(
        'Say whether the craft was tied up or under way, and the predicted speed stands beside the heard one.',
      )
    if (throttle === 'half')
      return none('The prediction is for full throttle; this run was at half throttle.')
    if (!balance)
      return none('How the craft should go is still being worked out, or cannot be: see the Push page.')
    if (kind === 'tied up')
      return {
        prediction: tiedUpPrediction(balance),
        closing: undefined,
        says: 'Predicted tied up, full throttle.',
      }
    if (gpx.length < 3)
      return none('Add the GPX track of the run: the predicted speed depends on how fast the craft went.')
    const trace = speedsOf(gpx)
    const found = syncLag(trace, hearing.time, hearing.tracks[0]?.rpm ?? new Float32Array(0))
    // a weak likeness is no reason to shift anything
    const lag = found.correlation > 0.4 ? found.lag : 0
    return {
      prediction: underWayPrediction(balance, trace, lag),
      closing: closingAt(trace, closingSpeeds(gpx), lag),
      says:
        lag === 0
          ? 'Predicted at the speed of the GPX track, both taken to begin together.'
          : `Predicted at the speed of the GPX track, which fits best ${Math.abs(lag)} s ${lag > 0 ? 'later' : 'earlier'} in the recording.`,
    }
  }, [hearing, kind, gpx, balance, throttle])
}

function closingAt(trace: SpeedTrace, closing: Float64Array, lag: number): (time: number) => number {
  return (time) => {
    const i = trace.time.findIndex((t) => t + lag >= time)
    return closing[i < 0 ? closing.length - 1 : i] ?? 0
  }
}
