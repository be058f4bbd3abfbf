/** An invented run of a craft's own engines, for trying things without a recording. Says what truly happened in it. */
import { type Random, seededRandom } from '../../base/numerics/random.ts'
import { type Clip, makeClip } from './synth/clip.ts'
import { CONTROL_RATE, type EngineScript, type Script, type TrueEvent } from './synth/scriptTypes.ts'

export interface InventedOrder {
  /** rev/s of each engine at full throttle, each 10 to 250 */
  rotations: readonly number[]
  /** all on one shaft: they turn as one */
  locked: boolean
  /** firings a turn of each engine, 1 or more */
  firingsPerTurn: number
  /** any integer; the same gives the same sound */
  seed: number
}

/** s */
const DURATION = 34

/** Part of the full speed at the knots of the story: start, idle, opening, pull, racing, pull, closing, stop. */
const story: readonly [number, number][] = [
  [1.6, 0.42],
  [2.2, 0.36],
  [5, 0.36],
  [10.5, 1],
  [17, 1],
  [17.35, 1.36],
  [17.8, 1.33],
  [18.3, 1],
  [27, 1],
  [28.2, 0.4],
  [31, 0.36],
]

/** s; the second engine of a pair with a jet each dies here */
const DIES = 24

/**
 * Half a minute tied up: start, idle, slowly to full throttle, the load slips away once, on again, closing, stop. Two engines that turn
 * independently run 3 % apart, and the second dies on the way. Wind, splashes and voices 16 dB under the engines.
 */
export function inventedRun(order: InventedOrder): Clip {
  const { rotations, locked, firingsPerTurn, seed } = order
  for (const [i, r] of rotations.entries())
    if (!(r >= 10 && r <= 250)) throw new RangeError(`rotations.${i}: ${r} rev/s; 10 to 250`)
  const rng = seededRandom(seed)
  const events: TrueEvent[] = []
  const shared = locked ? wander(rng.fork(1)) : undefined
  const engines = rotations.slice(0, 2).map((full, k): EngineScript => {
    const apart = !locked && k === 1
    const delay = apart ? 0.9 : 0
    const end = apart ? DIES : 31
    const start = 1.6 + delay
    const drift = shared ?? wander(rng.fork(2 + k))
    const n = DURATION * CONTROL_RATE
    const rpm = new Float64Array(n)
    const load = new Float64Array(n)
    for (let i = 0; i < n; i++) {
      const t = i / CONTROL_RATE
      if (t < start || t >= end) continue
      const part = along(t - delay) * (apart ? 0.97 : 1)
      rpm[i] = 60 * full * firingsPerTurn * part * (1 + drift[i]!)
      load[i] = part > 0.8 ? 1 : 0.3
    }
    if (!locked || k === 0)
      events.push(
        { kind: 'start', time: start, engine: k },
        { kind: 'flare', time: 17 + delay, engine: k },
        { kind: 'stop', time: end, engine: k },
      )
    const still = new Float64Array(n)
    return {
      rpm,
      load,
      alternate: still,
      every: 2,
      misfire: still,
      phase: k * 0.37,
      gain: k === 1 ? 0.85 : 1,
    }
  })
  const script: Script = {
    kind: engines.length === 0 ? 'quiet' : engines.length === 1 ? 'steady' : locked ? 'locked' : 'onedies',
    duration: DURATION,
    engines,
    events: events.sort((a, b) => a.time - b.time),
  }
  return makeClip(script, { snr: 16 }, seed)
}

function along(t: number): number {
  const after = story.findIndex(([at]) => at > t)
  if (after === 0) return story[0]![1]
  if (after < 0) return story[story.length - 1]![1]
  const [t0, a] = story[after - 1]!
  const [t1, b] = story[after]!
  return a * (b / a) ** ((t - t0) / (t1 - t0))
}

/** Slow drift of speed, 0.5 %. */
function wander(rng: Random): Float64Array {
  const out = new Float64Array(DURATION * CONTROL_RATE)
  const keep = Math.exp((-2 * Math.PI * 0.3) / CONTROL_RATE)
  let v = rng.normal()
  for (let i = 0; i < out.length; i++) {
    v = keep * v + Math.sqrt(1 - keep * keep) * rng.normal()
    out[i] = 0.005 * v
  }
  return out
}
