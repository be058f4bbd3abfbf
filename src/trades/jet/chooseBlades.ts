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

function withNozzle(spec: JetSpec, diameter: number): JetSpec {
  return { ...spec, system: { ...spec.system, nozzleDiameter: diameter } }
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

export interface NozzleCandidate extends PitchChoice {
  diameter: number
  /** K_a over the 3 % number at the design speed */
  margin: number
  /** thrust at the hump speed with the same pitch, N; at the target rotation */
  atHump: number
  allowed: boolean
  /** why not, empty when allowed */
  against: string[]
}

export interface NozzleWish {
  designSpeed: number
  humpSpeed: number
  /** resistance at the hump, N */
  humpDrag: number
  pitchLow: number
  pitchHigh: number
}

/**
 * Tries nozzles of 0.48 to 0.68 of the rotor, each with the pitch that suits the drive, and marks those that keep diffusion below 0.55,
 * a tenth of margin to cavitation and 1.2 times the hump's drag. The best is the allowed one with most thrust at the design speed.
 */
export function chooseNozzle(
  spec: JetSpec,
  load: Load,
  wish: NozzleWish,
  count = 11,
): { candidates: NozzleCandidate[]; best?: NozzleCandidate } {
  const candidates: NozzleCandidate[] = []
  for (let i = 0; i < count; i++) {
    const diameter = (0.48 + (0.2 * i) / (count - 1)) * spec.rotor.tipDiameter
    const tried = withNozzle(spec, diameter)
    const found = choosePitch(tried, load, wish.designSpeed, wish.pitchLow, wish.pitchHigh)
    if (!found.converged) continue
    const { pitch, point } = found.value
    const atHump = solveJet(withPitch(tried, pitch), load.target, wish.humpSpeed).F
    const margin = point.Ka / point.K3
    const against: string[] = []
    if (point.diffusion > 0.55) against.push(`diffusion factor ${point.diffusion.toFixed(2)} is above 0.55`)
    if (margin < 1.1) against.push(`cavitation margin ${margin.toFixed(2)} is below 1.1`)
    if (atHump < 1.2 * wish.humpDrag)
      against.push(`thrust ${atHump.toFixed(0)} N at the hump is below 1.2 × ${wish.humpDrag.toFixed(0)} N`)
    candidates.push({ diameter, pitch, point, margin, atHump, allowed: against.length === 0, against })
  }
  const best = candidates
    .filter((c) => c.allowed)
    .reduce<NozzleCandidate | undefined>((a, b) => (a && a.point.F >= b.point.F ? a : b), undefined)
  return best ? { candidates, best } : { candidates }
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
