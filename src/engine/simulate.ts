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
/** part of the way to their quasi-steady temperature that walls go at once */
const wallShare = 0.7
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

/** Spread of work and trapped mass over several cycles, as a part of their mean. */
function spread(runs: readonly Run[]): number {
  const of = (values: number[]): number => {
    const mean = values.reduce((a, b) => a + b, 0) / values.length
    return (Math.max(...values) - Math.min(...values)) / Math.abs(mean)
  }
  return Math.max(of(runs.map((r) => r.imep)), of(runs.map((r) => r.sums.trapped)))
}

/** The point that a few cycles average to. */
function settle(
  s: TwoStrokeSpec,
  rpm: number,
  runs: readonly Run[],
  how: Pick<PointResult, 'cycles' | 'residual' | 'alternating' | 'says'>,
): PointResult {
  const sums = meanSums(runs.map((r) => r.sums))
  const heatPipe = runs.reduce((a, r) => a + r.heatPipe, 0) / runs.length
  return { rpm, converged: true, ...how, point: readSums(s, rpm, sums, heatPipe) }
}

/**
 * Runs cycles at one speed, in place on `e`, until they repeat: the last three agree (work and trapped mass within
 * 0.2 %, mass in and out within 0.5 %, walls within 2 K); or every other one does ("alternating", mean of the pair); or,
 * after many, eight in a row wander by less than 1 % (their mean). Otherwise no point is given.
 */
export function simulatePoint(s: TwoStrokeSpec, e: EngineState, rpm: number, most = 60): PointResult {
  const runs: Run[] = []
  const swept = sweptVolume(s.crank)
  let residual = 1
  let walls = Infinity
  let wallTime = 0
  let heatBefore = 0
  for (let k = 1; k <= most; k++) {
    const sums = runCycle(s, e, rpm)
    const heat = heatToWalls(e.ducts, 0)
    const heatPipe = heat - heatBefore
    wallTime += sums.time
    if (!Number.isFinite(sums.work) || !Number.isFinite(sums.massOut))
      return {
        rpm,
        converged: false,
        alternating: false,
        cycles: k,
        residual: Number.POSITIVE_INFINITY,
        says: `at ${rpm} rpm the flow in the pipe broke down`,
      }
    // walls follow the mean of two cycles once settled in, so that alternating cycles do not shake them
    heatBefore = heat
    if (k <= fewest || k % 2 === 0) {
      walls = updateWalls(e.ducts, 0, s.outside, wallTime, wallShare)
      wallTime = 0
      heatBefore = 0
    }
    runs.push({ sums, heatPipe, imep: sums.work / swept })
    if (runs.length > 8) runs.shift()
    if (k < fewest || walls > wallTolerance) continue
    const [a, b, c, d] = runs.slice(-4) as [Run, Run, Run, Run]
    residual = Math.max(change(c, d), change(b, c))
    if (residual < tolerance && imbalance(d.sums) < massTolerance)
      return settle(s, rpm, [d], { cycles: k, residual, alternating: false })
    const pair = Math.max(change(b, d), change(a, c))
    if (
      k >= 12 &&
      pair < tolerance &&
      change(c, d) > 2 * tolerance &&
      imbalance(meanSums([c.sums, d.sums])) < massTolerance
    ) {
      const apart = ((100 * Math.abs(c.imep - d.imep)) / d.imep).toFixed(1)
      const says = `at ${rpm} rpm every other cycle differs, by ${apart} %; the mean of the pair is given`
      return settle(s, rpm, [c, d], { cycles: k, residual: pair, alternating: true, says })
    }
    const wander = spread(runs)
    if (k >= 24 && wander < 0.01 && imbalance(meanSums(runs.map((r) => r.sums))) < massTolerance) {
      const says = `at ${rpm} rpm the cycles keep wandering by ${(100 * wander).toFixed(1)} %; the mean of eight is given`
      return settle(s, rpm, runs, { cycles: k, residual: wander, alternating: false, says })
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

/** farthest a state is carried to another speed in one go, rev/min */
const stride = 600

/**
 * Points at rising speeds, in place on `e`, each from the state of the one before. Wide gaps are crossed in strides, so
 * that a wave that is right for one speed is not thrown at another.
 */
export function* sweepSpeeds(
  s: TwoStrokeSpec,
  e: EngineState,
  rpms: readonly number[],
  most = 60,
): Generator<PointResult> {
  let last = rpms[0] ?? 0
  for (const rpm of rpms) {
    const strides = Math.ceil((rpm - last) / stride)
    for (let k = 1; k < strides; k++) {
      const between = last + ((rpm - last) * k) / strides
      for (let c = 0; c < 3; c++) updateWalls(e.ducts, 0, s.outside, runCycle(s, e, between).time, 0.5)
    }
    last = rpm
    yield simulatePoint(s, e, rpm, most)
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
  const sweep = sweepSpeeds(s, e, wanted, options.cycles)
  for (const rpm of wanted) {
    if (options.cancelled?.()) return { points, ...size, cancelled: true }
    options.progress?.(points.length / wanted.length, `${rpm} rpm`)
    points.push(sweep.next().value as PointResult)
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
