/** What the exhaust, the air and the far bank do to the pulses. */
import { bandPass, filtered, lowPass } from '../../../base/numerics/biquad.ts'
import type { Random } from '../../../base/numerics/random.ts'

/** Four resonances and a low-pass drawn at random; `darkness` 0 = the whole range, 1 = few harmonics left. */
export function exhaustResponse(x: Float64Array, rate: number, rng: Random, darkness: number): Float64Array {
  const bands = [
    [150, 330],
    [380, 700],
    [800, 1200],
    [1400, 2200],
  ] as const
  const out = Float64Array.from(x, (v) => 0.3 * v)
  for (const [low, high] of bands) {
    const y = filtered(x, bandPass(rng.between(low, high), rng.between(2, 8), rate))
    const gain = rng.between(0.3, 1.6)
    for (let i = 0; i < out.length; i++) out[i]! += gain * y[i]!
  }
  const top = 350 * (3500 / 350) ** (rng.next() * (1 - 0.75 * darkness))
  return filtered(out, lowPass(top, Math.SQRT1_2, rate))
}

/** Adds five echoes (2–500 ms, -14…-30 dB) and a thin tail of half a second. */
export function withEchoes(x: Float64Array, rate: number, rng: Random): Float64Array {
  const out = Float64Array.from(x)
  const add = (delay: number, gain: number) => {
    const d = Math.round(delay * rate)
    for (let i = d; i < out.length; i++) out[i]! += gain * x[i - d]!
  }
  for (let k = 0; k < 5; k++)
    add(0.002 * 250 ** rng.next(), -(10 ** (rng.between(-30, -14) / 20)) * (rng.next() < 0.5 ? 1 : -1))
  for (let k = 0; k < 40; k++) {
    const delay = rng.between(0.01, 0.5)
    add(delay, 0.02 * Math.exp(-delay / 0.16) * rng.normal())
  }
  return out
}

/** A straight pass before the listener. */
export interface Pass {
  /** m/s along the path */
  speed: number
  /** closest distance, m */
  distance: number
  /** s, when the craft is closest */
  closest: number
  /** speed of sound, m/s */
  sound: number
}

/** Distance from the craft to the listener at time t, m. */
export function passDistance(pass: Pass, t: number): number {
  return Math.hypot(pass.distance, pass.speed * (t - pass.closest))
}

/** Source sound as heard at rest while the source passes: re-timed by the travel time and spread as 1/r. */
export function heardPassing(x: Float64Array, rate: number, pass: Pass): Float64Array {
  const out = new Float64Array(x.length)
  let sent = 0
  for (let i = 0; i < out.length; i++) {
    const t = i / rate
    // three fixed-point steps are enough while the craft is much slower than sound
    for (let k = 0; k < 3; k++) sent = t - passDistance(pass, sent) / pass.sound
    const at = sent * rate
    const j = Math.floor(at)
    if (j < 0 || j + 1 >= x.length) continue
    const part = at - j
    out[i] = ((1 - part) * x[j]! + part * x[j + 1]!) * (pass.distance / passDistance(pass, sent))
  }
  return out
}
