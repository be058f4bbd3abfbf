/** What the page Breath says of a craft: each simulated engine, then its exhaust and air intake. */
import type { Finding } from '../answers/finding.ts'
import type { Craft } from '../craft/index.ts'
import { type EngineView, twoStrokeFindings } from '../engine/findings.ts'
import type { EngineAnswers } from './engineAnswers.ts'
import type { Balance } from './types.ts'

/** Findings of the question 'breath'. Without `engines` nothing was simulated and only the files' own words count. */
export function breathFindings(
  craft: Craft,
  _balance: Balance | undefined,
  engines: EngineAnswers | undefined,
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
    }
    out.push(...twoStrokeFindings(view))
  }
  return out
}
