import type { Reckoner } from '../base/answers/reckoner.ts'
import { trades } from './trades.ts'

/** Every reckoner of every trade. */
export const reckoners: readonly Reckoner[] = trades.flatMap(({ trade }) => trade.reckoners ?? [])

const byId = new Map(reckoners.map((r) => [r.id, r]))

export function findReckoner(id: string): Reckoner | undefined {
  return byId.get(id)
}
