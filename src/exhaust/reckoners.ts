import type { Reckoner } from '../answers/reckoner.ts'
import { mufflerReckoners } from './reckon/muffler.ts'
import { outletReckoners } from './reckon/outlet.ts'
import { pipeReckoners } from './reckon/pipe.ts'

/** Every reckoner of pipes, silencers, outlets and air intakes. */
export const exhaustReckoners: readonly Reckoner[] = [
  ...pipeReckoners,
  ...mufflerReckoners,
  ...outletReckoners,
]
