import type { Finding } from '../base/answers/finding.ts'
import { formatProblem, readCraft } from '../craft/index.ts'
import { type TorqueBand, torqueBand } from '../trades/engine/band.ts'
import { engineFindings } from '../trades/engine/craftFindings.ts'
import { type CurveResult, simulateCurve } from '../trades/engine/simulate.ts'
import { speedsToRun } from '../trades/engine/speeds.ts'
import { peaksOf } from '../trades/engine/torqueFromSimulation.ts'
import { type CycleTrace, simulateCycleTrace } from '../trades/engine/trace.ts'
import { twoStrokeFromCraft } from '../trades/engine/twoStrokeFromCraft.ts'
import { tryValues } from '../whole/push/solveBalance.ts'
import { Cancelled, defineJob } from './job.ts'

export interface EngineInput {
  /** the craft file */
  text: string
  /** tried values by path, SI */
  tried: Readonly<Record<string, number | string | boolean>>
  /** which engine of the file, from 0 */
  engine: number
  /** cell length, m; default 0.01 */
  dx?: number
}

export interface CurveInput extends EngineInput {
  /** rev/min; chosen round the tuned speed when left out */
  rpms?: readonly number[]
  /** also the band from the uncertain inputs; takes three times as long */
  band?: boolean
}

export interface CurveOutput {
  curve?: CurveResult
  band?: TorqueBand
  findings: Finding[]
}

function reading(input: EngineInput) {
  const { craft, problems } = readCraft(input.text)
  if (!craft) throw new Error(problems.map(formatProblem).join('\n'))
  const tried = tryValues(craft, input.tried)
  return { craft: tried, ...twoStrokeFromCraft(tried, input.engine) }
}

/** Torque over rpm of one two-stroke, with the findings of all of them and, if asked, its band. */
export const torqueCurveJob = defineJob<CurveInput, CurveOutput>('torque-curve', (input, context) => {
  const { craft, spec, faults, spread, span } = reading(input)
  if (!spec || faults.length > 0) return { findings: engineFindings(craft) }
  const rpms = input.rpms ?? speedsToRun(spec, span)
  const share = input.band ? 0.3 : 1
  const cancelled = (): boolean => context.cancelled()
  const curve = simulateCurve(spec, rpms, {
    ...(input.dx ? { dx: input.dx } : {}),
    progress: (part, says) => context.progress(share * part, says),
    cancelled,
  })
  if (curve.cancelled) throw new Cancelled()
  if (!input.band) return { curve, findings: engineFindings(craft, new Map([[input.engine, { curve }]])) }
  // every other speed is enough for a band
  const some = [...rpms].sort((a, b) => a - b).filter((_, k) => k % 2 === 0)
  const band = torqueBand(spec, some, spread, {
    progress: (part, says) => context.progress(share + (1 - share) * part, says),
    cancelled,
  })
  if (band.cancelled) throw new Cancelled()
  return { curve, band, findings: engineFindings(craft, new Map([[input.engine, { curve, band }]])) }
})

/** One cycle looked at closely, at the given speed or at the power peak of a quick coarse curve. */
export const cycleTraceJob = defineJob<EngineInput & { rpm?: number }, CycleTrace>(
  'cycle-trace',
  (input, context) => {
    const read = reading(input)
    if (!read.spec) throw new Error(`engines.${input.engine} lacks ${read.missing ?? 'inputs'}`)
    context.progress(0, 'finding the speed')
    let rpm = input.rpm
    if (rpm === undefined) {
      const quick = simulateCurve(read.spec, speedsToRun(read.spec, read.span, true), {
        dx: 0.02,
        cancelled: () => context.cancelled(),
      })
      if (quick.cancelled) throw new Cancelled()
      rpm = peaksOf(quick)?.power.rpm ?? 6000
    }
    context.progress(0.5, `${rpm} rpm`)
    const trace = simulateCycleTrace(read.spec, rpm, input.dx ? { dx: input.dx } : {})
    if (context.cancelled()) throw new Cancelled()
    context.progress(1, 'done')
    return trace
  },
)
