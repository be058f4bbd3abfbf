/** The heard speed beside the one the model predicts. */
import { atSource } from './doppler.ts'
import type { Hearing, Track } from './hearingTypes.ts'

/** Predicted engine speed, rev/min, over time or at one speed; low and high are its likely range. */
export interface Prediction {
  /** s; one entry = the same all the time */
  time: readonly number[]
  rpm: readonly number[]
  low: readonly number[]
  high: readonly number[]
}

export interface Residual {
  label: 'A' | 'B'
  /** s */
  from: number
  to: number
  /** rev/min, median over the stretch, corrected for the craft's motion where that was given */
  heard: number
  predicted: number
  /** heard / predicted - 1 */
  part: number
  /** the range of `part` that the prediction's own range and the hearing's error allow for */
  low: number
  high: number
  standing: 'within' | 'low' | 'high'
}

/** error of the heard speed itself, part */
const HEARING_ERROR = 0.004
const STEADY = 0.03
const SHORTEST = 2
/** s beyond the prediction's ends that its end still holds for */
const EDGE = 2

function between(time: readonly number[], v: readonly number[], t: number): number {
  if (time.length < 2) return v[0] ?? Number.NaN
  if (t <= time[0]!) return v[0]!
  for (let i = 1; i < time.length; i++)
    if (t <= time[i]!)
      return v[i - 1]! + ((t - time[i - 1]!) / (time[i]! - time[i - 1]!)) * (v[i]! - v[i - 1]!)
  return v[v.length - 1]!
}

/** The prediction at a moment, rev/min. */
export const predictedAt = (p: Prediction, time: number) => ({
  rpm: between(p.time, p.rpm, time),
  low: between(p.time, p.low, time),
  high: between(p.time, p.high, time),
})

interface Steady {
  from: number
  to: number
}

/** Stretches of at least 2 s in which the speed keeps within ±3 % and is believed. */
export function steadyRuns(track: Track, step: number): Steady[] {
  const out: Steady[] = []
  const n = track.rpm.length
  for (let i = 0; i < n; ) {
    if (track.rpm[i]! <= 0 || track.confidence[i]! < 0.5) {
      i++
      continue
    }
    let low = track.rpm[i]!
    let high = low
    let k = i
    for (; k < n && track.rpm[k]! > 0 && track.confidence[k]! >= 0.5; k++) {
      const lo = Math.min(low, track.rpm[k]!)
      const hi = Math.max(high, track.rpm[k]!)
      if (hi > lo * (1 + 2 * STEADY)) break
      low = lo
      high = hi
    }
    if ((k - i) * step >= SHORTEST) out.push({ from: i, to: k })
    i = k + 1
  }
  return out
}

/** Residuals of every steady stretch; `closing` gives the craft's speed toward the phone, m/s, at a time. */
export function residuals(
  hearing: Hearing,
  prediction: Prediction,
  closing: (time: number) => number = () => 0,
): Residual[] {
  if (prediction.rpm.length === 0) return []
  // beside a track that ended earlier or began later there is nothing to compare with
  const covered = (time: number) =>
    prediction.time.length < 2 ||
    (time >= prediction.time[0]! - EDGE && time <= prediction.time[prediction.time.length - 1]! + EDGE)
  const inside = (s: Steady) => covered(s.from * hearing.step) && covered(s.to * hearing.step)
  return hearing.tracks.flatMap((track) =>
    steadyRuns(track, hearing.step)
      .filter(inside)
      .map((s) => {
        const values = Array.from(track.rpm.subarray(s.from, s.to), (v, i) =>
          atSource(v, closing((s.from + i) * hearing.step)),
        )
        values.sort((a, b) => a - b)
        const heard = values[Math.floor(values.length / 2)]!
        const mid = 0.5 * (s.from + s.to) * hearing.step
        const predicted = between(prediction.time, prediction.rpm, mid)
        const low = between(prediction.time, prediction.low, mid) / predicted - 1 - HEARING_ERROR
        const high = between(prediction.time, prediction.high, mid) / predicted - 1 + HEARING_ERROR
        const part = heard / predicted - 1
        return {
          label: track.label,
          from: s.from * hearing.step,
          to: s.to * hearing.step,
          heard,
          predicted,
          part,
          low,
          high,
          standing: part < low ? ('low' as const) : part > high ? ('high' as const) : ('within' as const),
        }
      }),
  )
}
