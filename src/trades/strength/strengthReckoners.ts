/** Handbook questions of decks, foam, sheet and heat: one list for the registry. */
import type { Reckoner } from '../../base/answers/reckoner.ts'
import { heatReckoners } from './heatReckoners.ts'
import { partReckoners } from './partReckoners.ts'
import { plateReckoners } from './plateReckoners.ts'
import { sheetReckoners } from './sheetReckoners.ts'

export const strengthReckoners: readonly Reckoner[] = [
  ...plateReckoners,
  ...partReckoners,
  ...sheetReckoners,
  ...heatReckoners,
]
