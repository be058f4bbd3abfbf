/** Three numbers that sum a craft up: engine rotation and pull tied up, and top speed. */

import { operatingTable, type Table } from './operatingTable.ts'
import { type CraftModel, dragOf, propel } from './propulsionModel.ts'

export interface Sums {
  /** engine rotation tied up, rev/s; NaN when it cannot run */
  rotation: number
  /** N */
  pull: number
  /** m/s; the speed it settles at from rest, NaN when that is beyond the model */
  topSpeed: number
}

export interface Probe extends Sums {
  /** true when the boat settles below a faster steady speed or below planing with thrust spent */
  stuck: boolean
}

/** From rest, over the whole speed range. */
export function probe(model: CraftModel, steps = 22): Probe {
  return sumUp(model, operatingTable(model, { steps }))
}

function sumUp(model: CraftModel, table: Table): Probe {
  const tied = table.rows[0]!.propulsion
  const ratio = model.units[0]!.shaft.ratio
  return {
    rotation: tied.states[0]!.rotation * ratio,
    pull: tied.steady ? tied.thrust : Number.NaN,
    topSpeed: table.top?.speed ?? Number.NaN,
    stuck: table.top !== undefined && table.top.drag.regime !== 'planing',
  }
}

/** A solved craft, near which small changes can be followed. */
export interface Anchor {
  /** impeller rotations tied up and at the top speed */
  tied: number[]
  atTop: number[]
  topSpeed: number
  /** thrust less drag at the top speed, N, and its slope over speed, N·s/m (negative) */
  left: number
  slope: number
}

export function anchorOf(model: CraftModel, tied: number[], atTop: number[], topSpeed: number): Anchor {
  if (!(topSpeed > 0)) return { tied, atTop, topSpeed: Number.NaN, left: Number.NaN, slope: Number.NaN }
  const net = (v: number) => propel(model, v, atTop).thrust - dragOf(model, v).drag
  const h = 0.02 * topSpeed
  return {
    tied,
    atTop,
    topSpeed,
    left: net(topSpeed),
    slope: (net(topSpeed + h) - net(topSpeed - h)) / (2 * h),
  }
}

/** The three numbers and the anchor to follow small changes from, in one solution. */
export function probeAnchored(model: CraftModel, steps = 22): { sums: Probe; anchor: Anchor } {
  const table = operatingTable(model, { steps })
  const rotations = (row = table.rows[0]!) => row.propulsion.states.map((s) => s.rotation)
  const sums = sumUp(model, table)
  return { sums, anchor: anchorOf(model, rotations(), rotations(table.top), sums.topSpeed) }
}

/** The same three numbers for a slightly different craft, to first order in the top speed. */
export function nudge(model: CraftModel, anchor: Anchor): Sums {
  const tied = propel(model, 0, anchor.tied)
  const ratio = model.units[0]!.shaft.ratio
  let topSpeed = Number.NaN
  if (Number.isFinite(anchor.topSpeed) && anchor.slope < 0) {
    const left = propel(model, anchor.topSpeed, anchor.atTop).thrust - dragOf(model, anchor.topSpeed).drag
    topSpeed = anchor.topSpeed - (left - anchor.left) / anchor.slope
  }
  return { rotation: tied.states[0]!.rotation * ratio, pull: tied.thrust, topSpeed }
}
