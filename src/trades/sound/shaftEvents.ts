/** What happened, read off finished tracks. Rules are authored judgement; times in s. */
import { STEP } from './settings.ts'
import { type FrameTrack, type Stretch, soundingStretches } from './tracks.ts'

export type EventKind =
  | 'start'
  | 'stop'
  | 'cut-out'
  | 'flare'
  | 'free rev'
  | 'bog'
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
  says: string
  /** rev/min or other number the sentence rests on, where there is one */
  value?: number
  confidence: number
}

const frames = (seconds: number) => Math.round(seconds / STEP)

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

function percentile(values: Float64Array, q: number): number {
  const v = values.filter((x) => x > 0).sort()
  return v[Math.min(v.length - 1, Math.floor(q * v.length))] ?? 0
}

const round10 = (rpm: number) => Math.round(rpm / 10) * 10

export interface EventContext {
  /** rev/min per Hz of firing */
  rpmPerHertz: number
  confidence: Float64Array
  /** power above 1.1 kHz per frame, any scale */
  hiss: Float64Array
}

/** Starts, stops and short cut-outs. */
export function runningEvents(t: FrameTrack, engine: 'A' | 'B', c: EventContext): RunEvent[] {
  const out: RunEvent[] = []
  const n = t.rate.length
  const raw = soundingStretches(t)
  for (const [k, s] of raw.entries()) {
    const next = raw[k + 1]
    if (!next) break
    const gap = (next.from - s.to) * STEP
    const sure = Math.min(c.confidence[s.to - 1]!, c.confidence[next.from]!)
    if (gap < 0.5 || Math.abs(Math.log(t.rate[next.from]! / t.rate[s.to - 1]!)) < 0.05)
      if (gap < 1 && sure > 0.5)
        out.push({
          kind: 'cut-out',
          time: s.to * STEP,
          lasts: gap,
          engine,
          says: `not heard for ${gap.toFixed(1)} s`,
          confidence: 0.5 * sure,
        })
  }
  for (const s of joined(raw, 0.5)) {
    if ((s.to - s.from) * STEP < 0.8) continue
    if (s.from > frames(0.3)) {
      const rpm = t.rate[s.from]! * c.rpmPerHertz
      out.push({
        kind: 'start',
        time: s.from * STEP,
        lasts: 0,
        engine,
        says: `starts, ${round10(rpm)} rpm`,
        value: rpm,
        confidence: c.confidence[s.from]!,
      })
    }
    if (s.to < n - frames(0.5)) {
      const kind = stopKind(t, s)
      const rpm = t.rate[s.to - 1]! * c.rpmPerHertz
      out.push({
        kind: 'stop',
        time: s.to * STEP,
        lasts: 0,
        engine,
        says: `stops from ${round10(rpm)} rpm (${kind})`,
        value: rpm,
        confidence: c.confidence[s.to - 1]!,
      })
    }
  }
  return out
}

/** Cut at speed, or run down. */
function stopKind(t: FrameTrack, s: Stretch): string {
  const back = Math.max(s.from, s.to - frames(0.6))
  const fall = Math.log(t.rate[back]! / t.rate[s.to - 1]!)
  return fall < 0.08 ? 'cut at speed' : 'ran down'
}

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

/** Flares (the load slips away), free revs from idle, and bogs. */
export function speedEvents(t: FrameTrack, engine: 'A' | 'B', c: EventContext): RunEvent[] {
  const out: RunEvent[] = []
  for (const s of joined(soundingStretches(t), 0.2)) {
    if ((s.to - s.from) * STEP < 1.5) continue
    const part = t.rate.slice(s.from, s.to)
    const middle = percentile(part, 0.5)
    for (const r of surges(t, s, Math.log(1.15))) {
      const sure = c.confidence[r.top]!
      const rpm = r.peak * c.rpmPerHertz
      const lasts = (r.to - r.from) * STEP
      const time = r.from * STEP
      const ratio = r.peak / middle
      const fromLoaded = Math.abs(Math.log(r.before / middle)) < 0.17
      if (fromLoaded && ratio > 1.17 && ratio < 2.1 && r.to < s.to && lasts > 0.2 && lasts < 4)
        out.push({
          kind: 'flare',
          time,
          lasts,
          engine,
          says: `races to ${round10(rpm)} rpm, ${((ratio - 1) * 100).toFixed(0)} % over its usual speed, for ${lasts.toFixed(1)} s: the load slipped or the pump drew air`,
          value: rpm,
          confidence: sure,
        })
      else if (r.peak > 1.8 * r.before)
        out.push({
          kind: 'free rev',
          time,
          lasts,
          engine,
          says: `revved from ${round10(r.before * c.rpmPerHertz)} to ${round10(rpm)} rpm`,
          value: rpm,
          confidence: sure,
        })
      const bog = bogAfter(t, s, r)
      if (bog) out.push({ ...bog, engine, confidence: c.confidence[r.from]! })
    }
  }
  return out
}

/** share of the first crest that counts as made up again: full throttle may end no higher than the opening's first swing */
const REGAINED = 0.95
/** s for which the speed regained must hold */
const HELD = 1.5

/**
 * A fall of over 10 % within 0.9 s of an opening that is made up again within 2 s, and then holds: a throttle worked by hand
 * comes down again soon.
 */
function bogAfter(t: FrameTrack, s: Stretch, r: Surge): Omit<RunEvent, 'engine' | 'confidence'> | undefined {
  const until = Math.min(s.to, r.from + frames(0.9))
  let crest = r.from
  for (let k = r.from; k < until; k++) {
    if (t.rate[k]! > t.rate[crest]!) crest = k
    else if (t.rate[k]! < 0.9 * t.rate[crest]! && t.rate[crest]! > 1.1 * r.before) {
      let low = k
      const end = Math.min(s.to, k + frames(2))
      for (let j = k; j < end; j++) {
        if (t.rate[j]! < t.rate[low]!) low = j
        if (t.rate[j]! > REGAINED * t.rate[crest]!) {
          if (!holds(t, s, j)) return undefined
          const depth = 1 - t.rate[low]! / t.rate[crest]!
          return {
            kind: 'bog',
            time: crest * STEP,
            lasts: (j - crest) * STEP,
            says: `bogs after the throttle opens: loses ${(100 * depth).toFixed(0)} % and recovers`,
            value: depth,
          }
        }
      }
      return undefined
    }
  }
  return undefined
}

/** Whether the speed of frame `from` is kept, within a fifth, for as long as HELD. */
function holds(t: FrameTrack, s: Stretch, from: number): boolean {
  const until = from + frames(HELD)
  if (until > s.to) return false
  for (let k = from; k < until; k++) if (t.rate[k]! < 0.8 * t.rate[from]!) return false
  return true
}

/** A drop of over 15 % inside 0.2 s with a burst of broadband noise. */
export function waterHits(t: FrameTrack, engine: 'A' | 'B', c: EventContext): RunEvent[] {
  const out: RunEvent[] = []
  const usual = percentile(c.hiss, 0.5)
  const span = frames(0.2)
  for (let i = span; i < t.rate.length; i++) {
    const a = t.rate[i - span]!
    const b = t.rate[i]!
    if (a <= 0 || b <= 0 || b > 0.85 * a) continue
    let burst = 0
    for (let k = i - 2 * span; k <= i; k++) burst = Math.max(burst, c.hiss[k] ?? 0)
    if (burst < 10 * usual) continue
    out.push({
      kind: 'water hit',
      time: i * STEP,
      lasts: 0,
      engine,
      says: `drops ${(100 * (1 - b / a)).toFixed(0)} % with a burst of spray`,
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
    const carries = shift < -0.04
    out.push({
      kind: 'one dead',
      time: e.time,
      lasts: 0,
      engine: e.engine,
      says: `engine ${e.engine} stops while the other goes on at ${round10(after * rpmPerHertz)} rpm${carries ? `, ${(-100 * shift).toFixed(0)} % slower: it now carries both` : ''}`,
      value: shift,
      confidence: e.confidence,
    })
  }
  return out
}

/** Flares of both engines at the same time: their shared pump lost its water. */
export function sharedFlares(events: readonly RunEvent[]): RunEvent[] {
  const a = events.filter((e) => e.kind === 'flare' && e.engine === 'A')
  const b = events.filter((e) => e.kind === 'flare' && e.engine === 'B')
  return a
    .filter((e) => b.some((f) => Math.abs(e.time - f.time) < 0.4))
    .map((e) => ({
      ...e,
      kind: 'ventilation' as const,
      engine: 'both' as const,
      says: 'both engines race together: their pump drew air',
    }))
}
