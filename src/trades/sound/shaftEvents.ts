/** What happened, read off finished tracks. Its limits stand in soundLimits.ts; times in s. */
import { inPercent, inSeconds } from '../../base/answers/amounts.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { atRpm, percentile } from './saySpeed.ts'
import { STEP } from './settings.ts'
import type { SoundLimits } from './soundLimits.ts'
import { readStop, type StopReading, stopSays } from './stops.ts'
import { type FrameTrack, type Stretch, soundingStretches } from './tracks.ts'

export type EventKind =
  | 'start'
  | 'stop'
  | 'cut-out'
  | 'flare'
  | 'load lost'
  | 'load back'
  | 'step up'
  | 'hunting'
  | 'fires again'
  | 'coupling opens'
  | 'speed rises'
  | 'bog'
  | 'fall'
  | 'misfire'
  | 'four-stroking'
  | 'water hit'
  | 'one dead'
  | 'ventilation'
  | 'beating'

export interface RunEvent {
  kind: EventKind
  /** s */
  time: number
  /** s; 0 for an instant */
  lasts: number
  /** label of the engine, or both */
  engine: 'A' | 'B' | 'both'
  /** goes on after the kind and a colon */
  says: Sentence
  /** rev/min or other number the sentence rests on, where there is one */
  value?: number
  /** rev/min before and after it, where speed changes; of hunting, the ends of its swing */
  before?: number
  after?: number
  /** of a stop: how */
  how?: StopReading['how']
  /** what it cannot have been, in words */
  excludes?: string
  confidence: number
}

/** Frames in so many s. */
export const frames = (seconds: number) => Math.round(seconds / STEP)

/** Joins stretches with gaps under `gap` s. */
export function joined(list: readonly Stretch[], gap: number): Stretch[] {
  const out: Stretch[] = []
  for (const s of list) {
    const last = out[out.length - 1]
    if (last && s.from - last.to < frames(gap)) last.to = s.to
    else out.push({ ...s })
  }
  return out
}

export interface EventContext {
  /** rev/min per Hz of firing */
  rpmPerHertz: number
  confidence: Float64Array
  /** power above 1.1 kHz per frame, any scale */
  hiss: Float64Array
  limits: SoundLimits
}

/** Starts, stops and short cut-outs. */
export function runningEvents(t: FrameTrack, engine: 'A' | 'B', c: EventContext): RunEvent[] {
  const out: RunEvent[] = []
  const { limits } = c
  const n = t.rate.length
  const raw = soundingStretches(t)
  for (const [k, s] of raw.entries()) {
    const next = raw[k + 1]
    if (!next) break
    const gap = (next.from - s.to) * STEP
    const sure = Math.min(c.confidence[s.to - 1]!, c.confidence[next.from]!)
    const change = Math.abs(Math.log(t.rate[next.from]! / t.rate[s.to - 1]!))
    const same = gap < limits.cutShort.value || change < Math.log(limits.cutSame.value)
    if (same && gap < limits.cutMost.value && sure > limits.cutSure.value)
      out.push({
        kind: 'cut-out',
        time: s.to * STEP,
        lasts: gap,
        engine,
        says: say`not heard for ${inSeconds(gap)}`,
        confidence: 0.5 * sure,
      })
  }
  for (const s of joined(raw, 0.5)) {
    if ((s.to - s.from) * STEP < limits.startLeast.value) continue
    if (s.from > frames(0.3)) {
      const rpm = t.rate[s.from]! * c.rpmPerHertz
      out.push({
        kind: 'start',
        time: s.from * STEP,
        lasts: 0,
        engine,
        says: say`starts, ${atRpm(rpm)}`,
        value: rpm,
        confidence: c.confidence[s.from]!,
      })
    }
    if (s.to < n - frames(0.5)) {
      const stop = readStop(t, s, c.rpmPerHertz, limits)
      const { says, excludes, part } = stopSays(stop, c.rpmPerHertz)
      out.push({
        kind: 'stop',
        time: s.to * STEP,
        lasts: 0,
        engine,
        says,
        value: stop.last * c.rpmPerHertz,
        before: stop.kept * c.rpmPerHertz,
        after: 0,
        how: stop.how,
        ...(excludes ? { excludes } : {}),
        confidence: part * c.confidence[s.to - 1]!,
      })
    }
  }
  return out
}

/** A drop inside 0.2 s with a burst of broadband noise. */
export function waterHits(t: FrameTrack, engine: 'A' | 'B', c: EventContext): RunEvent[] {
  const out: RunEvent[] = []
  const { limits } = c
  const usual = percentile(c.hiss, 0.5)
  const span = frames(0.2)
  for (let i = span; i < t.rate.length; i++) {
    const a = t.rate[i - span]!
    const b = t.rate[i]!
    if (a <= 0 || b <= 0 || b > limits.sprayFall.value * a) continue
    let burst = 0
    for (let k = i - 2 * span; k <= i; k++) burst = Math.max(burst, c.hiss[k] ?? 0)
    if (burst < limits.sprayBurst.value * usual) continue
    out.push({
      kind: 'water hit',
      time: i * STEP,
      lasts: 0,
      engine,
      says: say`drops ${inPercent(1 - b / a)} with a burst of spray`,
      value: 1 - b / a,
      confidence: 0.5 * c.confidence[i]!,
    })
    i += frames(1)
  }
  return out
}

/** One engine stops while the other goes on. */
export function oneDead(
  a: FrameTrack,
  b: FrameTrack,
  events: readonly RunEvent[],
  rpmPerHertz: number,
  limits: SoundLimits,
): RunEvent[] {
  const out: RunEvent[] = []
  for (const e of events) {
    if (e.kind !== 'stop') continue
    const other = e.engine === 'A' ? b : a
    const i = Math.round(e.time / STEP)
    const before = other.rate[Math.max(0, i - frames(0.6))]!
    const after = other.rate[Math.min(other.rate.length - 1, i + frames(1))]!
    if (before <= 0 || after <= 0) continue
    const shift = after / before - 1
    const carries = shift < -limits.carries.value
    out.push({
      kind: 'one dead',
      time: e.time,
      lasts: 0,
      engine: e.engine,
      says: say`engine ${e.engine} stops while the other goes on at ${atRpm(after * rpmPerHertz)}${carries ? say`, ${inPercent(-shift)} slower: it now carries both` : ''}`,
      value: shift,
      confidence: e.confidence,
    })
  }
  return out
}

/** A second line that begins at the speed of the first and goes its own way: the coupling between the two opened. */
export function openedCouplings(
  a: FrameTrack,
  b: FrameTrack,
  events: readonly RunEvent[],
  c: Pick<EventContext, 'rpmPerHertz' | 'limits'>,
): RunEvent[] {
  return events.map((e) => {
    if (e.kind !== 'start' || e.engine === 'both') return e
    const [own, other] = e.engine === 'A' ? [a, b] : [b, a]
    const i = Math.round(e.time / STEP)
    const kept = other.rate[Math.max(0, i - frames(0.5))]!
    const begins = own.rate[i]!
    const later = Math.min(own.rate.length - 1, i + frames(1.5))
    const apart = Math.abs(Math.log(own.rate[later]! / other.rate[later]!))
    const near = Math.log(c.limits.opensNear.value)
    if (!(kept > 0 && Math.abs(Math.log(begins / kept)) < near && Number.isFinite(apart) && apart > near))
      return e
    const speeds = [own, other].map((t) => t.rate[later]! * c.rpmPerHertz) as [number, number]
    return {
      ...e,
      kind: 'coupling opens' as const,
      engine: 'both' as const,
      says: say`one line at ${atRpm(kept * c.rpmPerHertz)} parts into ${atRpm(Math.max(...speeds))} and ${atRpm(Math.min(...speeds))}, both firing`,
      before: kept * c.rpmPerHertz,
      after: Math.max(...speeds),
      excludes: 'an engine that starts, which comes up from idle',
      confidence: 0.8 * e.confidence,
    }
  })
}

/** Flares of both engines at the same time: their shared pump lost its water. */
export function sharedFlares(events: readonly RunEvent[], limits: SoundLimits): RunEvent[] {
  const a = events.filter((e) => e.kind === 'flare' && e.engine === 'A')
  const b = events.filter((e) => e.kind === 'flare' && e.engine === 'B')
  return a
    .filter((e) => b.some((f) => Math.abs(e.time - f.time) < limits.together.value))
    .map((e) => ({
      ...e,
      kind: 'ventilation' as const,
      engine: 'both' as const,
      says: 'both engines race together: their pump drew air',
    }))
}
