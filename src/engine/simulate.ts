/**
 * Torque over rpm by simulation: cycles until they repeat, speed by speed, each starting from the full state of the
 * one before, which is nearly right (gas, walls, volumes). A point that does not settle carries no number.
 */
import { heatToWalls, updateWalls } from '../gas/walls.ts'
import { runCycle } from './cycle.ts'
import type { CycleSums } from './cycleSums.ts'
import { sweptVolume } from './geometry.ts'
import { type CyclePoint, meanSums, readSums } from './point.ts'
import { type SpecFault, type TwoStrokeSpec, validateSpec } from './spec.ts'
import { createState, type EngineState } from './state.ts'

export interface CurveOptions {
  /** cell length wanted, m; 0.01 to explore, 0.005 to decide. Default 0.01 */
  dx?: number
  /** most cycles a speed may take to settle; default 60 */
  cycles?: number
  /** part done 0 to 1, and a few words */
  progress?: (part: number, says: string) => void
  /** true stops the run; points not reached are left out */
  cancelled?: () => boolean
  /** state to start from (see `adoptState`); it is used up */
  warmState?: EngineState
}

/** One speed: the point where it settled, or why there is none. */
export interface PointResult {
  rpm: number
  converged: boolean
  /** every other cycle differs; the point is the mean of the pair */
  alternating: boolean
  cycles: number
  /** largest change left between cycles, as a part */
  residual: number
  point?: CyclePoint
  says?: string
}

export interface CurveResult {
  points: PointResult[]
  /** cell length used, m, and number of cells */
  dx: number
  cells: number
  /** true when it was called off before the end */
  cancelled: boolean
}

/** Raised for inputs that make a run meaningless; `faults` names the fields. */
export class SpecError extends Error {
  readonly faults: SpecFault[]
  constructor(faults: SpecFault[]) {
    super(faults.map((f) => f.says).join('; '))
    this.name = 'SpecError'
    this.faults = faults
  }
}

const tolerance = 0.002
const massTolerance = 0.005
const wallTolerance = 2
const fewest = 6

interface Run {
  sums: CycleSums
  heatPipe: number
  imep: number
}

/** Relative change of work and trapped mass between two cycles. */
function change(a: Run, b: Run): number {
  return Math.max(Math.abs(a.imep / b.imep - 1), Math.abs(a.sums.trapped / b.sums.trapped - 1))
}

const imbalance = (r: CycleSums): number => Math.abs(r.massIn - r.massOut) / r.massIn

/**
 * Runs cycles at one speed, in place on `e`, until the last three agree (work and trapped mass within 0.2 %, mass in
 * and out within 0.5 %, walls within 2 K), or until every other one does, or until `most` have gone.
 */
export function simulatePoint(s: TwoStrokeSpec, e: EngineState, rpm: number, most = 60): PointResult {
  const runs: Run[] = []
  const swept = sweptVolume(s.crank)
  let residual = 1
  for (let k = 1; k <= most; k++) {
    const sums = runCycle(s, e, rpm)
    const heatPipe = heatToWalls(e.ducts, 0)
    if (!Number.isFinite(sums.work) || !Number.isFinite(sums.massOut))
      return {
        rpm,
        converged: false,
        alternating: false,
        cycles: k,
        residual: Number.POSITIVE_INFINITY,
        says: `at ${rpm} rpm the flow in the pipe broke down`,
      }
    const walls = updateWalls(e.ducts, 0, s.outside, sums.time, 0.5)
    runs.push({ sums, heatPipe, imep: sums.work / swept })
    if (runs.length > 4) runs.shift()
    if (k < fewest || runs.length < 4) continue
    const [a, b, c, d] = runs as [Run, Run, Run, Run]
    residual = Math.max(change(c, d), change(b, c))
    const still = walls < wallTolerance
    if (residual < tolerance && imbalance(d.sums) < massTolerance && still)
      return {
        rpm,
        converged: true,
        alternating: false,
        cycles: k,
        residual,
        point: readSums(s, rpm, d.sums, d.heatPipe),
      }
    const pair = Math.max(change(b, d), change(a, c))
    const both = meanSums(c.sums, d.sums)
    if (
      k >= 12 &&
      pair < tolerance &&
      change(c, d) > 2 * tolerance &&
      imbalance(both) < massTolerance &&
      still
    )
      return {
        rpm,
        converged: true,
        alternating: true,
        cycles: k,
        residual: pair,
        point: readSums(s, rpm, both, 0.5 * (c.heatPipe + d.heatPipe)),
        says: `at ${rpm} rpm every other cycle differs (${((100 * Math.abs(c.imep - d.imep)) / d.imep).toFixed(0)} %); the mean of the pair is given`,
      }
  }
  return {
    rpm,
    converged: false,
    alternating: false,
    cycles: most,
    residual,
    says: `at ${rpm} rpm the cycles did not settle in ${most} (still changing by ${(100 * residual).toFixed(1)} %)`,
  }
}

/**
 * Torque curve at the given speeds (rev/min; run in rising order, given back in that order). Throws SpecError for
 * inputs that make no engine.
 */
export function simulateCurve(
  s: TwoStrokeSpec,
  rpms: readonly number[],
  options: CurveOptions = {},
): CurveResult {
  const faults = validateSpec(s, rpms)
  if (faults.length > 0) throw new SpecError(faults)
  const wanted = [...rpms].sort((a, b) => a - b)
  const e = options.warmState ?? createState(s, options.dx ?? 0.01)
  const points: PointResult[] = []
  const size = { dx: e.ducts.dx[0]!, cells: e.ducts.last[0]! - e.ducts.first[0]! + 1 }
  for (const rpm of wanted) {
    if (options.cancelled?.()) return { points, ...size, cancelled: true }
    options.progress?.(points.length / wanted.length, `${rpm} rpm`)
    points.push(simulatePoint(s, e, rpm, options.cycles ?? 60))
  }
  options.progress?.(1, 'done')
  return { points, ...size, cancelled: false }
}

/** Speeds cut into runs of neighbours for as many workers, lowest first; each run warms up on its own. */
export function splitRpms(rpms: readonly number[], workers: number): number[][] {
  const sorted = [...rpms].sort((a, b) => a - b)
  const parts = Math.max(1, Math.min(workers, sorted.length))
  const out: number[][] = []
  for (let k = 0; k < parts; k++)
    out.push(
      sorted.slice(Math.round((k * sorted.length) / parts), Math.round(((k + 1) * sorted.length) / parts)),
    )
  return out
}

/** Curves of the parts of a split, put together again. */
export function joinCurves(parts: readonly CurveResult[]): CurveResult {
  const points = parts.flatMap((p) => p.points).sort((a, b) => a.rpm - b.rpm)
  return { points, dx: parts[0]!.dx, cells: parts[0]!.cells, cancelled: parts.some((p) => p.cancelled) }
}
