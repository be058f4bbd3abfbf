/** One settled cycle, looked at closely: pressures over crank angle, the wave picture, and the outflow for the ear. */
import { at, field } from '../../physics/gas/arena.ts'
import { runCycle } from './cycle.ts'
import { type TwoStrokeSpec, validateSpec } from './engineSpec.ts'
import { type PointResult, SpecError, simulatePoint } from './simulate.ts'
import { createState, type EngineState } from './state.ts'

/** Samples at equal crank angles from exhaust opening on, one a degree. SI; angles rad after top dead centre. */
export interface CycleTrace {
  rpm: number
  result: PointResult
  angle: Float64Array
  /** at the exhaust port, in the cylinder, in the case, Pa */
  portP: Float64Array
  cylinderP: Float64Array
  caseP: Float64Array
  /** through the exhaust port, the transfers (into the cylinder) and out of the last tube, kg/s */
  exhaustFlow: Float64Array
  transferFlow: Float64Array
  outFlow: Float64Array
  /** middle of each pipe cell, m from the piston face */
  x: Float64Array
  /** pressure in the pipe, Pa: row by angle, column by cell */
  pressure: Float32Array
  exhaustOpens: number
  transferOpens: number
}

const samples = 360

/**
 * Settles at `rpm` and records the next cycle. `warm` is used up when given. The result's point is absent when the
 * cycles did not settle; the arrays then show the last cycle all the same and `result.converged` is false.
 */
export function simulateCycleTrace(
  s: TwoStrokeSpec,
  rpm: number,
  options: { dx?: number; cycles?: number; loose?: boolean; warmState?: EngineState } = {},
): CycleTrace {
  const faults = validateSpec(s, [rpm])
  if (faults.length > 0) throw new SpecError(faults)
  const e = options.warmState ?? createState(s, options.dx ?? 0.01)
  const result = simulatePoint(s, e, rpm, options.cycles, options.loose)
  const g = e.ducts
  const first = g.first[0]!
  const n = g.last[0]! - first + 1
  const row = (): Float64Array => new Float64Array(samples)
  const t: CycleTrace = {
    rpm,
    result,
    angle: row().map((_, i) => s.exhaust.opens + (2 * Math.PI * (i + 0.5)) / samples),
    portP: row(),
    cylinderP: row(),
    caseP: row(),
    exhaustFlow: row(),
    transferFlow: row(),
    outFlow: row(),
    x: new Float64Array(n).map((_, c) => (c + 0.5) * g.dx[0]!),
    pressure: new Float32Array(samples * n),
    exhaustOpens: s.exhaust.opens,
    transferOpens: s.transfers.opens,
  }
  // steps are a degree at most, so every sample is passed by a step; the step that passes it is kept
  let k = 0
  runCycle(s, e, rpm, (v) => {
    for (; k < samples && t.angle[k]! <= v.angle + 1e-12; k++) {
      t.portP[k] = e.portP
      t.cylinderP[k] = e.cylinder.p
      t.caseP[k] = e.case.p
      t.exhaustFlow[k] = v.flows.exhaustM / v.dt
      t.transferFlow[k] = v.flows.transferM / v.dt
      t.outFlow[k] = v.outFlow
      for (let c = 0; c < n; c++) t.pressure[k * n + c] = g.cell[at(first + c) + field.P]!
    }
  })
  return t
}
