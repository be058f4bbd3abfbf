/**
 * Least squares with priors in bounds, for readings that are known to a part: minimises Σ ρ((ln y(z) − ln y)/σ) + Σ z² with z the
 * parameters in standard deviations of their priors, |z| ≤ 3. ρ is the soft-L1 loss 2(√(1+r²) − 1), so that one bad reading pulls
 * little. Gauss–Newton with the damping of D. Marquardt (J. SIAM 11 (1963) 431), steps cut off at the bounds. Covariance (JᵀJ)⁻¹
 * with the priors' rows in J (Gaussian posterior at its top).
 */
import type { Solved } from '../../base/answers/solved.ts'

export interface Observation {
  /** ln of the reading */
  ln: number
  /** one standard deviation of it */
  sd: number
}

export interface Fit {
  /** parameters, in standard deviations of their priors */
  z: Float64Array
  /** standard deviations after the fit; a prior's is 1 */
  sd: Float64Array
  /** posterior covariance, rows one after the other */
  covariance: Float64Array
  /** (ln model − ln reading) / sd of each reading, at the fit */
  residuals: Float64Array
  /** sensitivities d(ln y)/dz, a row a reading */
  jacobian: Float64Array[]
}

/** prior standard deviations a parameter may move */
export const mostMoved = 3

/** Fits `count` parameters. `predict` gives ln of each reading's model value; a value that is no number is refused like a far one. */
export function fitWithPriors(
  count: number,
  predict: (z: Float64Array) => ArrayLike<number>,
  observed: readonly Observation[],
  { mostIterations = 40, tolerance = 1e-9 } = {},
): Solved<Fit> {
  let z = new Float64Array(count)
  let r = residualsAt(predict, z, observed)
  let cost = costOf(r, z)
  let damping = 1e-3
  let jacobian = jacobianAt(predict, z, observed)
  let iterations = 0
  let step = Number.POSITIVE_INFINITY
  while (iterations < mostIterations && step > tolerance) {
    iterations++
    const { matrix, gradient } = normal(jacobian, r, observed, z)
    let better = false
    for (let turn = 0; turn < 12 && !better; turn++) {
      const damped = matrix.map((v, i) => (i % (count + 1) === 0 ? v * (1 + damping) : v))
      const move = solveSymmetric(damped, gradient, count)
      const next = z.map((v, i) => Math.max(-mostMoved, Math.min(mostMoved, v - move[i]!)))
      const there = residualsAt(predict, next, observed)
      const then = costOf(there, next)
      if (then <= cost) {
        step = Math.hypot(...next.map((v, i) => v - z[i]!))
        better = true
        z = next
        r = there
        cost = then
        damping = Math.max(damping / 10, 1e-12)
      } else damping *= 6
    }
    if (!better) step = 0
    else jacobian = jacobianAt(predict, z, observed)
  }
  const { matrix } = normal(jacobian, r, observed, z, true)
  const covariance = inverse(matrix, count)
  const sd = new Float64Array(count).map((_, i) => Math.sqrt(Math.max(0, covariance[i * count + i]!)))
  const converged = step <= tolerance && Number.isFinite(cost)
  return { value: { z, sd, covariance, residuals: r, jacobian }, converged, iterations, residual: step }
}

/** far enough that no step towards what does not run is taken */
const noNumber = 1e3

function residualsAt(
  predict: (z: Float64Array) => ArrayLike<number>,
  z: Float64Array,
  observed: readonly Observation[],
): Float64Array {
  const y = predict(z)
  return Float64Array.from(observed, ({ ln, sd }, i) => {
    const part = (y[i]! - ln) / sd
    return Number.isFinite(part) ? part : noNumber
  })
}

const costOf = (r: Float64Array, z: Float64Array): number =>
  r.reduce((sum, v) => sum + 2 * (Math.sqrt(1 + v * v) - 1), 0) + z.reduce((sum, v) => sum + v * v, 0)

function jacobianAt(
  predict: (z: Float64Array) => ArrayLike<number>,
  z: Float64Array,
  observed: readonly Observation[],
): Float64Array[] {
  const rows = observed.map(() => new Float64Array(z.length))
  const h = 1e-3
  for (let k = 0; k < z.length; k++) {
    const [a, b] = [-h, h].map((d) => predict(z.map((v, i) => (i === k ? v + d : v))))
    observed.forEach((_, i) => {
      const slope = (b![i]! - a![i]!) / (2 * h)
      rows[i]![k] = Number.isFinite(slope) ? slope : 0
    })
  }
  return rows
}

/** Normal matrix and half the gradient; `plain` leaves the loss out, for the covariance. */
function normal(
  jacobian: readonly Float64Array[],
  r: Float64Array,
  observed: readonly Observation[],
  z: Float64Array,
  plain = false,
): { matrix: Float64Array; gradient: Float64Array } {
  const n = z.length
  const matrix = new Float64Array(n * n)
  const gradient = Float64Array.from(z)
  for (let k = 0; k < n; k++) matrix[k * n + k] = 1
  observed.forEach(({ sd }, i) => {
    const weight = plain ? 1 : 1 / Math.sqrt(1 + r[i]! * r[i]!)
    for (let a = 0; a < n; a++) {
      const ja = jacobian[i]![a]! / sd
      gradient[a]! += weight * ja * r[i]!
      for (let b = 0; b < n; b++) matrix[a * n + b]! += (weight * ja * jacobian[i]![b]!) / sd
    }
  })
  return { matrix, gradient }
}

/** A x = b for a symmetric positive definite A, by Cholesky. */
function solveSymmetric(a: Float64Array, b: Float64Array, n: number): Float64Array {
  const l = new Float64Array(n * n)
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = a[i * n + j]!
      for (let k = 0; k < j; k++) sum -= l[i * n + k]! * l[j * n + k]!
      l[i * n + j] = i === j ? Math.sqrt(Math.max(sum, 1e-300)) : sum / l[j * n + j]!
    }
  const x = Float64Array.from(b)
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i]! -= l[i * n + k]! * x[k]!
    x[i]! /= l[i * n + i]!
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i]! -= l[k * n + i]! * x[k]!
    x[i]! /= l[i * n + i]!
  }
  return x
}

function inverse(a: Float64Array, n: number): Float64Array {
  const out = new Float64Array(n * n)
  for (let k = 0; k < n; k++) {
    const unit = new Float64Array(n)
    unit[k] = 1
    const column = solveSymmetric(a, unit, n)
    for (let i = 0; i < n; i++) out[i * n + k] = column[i]!
  }
  return out
}
