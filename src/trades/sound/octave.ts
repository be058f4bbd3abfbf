/**
 * Settles the octave once for each stretch between silences, from the average strength of whole
 * against half multiples: an engine cannot double its speed between two frames.
 */
import { HALF_TEETH, type ToothProfile } from './teeth.ts'
import { type FrameTrack, type Stretch, soundingStretches } from './tracks.ts'

/** How whole and half multiples compare over a stretch, dB of power over the local floor. */
export interface OctaveBalance {
  /** whole multiples over half multiples (h - 1/2), dB */
  wholeOverHalf: number
  /** even whole multiples over odd ones, dB */
  evenOverOdd: number
  /** lower quartile of the same over the odd multiples: a resonance raises some, an unevenly firing engine all */
  evenOverOddLow: number
  /** how far the half multiples stand over the floor, ln of amplitude */
  halfOverFloor: number
  oddOverFloor: number
  teeth: number
}

/** mean of ln Z in noise, see comb.ts */
const NOISE_LOG = -0.288

/** mean over time of ln Z at each half multiple; NaN where it was read in too few frames */
export function meanProfile(profile: ToothProfile, s: Stretch): Float64Array {
  const out = new Float64Array(HALF_TEETH)
  for (let h = 0; h < HALF_TEETH; h++) {
    let sum = 0
    let n = 0
    for (let i = s.from; i < s.to; i++) {
      const v = profile[i * HALF_TEETH + h]!
      if (Number.isNaN(v)) continue
      sum += Math.min(2.77, v)
      n++
    }
    out[h] = n >= Math.max(4, 0.15 * (s.to - s.from)) ? sum / n - NOISE_LOG : Number.NaN
  }
  return out
}

/** excess of a mean ln level over the floor as power, never below a small part of the floor */
const excess = (v: number) => Math.max(0.15, Math.exp(2 * v) - 1)

export function octaveBalance(mean: Float64Array): OctaveBalance {
  let wholeHalf = 0
  let nHalf = 0
  let half = 0
  let evenOdd = 0
  const evenOdds: number[] = []
  let nOdd = 0
  let odd = 0
  for (let h = 0; h < HALF_TEETH; h++) {
    const v = mean[h]!
    if (Number.isNaN(v)) continue
    const order = h + 1
    if (order % 2 === 1) {
      // a half multiple against its whole neighbours
      const near = [mean[h - 1], mean[h + 1]].filter((x): x is number => x !== undefined && !Number.isNaN(x))
      if (near.length === 0) continue
      wholeHalf += near.reduce((a, x) => a + Math.log(excess(x)), 0) / near.length - Math.log(excess(v))
      half += v
      nHalf++
    } else if (order % 4 === 2) {
      const near = [mean[h - 2], mean[h + 2]].filter((x): x is number => x !== undefined && !Number.isNaN(x))
      if (near.length === 0) continue
      const more = near.reduce((a, x) => a + Math.log(excess(x)), 0) / near.length - Math.log(excess(v))
      evenOdd += more
      evenOdds.push(more)
      odd += v
      nOdd++
    }
  }
  const dB = 10 / Math.LN10
  return {
    wholeOverHalf: nHalf > 0 ? (dB * wholeHalf) / nHalf : Number.POSITIVE_INFINITY,
    evenOverOdd: nOdd > 0 ? (dB * evenOdd) / nOdd : 0,
    evenOverOddLow: dB * (evenOdds.sort((a, b) => a - b)[Math.floor(0.25 * nOdd)] ?? 0),
    halfOverFloor: nHalf > 0 ? half / nHalf : 0,
    oddOverFloor: nOdd > 0 ? odd / nOdd : 0,
    teeth: nHalf + nOdd,
  }
}

export interface OctaveRules {
  /** the comb is halved when whole multiples exceed half ones by less than this, dB … */
  halveBelow: number
  /** … and the half ones stand this far over the floor, ln */
  halveFloor: number
  /** the comb is doubled when even multiples exceed odd ones by more than this, dB */
  doubleAbove: number
}

export const usualOctaveRules: OctaveRules = { halveBelow: 9, halveFloor: 0.45, doubleAbove: 7 }

/** A stretch whose speed could be read an octave apart as well. */
export interface OctaveNote extends Stretch {
  /** 2 = the engine may turn twice as fast as shown, 0.5 = half as fast */
  factor: number
  balance: OctaveBalance
  /** index of the track, set where there are several */
  track?: number
}

function scaleStretch(t: FrameTrack, s: Stretch, factor: number): void {
  for (let i = s.from; i < s.to; i++) t.rate[i]! *= factor
}

export interface OctaveResult {
  /** some stretch was moved by an octave */
  moved: boolean
  /** stretches that stay open */
  notes: OctaveNote[]
}

/** even over odd teeth, dB, from which an octave stays open */
const OPEN_FROM = 1.8
/** whole over half multiples, dB, under which it stays open the other way */
const HALF_OPEN = 16

/** Corrects the octave of each stretch in place; a stretch with a frame of `held` in it, laid by hand, keeps its own. */
export function settleOctaves(
  t: FrameTrack,
  profile: ToothProfile,
  range: { low: number; high: number },
  rules: OctaveRules = usualOctaveRules,
  held: readonly number[] = [],
): OctaveResult {
  const notes: OctaveNote[] = []
  let moved = false
  for (const s of soundingStretches(t)) {
    const balance = octaveBalance(meanProfile(profile, s))
    if (balance.teeth < 3 || held.some((i) => i >= s.from && i < s.to)) continue
    let top = 0
    let bottom = Number.POSITIVE_INFINITY
    for (let i = s.from; i < s.to; i++) {
      top = Math.max(top, t.rate[i]!)
      bottom = Math.min(bottom, t.rate[i]!)
    }
    const halve = balance.wholeOverHalf < rules.halveBelow && balance.halfOverFloor > rules.halveFloor
    const double = balance.evenOverOdd > rules.doubleAbove && balance.evenOverOddLow > 3.5
    if (halve && bottom / 2 >= range.low) {
      scaleStretch(t, s, 0.5)
      moved = true
    } else if (double && top * 2 <= range.high) {
      scaleStretch(t, s, 2)
      moved = true
    } else if (
      balance.wholeOverHalf < HALF_OPEN &&
      balance.halfOverFloor > rules.halveFloor &&
      bottom / 2 >= range.low
    )
      // strong lines midway: every second firing is weak, or another engine turns half as fast
      notes.push({ ...s, factor: 0.5, balance })
    else if (balance.evenOverOdd > OPEN_FROM && top * 2 <= range.high)
      notes.push({ ...s, factor: 2, balance })
  }
  return { moved, notes }
}
