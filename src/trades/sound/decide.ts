/** From candidates to tracks: how many engines, which octave, where each one sounds. */
import type { Flag } from '../../base/answers/solved.ts'
import { CANDIDATES, type FrameStore, PAIR_UNIT, PAIRS } from './frameStore.ts'
import { isNearPair, layNear, mendNear, nearAgain, steadyStretches } from './nearMend.ts'
import { type NearTwins, splitNear } from './nearTwins.ts'
import { type OctaveNote, settleOctaves, usualOctaveRules } from './octave.ts'
import { type Lock, pathOne } from './pathOne.ts'
import { isRational, type PairPath, pathTwo } from './pathTwo.ts'
import { dropFalse } from './rejects.ts'
import { HOP, type PathCosts, STEP, usualCosts } from './settings.ts'
import { frontSignal } from './soundFrames.ts'
import { HALF_TEETH, type ToothProfile, toothProfiles } from './teeth.ts'
import { emptyTrack, type FrameTrack, silence, slopeAt, stretches, trackOf } from './tracks.ts'
import { dropHangersOn, dropShort, framePower, trimEnds } from './trims.ts'
import type { Warper } from './warp.ts'
import { dropDoubtful, type PerhapsLine } from './wholeEngine.ts'

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
  /** lines that are no whole engine */
  perhaps: PerhapsLine[]
  /** what was left out, and why */
  flags: Flag[]
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
      perhaps,
      ...extra,
    }
  }

  const single = trackOf(store, pathOne(store, costs, locks[0]))
  const power = framePower(signal, store.frames)
  trimEnds(single, locks[0], power)
  dropShort(single, locks[0])
  const seen = profilesOf(signal, [single], warper, cancelled, false, room)[0]!
  const flags = dropFalse(single, seen, locks[0])
  const perhaps = dropDoubtful(single, seen, power, locks[0])
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
      perhaps,
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
