/**
 * Spectra of one frame under several relative slopes, each flattened against its own local floor.
 * A sound whose pitch is f0 (1 + a t) becomes steady on the time axis phi = t + a t²/2
 * (fan-chirp transform, P. Cancela, E. López and M. Rocamora, DAFx-10, 2010).
 */
import FFT from 'fft.js'
import { naturalLog } from '../../base/numerics/fastLog.ts'
import { ANALYSIS_RATE } from './resample.ts'
import { FFT_SIZE, FRAME, SLOPES, WARP_RATE, WARPED, WINDOW } from './settings.ts'

/** points a hertz of the flattened spectra */
export const PER_HERTZ = 2
export const SPECTRUM_TOP = 1000
export const SPECTRUM_POINTS = SPECTRUM_TOP * PER_HERTZ + 1

/** t(phi) of the warp with relative slope `a` (1/s); a = 0 gives t = phi. Needs 1 + 2 a phi >= 0. */
export function warpedTime(phi: number, a: number): number {
  return a === 0 ? phi : (-1 + Math.sqrt(1 + 2 * a * phi)) / a
}

/** The part of the window's length left on the warped axis, so that no sample outside the frame is read. */
export const shrink = (a: number, window: number) => 1 - (Math.abs(a) * window) / 4

interface Plan {
  /** frame index and fraction read for each warped sample */
  at: Int32Array
  part: Float64Array
  /** spectrum position of each of the SPECTRUM_POINTS frequencies */
  bin: Int32Array
  binPart: Float64Array
}

export interface Warper {
  slopes: readonly number[]
  /** level of the last frame under each slope: Z clipped at 4, less 0.8 */
  clipped: Float64Array[]
  /** ln Z at one of the SPECTRUM_POINTS under slope k, clipped to 0.5 … 16 */
  logZ: (k: number, point: number) => number
  /** ln |X| of the unwarped spectrum at every FFT bin up to SPECTRUM_TOP */
  plain: Float64Array
  /** analyses one frame of FRAME samples under the slopes from index `from` to `to` (not included; both even, or the end) */
  frame: (x: Float64Array, from?: number, to?: number) => void
  /** flattens a frame under two of the slopes only; read the result with `level` */
  two: (x: Float64Array, k0: number, k1: number) => void
  /** ln Z at `hertz` under slope k, not clipped; 0 … SPECTRUM_TOP */
  level: (k: number, hertz: number) => number
}

// imported numbers are copied once: some module loaders make every read of them a call
const LENGTH = WARPED
const SIZE = FFT_SIZE
const POINTS = SPECTRUM_POINTS
const BIN = WARP_RATE / FFT_SIZE
const BINS = Math.ceil(SPECTRUM_TOP / BIN) + 8
/** arithmetic over geometric mean of a Rayleigh magnitude: sqrt(pi)/2 exp(gamma/2) = 1.183, and the
 * floor of a spectrum with lines in it lies lower; 1.33 was kept from tuning */
const FLOOR_RATIO = Math.log(1.33)
const LOW_CLIP = Math.log(0.5)
const HIGH_CLIP = Math.log(16)

function makePlan(a: number): Plan {
  const s = shrink(a, WINDOW)
  const plan: Plan = {
    at: new Int32Array(WARPED),
    part: new Float64Array(WARPED),
    bin: new Int32Array(SPECTRUM_POINTS),
    binPart: new Float64Array(SPECTRUM_POINTS),
  }
  // frame sample FRAME / 2 stands at the frame's time
  for (let i = 0; i < WARPED; i++) {
    const phi = ((i - (WARPED - 1) / 2) / WARP_RATE) * s
    const t = Math.min(FRAME - 1, Math.max(0, warpedTime(phi, a) * ANALYSIS_RATE + FRAME / 2))
    plan.at[i] = Math.max(1, Math.min(FRAME - 3, Math.floor(t)))
    plan.part[i] = t - plan.at[i]!
  }
  for (let i = 0; i < SPECTRUM_POINTS; i++) {
    const b = ((i / PER_HERTZ) * s) / BIN
    plan.bin[i] = Math.floor(b)
    plan.binPart[i] = b - Math.floor(b)
  }
  return plan
}

/** First and one-past-last bin of the floor's window around each bin: clamp(2 f, 120 … 500 Hz) wide. */
function floorWindows(): { from: Int32Array; to: Int32Array } {
  const from = new Int32Array(BINS)
  const to = new Int32Array(BINS)
  for (let b = 0; b < BINS; b++) {
    const half = Math.round(Math.min(500, Math.max(120, 2 * b * BIN)) / 2 / BIN)
    from[b] = Math.max(1, b - half)
    to[b] = Math.min(BINS, b + half + 1)
  }
  return { from, to }
}

/** exp over LOW_CLIP … ln 4 by a table fine enough for 1e-6 */
const EXP_STEPS = 4096
const EXP_LOW = -4
const EXP_HIGH = Math.log(4)
const expTable = Float64Array.from({ length: EXP_STEPS + 2 }, (_, i) =>
  Math.exp(EXP_LOW + ((EXP_HIGH - EXP_LOW) * i) / EXP_STEPS),
)
/** credit for each factor e over the clip */
const BEYOND = 0.12
const EXP_SCALE = EXP_STEPS / (EXP_HIGH - EXP_LOW)

function clippedLevel(lnZ: number): number {
  // a little credit beyond the clip keeps the top of a strong line where the line is
  if (lnZ >= EXP_HIGH) return 4 - 0.8 + BEYOND * (lnZ - EXP_HIGH)
  if (lnZ <= EXP_LOW) return -0.8
  const at = (lnZ - EXP_LOW) * EXP_SCALE
  const i = at | 0
  const low = expTable[i]!
  return low + (at - i) * (expTable[i + 1]! - low) - 0.8
}

/** Working arrays for frames at the analysis rate; one per thread of analysis. */
export function makeWarper(slopes: readonly number[] = SLOPES): Warper {
  const plans = slopes.map(makePlan)
  const hann = Float64Array.from(
    { length: LENGTH },
    (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / LENGTH),
  )
  const { from, to } = floorWindows()
  const fft = new FFT(SIZE)
  const packed = new Float64Array(2 * SIZE)
  const spectrum = new Float64Array(2 * SIZE)
  const sums = new Float64Array(BINS + 1)
  const clipped = slopes.map(() => new Float64Array(POINTS))
  const levels = slopes.map(() => new Float64Array(BINS))
  const plain = new Float64Array(BINS)
  const spare = new Float64Array(BINS)

  // two real frames ride in one complex transform
  const pack = (x: Float64Array, k: number, lane: number) => {
    const { at, part } = plans[k]!
    for (let i = 0; i < LENGTH; i++) {
      const j = at[i]!
      const u = part[i]!
      const a = x[j - 1]!
      const b = x[j]!
      const c = x[j + 1]!
      const d = x[j + 2]!
      // cubic through four samples (Catmull and Rom): straight lines would fold high teeth down to -46 dB
      packed[2 * i + lane] =
        (b + 0.5 * u * (c - a + u * (2 * a - 5 * b + 4 * c - d + u * (3 * (b - c) + d - a)))) * hann[i]!
    }
  }
  const unpack = (m0: Float64Array, m1: Float64Array) => {
    for (let b = 0; b < BINS; b++) {
      const c = b === 0 ? 0 : SIZE - b
      const re = spectrum[2 * b]!
      const im = spectrum[2 * b + 1]!
      const cre = spectrum[2 * c]!
      const cim = spectrum[2 * c + 1]!
      const ar = re + cre
      const ai = im - cim
      const br = im + cim
      const bi = cre - re
      m0[b] = 0.5 * naturalLog(ar * ar + ai * ai + 1e-24)
      m1[b] = 0.5 * naturalLog(br * br + bi * bi + 1e-24)
    }
  }
  const whiten = (k: number) => {
    const m = levels[k]!
    sums[0] = 0
    for (let b = 0; b < BINS; b++) sums[b + 1] = sums[b]! + m[b]!
    // ln Z replaces ln |X| once its sums are kept
    for (let b = 0; b < BINS; b++) {
      const lo = from[b]!
      const hi = to[b]!
      m[b] = m[b]! - (sums[hi]! - sums[lo]!) / (hi - lo) - FLOOR_RATIO
    }
  }
  const flatten = (k: number) => {
    whiten(k)
    const m = levels[k]!
    const { bin, binPart } = plans[k]!
    const c = clipped[k]!
    for (let i = 0; i < POINTS; i++) {
      const b = bin[i]!
      c[i] = clippedLevel(m[b]! + binPart[i]! * (m[b + 1]! - m[b]!))
    }
  }
  const frame = (x: Float64Array, first = 0, last = plans.length) => {
    for (let k = first; k < last; k += 2) {
      const second = k + 1 < last
      pack(x, k, 0)
      if (second) pack(x, k + 1, 1)
      else for (let i = 0; i < LENGTH; i++) packed[2 * i + 1] = 0
      fft.transform(spectrum, packed)
      unpack(levels[k]!, second ? levels[k + 1]! : spare)
      if (k === 0) plain.set(levels[0]!)
      flatten(k)
      if (second) flatten(k + 1)
    }
  }
  const two = (x: Float64Array, k0: number, k1: number) => {
    pack(x, k0, 0)
    pack(x, k1, 1)
    fft.transform(spectrum, packed)
    unpack(levels[k0]!, k0 === k1 ? spare : levels[k1]!)
    whiten(k0)
    if (k1 !== k0) whiten(k1)
  }
  const scale = slopes.map((a) => shrink(a, WINDOW) / BIN)
  const level = (k: number, hertz: number) => {
    const at = hertz * scale[k]!
    const b = Math.min(BINS - 2, Math.floor(at))
    const m = levels[k]!
    return m[b]! + (at - b) * (m[b + 1]! - m[b]!)
  }
  const logZ = (k: number, point: number) => {
    const m = levels[k]!
    const b = plans[k]!.bin[point]!
    const v = m[b]! + plans[k]!.binPart[point]! * (m[b + 1]! - m[b]!)
    // biome-ignore lint/complexity/useMathMinMax: the hottest read of the whole search; the comparisons are quicker
    return v < LOW_CLIP ? LOW_CLIP : v > HIGH_CLIP ? HIGH_CLIP : v
  }
  return { slopes, clipped, logZ, plain, frame, two, level }
}
