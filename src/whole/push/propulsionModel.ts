/**
 * The craft as the balance sees it: one or more propulsion units (engines on a shaft, turning a jet) and
 * one hull. All SI; rotation in rev/s.
 */
import type { DragModel, DragPoint } from '../../trades/drag/drag.ts'
import { dragAt } from '../../trades/drag/drag.ts'
import type { JetPoint, JetSpec } from '../../trades/jet/jetTypes.ts'
import { jetPoint, type PumpMap } from '../../trades/jet/pumpMap.ts'
import { impellerDrive, type Shaft, shaftRedline } from './shaft.ts'
import { allRoots, type Found, settle } from './shaftRoots.ts'

export interface Unit {
  shaft: Shaft
  spec: JetSpec
  map: PumpMap
}

export interface CraftModel {
  units: Unit[]
  drag: DragModel
  /** m forward of the transom: a rider who stays there; absent for one who moves to the best place */
  riderAt?: number
  /** factor on the drag, 1 unless a doubt or a calibration moves it */
  dragShare: number
  /** factor on the thrust of every jet, 1 unless a calibration moved it */
  thrustShare: number
}

/** Slowest impeller rotation that counts as running: 15 % of the redline. */
export function idleOf(unit: Unit): number {
  return (0.15 * shaftRedline(unit.shaft)) / unit.shaft.ratio
}

/** Impeller rotation beyond which no engine has torque. */
export function mostOf(unit: Unit): number {
  const end = Math.max(...unit.shaft.engines.map((e) => e.curve.end))
  return end / unit.shaft.ratio
}

export function surplusAt(unit: Unit, V: number): (n: number) => number {
  return (n) => impellerDrive(unit.shaft, n) - jetPoint(unit.map, unit.spec, n, V).T
}

export function unitRoots(unit: Unit, V: number): Found[] {
  return allRoots(
    surplusAt(unit, V),
    (n) => jetPoint(unit.map, unit.spec, n, V).T,
    idleOf(unit),
    mostOf(unit),
    unit.shaft.engines.flatMap((e) =>
      e.running ? Array.from(e.curve.cubic.x, (n) => n / unit.shaft.ratio) : [],
    ),
  )
}

/** Steady state of one unit at a speed, coming from impeller rotation `from`. */
export interface UnitState {
  rotation: number
  /** absent when the engines cannot turn the impeller */
  jet?: JetPoint
  sharp: boolean
}

export function settleUnit(unit: Unit, V: number, from: number): UnitState {
  if (!unit.shaft.engines.some((e) => e.running)) return { rotation: Number.NaN, sharp: true }
  const found = settle(surplusAt(unit, V), from, idleOf(unit), mostOf(unit))
  if (!Number.isFinite(found.rotation)) return { rotation: Number.NaN, sharp: found.sharp }
  return {
    rotation: found.rotation,
    jet: jetPoint(unit.map, unit.spec, found.rotation, V),
    sharp: found.sharp,
  }
}

/** All units at one speed. */
export interface Propulsion {
  states: UnitState[]
  thrust: number
  /** false when a running unit found no steady state */
  steady: boolean
}

/** Settles every unit at speed V from the given impeller rotations (idle where NaN). */
export function propel(model: CraftModel, V: number, from: ArrayLike<number>): Propulsion {
  const states = model.units.map((u, i) => settleUnit(u, V, Number.isFinite(from[i]!) ? from[i]! : idleOf(u)))
  let thrust = 0
  let steady = true
  states.forEach((s, i) => {
    if (s.jet) thrust += model.thrustShare * s.jet.F
    else if (model.units[i]!.shaft.engines.some((e) => e.running)) steady = false
  })
  return { states, thrust, steady }
}

export function dragOf(model: CraftModel, V: number, riderAt = model.riderAt): DragPoint {
  const point = dragAt(model.drag, V, riderAt === undefined ? {} : { riderAt })
  if (model.dragShare === 1) return point
  const k = model.dragShare
  return { ...point, drag: k * point.drag, low: k * point.low, high: k * point.high }
}
