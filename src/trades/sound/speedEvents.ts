/** Racing, rises of speed and bogs, read off a finished track. Its limits stand in soundLimits.ts; times in s. */
import { inPercent, inSeconds } from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import { atRpm, percentile } from './saySpeed.ts'
import { STEP } from './settings.ts'
import { type EventContext, frames, joined, type RunEvent } from './shaftEvents.ts'
import type { SoundLimits } from './soundLimits.ts'
import { type FrameTrack, type Stretch, soundingStretches } from './tracks.ts'

/** A rise of speed: frame it starts in, its top, and the frame it is over. */
interface Surge {
  from: number
  top: number
  to: number
  before: number
  peak: number
}

/** s without a further gain of SETTLED after which a rise is over, and that gain */
const SETTLES = 0.3
const SETTLED = 1.03
/** s after which a speed that has not come down again is simply the new speed */
const LASTS = 4

/**
 * Rises of at least `least` (ln f) within half a second, with where they end. A rise ends where the speed settles: what comes
 * on top of it later, as a flare comes on top of an opened throttle, is a rise of its own.
 */
export function surges(t: FrameTrack, s: Stretch, least: number): Surge[] {
  const out: Surge[] = []
  const look = frames(0.5)
  let floor = s.from
  let i = s.from + 1
  while (i < s.to) {
    const from = Math.max(floor, i - look)
    let low = from
    for (let k = from; k < i; k++) if (t.rate[k]! <= t.rate[low]!) low = k
    if (Math.log(t.rate[i]! / t.rate[low]!) < least) {
      i++
      continue
    }
    const top = topOf(t, s, i)
    // over when most of the rise is lost again
    const half = Math.sqrt(t.rate[low]! * t.rate[top]!)
    let to = top
    while (to < s.to && t.rate[to]! > half) to++
    // the rise begins where the speed last stood within a few per cent of its low
    let start = low
    while (start + 1 < i && t.rate[start + 1]! < 1.03 * t.rate[low]!) start++
    out.push({ from: start, top, to, before: t.rate[low]!, peak: t.rate[top]! })
    const stays = (to - start) * STEP > LASTS || to === s.to
    floor = stays ? top : to
    i = Math.max(floor, i) + 1
  }
  return out
}

/** Frame of the greatest speed of the rise that frame `i` lies in. */
function topOf(t: FrameTrack, s: Stretch, i: number): number {
  const wait = frames(SETTLES)
  let top = i
  for (let k = i; k < Math.min(s.to, i + frames(1.5)); k++) {
    if (t.rate[k]! > t.rate[top]!) top = k
    let ahead = 0
    for (let j = k; j < Math.min(s.to, k + wait); j++) ahead = Math.max(ahead, t.rate[j]!)
    if (k >= top && ahead < SETTLED * t.rate[top]!) {
      for (let j = k; j < Math.min(s.to, k + wait); j++) if (t.rate[j]! > t.rate[top]!) top = j
      return top
    }
  }
  return top
}

/** Flares (the load slips away), other rises, and bogs. Nobody says whether the shaft was free, so a rise is only a rise. */
export function speedEvents(t: FrameTrack, engine: 'A' | 'B', c: EventContext): RunEvent[] {
  const out: RunEvent[] = []
  const { limits } = c
  for (const s of joined(soundingStretches(t), 0.2)) {
    if ((s.to - s.from) * STEP < 1.5) continue
    const part = t.rate.slice(s.from, s.to)
    const middle = percentile(part, 0.5)
    for (const r of surges(t, s, Math.log(limits.surge.value))) {
      const sure = c.confidence[r.top]!
      const rpm = r.peak * c.rpmPerHertz
      const lasts = (r.to - r.from) * STEP
      const time = r.from * STEP
      const ratio = r.peak / middle
      const fromLoaded = Math.abs(Math.log(r.before / middle)) < Math.log(limits.flareUsual.value)
      const flares =
        ratio > limits.flareLeast.value &&
        r.before * c.rpmPerHertz > limits.idleMost.value &&
        lasts > limits.flareShort.value &&
        lasts < limits.flareLong.value
      if (fromLoaded && flares && r.to < s.to)
        out.push({
          kind: 'flare',
          time,
          lasts,
          engine,
          says: say`races to ${atRpm(rpm)}, ${inPercent(ratio - 1)} over its usual speed, for ${inSeconds(lasts)}: the load slipped or the pump drew air`,
          value: rpm,
          confidence: sure,
        })
      else if (r.peak > limits.rise.value * r.before)
        out.push({
          kind: 'speed rises',
          time,
          lasts,
          engine,
          says: say`from ${atRpm(r.before * c.rpmPerHertz)} to ${atRpm(rpm)}`,
          value: rpm,
          before: r.before * c.rpmPerHertz,
          after: rpm,
          confidence: sure,
        })
      const bog = bogAfter(t, s, r, limits)
      if (bog) out.push({ ...bog, engine, confidence: c.confidence[r.from]! })
    }
  }
  return out
}

/**
 * A fall soon after an opening that is made up again, and then holds: a throttle worked by hand
 * comes down again soon.
 */
function bogAfter(
  t: FrameTrack,
  s: Stretch,
  r: Surge,
  limits: SoundLimits,
): Omit<RunEvent, 'engine' | 'confidence'> | undefined {
  const until = Math.min(s.to, r.from + frames(limits.bogWithin.value))
  let crest = r.from
  for (let k = r.from; k < until; k++) {
    if (t.rate[k]! > t.rate[crest]!) crest = k
    else if (
      t.rate[k]! < limits.bogFall.value * t.rate[crest]! &&
      t.rate[crest]! > limits.bogRise.value * r.before
    ) {
      let low = k
      const end = Math.min(s.to, k + frames(limits.bogBack.value))
      for (let j = k; j < end; j++) {
        if (t.rate[j]! < t.rate[low]!) low = j
        if (t.rate[j]! > limits.bogRegained.value * t.rate[crest]!) {
          if (!holds(t, s, j, limits)) return undefined
          const depth = 1 - t.rate[low]! / t.rate[crest]!
          return {
            kind: 'bog',
            time: crest * STEP,
            lasts: (j - crest) * STEP,
            says: say`bogs after the throttle opens: loses ${inPercent(depth)} and recovers`,
            value: depth,
          }
        }
      }
      return undefined
    }
  }
  return undefined
}

/** Whether the speed of frame `from` is kept long enough. */
function holds(t: FrameTrack, s: Stretch, from: number, limits: SoundLimits): boolean {
  const until = from + frames(limits.bogHeld.value)
  if (until > s.to) return false
  for (let k = from; k < until; k++) if (t.rate[k]! < limits.bogKept.value * t.rate[from]!) return false
  return true
}
