/**
 * Sounds in which no engine runs, made as hard as what was recorded outdoors: loudness that beats, tones of half a second, bursts
 * that repeat by chance at the rate of an engine. Sizes are authored judgement, by ear and by what real clips of each kind do.
 */
import { bandPass, filtered, highPass, lowPass } from '../../../base/numerics/biquad.ts'
import type { Random } from '../../../base/numerics/random.ts'
import { hiss, pinkNoise, rainNoise, seaNoise, voiceNoise, windNoise } from './noise.ts'

type Sound = (n: number, rate: number, rng: Random) => Float64Array

/** Time to the next of events that come by chance, `perSecond` on average, s. */
const wait = (perSecond: number, rng: Random) => -Math.log(1 - rng.next()) / perSecond

/** Adds a struck resonance: `hertz`, falling by e in `decay` s, its pitch rising by `rise` a second. */
function ping(
  out: Float64Array,
  rate: number,
  at: number,
  hertz: number,
  decay: number,
  size: number,
  rise = 0,
): void {
  const first = Math.max(0, Math.round(at * rate))
  const last = Math.min(out.length, first + Math.round(5 * decay * rate))
  for (let i = first; i < last; i++) {
    const u = (i - first) / rate
    out[i]! += size * Math.exp(-u / decay) * Math.sin(2 * Math.PI * hertz * u * (1 + 0.5 * rise * u))
  }
}

/** A drift with standard deviation 1 and a corner at `corner` Hz. */
function drift(n: number, rate: number, corner: number, rng: Random): Float64Array {
  const keep = Math.exp((-2 * Math.PI * corner) / rate)
  const drive = Math.sqrt(1 - keep * keep)
  let v = rng.normal()
  return Float64Array.from({ length: n }, () => {
    v = keep * v + drive * rng.normal()
    return v
  })
}

/** Water that slaps under an edge: pings at a rate of 14–90 a second for a few tenths, with a common pitch. */
function gurgle(out: Float64Array, rate: number, from: number, size: number, rng: Random): void {
  const every = 1 / (14 * (90 / 14) ** rng.next())
  const pitch = rng.between(180, 900)
  const uneven = rng.between(0.03, 0.25)
  const lasts = rng.between(0.2, 0.8)
  for (let t = 0; t < lasts; t += every * (1 + uneven * rng.normal()))
    ping(out, rate, from + Math.max(0, t), pitch * (1 + 0.06 * rng.normal()), 0.006, size, 8)
}

/** Waves that run up a shore, one every few seconds, with bubbles, gurgling under an edge and a low rumble. */
export const swash: Sound = (n, rate, rng) => {
  const out = seaNoise(n, rate, rng.fork(1))
  const every = rng.between(3, 8)
  const phase = rng.next()
  const flutter = drift(n, rate, rng.between(3, 18), rng.fork(2))
  const depth = rng.between(0.3, 0.9)
  const wash = (t: number) => {
    const u = (t / every + phase) % 1
    return u < 0.15 ? u / 0.15 : Math.exp(-(u - 0.15) / 0.25)
  }
  let power = 0
  for (let i = 0; i < n; i++) {
    out[i]! *= (0.25 + wash(i / rate)) * Math.exp(depth * flutter[i]!)
    power += out[i]! ** 2
  }
  const level = Math.sqrt(power / n)
  const bubbles = rng.between(15, 120)
  for (let t = 0; t < n / rate; t += wait(bubbles, rng)) {
    // a bubble of radius r sings at 3.26 / r Hz with r in metres (M. Minnaert, Phil. Mag. 16 (1933) 235)
    const hertz = 3.26 / rng.between(0.0012, 0.012)
    if (rng.next() < 0.2 + wash(t))
      ping(out, rate, t, hertz, 8 / hertz, level * Math.exp(0.9 * rng.normal()), 3)
  }
  for (let t = wait(0.5, rng); t < n / rate; t += wait(0.5, rng))
    gurgle(out, rate, t, level * rng.between(0.8, 3), rng)
  const rumble = filtered(pinkNoise(n, rate, rng.fork(3)), bandPass(rng.between(45, 140), 3, rate))
  const loud = rng.between(0, 6)
  for (let i = 0; i < n; i++) out[i]! += loud * level * rumble[i]!
  return out
}

/** Rain in gusts on water, leaves and a plate that rings, and a gutter that drips in its own time. */
export const downpour: Sound = (n, rate, rng) => {
  const out = rainNoise(n, rate, rng.fork(1))
  const gust = drift(n, rate, rng.between(0.5, 6), rng.fork(2))
  const depth = rng.between(0.2, 0.7)
  for (let i = 0; i < n; i++) out[i]! *= Math.exp(depth * gust[i]!)
  const plate = [rng.between(110, 260), rng.between(260, 500), rng.between(500, 900)]
  const drops = rng.between(5, 60)
  for (let t = 0; t < n / rate; t += wait(drops, rng)) {
    const size = 0.8 * Math.exp(0.8 * rng.normal() + gust[Math.min(n - 1, Math.floor(t * rate))]!)
    for (const hertz of plate) ping(out, rate, t, hertz, rng.between(0.01, 0.06), size * rng.next())
  }
  const every = rng.between(0.03, 0.6)
  for (let t = wait(1, rng); t < n / rate; t += every * (1 + 0.08 * rng.normal()))
    ping(out, rate, t, rng.between(500, 700), 0.012, 2.5)
  return out
}

/** Wind at the microphone with a whistle that wanders, and cloth that flaps in bursts. */
export const gale: Sound = (n, rate, rng) => {
  const out = windNoise(n, rate, rng.fork(1))
  let power = 0
  for (const v of out) power += v * v
  const level = Math.sqrt(power / n)
  const pitch = drift(n, rate, 0.7, rng.fork(2))
  const strength = drift(n, rate, 1, rng.fork(3))
  const base = rng.between(120, 420)
  let turns = 0
  for (let i = 0; i < n; i++) {
    turns += (base * (1 + 0.1 * pitch[i]!)) / rate
    const on = Math.max(0, strength[i]!)
    out[i]! += 0.35 * level * on * (Math.sin(2 * Math.PI * turns) + 0.4 * Math.sin(4 * Math.PI * turns))
  }
  for (let t = wait(0.6, rng); t < n / rate; t += wait(0.6, rng)) {
    const every = 1 / rng.between(9, 40)
    const lasts = rng.between(0.3, 1.2)
    for (let u = 0; u < lasts; u += every * (1 + 0.12 * rng.normal()))
      ping(out, rate, t + Math.max(0, u), rng.between(70, 240), 0.01, 1.5 * level)
  }
  return out
}

/** A fire: cracks of all sizes, some in quick rows, over a low roar that flickers. */
export const crackling: Sound = (n, rate, rng) => {
  const out = filtered(pinkNoise(n, rate, rng.fork(1)), lowPass(rng.between(90, 300), 0.8, rate))
  const flicker = drift(n, rate, rng.between(4, 14), rng.fork(2))
  let power = 0
  for (let i = 0; i < n; i++) {
    out[i]! *= Math.exp(0.5 * flicker[i]!)
    power += out[i]! ** 2
  }
  const level = Math.sqrt(power / n)
  const perSecond = rng.between(4, 50)
  for (let t = 0; t < n / rate; t += wait(perSecond, rng)) {
    const row = rng.next() < 0.15 ? Math.floor(rng.between(3, 12)) : 1
    const gap = rng.between(0.006, 0.03)
    for (let k = 0; k < row; k++) {
      const size = level * Math.min(40, 1.2 * (1 - rng.next()) ** -0.8)
      ping(out, rate, t + k * gap * (1 + 0.15 * rng.normal()), rng.between(300, 3500), 0.0015, size)
    }
  }
  return out
}

/** People: one who talks low, one who shouts, a child that cries. */
export const voices: Sound = (n, rate, rng) => {
  const out = voiceNoise(n, rate, rng.fork(1))
  const cries = rng.next() < 0.5
  const low = rng.between(85, 130)
  for (let t = wait(2, rng); t < n / rate; ) {
    const lasts = cries ? rng.between(0.4, 1.5) : rng.between(0.12, 0.4)
    const pitch = cries ? rng.between(320, 520) : low * 2 ** (0.2 * rng.normal())
    const bend = cries ? rng.between(0.1, 0.35) : rng.between(-0.25, 0.1)
    const shake = cries ? rng.between(4, 8) : 0
    let turns = 0
    const first = Math.round(t * rate)
    const last = Math.min(n, first + Math.round(lasts * rate))
    for (let i = first; i < last; i++) {
      const u = (i - first) / rate / lasts
      turns += (pitch * (1 + bend * Math.sin(Math.PI * u) + 0.02 * Math.sin(2 * Math.PI * shake * u))) / rate
      let v = 0
      for (let h = 1; h <= 8; h++) v += Math.cos(2 * Math.PI * h * turns) / h ** 0.7
      out[i]! += (cries ? 0.06 : 0.04) * Math.sin(Math.PI * u) * v
    }
    t += lasts + (cries ? rng.between(0.2, 0.8) : rng.between(0.03, 0.3))
  }
  const room = hiss(n, rate, rng.fork(2))
  for (let i = 0; i < n; i++) out[i]! += 0.004 * room[i]!
  return out
}

/** A clock: ticks of two or three knocks a few thousandths of a second apart, always the same, in a quiet room. */
export const ticking: Sound = (n, rate, rng) => {
  const out = pinkNoise(n, rate, rng.fork(1))
  let power = 0
  for (const v of out) power += v * v
  const level = Math.sqrt(power / n)
  const every = 1 / rng.between(1, 6)
  const knocks = [0, rng.between(0.004, 0.02), rng.between(0.02, 0.05)].slice(0, rng.next() < 0.4 ? 2 : 3)
  const rings = [rng.between(250, 700), rng.between(800, 1600), rng.between(1800, 3500)]
  const size = level * rng.between(4, 30)
  for (let t = rng.between(0, every), k = 0; t < n / rate; t += every, k++)
    for (const [j, knock] of knocks.entries())
      for (const hertz of rings)
        ping(
          out,
          rate,
          t + knock,
          hertz * (k % 2 === 0 ? 1 : 1.04),
          0.004,
          (size * 0.7 ** j * rings[0]!) / hertz,
        )
  return out
}

/** A rotor far off: thumps at the blade rate over the comb of a smaller rotor and noise that beats with both. */
export const rotor: Sound = (n, rate, rng) => {
  const out = pinkNoise(n, rate, rng.fork(1))
  const blades = rng.between(10, 26)
  const tail = rng.between(50, 115)
  const strength = rng.between(0, 0.5)
  const sharp = rng.between(2, 9)
  for (let i = 0; i < n; i++) {
    const t = i / rate
    const thump = Math.max(0, Math.cos(2 * Math.PI * blades * t)) ** sharp
    let comb = 0
    for (let h = 1; h <= 4; h++) comb += Math.cos(2 * Math.PI * h * tail * t + h * h) / h
    out[i] = out[i]! * (0.4 + 1.6 * thump) + 0.15 * strength * comb
  }
  return filtered(out, highPass(25, Math.SQRT1_2, rate))
}

/** Everything but an engine, by name. */
export const surroundings = {
  waves: swash,
  rain: downpour,
  wind: gale,
  fire: crackling,
  voices,
  ticking,
  rotor,
} as const satisfies Record<string, Sound>

export type Surrounding = keyof typeof surroundings
