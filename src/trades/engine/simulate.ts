/**
 * Torque over rpm by simulation: cycles until they repeat, speed by speed, each starting from the full state of the
 * one before, which is nearly right (gas, walls, volumes). A point that does not settle carries no number.
 */
import { heatToWalls, updateWalls } from '../../physics/gas/walls.ts'
import { runCycle } from './cycle.ts'
import type { CycleSums } from './cycleSums.ts'
import { type SpecFault, type TwoStrokeSpec, validateSpec } from './engineSpec.ts'
import { type CyclePoint, meanSums, readSums } from './point.ts'
import { type Repetition, repeats } from './repeat.ts'
import { createState, type EngineState } from './state.ts'

export interface CurveOptions {
  /** cell length wanted, m; 0.01 to explore, 0.005 to decide. Default 0.01 */
  dx?: number
  /** most cycles a speed may take to settle; default 80 */
  cycles?: number
  /** part done 0 to 1, and a few words */
  progress?: (part: number, says: string) => void
  /** true stops the run; points not reached are left out */
  cancelled?: () => boolean
  /** true settles to about 1 % only, for a first look, in a third of the cycles */
  loose?: boolean
  /** state to start from (see `adoptState`); it is used up */
  warmState?: EngineState
}

/** One speed: the point where it settled, or why there is none. */
export interface PointResult {
  rpm: number
  converged: boolean
  /** every other cycle differs by more than 2 %; the point is the mean of the pair */
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

const wallTolerance = 2
/** the same, K, and the factor on how well cycles must repeat, for a first coarse look */
const looseWalls = 8
const looseness = 3
/** part of the way to their quasi-steady temperature that walls go at once */
const wallShare = 0.7
const fewest = 6
/** a pair that differs by less than this is no news */
const worthSaying = 0.02

interface Run {
  sums: CycleSums
  heatPipe: number
}

/** The point that the last cycles average to. */
function settle(
  s: TwoStrokeSpec,
  rpm: number,
  runs: readonly Run[],
  cycles: number,
  r: Repetition,
): PointResult {
  const kept = runs.slice(-r.cycles)
  const sums = meanSums(kept.map((k) => k.sums))
  const heatPipe = kept.reduce((a, k) => a + k.heatPipe, 0) / kept.length
  const percent = `${(100 * r.apart).toFixed(1)} %`
  const alternating = r.cycles === 2 && r.apart > worthSaying
  const says = alternating
    ? { says: `at ${rpm} rpm every other cycle differs, by ${percent}; the mean of the pair is given` }
    : r.cycles === 8
      ? { says: `at ${rpm} rpm the cycles keep wandering by ${percent}; the mean of eight is given` }
      : {}
  const point = readSums(s, rpm, sums, heatPipe)
  return { rpm, converged: true, alternating, cycles, residual: r.residual, point, ...says }
}

/**
 * Runs cycles at one speed, in place on `e`, until they repeat (see repeat.ts) with walls within 2 K of steady, or until
 * `most` have gone. Without repetition there is no point.
 */
export function simulatePoint(
  s: TwoStrokeSpec,
  e: EngineState,
  rpm: number,
  most = 80,
  loose = false,
): PointResult {
  const runs: Run[] = []
  const failed = { rpm, converged: false, alternating: false }
  let residual = 1
  let walls = Infinity
  let wallTime = 0
  let heatBefore = 0
  for (let k = 1; k <= most; k++) {
    const sums = runCycle(s, e, rpm)
    if (!Number.isFinite(sums.work) || !Number.isFinite(sums.massOut))
      return {
        ...failed,
        cycles: k,
        residual: Infinity,
        says: `at ${rpm} rpm the flow in the pipe broke down`,
      }
    const heat = heatToWalls(e.ducts, 0)
    runs.push({ sums, heatPipe: heat - heatBefore })
    if (runs.length > 8) runs.shift()
    // walls follow the mean of two cycles once settled in, so that alternating cycles do not shake them
    heatBefore = heat
    wallTime += sums.time
    if (k <= fewest || k % 2 === 0) {
      walls = updateWalls(e.ducts, 0, s.outside, wallTime, wallShare)
      wallTime = 0
      heatBefore = 0
    }
    if (k < fewest || walls > (loose ? looseWalls : wallTolerance)) continue
    const r = repeats(
      runs.map((x) => x.sums),
      k,
      loose ? looseness : 1,
    )
    residual = r.residual
    if (r.cycles > 0) return settle(s, rpm, runs, k, r)
  }
  return {
    ...failed,
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
  most = 80,
  loose = false,
): Generator<PointResult> {
  let last = rpms[0] ?? 0
  for (const rpm of rpms) {
    const strides = Math.ceil((rpm - last) / stride)
    for (let k = 1; k < strides; k++) {
      const between = last + ((rpm - last) * k) / strides
      for (let c = 0; c < 3; c++) updateWalls(e.ducts, 0, s.outside, runCycle(s, e, between).time, 0.5)
    }
    last = rpm
    yield simulatePoint(s, e, rpm, most, loose)
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
  const sweep = sweepSpeeds(s, e, wanted, options.cycles, options.loose)
  for (const rpm of wanted) {
    if (options.cancelled?.()) return { points, ...size, cancelled: true }
    options.progress?.(points.length / wanted.length, `${rpm} rpm`)
    points.push(sweep.next().value as PointResult)
  }
  options.progress?.(1, 'done')
  return { points, ...size, cancelled: false }
}
