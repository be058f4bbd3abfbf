/**
 * Two engines within a few per cent of each other, told apart in the order domain: the recording is
 * re-timed by the track already found, so that a long window can be used although the speed wanders
 * (computed order tracking, K. R. Fyfe and E. D. S. Munck, Mech. Syst. Signal Process. 11 (1997) 187).
 */
import FFT from 'fft.js'
import { naturalLog } from '../../base/numerics/fastLog.ts'
import { makePairScorer } from './candidates.ts'
import { addMaskedPeaks, type CombGrid, makeCandidates, makeCombGrid, makeScores, pickPeaks } from './comb.ts'
import { CANDIDATES, type FrameStore, MASKED_PEAKS, makeFrameStore, OWN_PEAKS } from './frameStore.ts'
import { pathTwo } from './pathTwo.ts'
import { ANALYSIS_RATE } from './resample.ts'
import { type PathCosts, STEP, usualCosts } from './settings.ts'
import type { Stretch } from './tracks.ts'

/** s; longer windows invent twins out of a wandering speed */
const LONG_WINDOW = 0.8
const LONG_FRAME = Math.round(LONG_WINDOW * ANALYSIS_RATE)
const LONG_FFT = 8192
/** s between long frames */
export const LONG_STEP = 0.1
const LONG_TOP = 1500
const PER_HERTZ = 4
const POINTS = LONG_TOP * PER_HERTZ + 1
const BIN = ANALYSIS_RATE / LONG_FFT
const BINS = Math.ceil(LONG_TOP / BIN) + 4
const FLOOR_RATIO = Math.log(1.33)
/** nearest pair, ln f */
const NEAREST = 0.004

const longCosts: PathCosts = {
  ...usualCosts,
  step: LONG_STEP,
  offset: 3,
  pairOffset: 2.5,
  rationalOffset: 0,
  reward: 0.4,
  birth: 6,
  death: 6,
  moveSigma: 0.02,
  fastLimit: 1,
}

/** Speeds of two near engines over a stretch, at LONG_STEP. */
export interface NearTwins {
  /** frames of the stretch */
  from: number
  to: number
  /** s, time of each long frame in the recording */
  time: Float64Array
  /** Hz, 0 = silent */
  first: Float64Array
  second: Float64Array
  /** share of long frames in which both sound */
  both: number
  /** share of those in which the same engine is the faster */
  sameSign: number
  /** median of |ln f1/f2|, and the distance between its quartiles */
  apart: number
  spread: number
}

/** Signal between frames re-timed so that `rate` becomes its mean; cubic interpolation. */
export function straightened(
  signal: Float32Array,
  s: Stretch,
  rate: Float64Array,
): { x: Float64Array; mean: number; time: Float64Array } {
  let mean = 0
  for (let i = s.from; i < s.to; i++) mean += rate[i]!
  mean /= s.to - s.from
  const seconds = (s.to - s.from) * STEP
  const x = new Float64Array(Math.floor(seconds * ANALYSIS_RATE))
  const hop = Math.round(LONG_STEP * ANALYSIS_RATE)
  const time = new Float64Array(Math.floor(x.length / hop))
  let t = s.from * STEP
  for (let i = 0; i < x.length; i++) {
    if (i % hop === 0 && i / hop < time.length) time[i / hop] = t
    const at = t * ANALYSIS_RATE
    const j = Math.floor(at)
    const u = at - j
    const a = signal[j - 1] ?? 0
    const b = signal[j] ?? 0
    const c = signal[j + 1] ?? 0
    const d = signal[j + 2] ?? 0
    x[i] = b + 0.5 * u * (c - a + u * (2 * a - 5 * b + 4 * c - d + u * (3 * (b - c) + d - a)))
    const p = t / STEP
    const k = Math.min(s.to - 2, Math.max(s.from, Math.floor(p)))
    const here = rate[k]! + Math.min(1, Math.max(0, p - k)) * (rate[k + 1]! - rate[k]!)
    t += mean / here / ANALYSIS_RATE
  }
  return { x, mean, time }
}

/** Moving average over ±half frames inside the stretch. */
function smoothed(rate: Float64Array, s: Stretch, half: number): Float64Array {
  const out = new Float64Array(rate.length)
  for (let i = s.from; i < s.to; i++) {
    let sum = 0
    let n = 0
    for (let k = Math.max(s.from, i - half); k < Math.min(s.to, i + half + 1); k++) {
      sum += rate[k]!
      n++
    }
    out[i] = sum / n
  }
  return out
}

interface LongSpectrum {
  read: (x: Float64Array, start: number) => Float64Array
}

function makeLongSpectrum(): LongSpectrum {
  const fft = new FFT(LONG_FFT)
  const input = new Float64Array(LONG_FFT)
  const spectrum = new Float64Array(2 * LONG_FFT)
  const hann = Float64Array.from(
    { length: LONG_FRAME },
    (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / LONG_FRAME),
  )
  const m = new Float64Array(BINS)
  const sums = new Float64Array(BINS + 1)
  const level = new Float64Array(POINTS)
  const read = (x: Float64Array, start: number) => {
    for (let i = 0; i < LONG_FRAME; i++) input[i] = (x[start + i] ?? 0) * hann[i]!
    fft.realTransform(spectrum, input)
    for (let b = 0; b < BINS; b++) {
      m[b] = 0.5 * naturalLog(spectrum[2 * b]! ** 2 + spectrum[2 * b + 1]! ** 2 + 1e-24)
      sums[b + 1] = sums[b]! + m[b]!
    }
    for (let i = 0; i < POINTS; i++) {
      const hertz = i / PER_HERTZ
      const at = hertz / BIN
      const b = Math.floor(at)
      const half = Math.round(Math.min(500, Math.max(120, 2 * hertz)) / 2 / BIN)
      const lo = Math.max(1, b - half)
      const hi = Math.min(BINS, b + half + 1)
      const v = m[b]! + (at - b) * (m[b + 1]! - m[b]!) - (sums[hi]! - sums[lo]!) / (hi - lo) - FLOOR_RATIO
      level[i] = Math.min(4, Math.exp(v)) - 0.8
    }
    return level
  }
  return { read }
}

function scoreLong(grid: CombGrid, level: Float64Array, score: Float64Array): void {
  for (let g = 0; g < grid.rates.length; g++) {
    let sum = 0
    for (let t = grid.start[g]!, end = grid.start[g + 1]!; t < end; t++)
      sum += grid.weight[t]! * level[grid.at[t]!]!
    score[g] = sum
  }
}

/** Looks for two engines around the track `rate` (Hz a frame, none 0) within a stretch of at least 2 s. */
export function splitNear(signal: Float32Array, s: Stretch, rate: Float64Array): NearTwins {
  const guide = smoothed(rate, s, 12)
  const { x, mean, time } = straightened(signal, s, guide)
  const grid = makeCombGrid({
    low: mean * 0.93,
    high: mean * 1.07,
    step: 0.0012,
    teethFrom: 40,
    teethTo: LONG_TOP - 5,
    mostTeeth: 16,
    weight: (_, h) => 0.92 ** (h - 1),
    perHertz: PER_HERTZ,
    mask: 1.6 / LONG_WINDOW,
  })
  const spectrum = makeLongSpectrum()
  const scores = makeScores(grid)
  const work = { again: makeScores(grid), masked: new Float64Array(POINTS) }
  const peaks = makeCandidates(CANDIDATES)
  const scorer = makePairScorer(grid, NEAREST)
  const store: FrameStore = makeFrameStore(256)
  const hop = Math.round(LONG_STEP * ANALYSIS_RATE)
  const n = Math.floor(x.length / hop)
  for (let i = 0; i < n; i++) {
    const level = spectrum.read(x, i * hop - LONG_FRAME / 2)
    scoreLong(grid, level, scores.score)
    pickPeaks(grid, scores, peaks, 0, OWN_PEAKS)
    addMaskedPeaks(grid, [level], scores, work, peaks, MASKED_PEAKS)
    scorer.add(store, peaks, [level])
  }
  const path = pathTwo(store, longCosts)
  const first = new Float64Array(n)
  const second = new Float64Array(n)
  const ratios: number[] = []
  let faster = 0
  for (let i = 0; i < n; i++) {
    const frame = Math.min(s.to - 1, s.from + Math.max(0, Math.round(time[i]! / STEP) - s.from))
    const scale = guide[frame]! / mean
    const a = path.first[i]!
    const b = path.second[i]!
    if (a >= 0) first[i] = store.rate[i * CANDIDATES + a]! * scale
    if (b >= 0) second[i] = store.rate[i * CANDIDATES + b]! * scale
    if (a >= 0 && b >= 0 && a !== b) {
      ratios.push(Math.log(first[i]! / second[i]!))
      if (first[i]! > second[i]!) faster++
    }
  }
  const sorted = ratios.map(Math.abs).sort((p, q) => p - q)
  const at = (q: number) => sorted[Math.floor(q * sorted.length)] ?? 0
  return {
    from: s.from,
    to: s.to,
    time,
    first,
    second,
    both: n > 0 ? ratios.length / n : 0,
    sameSign: ratios.length > 0 ? Math.max(faster, ratios.length - faster) / ratios.length : 0,
    apart: at(0.5),
    spread: at(0.75) - at(0.25),
  }
}
