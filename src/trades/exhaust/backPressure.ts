/**
 * Pressure that an outlet costs. Sources: isentropic nozzle flow (NACA Report 1135, 1953); duct losses
 * Δp = (4fL/D + ΣK) ρu²/2 with Blasius friction and handbook loss factors (D. S. Miller, Internal Flow Systems,
 * 1978, from memory: exit 1, sharp entry 0.5, belled 0.05, sharp right angle 1.1).
 */

import type { Solved } from '../../base/answers/solved.ts'
import { brent } from '../../base/numerics/roots.ts'

/** Exhaust gas as the pipe model takes it. */
export const exhaustGas = { gamma: 1.32, gasConstant: 295 }

/** Isentropic flow function ψ: mass flow = A p0/√(R T0) ψ(p/p0), choked below the critical ratio. */
export function flowFunction(ratio: number, gamma: number): number {
  const critical = (2 / (gamma + 1)) ** (gamma / (gamma - 1))
  const r = Math.max(Math.min(ratio, 1), critical)
  return Math.sqrt(((2 * gamma) / (gamma - 1)) * (r ** (2 / gamma) - r ** ((gamma + 1) / gamma)))
}

/** Largest ψ: ṁ√(RT)/(pA) at the throat's stagnation state. */
export function chokedFunction(gamma: number): number {
  return flowFunction(0, gamma)
}

export interface OutletFlow {
  /** kg/s, mean */
  massFlow: number
  /** K, in the box */
  temperature: number
  /** m² times discharge coefficient */
  area: number
  /** Pa absolute, outside */
  outside: number
  gamma?: number
  gasConstant?: number
}

/**
 * Absolute pressure, Pa, a box settles at to push the flow out through its outlet; not converged beyond fifty times the
 * outside pressure. RangeError for a temperature, area or outside pressure not above 0.
 */
export function boxPressure(flow: OutletFlow): Solved {
  for (const key of ['temperature', 'area', 'outside'] as const)
    if (!(flow[key] > 0)) throw new RangeError(`outlet ${key} is ${flow[key]}: it must be above 0`)
  const gamma = flow.gamma ?? exhaustGas.gamma
  const R = flow.gasConstant ?? exhaustGas.gasConstant
  const root = Math.sqrt(R * flow.temperature)
  const surplus = (p: number) =>
    (flow.area * p * flowFunction(flow.outside / p, gamma)) / root - flow.massFlow
  return brent(surplus, flow.outside, flow.outside * 50, { tolerance: 1e-6 })
}

export interface TubeFlow {
  massFlow: number
  temperature: number
  pressure: number
  bore: number
  length: number
  /** sum of loss factors: entry, bends, exit */
  losses: number
}

/** Sutherland-like viscosity of exhaust gas, Pa·s, T in K (Blair 1996, polynomial fit, from memory). */
export function gasViscosity(T: number): number {
  return 7.457e-6 + 4.1547e-8 * T - 7.4793e-12 * T * T
}

export interface TubeDrop {
  /** Pa */
  drop: number
  velocity: number
  mach: number
  dynamic: number
  friction: number
  choked: boolean
}

/** Pressure drop of steady flow through a tube, incompressible form; `choked` where it cannot hold. RangeError for bad measures. */
export function tubeDrop(t: TubeFlow): TubeDrop {
  for (const key of ['bore', 'temperature', 'pressure'] as const)
    if (!(t[key] > 0)) throw new RangeError(`tube ${key} is ${t[key]}: it must be above 0`)
  for (const key of ['massFlow', 'length', 'losses'] as const)
    if (!(t[key] >= 0)) throw new RangeError(`tube ${key} is ${t[key]}: it must be 0 or above`)
  const { gamma, gasConstant } = exhaustGas
  const area = (Math.PI / 4) * t.bore ** 2
  const density = t.pressure / (gasConstant * t.temperature)
  const velocity = t.massFlow / (density * area)
  const reynolds = (density * velocity * t.bore) / gasViscosity(t.temperature)
  // Blasius down to the roughness that a used pipe has; still gas rubs on nothing
  const fanning = reynolds > 0 ? Math.max(0.0791 * reynolds ** -0.25, 0.004) : 0
  const dynamic = 0.5 * density * velocity ** 2
  const friction = ((4 * fanning * t.length) / t.bore) * dynamic
  const mach = velocity / Math.sqrt(gamma * gasConstant * t.temperature)
  const loading = (t.massFlow * Math.sqrt(gasConstant * t.temperature)) / (t.pressure * area)
  return {
    drop: friction + t.losses * dynamic,
    velocity,
    mach,
    dynamic,
    friction,
    choked: loading >= chokedFunction(gamma),
  }
}
