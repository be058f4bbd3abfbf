/**
 * Comb scores over a grid of firing rates, and the peaks worth following.
 * Subharmonic guard and weights: derived, see comments; tuned on the project's tuning seeds.
 */
import { GRID_STEP, HIGHEST, LOWEST, MASK, TEETH_FROM, TEETH_TO } from './settings.ts'
import { PER_HERTZ, type Warper } from './warp.ts'

/** The comb of every firing rate of a grid: teeth, weights normalised to sum of squares 1. */
export interface CombGrid {
  rates: Float64Array
  /** teeth of rate g are start[g] … start[g + 1] - 1 */
  start: Int32Array
  /** position in the flattened spectra */
  at: Uint16Array
  weight: Float32Array
  /** harmonic number of the first tooth of each rate */
  first: Int32Array
  /** ln of the ratio of neighbouring rates */
  step: number
  /** points a hertz of the spectra it reads */
  perHertz: number
  /** a tooth this near another engine's, Hz, belongs to that engine */
  mask: number
}

/** How a grid is laid out; frequencies in Hz. */
export interface CombShape {
  low: number
  high: number
  step: number
  teethFrom: number
  teethTo: number
  mostTeeth: number
  /** weight of a tooth by its frequency and harmonic number */
  weight: (hertz: number, harmonic: number) => number
  perHertz: number
  mask: number
}

export const usualComb: CombShape = {
  low: LOWEST,
  high: HIGHEST,
  step: GRID_STEP,
  teethFrom: TEETH_FROM,
  teethTo: TEETH_TO,
  mostTeeth: 99,
  // jitter weakens what lies high, wind and the phone's own high-pass what lies low
  weight: (hertz) => 1 / (1 + (hertz / 350) ** 2) / (1 + (70 / hertz) ** 4),
  perHertz: PER_HERTZ,
  mask: MASK,
}

/** Teeth and weights of every rate from `low` to `high`. */
export function makeCombGrid(shape: Partial<CombShape> = {}): CombGrid {
  const {
    low,
    high,
    step,
    teethFrom,
    teethTo,
    mostTeeth,
    weight: weigh,
    perHertz,
    mask,
  } = { ...usualComb, ...shape }
  const n = Math.floor(Math.log(high / low) / step) + 1
  const rates = Float64Array.from({ length: n }, (_, g) => low * Math.exp(g * step))
  const start = new Int32Array(n + 1)
  const first = new Int32Array(n)
  const at: number[] = []
  const weight: number[] = []
  rates.forEach((f, g) => {
    start[g] = at.length
    first[g] = Math.floor(teethFrom / f) + 1
    let squares = 0
    for (let h = first[g]!; h * f < teethTo && h < first[g]! + mostTeeth; h++) {
      const w = weigh(h * f, h)
      at.push(Math.round(h * f * perHertz))
      weight.push(w)
      squares += w * w
    }
    for (let k = start[g]!; k < weight.length; k++) weight[k]! /= Math.sqrt(squares)
  })
  start[n] = at.length
  return {
    rates,
    start,
    at: Uint16Array.from(at),
    weight: Float32Array.from(weight),
    first,
    step,
    perHertz,
    mask,
  }
}

/** Scores of one frame at every rate of the grid, with the slope that won. */
export interface FrameScores {
  score: Float64Array
  slope: Int32Array
}

const GUARD_TEETH = 10
/** phones cut what lies under about this, Hz: a tooth missing there tells little */
const FAINT_BELOW = 160
const GUARD_WEIGHT = 1.5
const GUARD_FREE = 0.8
export const SLOPE_COST = 0.06
const tooth = new Float64Array(GUARD_TEETH)
const trust = new Float64Array(GUARD_TEETH)

/** Weight of a tooth where strong and weak teeth are compared. */
function guardWeight(grid: CombGrid, t: number): number {
  const part = grid.at[t]! / grid.perHertz / FAINT_BELOW
  return part < 1 ? grid.weight[t]! * part * part : grid.weight[t]!
}

/**
 * How much more the teeth that are multiples of k carry than the others, worst of k = 2, 3, 4:
 * a comb at a fraction of the true rate has strong teeth only every k-th place.
 */
export function subMultiplePenalty(grid: CombGrid, g: number, slope: number, logZ: Warper['logZ']): number {
  const from = grid.start[g]!
  const to = Math.min(grid.start[g + 1]!, from + GUARD_TEETH)
  let penalty = 0
  for (let t = from; t < to; t++) {
    trust[t - from] = guardWeight(grid, t)
    tooth[t - from] = trust[t - from]! * logZ(slope, grid.at[t]!)
  }
  for (let k = 2; k <= 4; k++) {
    let on = 0
    let onWeight = 0
    let off = 0
    let offWeight = 0
    let phase = grid.first[g]! % k
    for (let t = from; t < to; t++) {
      const w = trust[t - from]!
      const v = tooth[t - from]!
      if (phase === 0) {
        on += v
        onWeight += w
      } else {
        off += v
        offWeight += w
      }
      phase = phase + 1 === k ? 0 : phase + 1
    }
    if (onWeight === 0 || offWeight === 0) continue
    const extra = GUARD_WEIGHT * (on / onWeight - off / offWeight - GUARD_FREE)
    if (extra > penalty) penalty = extra
  }
  return penalty
}

/** mean of ln Z in noise: a Rayleigh magnitude's geometric mean over its rms, exp(-0.288) = 1 / 1.334 */
const NOISE_LOG = -0.288
const HALF_FREE = 0.25
const HALF_CONTRAST = 1

/**
 * How much the places midway between the teeth carry, where they carry about as much as the teeth:
 * then the true comb is twice as dense. Weak half orders (an unevenly firing engine) stay free.
 */
export function multiplePenalty(grid: CombGrid, g: number, slope: number, logZ: Warper['logZ']): number {
  const from = grid.start[g]!
  const to = Math.min(grid.start[g + 1]!, from + GUARD_TEETH)
  const half = 0.5 * grid.rates[g]! * PER_HERTZ
  let on = 0
  let off = 0
  let weight = 0
  for (let t = from; t < to; t++) {
    const i = grid.at[t]!
    if (i - half < TEETH_FROM * PER_HERTZ) continue
    const w = guardWeight(grid, t)
    on += w * logZ(slope, i)
    off += w * logZ(slope, Math.round(i - half))
    weight += w
  }
  if (weight === 0) return 0
  const between = off / weight - NOISE_LOG - HALF_FREE
  return GUARD_WEIGHT * Math.max(0, Math.min(between, HALF_CONTRAST - (on - off) / weight))
}

/** Fills `out` with the best score over the slopes and the guard's penalty taken off. */
export function scoreFrame(grid: CombGrid, warper: Warper, out: FrameScores, quick = false): void {
  out.score.fill(-1e9)
  scoreSlopes(grid, warper, out, 0, quick ? QUICK_SLOPES : warper.slopes.length)
  guardScores(grid, warper, out)
}

/** slopes tried first; the rest only when these do not settle the frame */
export const QUICK_SLOPES = 6

/** Raises `out` to the best score over the slopes from `from` to `to`. */
export function scoreSlopes(
  grid: CombGrid,
  warper: Warper,
  out: FrameScores,
  from: number,
  to: number,
): void {
  const { start, at, weight, rates } = grid
  const { score, slope } = out
  for (let k = from; k < to; k++) {
    const c = warper.clipped[k]!
    const cost = SLOPE_COST * Math.abs(warper.slopes[k]!)
    for (let g = 0; g < rates.length; g++) {
      let sum = -cost
      for (let t = start[g]!, end = start[g + 1]!; t < end; t++) sum += weight[t]! * c[at[t]!]!
      if (sum > score[g]!) {
        score[g] = sum
        slope[g] = k
      }
    }
  }
}

function guardScores(grid: CombGrid, warper: Warper, out: FrameScores): void {
  const { score, slope } = out
  for (let g = 0; g < score.length; g++)
    if (score[g]! > 1)
      score[g]! -=
        subMultiplePenalty(grid, g, slope[g]!, warper.logZ) + multiplePenalty(grid, g, slope[g]!, warper.logZ)
}

export const makeScores = (grid: CombGrid): FrameScores => ({
  score: new Float64Array(grid.rates.length),
  slope: new Int32Array(grid.rates.length),
})

/** Candidates of one frame, best first. */
export interface Candidates {
  count: number
  /** place in the grid */
  place: Int32Array
  /** Hz, refined between the grid's points */
  rate: Float64Array
  score: Float64Array
  /** index of the winning slope */
  slope: Int32Array
}

export const makeCandidates = (most: number): Candidates => ({
  count: 0,
  place: new Int32Array(most),
  rate: new Float64Array(most),
  score: new Float64Array(most),
  slope: new Int32Array(most),
})

/** Parabola through three scores; how far the top lies from the middle one, in steps within ±0.5. */
export function parabolaTop(a: number, b: number, c: number): number {
  const bend = a - 2 * b + c
  return bend < 0 ? Math.max(-0.5, Math.min(0.5, (0.5 * (a - c)) / bend)) : 0
}

/** Puts the local maxima into `out` from `from` on, best first, up to `most` in all. */
export function pickPeaks(
  grid: CombGrid,
  scores: FrameScores,
  out: Candidates,
  from: number,
  most: number,
): void {
  const { score } = scores
  const n = score.length
  out.count = from
  for (let g = 1; g < n - 1; g++) {
    const s = score[g]!
    if (s < score[g - 1]! || s <= score[g + 1]!) continue
    insertPeak(grid, scores, out, g, from, most)
  }
}

/** Keeps the list sorted by score between `from` and the count. */
function insertPeak(
  grid: CombGrid,
  scores: FrameScores,
  out: Candidates,
  g: number,
  from: number,
  most: number,
): void {
  const s = scores.score[g]!
  if (out.count >= most && s <= out.score[out.count - 1]!) return
  let k = out.count < most ? out.count++ : out.count - 1
  for (; k > from && out.score[k - 1]! < s; k--) {
    out.place[k] = out.place[k - 1]!
    out.rate[k] = out.rate[k - 1]!
    out.score[k] = out.score[k - 1]!
    out.slope[k] = out.slope[k - 1]!
  }
  const shift = parabolaTop(scores.score[g - 1]!, s, scores.score[g + 1]!)
  out.place[k] = g
  out.rate[k] = grid.rates[g]! * Math.exp(shift * grid.step)
  out.score[k] = s
  out.slope[k] = scores.slope[g]!
}

/** Lowers a flattened spectrum to 1 at most within the grid's mask of the multiples of `rate`. */
export function maskTeeth(grid: CombGrid, source: Float64Array, rate: number, out: Float64Array): void {
  const { mask, perHertz } = grid
  out.set(source)
  const top = source.length / perHertz
  for (let f = rate; f < top + mask; f += rate) {
    const lo = Math.max(0, Math.ceil((f - mask) * perHertz))
    const hi = Math.min(source.length - 1, Math.floor((f + mask) * perHertz))
    for (let i = lo; i <= hi; i++) if (out[i]! > NOISE_LEVEL) out[i] = NOISE_LEVEL
  }
}

/** clipped level of a tooth that another engine explains: Z = 1 */
const NOISE_LEVEL = 1 - 0.8

/** What another engine's lines may leak into: its teeth's ln Z, and the reach of their skirts. */
export interface Leak {
  /** ln Z at `hertz` in the spectrum the comb is read from */
  level: (hertz: number) => number
  /** ln Z of the other engine's tooth n (1, 2 …) in its own spectrum */
  tooth: (n: number) => number
  /** skirts reach this part of a tooth's frequency, from the difference in slope */
  smear: number
}

/** window skirts reach this far, Hz, and lie this far under the line, ln */
const SKIRT = 15
const SKIRT_DEPTH = 2.3

/** Score of the comb at grid place g when `other` Hz is taken to explain its own teeth; -9 when nothing is left. */
export function scoreBeside(
  grid: CombGrid,
  g: number,
  score: number,
  level: Float64Array,
  other: number,
): number {
  const { mask, perHertz } = grid
  let lost = 0
  let free = 0
  let all = 0
  for (let t = grid.start[g]!, end = grid.start[g + 1]!; t < end; t++) {
    const i = grid.at[t]!
    const w = grid.weight[t]!
    all += w
    const f = i / perHertz
    const off = Math.abs(f - Math.round(f / other) * other)
    if (off > mask || f < 0.5 * other) free += w
    else if (level[i]! > NOISE_LEVEL) lost += w * (level[i]! - NOISE_LEVEL)
  }
  return free < 0.2 * all ? -9 : score - lost
}

/** What the comb at place g owes to teeth that are no more than the skirts of another engine's lines. */
export function skirtLoss(grid: CombGrid, g: number, level: Float64Array, other: number, leak: Leak): number {
  const { mask, perHertz } = grid
  let lost = 0
  for (let t = grid.start[g]!, end = grid.start[g + 1]!; t < end; t++) {
    const c = level[grid.at[t]!]!
    if (c <= NOISE_LEVEL) continue
    const f = grid.at[t]! / perHertz
    const n = Math.max(1, Math.round(f / other))
    const off = Math.abs(f - n * other)
    const smear = leak.smear * f
    // a smeared line is lower and flatter
    const depth = SKIRT_DEPTH - Math.min(1.5, 0.1 * smear)
    if (off <= mask || off >= Math.max(SKIRT, smear)) continue
    const here = leak.level(f)
    const skirt = here < leak.tooth(n) - depth
    // one line that stands between the two teeth belongs to neither
    const between = off < SKIRT && leak.level(0.5 * (f + n * other)) > Math.max(here, leak.tooth(n)) + 0.2
    if (skirt || between) lost += grid.weight[t]! * (c - NOISE_LEVEL)
  }
  return lost
}

/** Places of the candidates that masking brings out are added behind the first ones, with the whole frame's scores. */
export function addMaskedPeaks(
  grid: CombGrid,
  levels: readonly Float64Array[],
  whole: FrameScores,
  work: { again: FrameScores; masked: Float64Array },
  peaks: Candidates,
  most: number,
): void {
  const own = peaks.count
  for (let leader = 0; leader < Math.min(2, own); leader++) {
    const { again, masked } = work
    again.score.fill(-1e9)
    for (const level of levels) {
      maskTeeth(grid, level, peaks.rate[leader]!, masked)
      const { start, at, weight } = grid
      for (let g = 0; g < grid.rates.length; g++) {
        let sum = 0
        for (let t = start[g]!, end = start[g + 1]!; t < end; t++) sum += weight[t]! * masked[at[t]!]!
        if (sum > again.score[g]!) again.score[g] = sum
      }
    }
    const from = peaks.count
    pickPeaks(grid, again, peaks, from, from + most)
    let kept = from
    for (let k = from; k < peaks.count; k++) {
      const g = peaks.place[k]!
      let known = false
      for (let j = 0; j < kept; j++) if (Math.abs(peaks.place[j]! - g) < 2) known = true
      if (known) continue
      peaks.place[kept] = g
      peaks.rate[kept] = peaks.rate[k]!
      peaks.score[kept] = whole.score[g]!
      peaks.slope[kept] = whole.slope[g]!
      kept++
    }
    peaks.count = kept
  }
}
