/** Pitch for a given drive, and the nozzle that goes with it. */
import type { Solved } from '../../base/answers/solved.ts'
import { brent } from '../../base/numerics/roots.ts'
import { solveJet } from './jet.ts'
import type { JetPoint, JetSpec } from './jetTypes.ts'

/** What drives the impeller, at the impeller shaft. */
export interface Load {
  /** torque at the shaft, N·m, at rotation n (rev/s) */
  torque: (n: number) => number
  /** rotation at which it should run: a little over the power peak, rev/s */
  target: number
}

/** The spec with another leading pitch; a growing pitch keeps its growth. */
export function withPitch(spec: JetSpec, pitch: number): JetSpec {
  const growth = spec.rotor.pitchTrailing / spec.rotor.pitchLeading
  return { ...spec, rotor: { ...spec.rotor, pitchLeading: pitch, pitchTrailing: pitch * growth } }
}

export interface PitchChoice {
  pitch: number
  point: JetPoint
}

/**
 * Pitch (m) at which the jet takes just the torque the drive gives at its target rotation, at boat speed V.
 * Torque grows with pitch until the rotor stalls or chokes, so the lowest such pitch between `low` and `high` is meant; not
 * converged when there is none.
 */
export function choosePitch(
  spec: JetSpec,
  load: Load,
  V: number,
  low: number,
  high: number,
): Solved<PitchChoice> {
  const given = load.torque(load.target)
  const excess = (pitch: number) => solveJet(withPitch(spec, pitch), load.target, V).T - given
  // step up from shallow: past the lowest crossing the torque may fall again
  const steps = 12
  let upper = low
  let lower = low
  while (!(excess(upper) > 0) && upper < high) {
    lower = upper
    upper = Math.min(high, upper + (high - low) / steps)
  }
  const root = brent(excess, lower, upper, { tolerance: 1e-7 })
  const pitch = root.converged ? root.value : Number.NaN
  const point = solveJet(withPitch(spec, root.converged ? pitch : low), load.target, V)
  return {
    value: { pitch, point },
    converged: root.converged && point.converged,
    iterations: root.iterations,
    residual: root.residual,
  }
}

/** Reduction (engine turns per impeller turn) that lets the drive's peak power turn a jet with T = k n²: P = 2π k n³. */
export function bestReduction(
  peakRotation: number,
  peakPower: number,
  efficiency: number,
  k: number,
): number {
  return peakRotation / Math.cbrt((peakPower * efficiency) / (2 * Math.PI * k))
}
