/** Which engines have a carburettor, what each is called, and which of them the fuel lines reach. */
import type { Craft } from './schema/craftSchema.ts'

/** What a line from the tank says under `from`. */
export const startOfLines = 'tank'

/** A name for each engine that burns fuel, in their order; one without a name of its own is called by its number. */
export function carburettorNames({ engines }: Pick<Craft, 'engines'>): string[] {
  return engines.flatMap((e, i) => (e.kind === 'electric' ? [] : [e.name ?? `engine ${i + 1}`]))
}

/** Engines that no chain of lines from the tank reaches; none where the file gives no lines, as they are assumed then. */
export function unreached(craft: Pick<Craft, 'engines' | 'fuel'>): string[] {
  const lines = craft.fuel?.lines ?? []
  if (lines.length === 0) return []
  const reached = new Set([startOfLines])
  for (let more = true; more; ) {
    more = false
    for (const l of lines)
      if (reached.has(l.from) && !reached.has(l.to)) {
        reached.add(l.to)
        more = true
      }
  }
  return carburettorNames(craft).filter((name) => !reached.has(name))
}
