/** From candidates to tracks: how many engines, which octave, where each one sounds. */
import type { Flag } from '../answers/solved.ts'
import { CANDIDATES, type FrameStore, PAIR_UNIT, PAIRS } from './candidates.ts'
import { frontSignal } from './frames.ts'
import { LONG_STEP, type NearTwins, splitNear } from './nearTwins.ts'
import { meanProfile, type OctaveNote, settleOctaves, usualOctaveRules } from './octave.ts'
import { type Lock, pathOne } from './pathOne.ts'
import { isRational, type PairPath, pathTwo } from './pathTwo.ts'
import { dropFalse } from './rejects.ts'
import { HOP, type PathCosts, STEP, usualCosts } from './settings.ts'
import { HALF_TEETH, type ToothProfile, toothProfiles } from './teeth.ts'
import {
  emptyTrack,
  type FrameTrack,
  type Stretch,
  silence,
  slopeAt,
  soundingStretches,
  stretches,
  trackOf,
} from './tracks.ts'
import type { Warper } from './warp.ts'

export interface DecideOptions {
  engines: 1 | 2 | 'auto'
  /** firing rates the engines may have, Hz */
  low: number
  high: number
  costs: PathCosts
  locks: readonly [readonly Lock[], readonly Lock[]]
  cancelled: () => boolean
}

export const usualDecision: DecideOptions = {
  engines: 'auto',
  low: 22,
  high: 235,
  costs: usualCosts,
  locks: [[], []],
  cancelled: () => false,
}

/** How many separate lines were heard. */
export type Lines = 'none' | 'one' | 'two'

export interface Decision {
  lines: Lines
  tracks: FrameTrack[]
  profiles: ToothProfile[]
  octaves: OctaveNote[]
  /** two lines a few per cent apart, found by the long window */
  near: NearTwins[]
  /** share of the sounding time in which two independent lines sound */
  apartShare: number
  /** share of two-line time in which they stand in a simple ratio */
  rationalShare: number
  /** what was left out, and why */
  flags: Flag[]
}

/** shortest sounding stretch kept, s, unless it is very clear */
const SHORTEST = 0.8
const CLEAR_SCORE = 5

/** Silences stretches too short to be an engine. */
export function dropShort(t: FrameTrack, locks: readonly Lock[] = []): void {
  for (const s of soundingStretches(t)) {
    if (locks.some((l) => l.rate > 0 && l.frame >= s.from && l.frame < s.to)) continue
    let sum = 0
    for (let i = s.from; i < s.to; i++) sum += t.score[i]!
    const mean = sum / (s.to - s.from)
    const seconds = (s.to - s.from) * STEP
    if (seconds < SHORTEST && !(mean > CLEAR_SCORE && seconds > 0.5 * SHORTEST)) silence(t, s)
  }
}

/** frames the score is averaged over, and the part of a stretch's median score under which nothing sounds */
const SMOOTH = 3
const FADED = 0.4
/** a piece at the end that short, s, behind a fade is an echo or a shout */
const AFTERMATH = 1.5
/** power after over power before, SIDE frames on each side, that means a cut */
const LOSS = 0.35
const SIDE = 4

/** Mean square of the sound around each frame. */
function framePower(signal: Float32Array, frames: number): Float64Array {
  const raw = new Float64Array(frames)
  for (let i = 0; i < signal.length; i++) {
    const f = Math.floor(i / HOP)
    if (f < frames) raw[f]! += signal[i]! * signal[i]!
  }
  return raw.map((_, i) => ((raw[i - 1] ?? raw[i]!) + raw[i]! + (raw[i + 1] ?? raw[i]!)) / 3 + 1e-12)
}

/** ln f in three frames */
const LEAP = 0.12

/**
 * Takes off the ends of each stretch where the score has faded (the window and echoes reach past a stop),
 * and short pieces behind a fade at the end. Locked frames stay.
 */
export function trimEnds(t: FrameTrack, locks: readonly Lock[] = [], power?: Float64Array): void {
  for (const s of soundingStretches(t)) {
    if (locks.some((l) => l.rate > 0 && l.frame >= s.from && l.frame < s.to)) continue
    const sorted = t.score.slice(s.from, s.to).sort()
    const floor = FADED * sorted[Math.floor(sorted.length / 2)]!
    const faded = new Uint8Array(s.to - s.from)
    for (let i = s.from; i < s.to; i++) {
      let sum = 0
      let n = 0
      for (let k = Math.max(s.from, i - SMOOTH); k <= Math.min(s.to - 1, i + SMOOTH); k++) {
        sum += t.score[k]!
        n++
      }
      faded[i - s.from] = sum / n < floor ? 1 : 0
    }
    let from = s.from
    let to = s.to
    while (to > from && faded[to - 1 - s.from]) to--
    while (from < to && faded[from - s.from]) from++
    // only where silence follows: at the end of the recording the engine just goes on
    const ends = s.to < t.rate.length - 2
    // the last fade of at least 0.15 s
    let run = 0
    for (let i = to - 1; ends && i > from && (to - i) * STEP < AFTERMATH; i--) {
      run = faded[i - s.from] ? run + 1 : 0
      if (run * STEP >= 0.15) {
        to = i
        run = 0
      }
    }
    // a sudden loss of level just before the end: the engine was cut, and what goes on is an echo or a shout
    if (power && ends) {
      let at = -1
      let least = LOSS
      for (let i = Math.max(from + SIDE, to - Math.round(AFTERMATH / STEP)); i < to; i++) {
        const ratio = power[Math.min(power.length - 1, i + SIDE)]! / power[i - SIDE]!
        if (ratio < least) {
          least = ratio
          at = i
        }
      }
      if (at >= 0) to = at
    }
    // a leap just before the end is another sound taking over
    for (let i = Math.max(from + 1, to - Math.round(AFTERMATH / STEP)); ends && i + 2 < to; i++)
      if (Math.abs(Math.log(t.rate[i + 2]! / t.rate[i - 1]!)) > LEAP) {
        to = i
        break
      }
    silence(t, { from: s.from, to: from })
    silence(t, { from: to, to: s.to })
  }
}

/** teeth of a comb far above a dense one must stand out this much, ln, to be an engine of their own */
const CLEAR_TEETH = 0.9
/** speed ratio from which that is asked, ln */
const FAR = Math.log(2.2)

/** Silences stretches of one track that live on the crowded teeth of a much slower one. */
function dropHangersOn(t: FrameTrack, other: FrameTrack, profile: ToothProfile): void {
  for (const s of soundingStretches(t)) {
    let far = 0
    for (let i = s.from; i < s.to; i++)
      if (other.rate[i]! > 0 && Math.log(t.rate[i]! / other.rate[i]!) > FAR) far++
    if (far < 0.7 * (s.to - s.from)) continue
    const mean = meanProfile(profile, s).filter((v, h) => h % 2 === 1 && !Number.isNaN(v))
    const clear = mean.reduce((a, v) => a + v, 0) / Math.max(1, mean.length)
    if (mean.length < 2 || clear < CLEAR_TEETH) silence(t, s)
  }
}

/**
 * Profiles read in blocks, so that the filtered copy of the signal stays small. The arrays of `room` are used again where
 * they fit: an hour's profile is 14 MB.
 */
export function profilesOf(
  signal: Float32Array,
  tracks: readonly FrameTrack[],
  warper: Warper,
  cancelled: () => boolean,
  refine = false,
  room: ToothProfile[] = [],
): ToothProfile[] {
  const n = tracks[0]?.rate.length ?? 0
  const out = tracks.map((_, k) => {
    if (room[k]?.length !== n * HALF_TEETH) room[k] = new Float32Array(n * HALF_TEETH)
    return room[k]!.fill(Number.NaN)
  })
  const block = 800
  const margin = 20
  for (let from = 0; from < n && !cancelled(); from += block) {
    const to = Math.min(n, from + block)
    const first = Math.max(0, from - margin)
    const front = frontSignal(signal.subarray(first * HOP, (to + margin) * HOP))
    const part = tracks.map((t) => ({
      rate: t.rate.slice(first, to),
      score: t.score.slice(first, to),
      slope: t.slope.slice(first, to),
    }))
    // the margin only feeds the filter
    for (const t of part) t.rate.fill(0, 0, from - first)
    toothProfiles(front, part, warper, cancelled, refine).forEach((p, k) => {
      out[k]!.set(p.subarray((from - first) * HALF_TEETH), from * HALF_TEETH)
      if (refine) tracks[k]!.rate.set(part[k]!.rate.subarray(from - first), from)
    })
  }
  return out
}

/** even over odd teeth, dB, from which the octave of one of two engines stays open */
const PAIR_OPEN = 6

interface Coexistence {
  on: number
  apart: number
  rational: number
}

/** lines nearer than this, ln, beside a moving one may be its own smear or echo and prove nothing */
const BESIDE = 0.1

const steady = (t: FrameTrack, i: number) => Math.abs(slopeAt(t, i)) < 0.3

function coexistence(a: FrameTrack, b: FrameTrack): Coexistence {
  const out = { on: 0, apart: 0, rational: 0 }
  for (let i = 0; i < a.rate.length; i++) {
    const f = a.rate[i]!
    const g = b.rate[i]!
    if (f > 0 || g > 0) out.on++
    if (f <= 0 || g <= 0 || Math.abs(Math.log(f / g)) < 0.004) continue
    if (isRational(f / g)) out.rational++
    else if (Math.abs(Math.log(f / g)) > BESIDE || (steady(a, i) && steady(b, i))) out.apart++
  }
  return out
}

/** slope under which a stretch counts as steady enough for the long window, 1/s */
const STEADY = 0.12

function steadyStretches(t: FrameTrack): Stretch[] {
  const half = 10
  const n = t.rate.length
  const steady = (i: number) => {
    const a = t.rate[Math.max(0, i - half)]!
    const b = t.rate[Math.min(n - 1, i + half)]!
    if (t.rate[i]! <= 0) return false
    if (a <= 0 || b <= 0) return true
    return Math.abs(Math.log(b / a)) < STEADY * 2 * half * STEP * 1.5
  }
  return stretches(n, steady).filter((s) => (s.to - s.from) * STEP >= 2)
}

/** smallest gap, ln f, that the skirts of one line do not make up */
const NEAR_LEAST = 0.0105

const isNearPair = (r: NearTwins) => r.both > 0.5 && r.apart >= NEAR_LEAST && r.spread < 0.45 * r.apart

/** Writes the near twins' speeds into two tracks; the faster one is always the first. */
function layNear(near: readonly NearTwins[], a: FrameTrack, b: FrameTrack): void {
  for (const r of near) {
    for (let i = r.from; i < r.to; i++) {
      // long frame whose time is nearest
      let k = Math.min(r.first.length - 1, Math.max(0, Math.round(((i - r.from) * STEP) / LONG_STEP)))
      while (k + 1 < r.time.length && Math.abs(r.time[k + 1]! - i * STEP) < Math.abs(r.time[k]! - i * STEP))
        k++
      while (k > 0 && Math.abs(r.time[k - 1]! - i * STEP) < Math.abs(r.time[k]! - i * STEP)) k--
      const f = r.first[k]!
      const g = r.second[k]!
      if (f <= 0 || g <= 0) continue
      a.rate[i] = Math.max(f, g)
      b.rate[i] = Math.min(f, g)
      b.score[i] = a.score[i]!
      b.slope[i] = a.slope[i]!
    }
  }
}

/** two tracks so near each other, or so near to a multiple of each other, ln, may be near twins that the short window took apart wrongly */
const SUSPECT = 0.068
const SUSPECT_MULTIPLE = 0.05

function suspect(f: number, g: number): boolean {
  if (f <= 0 || g <= 0) return false
  const x = Math.abs(Math.log(f / g))
  return (
    (x > 0.004 && x < SUSPECT) ||
    Math.abs(x - Math.LN2) < SUSPECT_MULTIPLE ||
    Math.abs(x - Math.log(3)) < SUSPECT_MULTIPLE
  )
}

/** Steady stretches of at least 2 s in which two tracks look like near twins taken wrongly, looked at with the long window. */
function nearAgain(signal: Float32Array, a: FrameTrack, b: FrameTrack): NearTwins[] {
  const n = a.rate.length
  const lower = emptyTrack(n)
  for (let i = 0; i < n; i++)
    if (suspect(a.rate[i]!, b.rate[i]!)) lower.rate[i] = Math.min(a.rate[i]!, b.rate[i]!)
  return steadyStretches(lower)
    .map((s) => splitNear(signal, s, lower.rate))
    .filter(isNearPair)
}

/** share of a stretch with both lines in it from which the long window is believed against the short one */
const BOTH_BELIEVED = 0.7

/** Which of the two lines of a near pair carries on `t`, by the nearest sounding frame outside the stretch; 0 = cannot say. */
function carriesOn(t: FrameTrack, r: NearTwins, fast: number, slow: number): number {
  for (let k = 1; k <= 20; k++)
    for (const i of [r.from - k, r.to - 1 + k]) {
      const f = t.rate[i] ?? 0
      if (f <= 0) continue
      const toFast = Math.abs(Math.log(f / fast))
      const toSlow = Math.abs(Math.log(f / slow))
      if (Math.min(toFast, toSlow) < 0.08) return toSlow - toFast
    }
  return 0
}

/**
 * Where the long window found two lines a few per cent apart, they take the place of what the short window made of them: it
 * cannot part them, and lays its second track on a multiple instead.
 */
function mendNear(near: readonly NearTwins[], a: FrameTrack, b: FrameTrack): void {
  for (const r of near) {
    const both = [...r.first.keys()].filter((k) => r.first[k]! > 0 && r.second[k]! > 0)
    if (r.both < BOTH_BELIEVED || both.length === 0) continue
    const mean = (pick: (x: number, y: number) => number) =>
      Math.exp(both.reduce((n, k) => n + Math.log(pick(r.first[k]!, r.second[k]!)), 0) / both.length)
    const fast = mean(Math.max)
    const slow = mean(Math.min)
    // what both tracks touch on the outside decides; the stronger pull of the two wins
    const [first, second] = carriesOn(a, r, fast, slow) - carriesOn(b, r, fast, slow) >= 0 ? [a, b] : [b, a]
    for (let i = r.from; i < r.to; i++)
      if (first.rate[i]! <= 0) {
        first.score[i] = second.score[i]!
        first.slope[i] = second.slope[i]!
      }
    layNear([r], first, second)
  }
}

/** A second engine comes and goes at less cost than the first: whether there is one is asked afterwards. */
const pairCosts = { birth: 14, pairOffset: 1.5 }

/** s without any engine in the single track over which the pair's tracks are silenced too */
const QUIET = 0.5

/**
 * Two engines are said when independent lines sound for at least this share of the running time, and share times gain (what the
 * second line adds to the comb score, over what it adds by chance) comes to PROOF: a short time will do where the gain is plain.
 */
const SHARE_LEAST = 0.1
const GAIN_BY_CHANCE = 1.6
const PROOF = 0.38

/** Where nothing stands out enough for one engine there are no two. */
function keepWithin(single: FrameTrack, a: FrameTrack, b: FrameTrack): void {
  for (const s of stretches(single.rate.length, (i) => single.rate[i]! <= 0))
    if ((s.to - s.from) * STEP > QUIET) for (const t of [a, b]) silence(t, s)
}

/** What the second line adds to the comb score on average where two independent lines sound; 0 when they never do. */
function secondGain(store: FrameStore, path: PairPath, a: FrameTrack, b: FrameTrack): number {
  let sum = 0
  let n = 0
  for (let i = 0; i < store.frames; i++) {
    const j = path.first[i]!
    const k = path.second[i]!
    if (j < 0 || k < 0 || j === k || a.rate[i]! <= 0 || b.rate[i]! <= 0) continue
    const score = (c: number) => store.score[i * CANDIDATES + c]!
    for (let p = 0; p < store.pairCount[i]!; p++) {
      const x = store.pairA[i * PAIRS + p]!
      const y = store.pairB[i * PAIRS + p]!
      if (x !== Math.min(j, k) || y !== Math.max(j, k)) continue
      sum += store.pairScore[i * PAIRS + p]! * PAIR_UNIT - Math.max(score(j), score(k))
      n++
    }
  }
  return n > 0 ? sum / n : 0
}

/** Decides tracks and count from what was stored of all frames. `signal` is at the analysis rate. */
export function decide(
  store: FrameStore,
  signal: Float32Array,
  warper: Warper,
  options: DecideOptions,
): Decision {
  const { costs, locks, cancelled } = options
  const range = { low: options.low, high: options.high }
  // one set of profiles is looked at at a time
  const room: ToothProfile[] = []
  const settle = (tracks: FrameTrack[]) => {
    const profiles = profilesOf(signal, tracks, warper, cancelled, false, room)
    const octaves = tracks.map((t, k) =>
      settleOctaves(
        t,
        profiles[k]!,
        range,
        usualOctaveRules,
        (locks[k] ?? []).filter((l) => l.rate > 0).map((l) => l.frame),
      ),
    )
    // a moved octave moves the teeth too
    return { octaves, profiles, moved: octaves.some((o) => o.moved) }
  }
  const finish = (tracks: FrameTrack[], lines: Lines, extra: Partial<Decision>): Decision => {
    let { octaves, moved } = settle(tracks)
    if (moved) octaves = settle(tracks).octaves
    return {
      lines,
      tracks,
      profiles: profilesOf(signal, tracks, warper, cancelled, true, room),
      // beside another engine too few teeth are free for a slight difference to mean much
      octaves: octaves.flatMap((o, track) =>
        o.notes
          .filter((n) => tracks.length === 1 || n.factor !== 2 || n.balance.evenOverOdd > PAIR_OPEN)
          .map((n) => ({ ...n, track })),
      ),
      near: [],
      apartShare: 0,
      rationalShare: 0,
      flags,
      ...extra,
    }
  }

  const single = trackOf(store, pathOne(store, costs, locks[0]))
  const power = framePower(signal, store.frames)
  trimEnds(single, locks[0], power)
  dropShort(single, locks[0])
  const flags = dropFalse(single, profilesOf(signal, [single], warper, cancelled, false, room)[0]!, locks[0])
  if (options.engines === 1) return finish([single], single.rate.some((f) => f > 0) ? 'one' : 'none', {})

  const sounding = single.rate.reduce((n, f) => n + (f > 0 ? 1 : 0), 0)
  if (sounding === 0 && locks[1].length === 0) return finish([single], 'none', {})
  const locked = locks[0].length > 0 && locks[1].length > 0

  // two lines a few per cent apart are looked for first: the short window takes them for something else
  const pairs = locked
    ? []
    : steadyStretches(single)
        .map((s) => splitNear(signal, s, single.rate))
        .filter(isNearPair)
  const paired = pairs.reduce((n, r) => n + r.to - r.from, 0)
  if (paired > 0.5 * sounding) {
    const first: FrameTrack = {
      rate: single.rate.slice(),
      score: single.score.slice(),
      slope: single.slope.slice(),
    }
    const second = emptyTrack(store.frames)
    layNear(pairs, first, second)
    const tracks = [first, second]
    const profiles = profilesOf(signal, tracks, warper, cancelled, false, room)
    const share = paired / sounding
    return {
      lines: 'two',
      tracks,
      profiles,
      octaves: [],
      near: pairs,
      apartShare: share,
      rationalShare: 0,
      flags,
    }
  }

  const path = pathTwo(store, { ...costs, ...pairCosts }, locks)
  const a = trackOf(store, path.first)
  const b = trackOf(store, path.second)
  if (!locked) keepWithin(single, a, b)
  for (const [t, l] of [
    [a, locks[0]],
    [b, locks[1]],
  ] as const) {
    trimEnds(t, l)
    dropShort(t, l)
  }
  const { profiles } = settle([a, b])
  if (!locked) {
    dropHangersOn(a, b, profiles[0]!)
    dropHangersOn(b, a, profiles[1]!)
    dropFalse(a, profiles[0]!)
    dropFalse(b, profiles[1]!)
  }
  const c = coexistence(a, b)
  const gain = secondGain(store, path, a, b)
  const apartShare = c.on > 0 ? c.apart / c.on : 0
  const rationalShare = c.apart + c.rational > 0 ? c.rational / (c.apart + c.rational) : 0
  const proven = apartShare > SHARE_LEAST && apartShare * (gain - GAIN_BY_CHANCE) > PROOF
  if (locked || (proven && rationalShare < 0.8)) {
    mendNear(locked ? [] : nearAgain(signal, a, b), a, b)
    return finish([a, b], 'two', { apartShare, rationalShare })
  }
  return finish([single], 'one', { apartShare, rationalShare })
}
