/** The run from rest with full throttle, from the operating table. */
import { runUp } from '../hull/run.ts'
import { cubicAt, pchip } from '../numerics/interpolate.ts'
import type { CraftModel } from './model.ts'
import type { Table } from './table.ts'
import type { RunUp } from './types.ts'

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
