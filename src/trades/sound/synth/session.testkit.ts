/**
 * Whole invented sessions of two engines on one shaft, or of one engine: what happens is drawn or told step by step, so that the events
 * heard can be held against what was made. Invented for this project.
 */
import type { Random } from '../../../base/numerics/random.ts'
import { CONTROL_RATE, type EngineScript, type Script } from './scriptTypes.ts'

/** One thing that happens in a session and what the shaft then does. */
export interface Scene {
  kind: SceneKind
  /** s it lasts, its change of speed included */
  lasts: number
  /** rev/min it goes to; 0 = silence */
  rpm: number
  /** s the change takes */
  takes: number
  /** engines firing from then on */
  firing: 0 | 1 | 2
  /** rev/min it swings by to each side, and s a swing: hunting */
  hunts?: { by: number; period: number }
}

export type SceneKind =
  | 'start'
  | 'both pull'
  | 'one stops firing'
  | 'fires again'
  | 'load lost'
  | 'load back'
  | 'opens'
  | 'closes'
  | 'hunts'
  | 'chokes'
  | 'bogs'
  | 'killed'
  | 'starves'
  | 'silence'

export interface SessionTruth {
  kind: SceneKind
  /** s it begins */
  time: number
  /** rev/min before and after */
  before: number
  after: number
}

/** A session's script from its scenes; a shaft with two firing engines is two engines half a turn apart or as `phase` says. */
export function sessionScript(
  scenes: readonly Scene[],
  rng: Random,
  { phase = 0.37, loudness = 0.85 } = {},
): { script: Script; truth: SessionTruth[] } {
  const duration = scenes.reduce((s, x) => s + x.lasts, 0)
  const n = Math.round(duration * CONTROL_RATE)
  const rpm = new Float64Array(n)
  const firing = new Uint8Array(n)
  const misfire = new Float64Array(n)
  const truth: SessionTruth[] = []
  let from = 0
  let speed = 0
  for (const scene of scenes) {
    // an engine that starves has stopped when its last firing is over
    const ends = scene.kind === 'starves' ? scene.takes : 0
    truth.push({ kind: scene.kind, time: from / CONTROL_RATE + ends, before: speed, after: scene.rpm })
    const count = Math.round(scene.lasts * CONTROL_RATE)
    const change = Math.max(1, Math.round(scene.takes * CONTROL_RATE))
    const falls = scene.rpm === 0
    for (let k = 0; k < count && from + k < n; k++) {
      const u = Math.min(1, k / change)
      // a shaft that is let run down against water: 1/n grows evenly
      const to = falls
        ? u < 1
          ? speed / (1 + 1.6 * u)
          : 0
        : speed + (scene.rpm - speed) * u * u * (3 - 2 * u)
      const h = scene.hunts
      const t = k / CONTROL_RATE
      const swing = h && u >= 1 ? h.by * Math.sin((2 * Math.PI * (t - scene.takes)) / h.period) : 0
      rpm[from + k] = to > 0 ? to + swing : 0
      if (scene.kind === 'starves' && u < 1) misfire[from + k] = 0.2
      firing[from + k] = falls && scene.takes < 0.2 ? 0 : scene.firing
    }
    from += count
    speed = scene.rpm
  }
  const wander = red(n, 0.006, rng)
  for (let i = 0; i < n; i++) rpm[i] = rpm[i]! * (1 + wander[i]!)
  const engine = (k: 0 | 1): EngineScript => ({
    rpm: Float64Array.from(rpm, (v, i) => (firing[i]! > k ? v : 0)),
    load: Float64Array.from(rpm, (v) => (v > 3500 ? 1 : 0.3)),
    alternate: new Float64Array(n),
    misfire,
    every: 2,
    phase: k * phase,
    gain: k === 0 ? 1 : loudness,
  })
  return { script: { kind: 'steady', duration, engines: [engine(0), engine(1)], events: [] }, truth }
}

/** Red noise with a 0.3 Hz corner and standard deviation `size`. */
function red(n: number, size: number, rng: Random): Float64Array {
  const a = Math.exp((-2 * Math.PI * 0.3) / CONTROL_RATE)
  const drive = Math.sqrt(1 - a * a)
  let v = rng.normal()
  return Float64Array.from({ length: n }, () => {
    v = a * v + drive * rng.normal()
    return size * v
  })
}

/** The session in which most goes wrong: one stops firing, the shaft loses its load, a restart that hunts, and the choke. */
export const worstDay: readonly Scene[] = [
  { kind: 'start', lasts: 6, rpm: 5200, takes: 0.05, firing: 2 },
  { kind: 'one stops firing', lasts: 6, rpm: 3930, takes: 0.5, firing: 1 },
  { kind: 'load lost', lasts: 2, rpm: 9350, takes: 0.45, firing: 1 },
  { kind: 'killed', lasts: 4.5, rpm: 0, takes: 0.1, firing: 0 },
  { kind: 'start', lasts: 1, rpm: 2700, takes: 0.3, firing: 1 },
  { kind: 'hunts', lasts: 8, rpm: 2750, takes: 0.1, firing: 1, hunts: { by: 350, period: 1.3 } },
  { kind: 'chokes', lasts: 5, rpm: 6400, takes: 1.2, firing: 1 },
  { kind: 'killed', lasts: 2, rpm: 0, takes: 0.1, firing: 0 },
]
