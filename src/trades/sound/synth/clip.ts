/** Puts a script into sound with its ground truth. */
import { bandPass, filtered, lowPass } from '../../../base/numerics/biquad.ts'
import { type Random, seededRandom } from '../../../base/numerics/random.ts'
import { hiss, pinkNoise, rainNoise, seaNoise, splashNoise, voiceNoise, windNoise } from './noise.ts'
import { exhaustResponse, heardPassing, type Pass, withEchoes } from './path.ts'
import { type PhoneChain, throughPhone, usualPhone } from './phone.ts'
import { type CycleScatter, firings, type PulseTable, pulseSound, usualScatter } from './pulses.ts'
import { CONTROL_RATE, type Script } from './scriptTypes.ts'

export interface ClipOptions {
  /** samples a second of the result */
  rate: number
  /** engine over noise power in 100–2000 Hz over engine-on samples, dB; Infinity = no noise */
  snr: number
  /** 0 = full exhaust tone, 1 = three to five harmonics */
  darkness: number
  scatter: CycleScatter
  /** how much the lowest lines are raised, amplitude; 0 or left out = as the exhaust gives them */
  body?: number
  /** noise that rides on each pulse, 0.25 = a clean exhaust */
  flowNoise: number
  /** the engine's own steady noise (intake, gears), amplitude against its tone */
  ownNoise: number
  /** relative powers */
  noise: {
    wind: number
    splash: number
    voice: number
    pink: number
    hiss: number
    sea?: number
    rain?: number
  }
  phone: PhoneChain
  echoes: boolean
  pass?: Pass
  pulses?: PulseTable
}

export const usualClip: ClipOptions = {
  rate: 16000,
  snr: 20,
  darkness: 0,
  scatter: usualScatter,
  flowNoise: 0.25,
  ownNoise: 0,
  noise: { wind: 1, splash: 0.6, voice: 0.5, pink: 0.6, hiss: 0.2 },
  phone: usualPhone,
  echoes: true,
}

/** An invented recording. `truth` holds each engine's firing rate (Hz, 0 = off) at CONTROL_RATE. */
export interface Clip {
  samples: Float32Array
  rate: number
  script: Script
  truth: Float64Array[]
}

/** Engine and noise before they are mixed, so that one clip serves several noise levels. */
export interface Stems {
  script: Script
  engine: Float64Array
  noise: Float64Array
  /** engine and noise power in 100–2000 Hz over engine-on samples */
  enginePower: number
  noisePower: number
}

function bandPower(x: Float64Array, rate: number, on: (t: number) => boolean): number {
  // a centre of 447 Hz with Q 0.235 passes 100–2000 Hz
  const y = filtered(x, bandPass(Math.sqrt(100 * 2000), Math.sqrt(100 * 2000) / 1900, rate))
  let sum = 0
  let n = 0
  for (let i = 0; i < y.length; i++)
    if (on(i / rate)) {
      sum += y[i]! * y[i]!
      n++
    }
  return n > 0 ? sum / n : 0
}

/** Hz under which the lowest lines of an engine lie */
const LOW_LINES = 130

/** Renders engine and noise apart; with `around`, that sound takes the place of the usual noise. */
export function renderStems(
  script: Script,
  options: ClipOptions,
  rng: Random,
  around?: (n: number, rate: number, rng: Random) => Float64Array,
): Stems {
  const n = Math.round(script.duration * options.rate)
  const engine = new Float64Array(n)
  const shaft = rng.fork(7)
  for (const [k, e] of script.engines.entries()) {
    // a locked pair turns as one shaft: same turns, own firings
    const cycles = rng.fork(10 + (script.kind === 'locked' ? 0 : k))
    const list = firings(e, options.scatter, cycles)
    let y = pulseSound(list, n, options.rate, shaft, options.flowNoise, options.pulses)
    y = exhaustResponse(y, options.rate, rng.fork(20 + k), options.darkness)
    if (options.body) {
      const low = filtered(y, lowPass(LOW_LINES, 0.6, options.rate))
      for (let i = 0; i < n; i++) y[i]! += options.body * low[i]!
    }
    let power = 0
    for (const v of y) power += v * v
    const scale = power > 0 ? e.gain / Math.sqrt(power / n) : 0
    const own = rng.fork(25 + k)
    for (let i = 0; i < n; i++) {
      const on = e.rpm[Math.min(e.rpm.length - 1, Math.floor((i / options.rate) * CONTROL_RATE))]! > 0
      engine[i]! +=
        scale * y[i]! + (on && options.ownNoise > 0 ? e.gain * options.ownNoise * own.normal() : 0)
    }
  }
  let heard = options.echoes ? withEchoes(engine, options.rate, rng.fork(30)) : engine
  if (options.pass) heard = heardPassing(heard, options.rate, options.pass)
  const noise = around ? around(n, options.rate, rng.fork(39)) : new Float64Array(n)
  const sources = {
    wind: windNoise,
    splash: splashNoise,
    voice: voiceNoise,
    pink: pinkNoise,
    hiss,
    sea: seaNoise,
    rain: rainNoise,
  }
  let k = 40
  for (const name of Object.keys(sources) as (keyof typeof sources)[]) {
    const weight = options.noise[name] ?? 0
    const fork = rng.fork(k++)
    if (around || weight <= 0) continue
    const y = sources[name](n, options.rate, fork)
    const power = bandPower(y, options.rate, () => true)
    const scale = power > 0 ? Math.sqrt(weight / power) : 0
    for (let i = 0; i < n; i++) noise[i]! += scale * y[i]!
  }
  const running = (t: number) =>
    script.engines.length === 0 ||
    script.engines.some((e) => e.rpm[Math.min(e.rpm.length - 1, Math.floor(t * CONTROL_RATE))]! > 0)
  return {
    script,
    engine: heard,
    noise,
    enginePower: bandPower(heard, options.rate, running),
    noisePower: bandPower(noise, options.rate, running),
  }
}

/** Mixes the stems at `snr` dB and sends them through the phone. */
export function mixStems(stems: Stems, snr: number, options: ClipOptions): Clip {
  const { engine, noise } = stems
  const ratio =
    stems.enginePower > 0 && stems.noisePower > 0
      ? Math.sqrt(stems.enginePower / stems.noisePower) * 10 ** (-snr / 20)
      : stems.enginePower > 0
        ? 0
        : 1
  const mixed = engine.map((v, i) => v + ratio * noise[i]!)
  return {
    samples: throughPhone(mixed, options.rate, options.phone),
    rate: options.rate,
    script: stems.script,
    truth: stems.script.engines.map((e) => e.rpm.map((v) => v / 60)),
  }
}

/** One invented recording from a script; the same seed gives the same samples. */
export function makeClip(script: Script, options: Partial<ClipOptions>, seed: number): Clip {
  const all = { ...usualClip, ...options }
  return mixStems(renderStems(script, all, seededRandom(seed)), all.snr, all)
}
