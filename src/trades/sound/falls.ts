/**
 * Falls of speed that no throttle worked by hand explains: from a speed that was kept, quickly, and held for a while. A hand that
 * closes the throttle takes the speed far down, to idle; that is left out. Limits in soundLimits.ts; times in s.
 */
import { inSeconds } from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import { atRpm, percentile } from './saySpeed.ts'
import { STEP } from './settings.ts'
import { type EventContext, frames, joined, type RunEvent } from './shaftEvents.ts'
import type { SoundLimits } from './soundLimits.ts'
import { type FrameTrack, type Stretch, soundingStretches } from './tracks.ts'

/** s of a gap within which a line is the same one */
const GAP = 0.2

/** The speed kept just before frame `to`, Hz; undefined where it was not kept, or not heard throughout. */
function keptBefore(t: FrameTrack, s: Stretch, to: number, limits: SoundLimits): number | undefined {
  const from = to - frames(limits.fallSettled.value)
  if (from < s.from) return undefined
  let low = Number.POSITIVE_INFINITY
  let high = 0
  for (let i = from; i < to; i++) {
    low = Math.min(low, t.rate[i]!)
    high = Math.max(high, t.rate[i]!)
  }
  if (!(low > 0 && high < limits.fallBand.value * low)) return undefined
  // its end counts: a speed that drifts has not fallen by what it drifted before
  return percentile(t.rate.subarray(Math.max(from, to - frames(0.3)), to), 0.5) || undefined
}

interface Fall {
  /** frames */
  from: number
  to: number
  /** Hz */
  before: number
  after: number
  madeUp: boolean
  /** it ends in a race, not at the speed before */
  races: boolean
}

/** The fall that frame `at` lies in, when the speed kept until a moment before is lost there. */
function fallAt(t: FrameTrack, s: Stretch, at: number, limits: SoundLimits): Fall | undefined {
  const before = keptBefore(t, s, at - frames(limits.fallQuick.value), limits)
  if (before === undefined || !(t.rate[at]! > 0 && t.rate[at]! < limits.fall.value * before)) return undefined
  const over = limits.fallBack.value * before
  let to = at
  while (to < s.to && t.rate[to]! < over) to++
  const after = percentile(t.rate.subarray(at, to), 0.5)
  const lasts = (to - at) * STEP
  let peak = 0
  for (let i = to; i < Math.min(s.to, to + frames(0.6)); i++) peak = Math.max(peak, t.rate[i]!)
  const races = peak > limits.flareLeast.value * before
  const madeUp = to < s.to && lasts < limits.dipLongest.value && !races
  return { from: at, to, before, after, madeUp, races }
}

/** Falls of one engine's speed, none where a hand closed the throttle. */
export function fallEvents(t: FrameTrack, engine: 'A' | 'B', c: EventContext): RunEvent[] {
  const { limits } = c
  const out: RunEvent[] = []
  for (const s of joined(soundingStretches(t), GAP))
    for (let i = s.from; i < s.to; i++) {
      const fall = fallAt(t, s, i, limits)
      if (!fall) continue
      // what is looked back on from here on lies past this fall; a second one may follow while it lasts
      i = Math.min(fall.to, fall.from + frames(limits.fallQuick.value + limits.fallSettled.value))
      const lasts = (fall.to - fall.from) * STEP
      // what ends in a race was no hand that closed the throttle
      const deepest = fall.madeUp || fall.races ? limits.dipDeepest.value : limits.fallDeepest.value
      if (lasts < limits.fallHolds.value || fall.after < deepest * fall.before) continue
      const speeds = say`from ${atRpm(fall.before * c.rpmPerHertz)} to ${atRpm(fall.after * c.rpmPerHertz)}`
      out.push({
        kind: 'fall',
        time: fall.from * STEP,
        lasts,
        engine,
        says:
          fall.to < s.to
            ? say`${speeds} for ${inSeconds(lasts)}${fall.races ? '' : ', and back'}`
            : say`${speeds}, and stays there`,
        value: fall.after * c.rpmPerHertz,
        before: fall.before * c.rpmPerHertz,
        after: fall.after * c.rpmPerHertz,
        confidence: Math.min(c.confidence[fall.from]!, c.confidence[Math.floor((fall.from + fall.to) / 2)]!),
      })
    }
  return out
}

/** s around an event that tells of a change of speed already */
const NEAR = 1

/** The falls that no other event tells of: the end of racing, a bog, water, the other engine's death. */
export function fallsUntold(falls: readonly RunEvent[], events: readonly RunEvent[]): RunEvent[] {
  const telling = new Set<RunEvent['kind']>(['flare', 'ventilation', 'bog', 'water hit', 'one dead'])
  return falls.filter(
    (f) =>
      !events.some((e) => telling.has(e.kind) && f.time > e.time - NEAR && f.time < e.time + e.lasts + NEAR),
  )
}
