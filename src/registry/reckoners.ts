import type { Reckoner } from '../answers/reckoner.ts'
import { engineReckoners } from '../engine/reckoners.ts'
import { exhaustReckoners } from '../exhaust/reckoners.ts'
import { floatReckoners } from '../hull/floatReckoners.ts'
import { hullReckoners } from '../hull/reckoners.ts'
import { jetReckoners } from '../jet/reckoners.ts'
import { soundReckoners } from '../sound/reckoners.ts'
import { strengthReckoners } from '../strength/reckoners.ts'

/** Every reckoner of every trade; a new trade adds one line here. */
export const reckoners: readonly Reckoner[] = [
  ...engineReckoners,
  ...exhaustReckoners,
  ...floatReckoners,
  ...strengthReckoners,
  ...soundReckoners,
  ...hullReckoners,
  ...jetReckoners,
]

const byId = new Map(reckoners.map((r) => [r.id, r]))

export function findReckoner(id: string): Reckoner | undefined {
  return byId.get(id)
}
