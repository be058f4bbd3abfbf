import type { Reckoner } from '../../base/answers/reckoner.ts'
import { breathingReckoners } from './reckon/breathing.ts'
import { crankReckoners } from './reckon/crank.ts'
import { powerReckoners } from './reckon/power.ts'

/** Every reckoner of the engine. */
export const engineReckoners: readonly Reckoner[] = [
  ...crankReckoners,
  ...breathingReckoners,
  ...powerReckoners,
]
