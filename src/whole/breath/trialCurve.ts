/** The torque curve of an engine with another pipe, simulated from the settled state of the present one. */

import { pipeEnd } from '../../craft/sharing.ts'
import type { Segment } from '../../physics/gas/ductMesh.ts'
import { endCorrection } from '../../physics/gas/openPipe.ts'
import type { TwoStrokeSpec } from '../../trades/engine/engineSpec.ts'
import { type CurveResult, simulateCurve, simulatePoint } from '../../trades/engine/simulate.ts'
import { adoptState, createState, type EngineState } from '../../trades/engine/state.ts'
import { tubeDrop } from '../../trades/exhaust/backPressure.ts'
import type { PipeCurve } from '../../trades/exhaust/exhaustTypes.ts'
import type { Pipe } from '../../trades/exhaust/proportions.ts'
import type { Trial } from './trial.ts'

/** The spec with another pipe; what lies beyond the stinger stays. */
export function specWith(trial: Trial, pipe: Pipe): TwoStrokeSpec {
  const end = pipeEnd(trial.craft, trial.index)!
  const duct = trial.spec.pipe[0]!
  const stinger: Segment = { length: pipe.stinger.length, d0: pipe.stinger.bore, d1: pipe.stinger.bore }
  const segments: Segment[] = [duct, ...pipe.segments.map(({ name: _, ...s }) => s), stinger]
  if (!end.muffler) {
    const { outlet } = end
    if (outlet && outlet.length.value > 0)
      segments.push({ length: outlet.length.value, d0: outlet.bore.value, d1: outlet.bore.value })
    const last = segments[segments.length - 1]!
    segments.push({ length: Math.max(1e-4, endCorrection(last.d1 / 2)), d0: last.d1, d1: last.d1 })
  }
  return { ...trial.spec, pipe: segments }
}

/** State of the present engine settled at a speed, to start other pipes from. */
function warmState(trial: Trial, spec: TwoStrokeSpec, dx: number, rpm: number): EngineState {
  let base = trial.warm.get(dx)
  if (!base) {
    base = createState(trial.spec, dx)
    simulatePoint(trial.spec, base, rpm)
    trial.warm.set(dx, base)
  }
  return adoptState(spec, dx, base)
}

/** Simulated curve with a pipe. `spec` may carry further changes. */
export function curveWith(
  trial: Trial,
  pipe: Pipe,
  dx: number,
  rpms: readonly number[],
  spec = specWith(trial, pipe),
): PipeCurve {
  const result = simulateCurve(spec, rpms, {
    dx,
    warmState: warmState(trial, spec, dx, rpms[0]!),
    cycles: 60,
  })
  return pipeCurve(trial, pipe, result, rpms)
}

function pipeCurve(trial: Trial, pipe: Pipe, result: CurveResult, rpms: readonly number[]): PipeCurve {
  const settled = result.points.filter((p) => p.point)
  const inside = (p: (typeof settled)[number]): number => {
    const { airFlow, fuelFlow, exhaustT, behind } = p.point!
    const drop = tubeDrop({
      massFlow: airFlow + fuelFlow,
      temperature: 0.85 * exhaustT,
      pressure: trial.spec.air.p + behind,
      bore: pipe.stinger.bore,
      length: pipe.stinger.length,
      losses: 1.1,
    })
    return behind + drop.drop
  }
  const most = (of: (p: (typeof settled)[number]) => number) =>
    settled.reduce((m, p) => Math.max(m, of(p)), Number.NEGATIVE_INFINITY)
  return {
    rpm: settled.map((p) => p.rpm),
    torque: settled.map((p) => p.point!.torque * trial.reading.cylinders),
    exhaustT: most((p) => p.point!.exhaustT),
    gauge: most((p) => p.point!.behind),
    inside: most(inside),
    unsettled: rpms.length - settled.length,
    dx: result.dx,
  }
}
