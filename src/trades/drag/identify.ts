/**
 * What a test on the water says about the drag and thrust models.
 * Readings (a luggage scale on the tow line, a pull tied up, speeds off a video, a coast-down) are compared with the models; three
 * multipliers, on slow drag, on planing drag and on thrust, are fitted by least squares with normal priors about 1 (Gauss–Markov
 * with prior, e.g. Tarantola 2005, Inverse Problem Theory, §3.2). All readings are linear in the multipliers, so the answer is exact.
 */
import { inverse, Matrix } from 'ml-matrix'
import { localQuadratic } from '../../base/numerics/localQuadratic.ts'
import { type DragModel, dragAt } from './drag.ts'
import { smoothStep } from './hullSpec.ts'
import { speedAtFroude } from './run.ts'

/** One reading; `sigma` is its standard error in its own unit. */
export type Reading =
  /** drag at a steady speed: a tow, or a point of a coast-down; N */
  | { kind: 'drag'; speed: number; value: number; sigma: number; riderAt?: number }
  /** thrust at a speed (0 tied up); N */
  | { kind: 'thrust'; speed: number; value: number; sigma: number }
  /** m/s², full throttle */
  | { kind: 'acceleration'; speed: number; value: number; sigma: number; riderAt?: number }

/** Prior standard errors of the multipliers: slow drag, planing drag, thrust (judgement). */
export const priorSigma: readonly [number, number, number] = [0.25, 0.15, 0.2]

interface Multiplier {
  name: 'slow drag' | 'planing drag' | 'thrust'
  value: number
  sigma: number
  /** change from 1 in prior standard errors */
  change: number
}

export interface Identified {
  multipliers: readonly [Multiplier, Multiplier, Multiplier]
  /** the one the readings moved most */
  movedMost: Multiplier
  /** sum of squared residuals in standard errors over the number of readings: near 1 when models and errors are right */
  misfit: number
  /** each reading's residual in its standard errors, in order */
  residuals: number[]
}

/** Fits the multipliers. `thrust` is the thrust model, N at m/s; readings may be few or none: then the priors stand. */
export function identify(
  model: DragModel,
  thrust: (speed: number) => number,
  readings: readonly Reading[],
  prior: readonly [number, number, number] = priorSigma,
): Identified {
  const normal = Matrix.zeros(3, 3)
  const right = Matrix.zeros(3, 1)
  for (let k = 0; k < 3; k++) {
    const w = 1 / prior[k]! ** 2
    normal.set(k, k, w)
    right.set(k, 0, w)
  }
  const rows = readings.map((r) => sensitivities(model, thrust, r))
  readings.forEach((r, i) => {
    if (!(r.sigma > 0)) throw new RangeError(`readings.${i}.sigma: ${r.sigma}, expected above 0`)
    const row = rows[i]!
    const w = 1 / (r.sigma * r.sigma)
    for (let a = 0; a < 3; a++) {
      right.set(a, 0, right.get(a, 0) + w * row[a]! * r.value)
      for (let b = 0; b < 3; b++) normal.set(a, b, normal.get(a, b) + w * row[a]! * row[b]!)
    }
  })
  const covariance = inverse(normal)
  const best = covariance.mmul(right)
  const residuals = readings.map((r, i) => {
    const said = rows[i]!.reduce((sum, s, k) => sum + s * best.get(k, 0), 0)
    return (r.value - said) / r.sigma
  })
  const make = (name: Multiplier['name'], k: number): Multiplier => ({
    name,
    value: best.get(k, 0),
    sigma: Math.sqrt(covariance.get(k, k)),
    change: (best.get(k, 0) - 1) / prior[k]!,
  })
  const multipliers = [make('slow drag', 0), make('planing drag', 1), make('thrust', 2)] as const
  const movedMost = multipliers.reduce((a, b) => (Math.abs(b.change) > Math.abs(a.change) ? b : a))
  const misfit = readings.length ? residuals.reduce((s, r) => s + r * r, 0) / readings.length : 0
  return { multipliers, movedMost, misfit, residuals }
}

/** How a reading depends on the three multipliers. */
function sensitivities(
  model: DragModel,
  thrust: (speed: number) => number,
  r: Reading,
): [number, number, number] {
  if (r.kind === 'thrust') return [0, 0, thrust(r.speed)]
  const p = dragAt(model, r.speed, r.riderAt === undefined ? {} : { riderAt: r.riderAt })
  const slow = (1 - p.methods.share) * p.methods.slow
  const fast = p.methods.share > 0 ? p.methods.share * p.methods.planing : 0
  if (r.kind === 'drag') return [slow, fast, 0]
  const m = surgeMass(model, r.speed)
  return [-slow / m, -fast / m, thrust(r.speed) / m]
}

/** Mass with the water that moves along, kg: 8 % slow, 2 % planing, as in the run. */
export function surgeMass(model: DragModel, speed: number): number {
  return model.mass * (1.08 - 0.06 * smoothStep(speed, speedAtFroude(model, 1), speedAtFroude(model, 2.4)))
}

/** Speed and acceleration along a run from times (s) and distances (m) off a video, smoothed over ± `reach` seconds; times without enough neighbours are left out. */
export function motionFromMarks(
  time: ArrayLike<number>,
  distance: ArrayLike<number>,
  reach: number,
): { time: number; speed: number; acceleration: number }[] {
  return Array.from(time, (t) => ({ t, fit: localQuadratic(time, distance, t, reach) }))
    .filter(({ fit }) => Number.isFinite(fit.value))
    .map(({ t, fit }) => ({ time: t, speed: fit.slope, acceleration: fit.curvature }))
}

/**
 * Drag along a coast-down, engine off: R = −m_e dV/dt from times (s) and speeds (m/s), smoothed over ± `reach` seconds.
 * Water dragged through the jet is in it. The two ends, where the parabola hangs on one side only, are left out.
 */
export function dragFromCoastDown(
  model: DragModel,
  time: ArrayLike<number>,
  speed: ArrayLike<number>,
  reach: number,
): { speed: number; drag: number }[] {
  const first = time[0]! + 0.5 * reach
  const last = time[time.length - 1]! - 0.5 * reach
  return Array.from(time)
    .filter((t) => t >= first && t <= last)
    .map((t) => localQuadratic(time, speed, t, reach))
    .filter((fit) => Number.isFinite(fit.value))
    .map((fit) => ({ speed: fit.value, drag: -surgeMass(model, fit.value) * fit.slope }))
}
