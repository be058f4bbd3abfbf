/** Which opening of the file is which engine's exhaust outlet: the place where its height over the water stands. */
import type { Craft } from './schema/craftSchema.ts'
import { pipeEnd } from './sharing.ts'

export interface EngineOutlet {
  /** index of the engine */
  engine: number
  /** index in `openings`; absent where the file lists none for it */
  opening?: number
}

/**
 * One for each engine that has an exhaust with an end of its own. A single exhaust outlet among the openings is shared by all; else they belong to the engines
 * with an exhaust in their order.
 */
export function engineOutlets(craft: Pick<Craft, 'engines' | 'openings'>): EngineOutlet[] {
  const listed = craft.openings.flatMap((o, i) => (o.kind === 'exhaust outlet' ? [i] : []))
  const engines = craft.engines.flatMap((_, i) => (pipeEnd(craft, i)?.owner === i ? [i] : []))
  return engines.map((engine, k) => {
    const opening = listed.length === 1 ? listed[0] : listed[k]
    return opening === undefined ? { engine } : { engine, opening }
  })
}

/** Lowest lip of an engine's outlet over still water, loaded, as the file states it under the exhaust, m, with half its likely range; undefined where it is only assumed. */
export function statedLip(
  craft: Pick<Craft, 'engines'>,
  engine: number,
): { height: number; give: number } | undefined {
  const e = craft.engines[engine]
  const outlet = e?.kind === 'two-stroke' ? e.exhaust?.outlet : undefined
  if (!outlet || outlet.height.source === 'assumed') return undefined
  const { value, low, high } = outlet.height
  return { height: value - outlet.bore.value / 2, give: (high - low) / 2 }
}
