/** What a phone does to the sound: high-pass, automatic gain, limiter, lossy coding, 16 bits. */
import FFT from 'fft.js'
import { filtered, highPass } from '../../../base/numerics/biquad.ts'

export interface PhoneChain {
  /** corner of the second-order high-pass, Hz; 0 = none */
  highPass: number
  /** automatic gain, 0 = none … 1 = flattens everything */
  agc: number
  /** tanh limiter */
  limiter: boolean
  /** level against full scale is raised by this much, so that peaks are cut off; 1 = none */
  overload?: number
  /** lossy coding: what lies this many dB under the strongest line of its band is lost; 0 = none */
  codec: number
}

export const usualPhone: PhoneChain = { highPass: 90, agc: 0.6, limiter: true, codec: 0 }

/** Automatic gain: attack 20 ms, release 0.6 s. */
function autoGain(x: Float64Array, rate: number, power: number): Float64Array {
  const up = Math.exp(-1 / (0.02 * rate))
  const down = Math.exp(-1 / (0.6 * rate))
  let sum = 0
  for (const v of x) sum += v * v
  const usual = Math.sqrt(sum / Math.max(1, x.length)) || 1
  let level = usual
  return x.map((v) => {
    const now = Math.abs(v) * 1.4
    level = now > level ? up * level + (1 - up) * now : down * level + (1 - down) * now
    return v / Math.max(0.05 * usual, level) ** power
  })
}

/** A stand-in for a lossy codec: sine-window overlap-add, weak lines of each band dropped, the rest coarsened. */
export function lossyCoding(x: Float64Array, depth: number): Float64Array {
  const size = 1024
  const half = size / 2
  const fft = new FFT(size)
  const frame = new Float64Array(2 * size)
  const spectrum = new Float64Array(2 * size)
  const out = new Float64Array(x.length)
  const window = Float64Array.from({ length: size }, (_, i) => Math.sin((Math.PI * (i + 0.5)) / size))
  for (let start = -half; start < x.length; start += half) {
    for (let i = 0; i < size; i++) {
      frame[2 * i] = window[i]! * (x[start + i] ?? 0)
      frame[2 * i + 1] = 0
    }
    fft.transform(spectrum, frame)
    for (let low = 0; low < half; low += 16) {
      let top = 0
      for (let b = low; b < low + 16; b++)
        top = Math.max(top, Math.hypot(spectrum[2 * b]!, spectrum[2 * b + 1]!))
      const floor = top * 10 ** (-depth / 20)
      for (let b = low; b < low + 16; b++)
        for (const k of [2 * b, 2 * b + 1]) {
          const v = floor > 0 ? Math.round(spectrum[k]! / floor) * floor : 0
          spectrum[k] = v
          const mirror = b === 0 ? -1 : 2 * (size - b) + (k & 1)
          if (mirror >= 0) spectrum[mirror] = k & 1 ? -v : v
        }
    }
    spectrum[size] = 0
    spectrum[size + 1] = 0
    fft.inverseTransform(frame, spectrum)
    for (let i = 0; i < size; i++)
      if (start + i >= 0 && start + i < x.length) out[start + i]! += window[i]! * frame[2 * i]!
  }
  return out
}

/** The whole chain; the result lies within ±1 and is quantised to 16 bits. */
export function throughPhone(x: Float64Array, rate: number, chain: PhoneChain): Float32Array {
  let y = chain.highPass > 0 ? filtered(x, highPass(chain.highPass, Math.SQRT1_2, rate)) : x
  if (chain.agc > 0) y = autoGain(y, rate, chain.agc)
  let sum = 0
  for (const v of y) sum += v * v
  const scale = (0.18 * (chain.overload ?? 1)) / (Math.sqrt(sum / Math.max(1, y.length)) || 1)
  y = y.map((v) => (chain.limiter ? Math.tanh(v * scale * 1.5) / 1.5 : v * scale))
  if (chain.codec > 0) y = lossyCoding(y, chain.codec)
  return Float32Array.from(y, (v) => Math.round(Math.min(1, Math.max(-1, v)) * 32767) / 32768)
}
