/**
 * A finished track cut into what it does: speeds that were kept, and swings about a middle (hunting). What lies between two of them is
 * a change of speed. Limits in soundLimits.ts.
 */
import { percentile } from './saySpeed.ts'
import { STEP } from './settings.ts'
import type { SoundLimits } from './soundLimits.ts'
import type { FrameTrack, Stretch } from './tracks.ts'

export interface Piece extends Stretch {
  does: 'keeps' | 'hunts'
  /** Hz: the middle, and the ends of its swing */
  rate: number
  low: number
  high: number
}

interface Turn {
  at: number
  /** ln Hz */
  value: number
  high: boolean
}

/** The turning points of ln f that stand out by `least` from their neighbours, one high, one low in turn. */
function turnsOf(t: FrameTrack, s: Stretch, least: number): Turn[] {
  const out: Turn[] = []
  let best: Turn = { at: s.from, value: Math.log(t.rate[s.from]!), high: true }
  let worst: Turn = { ...best, high: false }
  let up: boolean | undefined
  for (let i = s.from; i < s.to; i++) {
    const value = Math.log(t.rate[i]!)
    if (value > best.value) best = { at: i, value, high: true }
    if (value < worst.value) worst = { at: i, value, high: false }
    if (up !== false && best.value - value > least) {
      out.push(best)
      worst = { at: i, value, high: false }
      up = false
    } else if (up !== true && value - worst.value > least) {
      out.push(worst)
      best = { at: i, value, high: true }
      up = true
    }
    if (up === false) best = { at: i, value, high: true }
    if (up === true) worst = { at: i, value, high: false }
  }
  return out
}

/** Stretches of even swings: several in a row, alike in size and in time. */
export function huntingIn(t: FrameTrack, s: Stretch, limits: SoundLimits): Piece[] {
  const turns = turnsOf(t, s, Math.log(limits.huntSwing.value))
  const out: Piece[] = []
  const even = (a: number, b: number) => Math.max(a, b) < limits.huntEven.value * Math.min(a, b)
  let from = 0
  for (let k = 1; k <= turns.length; k++) {
    const size = (i: number) => Math.abs(turns[i]!.value - turns[i - 1]!.value)
    const time = (i: number) => turns[i]!.at - turns[i - 1]!.at
    const goesOn =
      k < turns.length &&
      time(k) * STEP < limits.huntSlowest.value / 2 &&
      size(k) < Math.log(limits.huntMost.value) &&
      (k - from < 2 || (even(size(k), size(k - 1)) && even(time(k), time(k - 1))))
    if (goesOn) continue
    if (k - 1 - from >= 2 * limits.huntSwings.value) {
      const piece = { from: turns[from]!.at, to: turns[k - 1]!.at }
      out.push({ ...piece, does: 'hunts', ...spanOf(t, piece) })
    }
    from = k
  }
  return out
}

function spanOf(t: FrameTrack, s: Stretch): { rate: number; low: number; high: number } {
  const part = t.rate.subarray(s.from, s.to)
  return { rate: percentile(part, 0.5), low: percentile(part, 0.05), high: percentile(part, 0.95) }
}

/** The speeds kept in a sounding stretch, longest first found from its beginning. */
function keptIn(t: FrameTrack, s: Stretch, limits: SoundLimits): Piece[] {
  const out: Piece[] = []
  const least = Math.max(2, Math.round(limits.keptLeast.value / STEP))
  for (let i = s.from; i + least <= s.to; ) {
    let low = t.rate[i]!
    let high = low
    let k = i
    for (; k < s.to; k++) {
      low = Math.min(low, t.rate[k]!)
      high = Math.max(high, t.rate[k]!)
      if (high > limits.keptBand.value * low) break
    }
    if (k - i < least) {
      i++
      continue
    }
    // the tail of a change fits the band and is none of it
    const { rate } = spanOf(t, { from: i, to: k })
    const near = (at: number) =>
      Math.abs(Math.log(t.rate[at]! / rate)) < 0.5 * Math.log(limits.keptBand.value)
    let from = i
    let to = k
    while (from < to && !near(from)) from++
    while (to > from && !near(to - 1)) to--
    if (to - from >= least) out.push({ from, to, does: 'keeps', ...spanOf(t, { from, to }) })
    i = k
  }
  return out
}

/** What the track does in a sounding stretch, in order. */
export function piecesOf(t: FrameTrack, s: Stretch, limits: SoundLimits): Piece[] {
  const hunts = huntingIn(t, s, limits)
  const out: Piece[] = []
  let from = s.from
  for (const h of [...hunts, undefined]) {
    out.push(...keptIn(t, { from, to: h?.from ?? s.to }, limits))
    if (!h) break
    out.push(h)
    from = h.to
  }
  return out
}
