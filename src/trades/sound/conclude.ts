/** From decided tracks to the finished hearing. */
import { inDb, inPercent, inTimes } from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Flag } from '../../base/answers/solved.ts'
import { filtered, highPass } from '../../base/numerics/biquad.ts'
import type { Decision } from './decide.ts'
import { fallEvents, fallsUntold } from './falls.ts'
import type { FiringQuality, Hearing, Spectrogram, Track, Verdict } from './hearingTypes.ts'
import { loadEvents, withLoads } from './loadEvents.ts'
import {
  type CycleReading,
  findBladePass,
  halfOrderIndex,
  onAngle,
  orderSpectrum,
  readCycles,
  turnsAlong,
} from './orders.ts'
import { relabel } from './relabel.ts'
import { ANALYSIS_RATE } from './resample.ts'
import { HOP, STEP } from './settings.ts'
import {
  oneDead,
  openedCouplings,
  type RunEvent,
  runningEvents,
  sharedFlares,
  waterHits,
} from './shaftEvents.ts'
import { type SoundLimits, soundLimits } from './soundLimits.ts'
import { speedEvents } from './speedEvents.ts'
import { type FrameTrack, type Stretch, slopeAt, soundingStretches, stretches } from './tracks.ts'

export interface ConcludeOptions {
  /** rev/min per Hz of firing: 60 for a two-stroke single */
  rpmPerHertz: number
  engines: 1 | 2 | 'auto'
  /** called between two pieces of work */
  pause?: () => void
  /** blade passages a firing if the impeller turned with the engine; undefined = unknown */
  bladeOrder?: number
}

/** Comb score at which an engine is as likely as not, and how fast the belief grows with it. */
const HALF_SURE = 3.2
const SURENESS = 0.6

/** Confidence of each frame: logistic in the score, averaged over half a second of sounding. */
export function confidenceOf(t: FrameTrack): Float64Array {
  const out = new Float64Array(t.rate.length)
  const half = Math.round(0.25 / STEP)
  for (const s of soundingStretches(t))
    for (let i = s.from; i < s.to; i++) {
      let sum = 0
      let n = 0
      for (let k = Math.max(s.from, i - half); k <= Math.min(s.to - 1, i + half); k++) {
        sum += 1 / (1 + Math.exp(-(t.score[k]! - HALF_SURE) / SURENESS))
        n++
      }
      out[i] = sum / n
    }
  return out
}

/** Power above 1.1 kHz at each frame: spray, splashes, bangs. */
function hissOf(signal: Float32Array, frames: number, pause?: () => void): Float64Array {
  const out = new Float64Array(frames)
  const block = 1 << 18
  for (let start = 0; start < signal.length; start += block) {
    const lead = Math.min(start, 400)
    const y = filtered(
      Float64Array.from(signal.subarray(start - lead, start + block)),
      highPass(1100, Math.SQRT1_2, ANALYSIS_RATE),
    )
    for (let i = lead; i < y.length; i++) {
      const f = Math.floor((start - lead + i) / HOP)
      if (f < frames) out[f]! += y[i]! * y[i]!
    }
    pause?.()
  }
  return out
}

/** Stretches of 2–6 s in which only this engine sounds. */
function alone(t: FrameTrack, others: readonly FrameTrack[]): Stretch[] {
  const long = Math.round(5 / STEP)
  const out: Stretch[] = []
  for (const s of stretches(t.rate.length, (i) => t.rate[i]! > 0 && others.every((o) => o.rate[i]! <= 0)))
    for (let from = s.from; s.to - from >= 2 / STEP; ) {
      const to = s.to - from < 1.5 * long ? s.to : from + long
      out.push({ from, to })
      from = to
    }
  return out
}

function qualityOf(
  signal: Float32Array,
  t: FrameTrack,
  label: 'A' | 'B',
  s: Stretch,
): { quality: FiringQuality; spectrum: Float64Array } {
  const spectrum = orderSpectrum(onAngle(signal, turnsAlong(t, s), s.from * HOP))
  const halfOrders = halfOrderIndex(spectrum)
  const cycles = readCycles(signal, t, s)
  const reads = firingReads(halfOrders, cycles)
  return {
    quality: { label, from: s.from * STEP, to: s.to * STEP, halfOrders, weak: cycles.weak, reads },
    spectrum,
  }
}

/** What half orders (dB over their floor) and single cycles say of how evenly an engine fires. */
export function firingReads(
  halfOrders: number,
  { weak, nextCorrelation }: Pick<CycleReading, 'weak' | 'nextCorrelation'>,
  limits: SoundLimits = soundLimits,
): FiringQuality['reads'] {
  const alternating = nextCorrelation < -limits.alternating.value
  const strong = halfOrders > limits.halfOrdersAlone.value
  if (halfOrders > limits.halfOrders.value && (alternating || strong)) return 'four-stroking'
  if (weak > limits.weakMany.value) return 'misfires'
  return weak > limits.weakSome.value ? 'some misfires' : 'even'
}

function qualityEvents(list: readonly FiringQuality[]): RunEvent[] {
  return list
    .filter((q) => q.reads === 'misfires' || q.reads === 'four-stroking')
    .map((q) => ({
      kind: q.reads === 'misfires' ? ('misfire' as const) : ('four-stroking' as const),
      time: q.from,
      lasts: q.to - q.from,
      engine: q.label,
      says:
        q.reads === 'misfires'
          ? say`${inPercent(q.weak)} of the cycles hardly fire`
          : say`fires unevenly, turn about: half orders ${inDb(q.halfOrders)} over the floor (four-stroking)`,
      value: q.reads === 'misfires' ? q.weak : q.halfOrders,
      confidence: 0.6,
    }))
}

/** What the lines say of the engines; `open` is the share of the sounding time in which their octave is. */
export function verdictOf(
  d: Pick<Decision, 'lines' | 'apartShare' | 'rationalShare'>,
  engines: ConcludeOptions['engines'],
  open: number,
  limits: SoundLimits = soundLimits,
): Verdict {
  if (d.lines === 'none') return { code: 'no engine', says: 'No engine was heard.', coupling: 'none' }
  if (d.lines === 'two')
    return {
      code: 'two',
      says: 'Two engines were heard, turning independently of each other.',
      coupling: 'independent',
    }
  if (open > limits.octaveOpen.value || d.rationalShare > limits.octavePair.value)
    return {
      code: 'cannot tell',
      says: 'One set of lines was heard in which every second line is stronger: it may be one engine firing unevenly, a pair locked together, or two engines an octave apart. Sound alone cannot tell.',
      coupling: 'unknown',
    }
  return {
    code: 'one',
    says:
      engines === 2
        ? 'One set of lines was heard: one engine ran, or two locked together; one that turned exactly twice as fast as the other could hide in it too.'
        : 'One engine was heard (or a pair locked together: they sound as one).',
    coupling: 'one line',
  }
}

/** Builds the hearing. `signal` is at the analysis rate. */
export function conclude(
  d: Decision,
  signal: Float32Array,
  spectrogram: Spectrogram,
  options: ConcludeOptions,
  flags: Flag[],
  cancelled: boolean,
): Hearing {
  const frames = d.tracks[0]?.rate.length ?? 0
  const [a, b] = d.tracks
  const doubts = a && b && d.near.length === 0 ? relabel(a, b, d.profiles[0]!, d.profiles[1]!) : []
  const names = ['A', 'B'] as const
  const confidence = d.tracks.map(confidenceOf)
  const hiss = hissOf(signal, frames, options.pause)
  let events: RunEvent[] = []
  const falls: RunEvent[] = []
  const quality: FiringQuality[] = []
  let bladePass: Hearing['bladePass']
  d.tracks.forEach((t, k) => {
    const label = names[k]!
    const c = { rpmPerHertz: options.rpmPerHertz, confidence: confidence[k]!, hiss, limits: soundLimits }
    events.push(
      ...runningEvents(t, label, c),
      ...withLoads(speedEvents(t, label, c), loadEvents(t, label, c)),
    )
    events.push(...waterHits(t, label, c))
    falls.push(...fallEvents(t, label, c))
    for (const s of alone(
      t,
      d.tracks.filter((o) => o !== t),
    )) {
      options.pause?.()
      const q = qualityOf(signal, t, label, s)
      quality.push(q.quality)
      const blade = findBladePass(q.spectrum, options.bladeOrder)
      if (blade && (!bladePass || blade.level > bladePass.level)) bladePass = { ...blade, label }
    }
  })
  if (a && b) {
    oneFlareALine(events, a, b)
    events = openedCouplings(a, b, events, { rpmPerHertz: options.rpmPerHertz, limits: soundLimits })
  }
  if (a && b)
    events.push(
      ...oneDead(a, b, events, options.rpmPerHertz, soundLimits),
      ...sharedFlares(events, soundLimits),
    )
  events.push(...fallsUntold(falls, events))
  events.push(...qualityEvents(quality))
  const beat = beatOf(d)
  if (beat !== undefined && d.near[0])
    events.push({
      kind: 'beating',
      time: d.near[0].from * STEP,
      lasts: (d.near[0].to - d.near[0].from) * STEP,
      engine: 'both',
      says: say`the two engines beat ${inTimes(beat, 0.1)} times a second`,
      value: beat,
      confidence: 0.8,
    })
  const count = new Uint8Array(frames)
  for (const t of d.tracks) for (let i = 0; i < frames; i++) if (t.rate[i]! > 0) count[i]!++
  const octaves = d.octaves.map((o) => ({
    label: names[o.track ?? 0]!,
    from: o.from * STEP,
    to: o.to * STEP,
    factor: o.factor,
  }))
  const sounding = d.tracks[0]?.rate.reduce((n, f) => n + (f > 0 ? 1 : 0), 0) ?? 0
  const open = d.octaves.reduce((n, o) => n + o.to - o.from, 0)
  return {
    duration: signal.length / ANALYSIS_RATE,
    step: STEP,
    time: Float32Array.from({ length: frames }, (_, i) => i * STEP),
    tracks: d.tracks.map((t, k) => trackFrom(t, names[k]!, confidence[k]!, options.rpmPerHertz)),
    ...(d.perhaps.length > 0
      ? {
          perhaps: d.perhaps.map((p) => ({
            from: p.from * STEP,
            rpm: Float32Array.from(p.rate, (f) => f * options.rpmPerHertz),
          })),
        }
      : {}),
    count,
    events: events.sort((x, y) => x.time - y.time),
    quality,
    verdict: verdictOf(d, options.engines, sounding > 0 ? open / sounding : 0),
    octaves,
    labelsUncertainAfter: doubts.map((x) => x.after),
    ...(beat === undefined ? {} : { beat }),
    ...(bladePass ? { bladePass } : {}),
    spectrogram,
    flags: [...flags, ...d.flags],
    cancelled,
  }
}

/** Where both labels lie on one line a flare of it is told once. */
function oneFlareALine(events: RunEvent[], a: FrameTrack, b: FrameTrack): void {
  const shared = (time: number) => {
    const i = Math.min(a.rate.length - 1, Math.round((time + 0.3) / STEP))
    return b.rate[i]! > 0 && Math.abs(a.rate[i]! / b.rate[i]! - 1) < 0.01
  }
  for (let k = events.length - 1; k >= 0; k--) {
    const e = events[k]!
    const twin = events.some((o) => o.kind === 'flare' && o.engine === 'A' && Math.abs(o.time - e.time) < 0.4)
    if (e.kind === 'flare' && e.engine === 'B' && twin && shared(e.time)) events.splice(k, 1)
  }
}

function trackFrom(t: FrameTrack, label: 'A' | 'B', confidence: Float64Array, rpmPerHertz: number): Track {
  return {
    label,
    rpm: Float32Array.from(t.rate, (f) => f * rpmPerHertz),
    firing: Float32Array.from(t.rate),
    confidence: Float32Array.from(confidence),
    change: Float32Array.from(t.rate, (f, i) => slopeAt(t, i) * f * rpmPerHertz),
  }
}

function beatOf(d: Decision): number | undefined {
  const gaps: number[] = []
  for (const r of d.near)
    r.first.forEach((f, i) => {
      const g = r.second[i]!
      if (f > 0 && g > 0) gaps.push(Math.abs(f - g))
    })
  return gaps.length > 0 ? gaps.sort((x, y) => x - y)[Math.floor(gaps.length / 2)] : undefined
}
