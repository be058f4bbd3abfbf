import type { Reckoner } from '../../base/answers/reckoner.ts'
import { mufflerReckoners } from './reckon/mufflerReckoners.ts'
import { outletReckoners } from './reckon/outletReckoners.ts'
import { pipeReckoners } from './reckon/pipeReckoners.ts'

/** Every reckoner of pipes, silencers, outlets and air intakes. */
export const exhaustReckoners: readonly Reckoner[] = [
  ...pipeReckoners,
  ...mufflerReckoners,
  ...outletReckoners,
]
