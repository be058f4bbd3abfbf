/** Findings of every two-stroke of a craft, with the curves that have been worked out so far. */
import type { Finding } from '../../base/answers/finding.ts'
import type { Craft } from '../../craft/index.ts'
import type { TorqueBand } from './band.ts'
import { twoStrokeFindings } from './engineFindings.ts'
import type { CurveResult } from './simulate.ts'
import { twoStrokeFromCraft } from './twoStrokeFromCraft.ts'

/** Simulated curves, and bands where asked for, by engine index. */
export type EngineResults = ReadonlyMap<number, { curve: CurveResult; band?: TorqueBand }>

/** What every two-stroke has to say; without results only what needs no simulation (faults, ports). */
export function engineFindings(craft: Craft, results?: EngineResults): Finding[] {
  return craft.engines.flatMap((engine, i) => {
    if (engine.kind !== 'two-stroke') return []
    const result = results?.get(i)
    return twoStrokeFindings({
      at: `engines.${i}`,
      name: engine.name ?? `engine ${i + 1}`,
      ...twoStrokeFromCraft(craft, i),
      ...(result ?? {}),
    })
  })
}
