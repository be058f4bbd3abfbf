/**
 * A dead engine dragged round, by the cycle simulation: spark off, throttle open, its pipe on. Cylinder, crankcase and pipe as in
 * cycle.ts, the pipe full of air that has cooled; friction by the engine's own law. Definition of motored mean pressure: J. B. Heywood,
 * Internal Combustion Engine Fundamentals (1988), ch. 13 (direct motoring), with case pumping counted in.
 */
import type { Range } from '../../base/answers/solved.ts'
import { at, field, setCell } from '../../physics/gas/arena.ts'
import { updateWalls } from '../../physics/gas/walls.ts'
import { runCycle } from './cycle.ts'
import { type DeadDrag, deadDragOf, motoredFriction, usualFriction } from './deadDrag.ts'
import type { TwoStrokeSpec } from './engineSpec.ts'
import { meanPistonSpeed, sweptVolume } from './geometry.ts'
import { createState, type EngineState } from './state.ts'

/** One speed of a motored engine. Pressures Pa, positive where they brake the shaft. */
export interface MotoredPoint {
  rpm: number
  /** false: the cycles did not settle, and there are no numbers */
  converged: boolean
  cycles: number
  /** spread of the last cycles, Pa */
  residual: number
  /** of the cylinder, and of the crankcase */
  cylinder: number
  case: number
  friction: number
  /** all three */
  pressure: number
}

/** m: pumping hardly feels the cells (1 % against 10 mm on two engines) */
const cells = 0.03
const fewest = 10
const most = 60
/** what the last four cycles may differ by, Pa */
const settled = 2500
/** warm iron of an engine that has stopped firing, K */
const walls = { cylinder: 370, case: 325 }

/** The spec with its spark off: gas, walls and pipe as in an engine that is only turned. */
function unfired(s: TwoStrokeSpec): TwoStrokeSpec {
  return {
    ...s,
    unfired: true,
    // air in the pipe, not burnt gas
    gas: { gamma: 1.4, r: 287 },
    walls: { ...s.walls, ...walls },
  }
}

/** A start with cool air in the pipe, so that no hot gas has to be flushed out first. */
function coolStart(s: TwoStrokeSpec, dx: number): EngineState {
  const e = createState(s, dx)
  const g = e.ducts
  for (let slot = g.first[0]!; slot <= g.last[0]!; slot++) {
    setCell(g, slot, s.air.p / (s.gas.r * 1.05 * s.air.t), 0, s.air.p, 0)
    g.cell[at(slot) + field.WALL] = 1.02 * s.air.t
  }
  return e
}

/** One speed, rev/min, from the state `e`, in place. */
function motoredAt(s: TwoStrokeSpec, e: EngineState, rpm: number): MotoredPoint {
  const swept = sweptVolume(s.crank)
  const cylinder: number[] = []
  const below: number[] = []
  const last = (list: readonly number[]) => list.slice(-4)
  const mean = (list: readonly number[]) => last(list).reduce((a, b) => a + b, 0) / last(list).length
  const spread = (list: readonly number[]) => Math.max(...last(list)) - Math.min(...last(list))
  const none = { rpm, converged: false, cylinder: Number.NaN, case: Number.NaN, friction: Number.NaN }
  for (let k = 1; k <= most; k++) {
    const sums = runCycle(s, e, rpm)
    if (!Number.isFinite(sums.work)) return { ...none, cycles: k, residual: Infinity, pressure: Number.NaN }
    updateWalls(e.ducts, 0, s.outside, sums.time, 0.7)
    cylinder.push(-sums.work / swept)
    below.push(-sums.caseWork / swept)
    if (k < fewest) continue
    const net = cylinder.map((p, i) => p + below[i]!)
    if (spread(net) > settled) continue
    const friction = s.friction.c1 + s.friction.c2 * s.crank.stroke * rpm
    return {
      rpm,
      converged: true,
      cycles: k,
      residual: spread(net),
      cylinder: mean(cylinder),
      case: mean(below),
      friction,
      pressure: mean(net) + friction,
    }
  }
  const net = cylinder.map((p, i) => p + below[i]!)
  return { ...none, cycles: most, residual: spread(net), pressure: Number.NaN }
}

/** Speeds a dead engine may be dragged at, rev/min: five up to a mean piston speed of 16 m/s or `top`. */
export function motoredSpeeds(s: TwoStrokeSpec, top?: number): number[] {
  const fastest = Math.min(top ?? Infinity, 16 / meanPistonSpeed(s.crank.stroke, 1))
  return [0.2, 0.4, 0.6, 0.8, 1].map((part) => Math.round((part * fastest) / 50) * 50)
}

/** Motored points at rising speeds (rev/min), each from the state of the one before. */
export function simulateMotored(spec: TwoStrokeSpec, rpms: readonly number[], dx = cells): MotoredPoint[] {
  const s = unfired(spec)
  const e = coolStart(s, dx)
  return rpms.map((rpm) => motoredAt(s, e, rpm))
}

/** what the pumping of a motored simulation may be off by, either way: discharge of ports and throttle (judgement) */
const pumpingDoubt = { down: 0.3, up: 0.4 }

/** The drag of an engine of `cylinders` from its motored points; undefined with fewer than two that settled. */
export function deadDragOfMotored(
  spec: TwoStrokeSpec,
  points: readonly MotoredPoint[],
  cylinders: number,
  friction: Range = usualFriction,
): DeadDrag | undefined {
  const good = points.filter((p) => p.converged)
  if (good.length < 2) return undefined
  const displacement = sweptVolume(spec.crank) * cylinders
  return deadDragOf(
    good.map((p) => {
      const f = motoredFriction(spec.crank.stroke, p.rpm / 60, friction)
      const pumping = Math.max(0, p.cylinder + p.case)
      const value = f.value + pumping
      const pressure: Range = {
        value,
        low: Math.max(0, value - Math.hypot(f.value - f.low, pumpingDoubt.down * pumping)),
        high: value + Math.hypot(f.high - f.value, pumpingDoubt.up * pumping),
      }
      return [p.rpm / 60, pressure] as const
    }),
    displacement,
    'motored',
  )
}
