/**
 * Fits the rotor's turning (and, with torque readings, its roughness) to a tie-up test: rotation and pull, below the knee.
 * Gauss-Newton on weighted residuals with the usual range of each constant as one more reading (Bayes with normal errors).
 */
import type { Solved } from '../../base/answers/solved.ts'
import { solveJet } from './jet.ts'
import { type JetSpec, standardModel } from './jetTypes.ts'

export interface TieUpReading {
  /** impeller rotation, rev/s */
  n: number
  /** pull, N */
  F: number
  /** torque at the impeller shaft, N·m, where the engine's torque at that rotation is known */
  T?: number
}

export interface Errors {
  /** relative standard errors of one reading */
  n: number
  F: number
  T: number
}

export interface Calibration {
  turning: number
  turningError: number
  /** Ra, m; as given when no torque was read */
  roughness: number
  roughnessError: number
  /** measured over computed, less one, for the readings used */
  residuals: { n: number; F: number; T?: number }[]
  /** readings left out because the pull had stopped growing with n² */
  beyondKnee: TieUpReading[]
  spec: JetSpec
}

const usualErrors: Errors = { n: 0.01, F: 0.08, T: 0.08 }
/** how far the constants lie from their defaults, one standard deviation */
const turningSpread = 0.07
const logRoughnessSpread = 0.7

/** Parts the readings at the knee: F/n² more than 7 % below the median of the slower readings ends the wetted range. */
export function belowKnee(readings: readonly TieUpReading[]): {
  used: TieUpReading[]
  beyond: TieUpReading[]
} {
  const sorted = [...readings].sort((a, b) => a.n - b.n)
  let end = sorted.length
  for (let i = 2; i < sorted.length; i++) {
    const slower = sorted.slice(0, i).map((r) => r.F / r.n ** 2)
    slower.sort((a, b) => a - b)
    const middle = slower[slower.length >> 1]!
    // one odd reading is noise; the knee is where it and all faster ones stay low
    if (sorted.slice(i).every((r) => r.F / r.n ** 2 < 0.93 * middle)) {
      end = i
      break
    }
  }
  return { used: sorted.slice(0, end), beyond: sorted.slice(end) }
}

/** Spec with other turning and roughness. */
function tuned(spec: JetSpec, turning: number, logRoughness: number): JetSpec {
  return {
    ...spec,
    rotor: { ...spec.rotor, roughness: Math.exp(logRoughness) },
    model: { ...spec.model, turning },
  }
}

/** Fits to tie-up readings (boat speed zero). Not converged with fewer than two readings below the knee. */
export function calibrateJet(
  spec: JetSpec,
  readings: readonly TieUpReading[],
  errors: Errors = usualErrors,
): Solved<Calibration> {
  const { used, beyond } = belowKnee(readings.filter((r) => r.n > 0 && r.F > 0))
  const prior = spec.model?.turning ?? standardModel.turning
  const priorLog = Math.log(Math.max(spec.rotor.roughness, 1e-7))
  const withTorque = used.some((r) => r.T !== undefined)
  // a wrong rotation moves pull and torque twice as much
  const sigmaF = Math.hypot(errors.F, 2 * errors.n)
  const sigmaT = Math.hypot(errors.T, 2 * errors.n)

  const residualsOf = (x: readonly [number, number]): number[] => {
    const s = tuned(spec, x[0], x[1])
    const out: number[] = []
    for (const r of used) {
      const p = solveJet(s, r.n, 0)
      out.push(Math.log(r.F / p.F) / sigmaF)
      if (r.T !== undefined) out.push(Math.log(r.T / p.T) / sigmaT)
    }
    out.push((prior - x[0]) / turningSpread)
    if (withTorque) out.push((priorLog - x[1]) / logRoughnessSpread)
    return out
  }
  const sum = (r: readonly number[]) => r.reduce((s, v) => s + v * v, 0)

  let x: [number, number] = [prior, priorLog]
  let res = residualsOf(x)
  let iterations = 0
  let step = Number.POSITIVE_INFINITY
  let a = 0
  let b = 0
  let c = 0
  for (; iterations < 25 && step > 1e-6; iterations++) {
    const h = [0.005, 0.05] as const
    const j0 = slope(residualsOf([x[0] + h[0], x[1]]), res, h[0])
    const j1 = withTorque ? slope(residualsOf([x[0], x[1] + h[1]]), res, h[1]) : res.map(() => 0)
    a = dot(j0, j0)
    b = dot(j0, j1)
    c = withTorque ? dot(j1, j1) : 1
    const g0 = dot(j0, res)
    const g1 = dot(j1, res)
    const det = a * c - b * b
    const d0 = -(c * g0 - b * g1) / det
    const d1 = withTorque ? -(a * g1 - b * g0) / det : 0
    // halve the step until it helps
    let scale = 1
    let next = res
    let xn = x
    for (let k = 0; k < 12; k++, scale /= 2) {
      xn = [Math.min(1, Math.max(0.4, x[0] + scale * d0)), x[1] + scale * d1]
      next = residualsOf(xn)
      if (sum(next) <= sum(res)) break
    }
    step = sum(next) <= sum(res) ? Math.abs(xn[0] - x[0]) + 0.1 * Math.abs(xn[1] - x[1]) : 0
    if (sum(next) <= sum(res)) {
      x = xn
      res = next
    }
  }
  const det = a * c - b * b
  const fitted = tuned(spec, x[0], withTorque ? x[1] : priorLog)
  const enough = used.length >= 2
  return {
    value: {
      turning: enough ? x[0] : Number.NaN,
      turningError: Math.sqrt(c / det),
      roughness: Math.exp(x[1]),
      roughnessError: withTorque ? Math.exp(x[1]) * Math.sqrt(a / det) : Number.NaN,
      residuals: used.map((r) => {
        const p = solveJet(fitted, r.n, 0)
        return r.T === undefined
          ? { n: r.n, F: r.F / p.F - 1 }
          : { n: r.n, F: r.F / p.F - 1, T: r.T / p.T - 1 }
      }),
      beyondKnee: beyond,
      spec: fitted,
    },
    converged: enough && step <= 1e-6 && res.every(Number.isFinite),
    iterations,
    residual: Math.sqrt(sum(res) / res.length),
  }
}

function slope(at: readonly number[], from: readonly number[], h: number): number[] {
  return at.map((v, i) => (v - from[i]!) / h)
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((s, v, i) => s + v * b[i]!, 0)
}
