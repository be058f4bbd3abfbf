/** Wind, splash, voices and hiss, each scaled by the mixer. */
import { bandPass, filtered, highPass, lowPass } from '../../../base/numerics/biquad.ts'
import type { Random } from '../../../base/numerics/random.ts'

const white = (n: number, rng: Random) => Float64Array.from({ length: n }, () => rng.normal())

/** Pink noise by summing octave-spaced one-pole filters (R. F. Voss and J. Clarke, 1978, the idea). */
export function pinkNoise(n: number, rate: number, rng: Random): Float64Array {
  const out = new Float64Array(n)
  for (let corner = 15; corner < rate / 3; corner *= 3) {
    const a = Math.exp((-2 * Math.PI * corner) / rate)
    const gain = Math.sqrt((1 - a) / corner) * 10
    let v = 0
    for (let i = 0; i < n; i++) {
      v = a * v + (1 - a) * rng.normal() * Math.sqrt(1 / (1 - a))
      out[i]! += gain * v
    }
  }
  return out
}

/** Turbulence at a bare microphone: power falling as f^-3 with gusts. */
export function windNoise(n: number, rate: number, rng: Random): Float64Array {
  const pink = pinkNoise(n, rate, rng)
  const a = Math.exp((-2 * Math.PI * 12) / rate)
  const g = Math.exp((-2 * Math.PI * 0.5) / rate)
  const drive = Math.sqrt(1 - g * g)
  let v = 0
  let gust = rng.normal()
  for (let i = 0; i < n; i++) {
    v = a * v + pink[i]!
    gust = g * gust + drive * rng.normal()
    pink[i] = v * Math.exp(0.5 * gust)
  }
  return pink
}

/** Bursts of 0.5–6 kHz noise lasting 50–400 ms. */
export function splashNoise(n: number, rate: number, rng: Random): Float64Array {
  const out = new Float64Array(n)
  for (let t = rng.between(0, 0.8); t < n / rate; t += -0.7 * Math.log(1 - rng.next())) {
    const length = rng.between(0.05, 0.4)
    const size = Math.exp(0.6 * rng.normal())
    const first = Math.round(t * rate)
    const last = Math.min(n, first + Math.round(length * rate))
    for (let i = first; i < last; i++) {
      const u = (i - first) / (length * rate)
      out[i]! += size * Math.min(1, u * 12) * Math.exp(-4 * u) * rng.normal()
    }
  }
  return filtered(
    filtered(out, highPass(500, Math.SQRT1_2, rate)),
    lowPass(Math.min(6000, 0.45 * rate), Math.SQRT1_2, rate),
  )
}

/** Shouted vowels, 120–260 Hz with glides, in groups of syllables. */
export function voiceNoise(n: number, rate: number, rng: Random): Float64Array {
  const buzz = new Float64Array(n)
  let t = rng.between(0.2, 2)
  while (t < n / rate) {
    const syllables = 1 + Math.floor(rng.between(0, 4))
    let pitch = rng.between(120, 240)
    for (let s = 0; s < syllables; s++) {
      const length = rng.between(0.15, 0.55)
      const glide = rng.between(-1.2, 1.2)
      let phase = 0
      const first = Math.round(t * rate)
      const last = Math.min(n, first + Math.round(length * rate))
      for (let i = first; i < last; i++) {
        const u = (i - first) / (length * rate)
        const f = Math.min(300, pitch * 2 ** (glide * u * length))
        phase += f / rate
        if (phase >= 1) {
          phase -= 1
          buzz[i]! += Math.sin(Math.PI * u) * (1 + 0.05 * rng.normal())
        }
      }
      pitch = Math.min(260, Math.max(120, pitch * 2 ** (0.3 * rng.normal())))
      t += length + rng.between(0.02, 0.15)
    }
    t += rng.between(0.8, 3)
  }
  const tilt = filtered(buzz, lowPass(500, 0.6, rate))
  const out = new Float64Array(n)
  for (const [low, high, gain] of [
    [400, 800, 1],
    [900, 1700, 0.6],
    [2200, 2900, 0.25],
  ] as const) {
    const y = filtered(tilt, bandPass(rng.between(low, high), 6, rate))
    for (let i = 0; i < n; i++) out[i]! += gain * y[i]!
  }
  return out
}

/** Plain broadband hiss of a jet. */
export function hiss(n: number, rate: number, rng: Random): Float64Array {
  return filtered(white(n, rng), highPass(300, Math.SQRT1_2, rate))
}

/** Waves on a shore or round a hull: broadband noise falling as f^-1 to f^-2 in power, swelling every few seconds. */
export function seaNoise(n: number, rate: number, rng: Random): Float64Array {
  const pink = pinkNoise(n, rate, rng)
  // part of the noise through a one-pole low-pass: the mixture falls between f^-1 and f^-3
  const a = Math.exp((-2 * Math.PI * rng.between(120, 900)) / rate)
  const deep = rng.between(0.3, 0.9)
  const swell = { every: rng.between(3, 9), phase: rng.next(), depth: rng.between(0.4, 1.3) }
  const g = Math.exp((-2 * Math.PI * 0.7) / rate)
  const drive = Math.sqrt(1 - g * g)
  let v = 0
  let wash = rng.normal()
  for (let i = 0; i < n; i++) {
    v = a * v + (1 - a) * pink[i]!
    wash = g * wash + drive * rng.normal()
    const tide = Math.sin(2 * Math.PI * (i / rate / swell.every + swell.phase))
    pink[i] = (deep * 3 * v + (1 - deep) * pink[i]!) * Math.exp(swell.depth * tide + 0.3 * wash)
  }
  return pink
}

/** Rain on water and a deck: a dense hiss with single drops, each a short ring between 0.4 and 4 kHz. */
export function rainNoise(n: number, rate: number, rng: Random): Float64Array {
  const out = hiss(n, rate, rng)
  for (let i = 0; i < n; i++) out[i]! *= 0.5
  const perSecond = rng.between(20, 120)
  for (let t = 0; t < n / rate; t += -Math.log(1 - rng.next()) / perSecond) {
    const f = 400 * 10 ** rng.next()
    const size = Math.exp(0.8 * rng.normal())
    const decay = rng.between(0.002, 0.02)
    const first = Math.round(t * rate)
    const last = Math.min(n, first + Math.round(5 * decay * rate))
    for (let i = first; i < last; i++) {
      const u = (i - first) / rate
      out[i]! += size * Math.exp(-u / decay) * Math.sin(2 * Math.PI * f * u)
    }
  }
  return out
}
