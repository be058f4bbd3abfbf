import type { Reckoner } from '../base/answers/reckoner.ts'
import { hullReckoners } from '../trades/drag/dragReckoners.ts'
import { engineReckoners } from '../trades/engine/engineReckoners.ts'
import { exhaustReckoners } from '../trades/exhaust/exhaustReckoners.ts'
import { floatReckoners } from '../trades/float/floatReckoners.ts'
import { jetReckoners } from '../trades/jet/jetReckoners.ts'
import { soundReckoners } from '../trades/sound/soundReckoners.ts'
import { strengthReckoners } from '../trades/strength/strengthReckoners.ts'

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
