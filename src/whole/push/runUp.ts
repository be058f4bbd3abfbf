/** The run from rest with full throttle, from the operating table. */

import { cubicAt, pchip } from '../../base/numerics/interpolate.ts'
import { runUp } from '../../trades/drag/run.ts'
import type { RunUp } from './balanceTypes.ts'
import type { Table } from './operatingTable.ts'
import type { CraftModel } from './propulsionModel.ts'

export function runFromRest(model: CraftModel, table: Table): RunUp {
  const rows = table.rows.filter((r) => r.propulsion.steady)
  const still: RunUp = { time: [0], speed: [0], distance: [0], stuck: true }
  if (rows.length < 4) return still
  const speed = rows.map((r) => r.speed)
  const thrust = pchip(
    speed,
    rows.map((r) => r.propulsion.thrust),
  )
  const drag = pchip(
    speed,
    rows.map((r) => r.drag.drag),
  )
  return runUp(
    model.drag,
    (v) => cubicAt(thrust, v),
    (v) => cubicAt(drag, v),
    { fastest: speed.at(-1)!, step: 0.05 },
  )
}
