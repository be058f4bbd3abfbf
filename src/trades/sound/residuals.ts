/** The heard speed beside the one the model predicts. */
import { atSource } from './doppler.ts'
import type { Hearing, Track } from './hearingTypes.ts'
import type { EventKind } from './shaftEvents.ts'
import type { ShaftRoots } from './sharedShaft.ts'
import { type SoundLimits, soundLimits } from './soundLimits.ts'

/** Predicted engine speed, rev/min, over time or at one speed; low and high are its likely range. */
export interface Prediction {
  /** s; one entry = the same all the time */
  time: readonly number[]
  rpm: readonly number[]
  low: readonly number[]
  high: readonly number[]
  /** the shaft's other speeds, as parts of this one */
  roots?: ShaftRoots
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

/** Stretches in which the speed keeps within a band and is believed. */
function steadyRuns(track: Track, step: number, limits: SoundLimits): Steady[] {
  const out: Steady[] = []
  const believed = limits.believed.value
  const n = track.rpm.length
  for (let i = 0; i < n; ) {
    if (track.rpm[i]! <= 0 || track.confidence[i]! < believed) {
      i++
      continue
    }
    let low = track.rpm[i]!
    let high = low
    let k = i
    for (; k < n && track.rpm[k]! > 0 && track.confidence[k]! >= believed; k++) {
      const lo = Math.min(low, track.rpm[k]!)
      const hi = Math.max(high, track.rpm[k]!)
      if (hi > lo * (1 + 2 * limits.steadyBand.value)) break
      low = lo
      high = hi
    }
    if ((k - i) * step >= limits.steadyLeast.value) out.push({ from: i, to: k })
    i = k + 1
  }
  return out
}

/** Residuals of every steady stretch; `closing` gives the craft's speed toward the phone, m/s, at a time. */
export function residuals(
  hearing: Hearing,
  prediction: Prediction,
  closing: (time: number) => number = () => 0,
  limits: SoundLimits = soundLimits,
): Residual[] {
  const edge = limits.edge.value
  const error = limits.hearingError.value
  // an engine predicted to stand still is compared with nothing
  if (prediction.rpm.length === 0 || !prediction.rpm.every((rpm) => rpm > 0)) return []
  // beside a track that ended earlier or began later there is nothing to compare with
  const covered = (time: number) =>
    prediction.time.length < 2 ||
    (time >= prediction.time[0]! - edge && time <= prediction.time[prediction.time.length - 1]! + edge)
  const inside = (s: Steady) => covered(s.from * hearing.step) && covered(s.to * hearing.step)
  return hearing.tracks.flatMap((track) =>
    steadyRuns(track, hearing.step, limits)
      .filter(inside)
      .map((s) => {
        const values = Array.from(track.rpm.subarray(s.from, s.to), (v, i) =>
          atSource(v, closing((s.from + i) * hearing.step)),
        )
        values.sort((a, b) => a - b)
        const heard = values[Math.floor(values.length / 2)]!
        const mid = 0.5 * (s.from + s.to) * hearing.step
        const predicted = between(prediction.time, prediction.rpm, mid)
        const low = between(prediction.time, prediction.low, mid) / predicted - 1 - error
        const high = between(prediction.time, prediction.high, mid) / predicted - 1 + error
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

/** What happens while it lasts is another state than the one predicted: all firing, loaded, steady. */
const otherwise: ReadonlySet<EventKind> = new Set<EventKind>([
  'one dead',
  'load lost',
  'flare',
  'ventilation',
  'hunting',
])

/**
 * The hearing as the comparison may use it: the prediction is for full throttle and all engines firing, so what ran far below it, or
 * while a step inside the run says otherwise, is left out (its confidence is set to 0) and cannot be mistaken for a weak engine.
 */
export function atFullThrottle(h: Hearing, p: Prediction, limits: SoundLimits = soundLimits): Hearing {
  const least = limits.fullThrottle.value * Math.min(...p.rpm)
  const other = h.events.filter((e) => otherwise.has(e.kind))
  const asPredicted = (t: Track, i: number) =>
    t.rpm[i]! >= least &&
    !other.some(
      (e) =>
        (e.engine === 'both' || e.engine === t.label || e.kind === 'one dead') &&
        i * h.step >= e.time - h.step &&
        i * h.step <= e.time + e.lasts,
    )
  return {
    ...h,
    tracks: h.tracks.map((t) => ({
      ...t,
      confidence: t.confidence.map((c, i) => (asPredicted(t, i) ? c : 0)),
    })),
  }
}

/** A hearing with what was predicted for it. */
export interface Predicted {
  hearing: Hearing
  prediction?: Prediction | undefined
  /** m/s toward the phone at a time */
  closing?: ((time: number) => number) | undefined
}

/** Every steady stretch near full throttle beside the prediction; none where there is none. */
export const comparedSpeeds = (
  { hearing, prediction, closing }: Predicted,
  limits: SoundLimits = soundLimits,
): Residual[] =>
  prediction ? residuals(atFullThrottle(hearing, prediction, limits), prediction, closing, limits) : []

/** The longest steady stretch of a line; undefined where none was compared. */
export const longestOf = (list: readonly Residual[], label: 'A' | 'B'): Residual | undefined =>
  list.filter((r) => r.label === label).sort((a, b) => b.to - b.from - (a.to - a.from))[0]

/** How a heard speed stands to the expected one, in two words. */
export const readsAs: Record<Residual['standing'], string> = {
  within: 'as predicted',
  low: 'slower',
  high: 'faster',
}
