/** The whole jet with the strip model at every flow tried: slow and exact; `pumpMap.ts` is the fast way to the same answer. */
import { type Blades, prepareBlades } from './blades.ts'
import type { JetPoint, JetSpec, PumpPoint } from './jetTypes.ts'
import { advanceHigh, advanceLow, headBeyond, operate, type PumpCurve, torqueBeyond } from './operate.ts'
import { type PumpSetting, pumpAt } from './pump.ts'

/** Strips and surroundings of a spec, ready for `pumpAt`. */
export function pumpSetting(spec: JetSpec): PumpSetting {
  const blades: Blades = prepareBlades(spec.rotor, spec.model)
  return {
    blades,
    water: spec.water,
    stator: spec.system.stator,
    nozzleDiameter: spec.system.nozzleDiameter,
  }
}

/** Hydraulic torque on the blades, N·m. */
function bladeTorque(density: number, n: number, Q: number, work: number): number {
  return (density * Q * work) / (2 * Math.PI * n)
}

function directCurve(spec: JetSpec, n: number): { curve: PumpCurve; at: (Q: number) => PumpPoint } {
  const set = pumpSetting(spec)
  const screw = n * spec.rotor.pitchTrailing * set.blades.areaIn
  const low = advanceLow * screw
  const high = advanceHigh * screw
  let lastQ = Number.NaN
  let last: PumpPoint | undefined
  const at = (Q: number): PumpPoint => {
    if (Q !== lastQ || last === undefined) {
      last = pumpAt(set, n, Q)
      lastQ = Q
    }
    return last
  }
  const held = (Q: number) => at(Math.min(Math.max(Q, low), high))
  const torqueOf = (p: PumpPoint) => bladeTorque(spec.water.density, n, p.flow, p.work)
  return {
    at: held,
    curve: {
      annulus: set.blades.areaIn,
      head: (Q) => (Q > high ? headBeyond(held(Q).head, Q / high) : held(Q).head),
      torque: (Q) => (Q > high ? torqueBeyond(torqueOf(held(Q)), Q / high) : torqueOf(held(Q))),
      diffusion: (Q) => held(Q).diffusion,
      stalled: (Q) => {
        const p = held(Q)
        return p.tipStalled || p.stalledShare > 0.4
      },
      deepStall: (Q) => !held(Q).converged,
    },
  }
}

/** Operating point at rotation n (rev/s) and boat speed V (m/s) with the losses of the pump. */
export function solveJet(spec: JetSpec, n: number, V: number): JetPoint {
  const { curve, at } = directCurve(spec, n)
  const point = operate(spec, curve, n, V)
  if (point.Q > 0) point.losses = at(point.Q).losses
  return point
}
