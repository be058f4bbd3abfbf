/**
 * Two well-known pitch readers, to compare the hearing with on the same clips. They always answer.
 * YIN: A. de Cheveigné and H. Kawahara, J. Acoust. Soc. Am. 111 (2002) 1917, steps 1 to 5.
 * Subharmonic summation: D. J. Hermes, J. Acoust. Soc. Am. 83 (1988) 257: 15 harmonics weighted 0.84^(h-1).
 */
import FFT from 'fft.js'
import { resampled } from '../../src/trades/sound/sound.testkit.ts'

const RATE = 8000
const HOP = 200
const LOW = 22
const HIGH = 235

/** Firing rates by YIN: windows of 0.2 s every 50 ms, threshold 0.15, as its authors advise for hard signals. */
export function yin(samples: Float32Array, rate: number): Float64Array {
  const x = resampled(samples, rate, RATE)
  const window = 1600
  const longest = Math.ceil(RATE / LOW)
  const shortest = Math.floor(RATE / HIGH)
  const frames = Math.floor((x.length - 1) / HOP) + 1
  const out = new Float64Array(frames)
  const d = new Float64Array(longest + 2)
  const padded = new Float64Array(x.length + window + 2 * longest + 4)
  padded.set(x, (window + longest) / 2)
  for (let i = 0; i < frames; i += 2) {
    const start = i * HOP
    let running = 0
    d[0] = 1
    for (let tau = 1; tau <= longest + 1; tau++) {
      let sum = 0
      for (let k = 0; k < window; k++) {
        const v = padded[start + k]! - padded[start + k + tau]!
        sum += v * v
      }
      running += sum
      d[tau] = running > 0 ? (sum * tau) / running : 1
    }
    let best = -1
    for (let tau = shortest; tau <= longest; tau++)
      if (d[tau]! < 0.15) {
        best = tau
        while (best + 1 <= longest && d[best + 1]! < d[best]!) best++
        break
      }
    if (best < 0) {
      best = shortest
      for (let tau = shortest; tau <= longest; tau++) if (d[tau]! < d[best]!) best = tau
    }
    const bend = d[best - 1]! - 2 * d[best]! + d[best + 1]!
    const shift = bend > 0 ? (0.5 * (d[best - 1]! - d[best + 1]!)) / bend : 0
    out[i] = RATE / (best + Math.max(-0.5, Math.min(0.5, shift)))
    if (i + 1 < frames) out[i + 1] = out[i]!
  }
  return out
}

/** Firing rates by subharmonic summation over Hann windows of 0.36 s. */
export function subharmonicSum(samples: Float32Array, rate: number): Float64Array {
  const x = resampled(samples, rate, RATE)
  const frame = 2880
  const size = 4096
  const fft = new FFT(size)
  const input = new Float64Array(size)
  const spectrum = new Float64Array(2 * size)
  const magnitude = new Float64Array(size / 2)
  const frames = Math.floor((x.length - 1) / HOP) + 1
  const out = new Float64Array(frames)
  const step = 0.004
  const grid = Float64Array.from(
    { length: Math.floor(Math.log(HIGH / LOW) / step) },
    (_, g) => LOW * Math.exp(g * step),
  )
  const score = new Float64Array(grid.length)
  for (let i = 0; i < frames; i++) {
    const start = i * HOP - frame / 2
    input.fill(0)
    for (let k = 0; k < frame; k++)
      input[k] = (x[start + k] ?? 0) * (0.5 - 0.5 * Math.cos((2 * Math.PI * (k + 0.5)) / frame))
    fft.realTransform(spectrum, input)
    for (let b = 0; b < magnitude.length; b++)
      magnitude[b] = Math.hypot(spectrum[2 * b]!, spectrum[2 * b + 1]!)
    let best = 0
    for (let g = 0; g < grid.length; g++) {
      let sum = 0
      let w = 1
      for (let h = 1; h <= 15; h++, w *= 0.84) {
        const at = (h * grid[g]! * size) / RATE
        const b = Math.floor(at)
        if (b + 1 >= magnitude.length) break
        sum += w * (magnitude[b]! + (at - b) * (magnitude[b + 1]! - magnitude[b]!))
      }
      score[g] = sum
      if (sum > score[best]!) best = g
    }
    out[i] = grid[best]!
  }
  return out
}
