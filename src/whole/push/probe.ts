/** Three numbers that sum a craft up: engine rotation and pull tied up, and top speed. */

import { operatingTable } from './operatingTable.ts'
import type { CraftModel } from './propulsionModel.ts'

export interface Sums {
  /** engine rotation tied up, rev/s; NaN when it cannot run */
  rotation: number
  /** N */
  pull: number
  /** m/s; the speed it settles at from rest, NaN when that is beyond the model */
  topSpeed: number
}

export interface Probe extends Sums {
  /** N·m at the first impeller, tied up; NaN when it cannot run */
  torque: number
  /** true when the boat settles below a faster steady speed or below planing with thrust spent */
  stuck: boolean
}

/** From rest, over the whole speed range. */
export function probe(model: CraftModel, steps = 22): Probe {
  const table = operatingTable(model, { steps })
  const tied = table.rows[0]!.propulsion
  const ratio = model.units[0]!.shaft.ratio
  return {
    rotation: tied.states[0]!.rotation * ratio,
    pull: tied.steady ? tied.thrust : Number.NaN,
    torque: tied.states[0]!.jet?.T ?? Number.NaN,
    topSpeed: table.top?.speed ?? Number.NaN,
    stuck: table.top !== undefined && table.top.drag.regime !== 'planing',
  }
}
