import type { Reckoner } from '../base/answers/reckoner.ts'
import { patternReckoners } from '../trades/patterns/patternsReckoners.ts'
import { trades } from './trades.ts'

/** Every reckoner of every trade, and those of patterns, which hold whether or not a craft has parts to make; each once. */
export const reckoners: readonly Reckoner[] = [
  ...new Set([...trades.flatMap(({ trade }) => trade.reckoners ?? []), ...patternReckoners]),
]

const byId = new Map(reckoners.map((r) => [r.id, r]))

export function findReckoner(id: string): Reckoner | undefined {
  return byId.get(id)
}
