/** The sound of one engine alone: a comb of narrow bands that follows its track. */
import FFT from 'fft.js'
import type { Track } from './hearingTypes.ts'

const SIZE = 4096
const HOP = SIZE / 4

/**
 * Keeps the lines at whole multiples of the firing rate (half multiples too with `halves`) and drops the rest.
 * `samples` at `rate`; the track's grid has `step` s. Where the engine is silent the result is silent.
 */
export function listenTo(
  samples: Float32Array,
  rate: number,
  track: Pick<Track, 'firing' | 'change' | 'rpm'>,
  step: number,
  options: { halves?: boolean; top?: number } = {},
): Float32Array {
  const fft = new FFT(SIZE)
  const window = Float64Array.from({ length: SIZE }, (_, i) => Math.sin((Math.PI * (i + 0.5)) / SIZE))
  const input = new Float64Array(2 * SIZE)
  const spectrum = new Float64Array(2 * SIZE)
  const out = new Float32Array(samples.length)
  const bin = rate / SIZE
  const top = Math.min(options.top ?? 4000, 0.48 * rate)
  for (let start = -SIZE; start < samples.length; start += HOP) {
    const i = Math.round((start + SIZE / 2) / rate / step)
    const f = track.firing[Math.max(0, Math.min(track.firing.length - 1, i))] ?? 0
    if (f <= 0) continue
    for (let k = 0; k < SIZE; k++) {
      input[2 * k] = (samples[start + k] ?? 0) * window[k]!
      input[2 * k + 1] = 0
    }
    fft.transform(spectrum, input)
    const spacing = options.halves ? f / 2 : f
    const rpm = track.rpm[i] ?? 0
    const slope = rpm > 0 ? Math.abs((track.change[i] ?? 0) / rpm) : 0
    for (let b = 0; b <= SIZE / 2; b++) {
      const hertz = b * bin
      const h = Math.round(hertz / spacing)
      // a line is as wide as the window makes it, and wider while the speed changes
      const width = 2 * bin + 0.5 * slope * hertz * (SIZE / rate)
      const keep = h > 0 && hertz < top && Math.abs(hertz - h * spacing) <= Math.min(width, 0.4 * spacing)
      if (keep) continue
      spectrum[2 * b] = 0
      spectrum[2 * b + 1] = 0
      const m = (SIZE - b) % SIZE
      spectrum[2 * m] = 0
      spectrum[2 * m + 1] = 0
    }
    fft.inverseTransform(input, spectrum)
    // the squared sine windows of a quarter hop add up to 2
    for (let k = 0; k < SIZE; k++)
      if (start + k >= 0 && start + k < out.length) out[start + k]! += 0.5 * input[2 * k]! * window[k]!
  }
  return out
}
