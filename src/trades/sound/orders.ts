/**
 * The recording on the angle of one engine: order spectrum, half orders, and each cycle's energy.
 * Computed order tracking: K. R. Fyfe and E. D. S. Munck, Mech. Syst. Signal Process. 11 (1997) 187.
 */
import FFT from 'fft.js'
import { filtered, highPass, lowPass } from '../../base/numerics/biquad.ts'
import { ANALYSIS_RATE } from './resample.ts'
import { STEP } from './settings.ts'
import type { FrameTrack, Stretch } from './tracks.ts'

/** points a turn and turns a block of the order spectrum */
const PER_TURN = 32
const TURNS = 32
const SIZE = PER_TURN * TURNS
/** orders go up to here */
export const MOST_ORDERS = 14

/** Turns since the start of the stretch at each analysis sample of it (turn = one firing). */
export function turnsAlong(t: FrameTrack, s: Stretch): Float64Array {
  const hop = Math.round(STEP * ANALYSIS_RATE)
  const n = (s.to - s.from) * hop
  const out = new Float64Array(n)
  let u = 0
  for (let k = 0; k < n; k++) {
    const p = k / hop
    const i = s.from + Math.floor(p)
    const a = t.rate[i]!
    const b = i + 1 < s.to ? t.rate[i + 1]! : a
    out[k] = u
    u += (a + (p - Math.floor(p)) * (b - a)) / ANALYSIS_RATE
  }
  return out
}

/** The stretch's sound at uniform steps of angle, PER_TURN a turn. */
export function onAngle(signal: Float32Array, turns: Float64Array, firstSample: number): Float64Array {
  const total = turns[turns.length - 1] ?? 0
  const out = new Float64Array(Math.floor(total * PER_TURN))
  let k = 0
  for (let i = 0; i < out.length; i++) {
    const u = i / PER_TURN
    while (k + 2 < turns.length && turns[k + 1]! < u) k++
    const part = (u - turns[k]!) / Math.max(1e-12, turns[k + 1]! - turns[k]!)
    const a = signal[firstSample + k] ?? 0
    out[i] = a + part * ((signal[firstSample + k + 1] ?? 0) - a)
  }
  return out
}

/** Mean power at each 1/TURNS of an order, 0 … MOST_ORDERS. */
export function orderSpectrum(angle: Float64Array): Float64Array {
  const fft = new FFT(SIZE)
  const input = new Float64Array(SIZE)
  const spectrum = new Float64Array(2 * SIZE)
  const out = new Float64Array(MOST_ORDERS * TURNS + 1)
  let blocks = 0
  for (let start = 0; start + SIZE <= angle.length; start += SIZE / 2) {
    for (let i = 0; i < SIZE; i++)
      input[i] = angle[start + i]! * (0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / SIZE))
    fft.realTransform(spectrum, input)
    for (let b = 0; b < out.length; b++) out[b]! += spectrum[2 * b]! ** 2 + spectrum[2 * b + 1]! ** 2
    blocks++
  }
  if (blocks > 0) for (let b = 0; b < out.length; b++) out[b]! /= blocks
  return out
}

function median(values: number[]): number {
  const v = values.filter(Number.isFinite).sort((a, b) => a - b)
  return v.length > 0 ? v[Math.floor(v.length / 2)]! : Number.NaN
}

/** Level of one order over the floor around it, dB; the floor is the median of what lies beside it. */
export function orderLevel(spectrum: Float64Array, order: number): number {
  const b = Math.round(order * TURNS)
  if (b < 2 || b + 2 >= spectrum.length) return Number.NaN
  const peak = Math.max(spectrum[b - 1]!, spectrum[b]!, spectrum[b + 1]!)
  const beside: number[] = []
  for (let d = 4; d <= 11; d++)
    for (const k of [b - d, b + d])
      if (k > 0 && k < spectrum.length && !nearHalf(k)) beside.push(spectrum[k]!)
  return 10 * Math.log10(peak / Math.max(1e-30, median(beside)))
}

const nearHalf = (bin: number) => Math.abs((2 * bin) / TURNS - Math.round((2 * bin) / TURNS)) < 7 / TURNS

/** Mean level of the half orders 1/2 … 11/2 over their floor, dB; the greatest of three bins of noise gives about 3. */
export function halfOrderIndex(spectrum: Float64Array): number {
  let sum = 0
  let n = 0
  for (let h = 1; h <= 6; h++) {
    const v = orderLevel(spectrum, h - 0.5)
    if (!Number.isFinite(v)) continue
    sum += v
    n++
  }
  return n > 0 ? sum / n : Number.NaN
}

/** What the single cycles say over a stretch. */
export interface CycleReading {
  /** share of cycles far weaker than their neighbours */
  weak: number
  /** correlation of a cycle's energy with the next one's; strongly negative = alternate firing */
  nextCorrelation: number
  /** s, times of the weak cycles */
  times: number[]
  cycles: number
}

const WEAK = 0.35
const NEIGHBOURS = 15

/** Energy of each cycle in 120–900 Hz over the running median of its neighbours. */
export function readCycles(signal: Float32Array, t: FrameTrack, s: Stretch): CycleReading {
  const hop = Math.round(STEP * ANALYSIS_RATE)
  const first = s.from * hop
  const turns = turnsAlong(t, s)
  const part = Float64Array.from(signal.subarray(first, first + turns.length))
  const band = filtered(
    filtered(part, highPass(120, Math.SQRT1_2, ANALYSIS_RATE)),
    lowPass(900, Math.SQRT1_2, ANALYSIS_RATE),
  )
  const hiss = filtered(part, highPass(1100, Math.SQRT1_2, ANALYSIS_RATE))
  const phase = quietestPhase(band, turns)
  const n = Math.floor((turns[turns.length - 1] ?? 0) - phase)
  const energy = new Float64Array(Math.max(0, n))
  const high = new Float64Array(energy.length)
  const count = new Float64Array(energy.length)
  const time = new Float64Array(energy.length)
  for (let k = 0; k < band.length; k++) {
    const c = Math.floor(turns[k]! - phase)
    if (c < 0 || c >= n) continue
    energy[c]! += band[k]! ** 2
    high[c]! += hiss[k]! ** 2
    count[c]!++
    time[c] = (first + k) / ANALYSIS_RATE
  }
  const ratio = new Float64Array(energy.length)
  const out: CycleReading = { weak: 0, nextCorrelation: 0, times: [], cycles: n }
  const highMedian = median(Array.from(high, (v, c) => v / Math.max(1, count[c]!)))
  let weak = 0
  let used = 0
  for (let c = 0; c < n; c++) {
    const near: number[] = []
    for (let k = Math.max(0, c - NEIGHBOURS); k <= Math.min(n - 1, c + NEIGHBOURS); k++)
      near.push(energy[k]! / Math.max(1, count[k]!))
    ratio[c] = energy[c]! / Math.max(1, count[c]!) / Math.max(1e-20, median(near))
    // a splash lifts its neighbours' median, not the cycle: such cycles say nothing
    if (high[c]! / Math.max(1, count[c]!) > 10 * highMedian) continue
    used++
    if (ratio[c]! < WEAK) {
      weak++
      out.times.push(time[c]!)
    }
  }
  out.weak = used > 0 ? weak / used : 0
  out.nextCorrelation = lagOne(ratio)
  return out
}

/** Where in the turn the sound is weakest, 0 … 1: cycles are cut there. */
function quietestPhase(band: Float64Array, turns: Float64Array): number {
  const parts = 12
  const sum = new Float64Array(parts)
  for (let k = 0; k < band.length; k++) sum[Math.floor((turns[k]! % 1) * parts)]! += band[k]! ** 2
  let best = 0
  for (let p = 1; p < parts; p++) if (sum[p]! < sum[best]!) best = p
  return best / parts
}

function lagOne(x: Float64Array): number {
  const n = x.length
  if (n < 8) return 0
  let mean = 0
  for (const v of x) mean += Math.min(3, v)
  mean /= n
  let cross = 0
  let square = 0
  for (let i = 0; i + 1 < n; i++) {
    const a = Math.min(3, x[i]!) - mean
    cross += a * (Math.min(3, x[i + 1]!) - mean)
    square += a * a
  }
  return square > 0 ? cross / square : 0
}

/** A line whose order is no multiple of 1/2 or 1/3: an impeller that does not turn with the engine. */
export interface BladePass {
  /** blade passages a firing */
  order: number
  /** dB over its floor */
  level: number
  /** part by which the impeller turns slower than `expected` says; NaN when no order was expected */
  slip: number
}

/**
 * Strongest odd-ratio line between orders 0.6 and 8 that stands `least` dB over its floor; with `expected`
 * (blades × gear ratio / firings a turn) only lines up to 45 % under it count. Undefined when none stands out.
 */
export function findBladePass(spectrum: Float64Array, expected?: number, least = 8): BladePass | undefined {
  const low = expected ? 0.55 * expected : 0.6
  const high = expected ? 1.02 * expected : 8
  let best: BladePass | undefined
  for (let b = Math.ceil(low * TURNS); b <= Math.min(spectrum.length - 12, high * TURNS); b++) {
    const order = b / TURNS
    if (onFraction(order, 2) || onFraction(order, 3)) continue
    if (spectrum[b]! < spectrum[b - 1]! || spectrum[b]! < spectrum[b + 1]!) continue
    const level = orderLevel(spectrum, order)
    if (level > least && (!best || level > best.level))
      best = { order, level, slip: expected ? 1 - order / expected : Number.NaN }
  }
  return best
}

const onFraction = (order: number, parts: number) =>
  Math.abs(order * parts - Math.round(order * parts)) / parts < 2.2 / TURNS
