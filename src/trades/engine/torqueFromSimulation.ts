/** A simulated curve as the torque curve the balance takes. */
import { curveFromTable, type HeatCurve, type TorqueCurve } from './curve.ts'
import type { CyclePoint } from './point.ts'
import type { CurveResult, PointResult } from './simulate.ts'

/**
 * Torque of all cylinders over rotation from the points that settled; undefined with fewer than three. `redline` in
 * rev/s. Negative torques count as nought.
 */
export function torqueFromSimulation(
  curve: CurveResult,
  cylinders: number,
  redline?: number,
): TorqueCurve | undefined {
  const table = curve.points
    .filter((p) => p.converged && p.point)
    .map((p) => ({ rotation: p.rpm / 60, torque: Math.max(0, p.point!.torque) * cylinders }))
  if (table.length < 3) return undefined
  const settled = curve.points.flatMap((p) => (p.converged && p.point ? [p.point] : []))
  const peaks = { rotation: settled.map((p) => p.rpm / 60), pressure: settled.map((p) => p.pMax) }
  return { ...curveFromTable(table, redline), heat: heatOf(settled, cylinders), peaks }
}

/** Heat, air and fuel of all cylinders over rotation, from the points that settled. */
function heatOf(settled: readonly CyclePoint[], cylinders: number): HeatCurve {
  const all = (of: (p: CyclePoint) => number) => settled.map((p) => of(p) * cylinders)
  return {
    rotation: settled.map((p) => p.rpm / 60),
    cylinder: all((p) => p.heat.cylinder),
    case: all((p) => p.heat.case),
    pipe: all((p) => p.heat.pipe),
    box: all((p) => p.heat.box),
    air: all((p) => p.airFlow),
    fuel: all((p) => p.fuelFlow),
    exhaustT: settled.map((p) => p.exhaustT),
  }
}

/** The settled points with the most torque and the most power. */
export function peaksOf(curve: CurveResult): { torque: PointResult; power: PointResult } | undefined {
  const settled = curve.points.filter((p) => p.point)
  if (settled.length === 0) return undefined
  const best = (of: (p: PointResult) => number): PointResult =>
    settled.reduce((a, b) => (of(b) > of(a) ? b : a))
  return { torque: best((p) => p.point!.torque), power: best((p) => p.point!.power) }
}
