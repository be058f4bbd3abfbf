import type { Reckoner } from '../../base/answers/reckoner.ts'
import { bladeReckoners } from './reckon/bladesReckoners.ts'
import { intakeReckoners } from './reckon/intakeReckoners.ts'
import { numbersReckoners } from './reckon/numbersReckoners.ts'
import { suctionReckoners } from './reckon/suctionReckoners.ts'
import { thrustReckoners } from './reckon/thrustReckoners.ts'

/** Every reckoner of the jet. */
export const jetReckoners: readonly Reckoner[] = [
  ...bladeReckoners,
  ...thrustReckoners,
  ...numbersReckoners,
  ...intakeReckoners,
  ...suctionReckoners,
]
