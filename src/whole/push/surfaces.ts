/**
 * What the balance is made of, on a small grid: torque and thrust of the jet over rotation and boat speed, drag over speed,
 * torque over the rotation of each engine. Each is smooth in the doubts where the answers are not (a shaft that just comes on
 * its pipe, or does not), so doubts are followed here and the balance is struck anew for each draw.
 */
import { linspace } from '../../base/numerics/interpolate.ts'
import { torqueAt } from '../../trades/engine/curve.ts'
import { jetPoint } from '../../trades/jet/pumpMap.ts'
import type { Table } from './operatingTable.ts'
import { type CraftModel, dragOf, idleOf, mostOf } from './propulsionModel.ts'
import { engineShare } from './shaft.ts'

/** Where the parts are sampled. */
export interface Grid {
  /** m/s, rising from rest; close where the hump is */
  speeds: Float64Array
  /** impeller rotations, rev/s, evenly spaced */
  rotations: Float64Array
  /** engine rotations, rev/s, evenly spaced from nought */
  engine: Float64Array
}

/** m/s, as far as the operating table looks */
const mostSpeed = 18
export const speedCount = 13
export const rotationCount = 10
const engineCount = 192

/** A grid for a solved craft and for what its doubts make of it. */
export function gridOf(model: CraftModel, table: Table): Grid {
  const reach = table.beyondHump ?? table.top?.speed ?? mostSpeed
  const end = Math.min(mostSpeed, 1.4 * reach + 1.5)
  const unit = model.units[0]!
  const ratio = unit.shaft.ratio
  const most = Math.max(...model.units.map(mostOf))
  return {
    speeds: linspace(0, 1, speedCount).map((part) => end * part ** 1.25),
    rotations: linspace(0.95 * Math.min(...model.units.map(idleOf)), 1.06 * most, rotationCount),
    engine: linspace(0, 1.1 * most * ratio, engineCount),
  }
}

/** Torque and thrust of the jet over the square of the rotation, speed by speed. */
export interface JetSurface {
  torque: Float64Array
  thrust: Float64Array
}

export function jetSurface(model: CraftModel, { speeds, rotations }: Grid): JetSurface {
  const { map, spec } = model.units[0]!
  const torque = new Float64Array(speedCount * rotationCount)
  const thrust = new Float64Array(speedCount * rotationCount)
  let at = 0
  for (const V of speeds)
    for (const n of rotations) {
      const jet = jetPoint(map, spec, n, V)
      torque[at] = jet.T / (n * n)
      thrust[at] = jet.F / (n * n)
      at++
    }
  return { torque, thrust }
}

/** Drag without the doubt of the model, N, speed by speed, and the mass of it all, kg, last. */
export function hullSurface(model: CraftModel, { speeds }: Grid): Float64Array {
  const bare: CraftModel = { ...model, dragShare: 1 }
  const out = new Float64Array(speedCount + 1)
  speeds.forEach((V, i) => {
    out[i] = dragOf(bare, V).drag
  })
  out[speedCount] = model.drag.mass
  return out
}

/** Torque of every engine, of all units in turn, over the grid's engine rotations; a dead one's is below nought. */
export function engineSurface(model: CraftModel, { engine }: Grid): Float64Array[] {
  return model.units.flatMap(({ shaft }) =>
    shaft.engines.map((e) =>
      e.running
        ? Float64Array.from(engine, (n) => torqueAt(e.curve, n, e.throttle))
        : Float64Array.from(engine, (n) => engineShare(shaft, e, n)),
    ),
  )
}

/**
 * Numbers over many orders as sums that behave like logarithms where they are large and like themselves near nought:
 * effects of two doubts multiply on a torque and add on a thrust that is nearly spent.
 */
export const bent = (value: number, scale: number): number => Math.asinh(value / scale)
export const straight = (value: number, scale: number): number => scale * Math.sinh(value)
