/** What the page Breath says of a craft: each simulated engine, then its exhaust and air intake. */
import type { Finding } from '../../base/answers/finding.ts'
import type { Craft } from '../../craft/index.ts'
import { type EngineView, twoStrokeFindings } from '../../trades/engine/engineFindings.ts'
import { type EngineLimits, engineLimits } from '../../trades/engine/engineLimits.ts'
import { exhaustFindings } from '../../trades/exhaust/exhaustFindings.ts'
import { exhaustFromCraft } from '../../trades/exhaust/exhaustFromCraft.ts'
import { type ExhaustLimits, exhaustLimits } from '../../trades/exhaust/exhaustLimits.ts'
import type { ExhaustRun } from '../../trades/exhaust/exhaustView.ts'
import { openingsAtRest } from '../../trades/float/atRest.ts'
import { floatFromCraft } from '../../trades/float/floatFromCraft.ts'
import type { Balance } from '../push/balanceTypes.ts'
import type { EngineAnswers } from './engineAnswers.ts'

/** Limits of engines, exhausts and air intakes in one table. */
export const breathLimits = { ...engineLimits, ...exhaustLimits }
export type BreathLimits = EngineLimits & ExhaustLimits

/** Findings of the question 'breath'. Without `engines` nothing was simulated and only the file's own words count. */
export function breathFindings(
  craft: Craft,
  _balance: Balance | undefined,
  engines: EngineAnswers | undefined,
  limits: BreathLimits = breathLimits,
): Finding[] {
  const out: Finding[] = []
  for (const [i, reading] of engines?.readings ?? []) {
    const curve = engines?.simulated.get(i)?.curve
    const view: EngineView = {
      at: `engines.${i}`,
      name: craft.engines[i]?.name ?? `engine ${i + 1}`,
      class: reading.class,
      cylinders: reading.cylinders,
      faults: reading.faults,
      ...(reading.spec ? { spec: reading.spec } : {}),
      ...(reading.missing ? { missing: reading.missing } : {}),
      ...(curve ? { curve } : {}),
      ...(engines?.coarse.has(i) ? { coarse: true } : {}),
    }
    out.push(...twoStrokeFindings(view, limits))
  }
  craft.engines.forEach((_, i) => {
    const inputs = exhaustFromCraft(craft, i)
    if (!inputs) return
    const run =
      engines && runOf(engines, i, craft.engines.filter((e) => e.kind !== 'electric' && e.running).length)
    const lip = lipOf(craft, i)
    out.push(
      ...exhaustFindings(
        {
          inputs,
          ...(run ? { run } : {}),
          ...(lip === undefined ? {} : { lipAfloat: lip }),
        },
        limits,
      ),
    )
  })
  return out
}

/** How an engine runs at its power peak; undefined when it was not simulated or nothing settled. */
export function runOf(engines: EngineAnswers, index: number, count: number): ExhaustRun | undefined {
  const simulated = engines.simulated.get(index)
  const point = simulated?.curve.points.find((p) => p.rpm === simulated.at)?.point
  if (!simulated || !point) return undefined
  return {
    massFlow: point.airFlow + point.fuelFlow,
    airFlow: point.airFlow,
    exhaustT: point.exhaustT,
    behind: point.behind,
    rotation: simulated.at / 60,
    power: point.power * (engines.readings.get(index)?.cylinders ?? 1),
    engines: count,
    outFlow: simulated.outFlow,
  }
}

/** Lowest lip of this engine's outlet over still water by the craft's own float line, where an opening says where it is. */
function lipOf(craft: Craft, index: number): number | undefined {
  const outlets = craft.openings.flatMap((o, i) => (o.kind === 'exhaust outlet' ? [i] : []))
  if (outlets.length === 0) return undefined
  const own = outlets.length === craft.engines.length ? [outlets[index]!] : outlets
  try {
    const heights = openingsAtRest(floatFromCraft(craft).input)
    const lowest = Math.min(...own.map((i) => heights[i] ?? Number.POSITIVE_INFINITY))
    return Number.isFinite(lowest) ? lowest : undefined
  } catch (error) {
    // measures that make no hull are told on the page Float; here the line is then simply not known
    if (error instanceof RangeError) return undefined
    throw error
  }
}
