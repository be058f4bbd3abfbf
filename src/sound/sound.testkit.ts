import { seededRandom } from '../numerics/random.ts'

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
