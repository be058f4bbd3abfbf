import { seededRandom } from '../../base/numerics/random.ts'
import type { Hearing, Track } from './hearingTypes.ts'
import { joined, makeResampler } from './resample.ts'

/** A pulse train's first harmonics with equal strength; `skip` leaves out the lowest ones. */
export function pulseTrain(
  f: number | ((t: number) => number),
  seconds: number,
  rate: number,
  options: { harmonics?: number; skip?: number; noise?: number; seed?: number; gain?: number } = {},
): Float32Array {
  const { harmonics = 10, skip = 0, noise = 0.001, seed = 1, gain = 0.05 } = options
  const rng = seededRandom(seed)
  const out = new Float32Array(Math.round(seconds * rate))
  let turns = 0
  for (let i = 0; i < out.length; i++) {
    const now = typeof f === 'number' ? f : f(i / rate)
    turns += now / rate
    let v = 0
    for (let h = 1 + skip; h <= harmonics && h * now < 0.45 * rate; h++)
      v += Math.cos(2 * Math.PI * h * turns + h * h)
    out[i] = gain * v + noise * rng.normal()
  }
  return out
}

export function noiseOnly(seconds: number, rate: number, seed = 1, level = 0.05): Float32Array {
  const rng = seededRandom(seed)
  return Float32Array.from({ length: Math.round(seconds * rate) }, () => level * rng.normal())
}

export const sum = (...parts: Float32Array[]): Float32Array =>
  Float32Array.from(parts[0]!, (_, i) => parts.reduce((a, p) => a + (p[i] ?? 0), 0))

export function median(x: ArrayLike<number>): number {
  const v = Array.from(x).sort((a, b) => a - b)
  return v[Math.floor(v.length / 2)] ?? Number.NaN
}

/** s between the frames of a made-up hearing, and how many it has */
const step = 0.025
const frames = 400

/** A label that turns at one speed, rev/min, through ten seconds. */
export const steadyTrack = (label: 'A' | 'B', rpm: number): Track => ({
  label,
  rpm: new Float32Array(frames).fill(rpm),
  firing: new Float32Array(frames).fill(rpm / 60),
  confidence: new Float32Array(frames).fill(0.9),
  change: new Float32Array(frames),
})

/** A hearing of such tracks; `part` says what else was heard. */
export const heardTracks = (tracks: Track[], part: Partial<Hearing> = {}): Hearing => ({
  duration: frames * step,
  step,
  time: Float32Array.from({ length: frames }, (_, i) => i * step),
  tracks,
  count: new Uint8Array(frames).fill(tracks.length),
  events: [],
  quality: [],
  verdict: { code: tracks.length > 1 ? 'two' : 'one', says: 'heard.', coupling: 'unknown' },
  octaves: [],
  labelsUncertainAfter: [],
  spectrogram: { timeStep: 0.05, hertzStep: 5, columns: 200, rows: 100, level: new Uint8Array(20000) },
  flags: [],
  cancelled: false,
  ...part,
})

/** Whole recording at once. */
export function resampled(x: Float32Array | Float64Array, from: number, to: number): Float32Array {
  if (from === to) return Float32Array.from(x)
  const r = makeResampler(from, to)
  const parts: Float32Array[] = []
  const block = 1 << 16
  for (let i = 0; i < x.length; i += block) parts.push(r.push(x.subarray(i, i + block)))
  parts.push(r.flush())
  return joined(parts)
}
