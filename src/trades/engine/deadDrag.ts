/**
 * Torque that a dead two-stroke takes from the shaft that drags it: friction by the engine's own law, and what it pumps.
 * Friction: p = c · stroke · rpm, rolling bearings, G. P. Blair, Design and Simulation of Two-Stroke Engines (1996), from memory:
 * c 150 in utility engines, 250 in racing ones; a motored engine is colder than a firing one, by up to a half more friction and
 * some constant drag of seals and cold grease (judgement, after the direct motoring and tear-down tests described in J. B. Heywood and
 * E. Sher, The Two-Stroke Cycle Engine (1999), ch. 8, and SAE 2007-32-0076; their figures were not at hand).
 * Pumping: the crankcase and the cylinder with throttle open, from this project's own motored simulations of three engines
 * (motored.ts): 0.24 to 0.44 bar between 1750 and 13 000 rpm; a shut throttle pumps less, a pipe out of tune or a leaking case more.
 */
import type { Range } from '../../base/answers/solved.ts'

/** Drag torque of a whole engine over rotation: points at rising rotation, straight lines between and beyond. */
export interface DeadDrag {
  /** rev/s */
  rotation: readonly number[]
  /** N·m, and its ends */
  torque: readonly number[]
  low: readonly number[]
  high: readonly number[]
  /** where it comes from: the file's own pressure, the motored simulation, or the law */
  from: 'file' | 'motored' | 'law'
}

/** Friction factor of small two-strokes with rolling bearings, Pa per (metre of stroke and rev/min). */
export const usualFriction: Range = { value: 180, low: 150, high: 250 }

/** Mean pressure of pumping, throttle open, Pa. */
export const pumpingPressure: Range = { value: 0.33e5, low: 0.15e5, high: 0.55e5 }

/** what a cold or stiff engine adds: a part of its friction, and a pressure that does not fall with speed, Pa */
export const coldFriction = { part: 0.5, pressure: 0.2e5 }

/** Stroke of a square cylinder of `swept` m³, m: bore and stroke of small two-strokes differ by a tenth at most. */
export const squareStroke = (swept: number): number => ((4 * swept) / Math.PI) ** (1 / 3)

/** Torque, N·m, that a mean pressure (Pa) makes over a turn on `displacement` m³. */
export const torqueOfPressure = (pressure: number, displacement: number): number =>
  (pressure * displacement) / (2 * Math.PI)

/** Mean pressure of friction with its ends, Pa, motored at `rotation` rev/s; stroke m. */
export function motoredFriction(stroke: number, rotation: number, friction: Range = usualFriction): Range {
  const at = (c: number) => c * stroke * rotation * 60
  return {
    value: at(friction.value),
    low: at(friction.low),
    high: (1 + coldFriction.part) * at(friction.high) + coldFriction.pressure,
  }
}

/** Mean pressure that drags a dead engine, friction and pumping, with its ends, Pa; rotation rev/s from 0. */
export function motoredPressure(stroke: number, rotation: number, friction: Range = usualFriction): Range {
  const f = motoredFriction(stroke, rotation, friction)
  // the ends of two independent doubts, as squares
  const up = Math.hypot(f.high - f.value, pumpingPressure.high - pumpingPressure.value)
  const down = Math.hypot(f.value - f.low, pumpingPressure.value - pumpingPressure.low)
  const value = f.value + pumpingPressure.value
  return { value, low: Math.max(0, value - down), high: value + up }
}

/** The law's drag for an engine known by size: `displacement` m³ of all its cylinders, `stroke` m. */
export function deadDragByLaw(displacement: number, stroke: number, friction?: Range): DeadDrag {
  return deadDragOf(
    [0, 50, 100, 150, 200, 250].map((n) => [n, motoredPressure(stroke, n, friction)] as const),
    displacement,
    'law',
  )
}

/** Drag from a mean pressure that the file gives, the same at every rotation. */
export function deadDragByPressure(displacement: number, pressure: Range): DeadDrag {
  return deadDragOf([[0, pressure]], displacement, 'file')
}

/** Points of pressure (Pa) over rotation (rev/s, rising) as torque of `displacement` m³. */
export function deadDragOf(
  points: readonly (readonly [rotation: number, pressure: Range])[],
  displacement: number,
  from: DeadDrag['from'],
): DeadDrag {
  const torques = (pick: (r: Range) => number) =>
    points.map(([, pressure]) => torqueOfPressure(pick(pressure), displacement))
  return {
    rotation: points.map(([n]) => n),
    torque: torques((r) => r.value),
    low: torques((r) => r.low),
    high: torques((r) => r.high),
    from,
  }
}

/**
 * Drag torque, N·m, at `n` rev/s (0 and up). `lean` -1 to 1 leans it to its low or high end. Never below nought.
 */
export function dragAt(drag: DeadDrag, n: number, lean = 0): number {
  const value = along(drag.rotation, drag.torque, n)
  if (lean === 0) return Math.max(0, value)
  const end = along(drag.rotation, lean < 0 ? drag.low : drag.high, n)
  return Math.max(0, value + Math.abs(lean) * (end - value))
}

function along(x: readonly number[], y: readonly number[], at: number): number {
  if (x.length < 2) return y[0] ?? 0
  let k = 0
  while (k < x.length - 2 && at > x[k + 1]!) k++
  return y[k]! + ((y[k + 1]! - y[k]!) * (at - x[k]!)) / (x[k + 1]! - x[k]!)
}
