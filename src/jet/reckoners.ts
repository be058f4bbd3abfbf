import type { Reckoner } from '../answers/reckoner.ts'
import { bladeReckoners } from './reckon/blades.ts'
import { flowReckoners } from './reckon/flow.ts'
import { suctionReckoners } from './reckon/suction.ts'

/** Every reckoner of the jet. */
export const jetReckoners: readonly Reckoner[] = [...bladeReckoners, ...flowReckoners, ...suctionReckoners]
