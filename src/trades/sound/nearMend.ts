/** Where the long window's near twins take the place of what the short window made of them. */
import { LONG_STEP, type NearTwins, splitNear } from './nearTwins.ts'
import { STEP } from './settings.ts'
import { emptyTrack, type FrameTrack, type Stretch, stretches } from './tracks.ts'

/** slope under which a stretch counts as steady enough for the long window, 1/s */
const STEADY = 0.12

export function steadyStretches(t: FrameTrack): Stretch[] {
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

export const isNearPair = (r: NearTwins) => r.both > 0.5 && r.apart >= NEAR_LEAST && r.spread < 0.45 * r.apart

/** Writes the near twins' speeds into two tracks; the faster one is always the first. */
export function layNear(near: readonly NearTwins[], a: FrameTrack, b: FrameTrack): void {
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

/** share of a piece with both lines in it from which the long window is believed against the short one */
const BOTH_BELIEVED = 0.7

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

/**
 * Steady stretches of at least 2 s in which two tracks look like near twins taken wrongly, or only one of two engines is
 * heard, looked at with the long window: the short one hears two lines that near as one.
 */
export function nearAgain(signal: Float32Array, a: FrameTrack, b: FrameTrack): NearTwins[] {
  const n = a.rate.length
  const lower = emptyTrack(n)
  for (let i = 0; i < n; i++) {
    const f = a.rate[i]!
    const g = b.rate[i]!
    if (suspect(f, g)) lower.rate[i] = Math.min(f, g)
    else if (f <= 0 !== g <= 0) lower.rate[i] = Math.max(f, g)
  }
  return steadyStretches(lower)
    .flatMap(pieces)
    .map((s) => splitNear(signal, s, lower.rate))
    .filter((r) => isNearPair(r) && r.both >= BOTH_BELIEVED)
}

/** s of a piece: short, so that one in which an engine stops or starts does not spoil its neighbours */
const PIECE = 3

/** A stretch in pieces of PIECE to less than twice that. */
function pieces(s: Stretch): Stretch[] {
  const most = Math.round(PIECE / STEP)
  const n = Math.max(1, Math.floor((s.to - s.from) / most))
  const at = (k: number) => s.from + Math.round((k * (s.to - s.from)) / n)
  return Array.from({ length: n }, (_, k) => ({ from: at(k), to: at(k + 1) }))
}

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
export function mendNear(near: readonly NearTwins[], a: FrameTrack, b: FrameTrack): void {
  for (const r of near) {
    const both = [...r.first.keys()].filter((k) => r.first[k]! > 0 && r.second[k]! > 0)
    if (both.length === 0) continue
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
