/** Which engine is which after a crossing: the tone before and after is compared. */
import { STEP } from './settings.ts'
import { HALF_TEETH, onTooth, type ToothProfile } from './teeth.ts'
import { type FrameTrack, stretches } from './tracks.ts'

/** frames of tone compared on each side */
const SIDE = Math.round(0.6 / STEP)
/** tracks nearer than this in ln f count as met */
const MET = 0.05
const LONGEST = Math.round(3 / STEP)

export interface LabelDoubt {
  /** s */
  after: number
}

/** mean ln Z at the whole multiples over a span; NaN where unread or on the other's tooth */
function tone(p: ToothProfile, t: FrameTrack, o: FrameTrack, from: number, to: number): Float64Array {
  const out = new Float64Array(HALF_TEETH / 2)
  for (let h = 0; h < out.length; h++) {
    let sum = 0
    let n = 0
    for (let i = Math.max(0, from); i < Math.min(t.rate.length, to); i++) {
      const v = p[i * HALF_TEETH + 2 * h + 1]!
      if (Number.isNaN(v) || t.rate[i]! <= 0) continue
      if (o.rate[i]! > 0 && onTooth((h + 1) * t.rate[i]!, o.rate[i]!)) continue
      sum += v
      n++
    }
    out[h] = n > 3 ? sum / n : Number.NaN
  }
  return out
}

function distance(a: Float64Array, b: Float64Array): number {
  let sum = 0
  let n = 0
  for (let h = 0; h < a.length; h++) {
    if (Number.isNaN(a[h]!) || Number.isNaN(b[h]!)) continue
    sum += (a[h]! - b[h]!) ** 2
    n++
  }
  return n > 1 ? sum / n : Number.NaN
}

function swapFrom(a: FrameTrack, b: FrameTrack, pa: ToothProfile, pb: ToothProfile, from: number): void {
  const exchange = (
    x: Float64Array | Float32Array | Uint8Array,
    y: Float64Array | Float32Array | Uint8Array,
    at: number,
  ) => {
    for (let i = at; i < x.length; i++) {
      const v = x[i]!
      x[i] = y[i]!
      y[i] = v
    }
  }
  exchange(a.rate, b.rate, from)
  exchange(a.score, b.score, from)
  exchange(a.slope, b.slope, from)
  exchange(pa, pb, from * HALF_TEETH)
}

/** Exchanges the labels after a meeting where tone and slope say so; names the meetings left open. */
export function relabel(a: FrameTrack, b: FrameTrack, pa: ToothProfile, pb: ToothProfile): LabelDoubt[] {
  const doubts: LabelDoubt[] = []
  const n = a.rate.length
  const met = (i: number) => {
    const f = a.rate[i]!
    const g = b.rate[i]!
    return f > 0 && g > 0 ? Math.abs(Math.log(f / g)) < MET : f > 0 || g > 0
  }
  for (const s of stretches(n, met)) {
    if (s.to - s.from > LONGEST || s.from < SIDE / 2 || s.to > n - SIDE / 2) continue
    const before = [tone(pa, a, b, s.from - SIDE, s.from), tone(pb, b, a, s.from - SIDE, s.from)] as const
    const after = [tone(pa, a, b, s.to, s.to + SIDE), tone(pb, b, a, s.to, s.to + SIDE)] as const
    const keep =
      distance(before[0], after[0]) + distance(before[1], after[1]) + slopeMisfit(a, b, s.from, s.to, false)
    const swap =
      distance(before[0], after[1]) + distance(before[1], after[0]) + slopeMisfit(a, b, s.from, s.to, true)
    if (!Number.isFinite(keep) || !Number.isFinite(swap)) continue
    if (swap < keep) swapFrom(a, b, pa, pb, Math.floor((s.from + s.to) / 2))
    if (Math.abs(swap - keep) < 0.2 * Math.max(swap, keep)) doubts.push({ after: s.to * STEP })
  }
  relabelJumps(a, b, pa, pb)
  return doubts
}

/** a change of speed, ln in twice JUMP_SIDE frames, at which labels may have changed places without the tracks meeting */
const JUMP = 0.1
const JUMP_SIDE = Math.round(0.1 / STEP)
/** the tone must fit this much better swapped */
const PLAINLY = 0.8

const jumpAt = (t: FrameTrack, i: number) => {
  const x = t.rate[i - JUMP_SIDE] ?? 0
  const y = t.rate[i + JUMP_SIDE] ?? 0
  return x > 0 && y > 0 ? Math.abs(Math.log(y / x)) : 0
}

/** A speed that passes the other one quickly is never seen to meet it: at every quick change the tone decides anew. */
function relabelJumps(a: FrameTrack, b: FrameTrack, pa: ToothProfile, pb: ToothProfile): void {
  const n = a.rate.length
  const jump = (i: number) => (a.rate[i]! > 0 && b.rate[i]! > 0 ? Math.max(jumpAt(a, i), jumpAt(b, i)) : 0)
  for (const s of stretches(n, (i) => jump(i) > JUMP)) {
    let from = s.from
    for (let i = s.from; i < s.to; i++) if (jump(i) > jump(from)) from = i
    // both must be near each other around it, or there is nothing to mix up
    const near = Math.abs(Math.log(a.rate[from]! / b.rate[from]!)) < 2 * jump(from)
    if (!near || from < SIDE || from > n - SIDE) continue
    const lo = from - JUMP_SIDE
    const hi = from + JUMP_SIDE + 1
    const before = [tone(pa, a, b, lo - SIDE, lo), tone(pb, b, a, lo - SIDE, lo)] as const
    const after = [tone(pa, a, b, hi, hi + SIDE), tone(pb, b, a, hi, hi + SIDE)] as const
    const keep = distance(before[0], after[0]) + distance(before[1], after[1])
    const swap = distance(before[0], after[1]) + distance(before[1], after[0])
    if (swap < PLAINLY * keep) swapFrom(a, b, pa, pb, from)
  }
}

/** Twice the gap between the speeds carried on across the meeting and those found behind it. */
function slopeMisfit(a: FrameTrack, b: FrameTrack, from: number, to: number, swapped: boolean): number {
  const look = 12
  const p = Math.max(0, from - 1)
  const q = Math.min(a.rate.length - 1, to + 1)
  const p0 = Math.max(0, p - look)
  if (a.rate[p]! <= 0 || b.rate[p]! <= 0 || a.rate[q]! <= 0 || b.rate[q]! <= 0) return 0
  if (a.rate[p0]! <= 0 || b.rate[p0]! <= 0) return 0
  const span = q - p
  const ahead = (t: FrameTrack) =>
    Math.log(t.rate[p]!) + (Math.log(t.rate[p]! / t.rate[p0]!) / Math.max(1, p - p0)) * span
  const [x, y] = swapped ? [b, a] : [a, b]
  return 2 * (Math.abs(ahead(a) - Math.log(x.rate[q]!)) + Math.abs(ahead(b) - Math.log(y.rate[q]!))) * 5
}
