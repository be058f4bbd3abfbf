/** Takes a recording stretch by stretch and keeps only what the tracks need. */
import { inSeconds } from '../../base/answers/amounts.ts'
import { printed, say } from '../../base/answers/sentence.ts'
import type { Flag } from '../../base/answers/solved.ts'
import { conclude } from './conclude.ts'
import { type DecideOptions, decide, usualDecision } from './decide.ts'
import { appendFrames, CANDIDATES, type FrameStore, PAIR_UNIT, PAIRS } from './frameStore.ts'
import type { Hearing } from './hearingTypes.ts'
import { type Lock, pathOne } from './pathOne.ts'
import { pathTwo } from './pathTwo.ts'
import { rpmPerHertz } from './relations.ts'
import { ANALYSIS_RATE, makeResampler } from './resample.ts'
import { BLOCK, type Half, makeScorer, reach, type ScoredHalf } from './scorer.ts'
import { HIGHEST, HOP, LOWEST, STEP, usualCosts } from './settings.ts'
import { soundLimits } from './soundLimits.ts'

/** A point of a track laid down by hand. */
export interface LockedPoint {
  label: 'A' | 'B'
  /** s */
  time: number
  /** rev/min; 0 = this engine is silent here */
  rpm: number
}

export interface HearOptions {
  /** engines known to be there; 'auto' lets the sound decide */
  engines?: 1 | 2 | 'auto'
  cylinders?: number
  strokes?: 2 | 4
  /** rev/min the engines can have */
  range?: { low: number; high: number }
  /** points the tracks must pass through; between two of them less than 1 s apart the track follows the line */
  locks?: readonly LockedPoint[]
  /** blades of the impeller and its turns for one of the engine, for the blade-pass line */
  impeller?: { blades: number; ratio: number }
  /** s of sound likely to come, where it is known: room is made for it once, instead of by growing */
  expected?: number
  /** 0 … 1 */
  progress?: (part: number) => void
  cancelled?: () => boolean
}

/** What is heard right now, for a live display. */
export interface LivePoint {
  /** s since the start */
  time: number
  engines: { label: 'A' | 'B'; rpm: number; confidence: number }[]
}

export interface Listener {
  /** the next stretch of one channel at the recording's own rate, taken and scored */
  push: (samples: Float32Array) => void
  /** the same, taken only; `score` does the rest */
  take: (samples: Float32Array) => void
  /** no more sound will come */
  end: () => void
  /** scores at most `most` frames of what was taken; false when none are left */
  score: (most: number) => boolean
  /** after `end`: leaves the later half of what is still to be scored to somebody else; undefined when that is fewer than `least` frames */
  halve: (least?: number) => Half | undefined
  /** takes that half's frames, once `score` has done its own; without them it scores them too */
  join: (scored: ScoredHalf | undefined) => void
  /** what was taken so far, at the analysis rate; valid until the next stretch */
  readonly signal: Float32Array
  /** best reading of the last moments; looks back a few seconds each time */
  now: () => LivePoint
  /** s taken so far */
  readonly seconds: number
  /** frames scored so far */
  readonly frames: number
  /** ends the recording and gives everything */
  finish: () => Hearing
  /** decides anew with other locks or engine count, after finish */
  again: (change: Pick<HearOptions, 'locks' | 'engines'>) => Hearing
}

/** frames of a half from which it is worth it, a quarter of a minute */
const WORTH_HALVING = 600

/** Adds a candidate at each locked rate, so that the path has something to stand on. */
function spreadLocks(
  points: readonly LockedPoint[],
  label: 'A' | 'B',
  frames: number,
  perHertz: number,
): Lock[] {
  const mine = points.filter((p) => p.label === label).sort((p, q) => p.time - q.time)
  const out = new Map<number, number>()
  for (const [k, p] of mine.entries()) {
    const i = Math.round(p.time / STEP)
    if (i >= 0 && i < frames) out.set(i, p.rpm / perHertz)
    const q = mine[k + 1]
    if (!q || q.time - p.time > 1) continue
    const j = Math.round(q.time / STEP)
    for (let m = i + 1; m < j; m++) {
      const u = (m - i) / (j - i)
      const rpm = p.rpm > 0 && q.rpm > 0 ? p.rpm ** (1 - u) * q.rpm ** u : 0
      if (m >= 0 && m < frames) out.set(m, rpm / perHertz)
    }
  }
  return [...out].map(([frame, rate]) => ({ frame, rate }))
}

/** score given to a candidate put in by hand */
const BY_HAND = 4

function withLocked(store: FrameStore, locks: readonly (readonly Lock[])[]): FrameStore {
  if (locks.every((l) => l.length === 0)) return store
  const s: FrameStore = {
    ...store,
    count: store.count.slice(),
    rate: store.rate.slice(),
    score: store.score.slice(),
    slope: store.slope.slice(),
    pairCount: store.pairCount.slice(),
    pairA: store.pairA.slice(),
    pairB: store.pairB.slice(),
    pairScore: store.pairScore.slice(),
  }
  for (const list of locks)
    for (const { frame, rate } of list) {
      if (rate <= 0) continue
      const base = frame * CANDIDATES
      let k = -1
      for (let j = 0; j < s.count[frame]!; j++) if (Math.abs(Math.log(s.rate[base + j]! / rate)) < 0.02) k = j
      if (k >= 0) continue
      k = s.count[frame]! < CANDIDATES ? s.count[frame]!++ : CANDIDATES - 1
      s.rate[base + k] = rate
      s.score[base + k] = BY_HAND
      s.slope[base + k] = 0
      // it may stand beside any other candidate
      let n = s.pairCount[frame]!
      for (let j = 0; j < s.count[frame]! && n < PAIRS; j++) {
        if (j === k) continue
        s.pairA[frame * PAIRS + n] = Math.min(j, k)
        s.pairB[frame * PAIRS + n] = Math.max(j, k)
        s.pairScore[frame * PAIRS + n] = Math.round((s.score[base + j]! + BY_HAND) / PAIR_UNIT)
        n++
      }
      s.pairCount[frame] = n
    }
  return s
}

/** A listener for one channel at `rate` samples a second (1000 … 1000000). */
export function makeListener(rate: number, options: HearOptions = {}): Listener {
  if (!(rate >= 1000 && rate <= 1_000_000))
    throw new RangeError(`sampleRate: ${rate}; 1000 to 1000000 samples a second`)
  const perHertz = rpmPerHertz(options.cylinders, options.strokes)
  const low = Math.max(LOWEST, (options.range?.low ?? 0) / perHertz)
  const high = Math.min(HIGHEST, (options.range?.high ?? Number.POSITIVE_INFINITY) / perHertz)
  if (!(high > 1.3 * low))
    throw new RangeError(
      `range: ${options.range?.low} to ${options.range?.high} rpm; the upper end must be at least 1.3 times the lower, within ${LOWEST * perHertz} to ${HIGHEST * perHertz} rpm`,
    )
  const wantPairs = options.engines !== 1
  const resampler = makeResampler(rate, ANALYSIS_RATE)
  // what a file announces may be wrong, so no more is taken than two hours need
  const expected = Math.min(7200, Math.max(0, options.expected ?? 0))
  const scorer = makeScorer({ low, high, pairs: wantPairs }, Math.ceil(expected / STEP))
  const { store, picture, warper } = scorer
  let signal = new Float32Array(Math.max(1 << 16, Math.ceil((expected + 1) * ANALYSIS_RATE)))
  let length = 0
  let ended = false

  const append = (x: Float32Array) => {
    if (length + x.length > signal.length) {
      const bigger = new Float32Array(Math.ceil(1.2 * (length + x.length)))
      bigger.set(signal.subarray(0, length))
      signal = bigger
    }
    signal.set(x, length)
    length += x.length
  }
  /** frames from here on are scored elsewhere */
  let limit = Number.POSITIVE_INFINITY
  /** frames whose whole window is there */
  const ready = () => {
    const all = ended ? Math.floor((length - 1) / HOP) + 1 : Math.floor((length - reach) / HOP)
    return Math.min(limit, all)
  }
  const readFrames = (most = Number.POSITIVE_INFINITY): boolean => {
    const until = Math.min(ready(), store.frames + most)
    while (store.frames < until) {
      const from = store.frames
      const to = Math.min(until, from + BLOCK)
      scorer.read(signal.subarray(0, length), 0, from, to)
      if (options.cancelled?.()) return false
    }
    return store.frames < ready()
  }

  const settings = (change: Pick<HearOptions, 'locks' | 'engines'>): DecideOptions => {
    const points = change.locks ?? options.locks ?? []
    return {
      ...usualDecision,
      engines: change.engines ?? options.engines ?? 'auto',
      low,
      high,
      locks: [
        spreadLocks(points, 'A', store.frames, perHertz),
        spreadLocks(points, 'B', store.frames, perHertz),
      ],
      cancelled: options.cancelled ?? (() => false),
    }
  }
  const again = (change: Pick<HearOptions, 'locks' | 'engines'>): Hearing => {
    const s = settings(change)
    const sound = signal.subarray(0, length)
    const flags: Flag[] = []
    if (length / ANALYSIS_RATE < soundLimits.shortest.value)
      flags.push({
        code: 'short',
        text: printed(
          say`The recording is only ${inSeconds(length / ANALYSIS_RATE, 0.01)} long: at least ${inSeconds(soundLimits.shortest.value)} is needed to tell an engine from a noise.`,
        ),
        path: 'recording',
      })
    if (length > 0 && sound.every((v) => Math.abs(v) < 1e-6))
      flags.push({
        code: 'silent',
        text: 'The recording is silent: every sample is zero.',
        path: 'recording',
      })
    const decision = decide(withLocked(store, s.locks), sound, warper, s)
    options.progress?.(0.95)
    const bladeOrder = options.impeller
      ? (options.impeller.blades * options.impeller.ratio * perHertz) / 60
      : undefined
    const hearing = conclude(
      decision,
      sound,
      picture.finish(),
      {
        rpmPerHertz: perHertz,
        engines: s.engines,
        pause: () => void options.cancelled?.(),
        ...(bladeOrder === undefined ? {} : { bladeOrder }),
      },
      flags,
      options.cancelled?.() ?? false,
    )
    options.progress?.(1)
    return hearing
  }
  const end = () => {
    if (ended) return
    append(resampler.flush())
    ended = true
  }
  return {
    push: (x) => {
      append(resampler.push(x))
      readFrames()
    },
    take: (x) => append(resampler.push(x)),
    end,
    score: readFrames,
    halve: (least = WORTH_HALVING) => {
      const all = ended ? ready() : 0
      const half = BLOCK * Math.round((store.frames + (all - store.frames) / 2) / BLOCK)
      if (all - half < least || half <= store.frames) return undefined
      limit = half
      const base = half * HOP - reach
      return {
        scoring: { low, high, pairs: wantPairs },
        signal: signal.slice(base, length),
        base,
        from: half,
        to: all,
      }
    },
    join: (scored) => {
      if (store.frames !== limit) throw new Error(`frames ${store.frames} of ${limit} are scored so far`)
      limit = Number.POSITIVE_INFINITY
      if (!scored) return
      appendFrames(store, scored.store)
      picture.append(scored.columns)
    },
    get signal() {
      return signal.subarray(0, length)
    },
    now: () => livePoint(store, wantPairs, perHertz),
    get seconds() {
      return length / ANALYSIS_RATE
    },
    get frames() {
      return store.frames
    },
    finish: () => {
      end()
      readFrames()
      return again({})
    },
    again,
  }
}

/** Last `frames` frames of a store, without copying. */
function tail(store: FrameStore, frames: number): FrameStore {
  const n = Math.min(frames, store.frames)
  const from = store.frames - n
  return {
    frames: n,
    count: store.count.subarray(from, store.frames),
    rate: store.rate.subarray(from * CANDIDATES, store.frames * CANDIDATES),
    score: store.score.subarray(from * CANDIDATES, store.frames * CANDIDATES),
    slope: store.slope.subarray(from * CANDIDATES, store.frames * CANDIDATES),
    pairCount: store.pairCount.subarray(from, store.frames),
    pairA: store.pairA.subarray(from * PAIRS, store.frames * PAIRS),
    pairB: store.pairB.subarray(from * PAIRS, store.frames * PAIRS),
    pairScore: store.pairScore.subarray(from * PAIRS, store.frames * PAIRS),
  }
}

/** s a live reading looks back */
const LOOK_BACK = 5

function livePoint(store: FrameStore, pairs: boolean, perHertz: number): LivePoint {
  const part = tail(store, Math.round(LOOK_BACK / STEP))
  const last = part.frames - 1
  const time = Math.max(0, (store.frames - 1) * STEP)
  if (last < 0) return { time: 0, engines: [] }
  const paths = pairs ? Object.values(pathTwo(part, usualCosts)) : [pathOne(part, usualCosts)]
  const engines = paths.flatMap((p, k) => {
    const c = p[last]!
    if (c < 0) return []
    const score = part.score[last * CANDIDATES + c]!
    return [
      {
        label: k === 0 ? ('A' as const) : ('B' as const),
        rpm: part.rate[last * CANDIDATES + c]! * perHertz,
        confidence: 1 / (1 + Math.exp(-(score - 3.2) / 0.6)),
      },
    ]
  })
  // one line shared by both labels is one reading
  const [a, b] = engines
  return { time, engines: a && b && Math.abs(a.rpm / b.rpm - 1) < 0.004 ? [a] : engines }
}
