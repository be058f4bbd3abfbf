/**
 * What becomes of a shaft's load: lost, back; steps up between speeds that were kept; swings. The way a shaft without its load speeds up
 * is what tells: the engine alone has a third of the inertia and nothing to push. Limits in soundLimits.ts; times in s.
 */
import { inPercent, inSeconds } from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import { atRpm } from './saySpeed.ts'
import { STEP } from './settings.ts'
import { type EventContext, frames, joined, type RunEvent } from './shaftEvents.ts'
import type { SoundLimits } from './soundLimits.ts'
import { type Piece, piecesOf } from './steps.ts'
import { type FrameTrack, type Stretch, soundingStretches } from './tracks.ts'

/** s of a gap within which a line is the same one */
const GAP = 0.2
/** s over which the steepest part of a rise is taken */
const STEEP = 0.15

/** The steepest rise between two frames, rev/min a second. */
export function steepest(t: FrameTrack, from: number, to: number, rpmPerHertz: number): number {
  const span = frames(STEEP)
  let most = 0
  for (let i = from; i + span <= to; i++)
    most = Math.max(most, ((t.rate[i + span]! - t.rate[i]!) * rpmPerHertz) / STEEP)
  return most
}

/** Highest speed kept under load before frame `at`, Hz; 0 where none was. */
function loadedBefore(pieces: readonly Piece[], at: number, raced: ReadonlySet<Piece>): number {
  return Math.max(0, ...pieces.filter((p) => p.to <= at && !raced.has(p)).map((p) => p.high))
}

interface Rise {
  /** the piece it leaves */
  from: Piece
  /** frames: where it begins, its top, and where it is over */
  at: number
  top: number
  over: number
}

/** The rise that follows a piece, up to the highest speed before it settles or ends. */
function riseAfter(t: FrameTrack, s: Stretch, piece: Piece, next: Piece | undefined): Rise | undefined {
  const until = Math.min(s.to, next ? next.from + frames(0.4) : s.to, piece.to + frames(1.5))
  let top = piece.to
  for (let i = piece.to; i < until; i++) if (t.rate[i]! > t.rate[top]!) top = i
  if (!(t.rate[top]! > piece.high)) return undefined
  let at = top
  while (at > piece.to && t.rate[at - 1]! > 1.03 * piece.rate) at--
  const half = Math.sqrt(piece.rate * t.rate[top]!)
  let over = top
  while (over < s.to && t.rate[over]! > half) over++
  return { from: piece, at, top, over }
}

/** Whether a rise is a shaft that lost its load: from a pulling speed, far above all it pulled at, as steep as an engine alone. */
function losesLoad(
  t: FrameTrack,
  r: Rise,
  loaded: number,
  { rpmPerHertz, limits }: Pick<EventContext, 'rpmPerHertz' | 'limits'>,
): boolean {
  const top = t.rate[r.top]!
  return (
    r.from.rate * rpmPerHertz > limits.idleMost.value &&
    r.from.rate > limits.pullsLeast.value * loaded &&
    top > limits.flareLeast.value * loaded &&
    steepest(t, r.at - frames(STEEP), r.top, rpmPerHertz) > limits.raceSlope.value
  )
}

/** Load lost and back, steps up, and hunting of one engine's line. */
export function loadEvents(t: FrameTrack, engine: 'A' | 'B', c: EventContext): RunEvent[] {
  const out: RunEvent[] = []
  const { limits, rpmPerHertz } = c
  const stretches = joined(soundingStretches(t), GAP).filter((s) => (s.to - s.from) * STEP >= 1)
  const all = stretches.map((s) => piecesOf(t, s, limits))
  const pieces = all.flat()
  const raced = new Set<Piece>()
  stretches.forEach((s, k) => {
    const own = all[k]!
    own.forEach((piece, i) => {
      if (piece.does === 'hunts') out.push(huntingEvent(piece, engine, c))
      const next = own[i + 1]
      const rise = riseAfter(t, s, piece, next)
      if (!rise) return
      const loaded = loadedBefore(pieces, rise.at, raced)
      if (losesLoad(t, rise, loaded, c)) {
        if (next && next.from < rise.over) raced.add(next)
        out.push(...lostAndBack(t, s, rise, own.slice(i + 1), engine, c))
      } else if (next && isStepUp(piece, next, limits))
        out.push({
          kind: 'step up',
          time: rise.at * STEP,
          lasts: 0,
          engine,
          says: say`from ${atRpm(piece.rate * rpmPerHertz)} to ${atRpm(next.rate * rpmPerHertz)}${backTo(pieces, piece, next) ? ', the speed before' : ''}`,
          value: next.rate * rpmPerHertz,
          before: piece.rate * rpmPerHertz,
          after: next.rate * rpmPerHertz,
          confidence: Math.min(c.confidence[piece.to - 1]!, c.confidence[next.from]!),
        })
    })
  })
  return out
}

/** A step between two kept speeds that is no opening from idle: that is told as a rise. */
const isStepUp = (a: Piece, b: Piece, limits: SoundLimits): boolean =>
  b.rate > limits.step.value * a.rate && b.rate < limits.rise.value * a.rate

/** Whether a step leads back to a speed kept before. */
const backTo = (pieces: readonly Piece[], from: Piece, to: Piece): boolean =>
  pieces.some((p) => p.to < from.from && p.does === 'keeps' && Math.abs(Math.log(p.rate / to.rate)) < 0.04)

function huntingEvent(p: Piece, engine: 'A' | 'B', c: EventContext): RunEvent {
  const [low, high] = [p.low * c.rpmPerHertz, p.high * c.rpmPerHertz]
  return {
    kind: 'hunting',
    time: p.from * STEP,
    lasts: (p.to - p.from) * STEP,
    engine,
    says: say`its speed swings from ${atRpm(low)} to ${atRpm(high)} by itself for ${inSeconds((p.to - p.from) * STEP)}`,
    value: p.rate * c.rpmPerHertz,
    before: low,
    after: high,
    confidence: c.confidence[Math.floor((p.from + p.to) / 2)]!,
  }
}

function lostAndBack(
  t: FrameTrack,
  s: Stretch,
  r: Rise,
  later: readonly Piece[],
  engine: 'A' | 'B',
  c: EventContext,
): RunEvent[] {
  const { rpmPerHertz, limits } = c
  const [before, peak] = [r.from.rate * rpmPerHertz, t.rate[r.top]! * rpmPerHertz]
  const lasts = (r.over - r.at) * STEP
  const sure = Math.min(c.confidence[r.from.to - 1]!, c.confidence[r.top]!)
  const ends = r.over >= s.to ? ' until it stops' : ''
  const lost: RunEvent = {
    kind: lasts < limits.flareLong.value && r.over < s.to ? 'flare' : 'load lost',
    time: r.at * STEP,
    lasts,
    engine,
    says: say`races from ${atRpm(before)} to ${atRpm(peak)}, ${inPercent(peak / before - 1)} up in ${inSeconds((r.top - r.at) * STEP)}, for ${inSeconds(lasts)}${ends}: nothing loads the shaft, the pump drew air or a link opened`,
    value: peak,
    before,
    after: peak,
    excludes: 'a throttle opened against the water, which speeds up far slower',
    confidence: sure,
  }
  const back = later.find((p) => p.from >= r.over)
  if (!back || lost.kind === 'flare' || (back.from - r.over) * STEP > 1.5) return [lost]
  return [
    lost,
    {
      kind: 'load back',
      time: r.over * STEP,
      lasts: 0,
      engine,
      says: say`the shaft is loaded again: ${atRpm(back.rate * rpmPerHertz)}`,
      value: back.rate * rpmPerHertz,
      before: peak,
      after: back.rate * rpmPerHertz,
      confidence: Math.min(sure, c.confidence[back.from]!),
    },
  ]
}

/** s around an event that tells of a rise already */
const TOLD = 0.6

/**
 * Rises, races and bogs as read from the speeds alone, with what the load's own events tell better left out: the same rise once, and
 * no bogs or openings among swings.
 */
export function withLoads(speeds: readonly RunEvent[], loads: readonly RunEvent[]): RunEvent[] {
  const hunts = loads.filter((e) => e.kind === 'hunting')
  const swings = (e: RunEvent) =>
    hunts.some((h) => e.time > h.time - TOLD && e.time < h.time + h.lasts - (e.kind === 'bog' ? -TOLD : TOLD))
  const known = (e: RunEvent) =>
    loads.some((l) => (l.kind === 'load lost' || l.kind === 'flare') && Math.abs(l.time - e.time) < TOLD)
  const kept = speeds.filter((e) => !swings(e) && !known(e))
  // a rise and a step up at one time are one
  const steps = loads.filter(
    (l) => l.kind !== 'step up' || !kept.some((e) => e.kind !== 'bog' && Math.abs(l.time - e.time) < TOLD),
  )
  return [...kept, ...steps]
}
