/**
 * Blow-down pulses of an engine: firing instants and the sound they radiate.
 * A small opening radiates the time derivative of its mass flow (monopole; P. M. Morse and K. U. Ingard,
 * Theoretical Acoustics, 1968, section 7.1). The flow pulse (t/tau) exp(1 - t/tau) is a parametric stand-in;
 * `table` takes the place of it when an engine model has computed the flow.
 */
import type { Random } from '../../../base/numerics/random.ts'
import { CONTROL_RATE, type EngineScript } from './scriptTypes.ts'

export interface Firing {
  /** s */
  time: number
  /** 1 = a full firing */
  strength: number
  /** turns a second at that instant */
  rate: number
}

/** Timing scatter as a part of a period, and log-scatter of strength, at idle and pulling. */
export interface CycleScatter {
  timingLoaded: number
  timingIdle: number
  strengthLoaded: number
  strengthIdle: number
  /** how far a cycle's strength follows that of the cycle before and of the one before that; 0 when left out */
  memory?: readonly [number, number]
}

export const usualScatter: CycleScatter = {
  timingLoaded: 0.006,
  timingIdle: 0.02,
  strengthLoaded: 0.12,
  strengthIdle: 0.35,
}

/** Firing instants where the turns pass a whole number, with cycle scatter, misfires and alternate weakness. */
export function firings(engine: EngineScript, scatter: CycleScatter, rng: Random): Firing[] {
  const out: Firing[] = []
  let turns = rng.next() * 0.999 + engine.phase
  let cycle = 0
  const [one, two] = scatter.memory ?? [0, 0]
  // what is fresh in each cycle, so that the strengths of a process with memory scatter as wide as without (Yule and Walker)
  const near = one / (1 - two)
  const fresh = Math.sqrt(Math.max(0, 1 - one * near - two * (one * near + two)))
  let last = 0
  let before = 0
  for (let i = 0; i < engine.rpm.length; i++) {
    const rate = engine.rpm[i]! / 60
    if (rate <= 0) continue
    const next = turns + rate / CONTROL_RATE
    const load = engine.load[i]!
    for (let k = Math.ceil(turns - 1e-12); k < next; k++) {
      const jitter = (scatter.timingLoaded * load + scatter.timingIdle * (1 - load)) * rng.normal()
      const spread = scatter.strengthLoaded * load + scatter.strengthIdle * (1 - load)
      const now = one * last + two * before + fresh * rng.normal()
      before = last
      last = now
      let strength = Math.exp(spread * now)
      if (rng.next() < engine.misfire[i]!) strength *= 0.08
      if (cycle % engine.every !== 0) strength *= 1 - engine.alternate[i]!
      out.push({ time: i / CONTROL_RATE + (k - turns + jitter) / rate, strength, rate })
      cycle++
    }
    turns = next
  }
  return out
}

/** Mass flow over one turn, uniform steps from the firing instant, as an engine model gives it. */
export type PulseTable = Float64Array

/** Sound pressure (any scale) of the firings at `rate` samples a second; `flowNoise` is the noise in each pulse. */
export function pulseSound(
  list: readonly Firing[],
  samples: number,
  rate: number,
  rng: Random,
  flowNoise: number,
  table?: PulseTable,
): Float64Array {
  const out = new Float64Array(samples)
  for (const f of list) {
    const turn = 1 / f.rate
    const tau = (25 / 360) * turn
    const first = Math.max(0, Math.ceil(f.time * rate))
    const last = Math.min(samples - 1, Math.floor((f.time + (table ? turn : 9 * tau)) * rate))
    for (let i = first; i <= last; i++) {
      const t = i / rate - f.time
      let slope: number
      let flow: number
      if (table) {
        const at = (t / turn) * table.length
        const k = Math.min(table.length - 1, Math.floor(at))
        const here = table[k]!
        const next = table[(k + 1) % table.length]!
        flow = here + (at - k) * (next - here)
        slope = (next - here) * table.length * 0.07
      } else {
        const u = t / tau
        const e = Math.exp(1 - u)
        flow = u * e
        slope = (1 - u) * e
      }
      out[i]! += f.strength * (slope + flowNoise * flow * rng.normal())
    }
  }
  return out
}
