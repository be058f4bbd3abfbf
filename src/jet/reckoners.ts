import type { Reckoner } from '../answers/reckoner.ts'
import { bladeReckoners } from './reckon/blades.ts'
import { intakeReckoners } from './reckon/intake.ts'
import { numbersReckoners } from './reckon/numbers.ts'
import { suctionReckoners } from './reckon/suction.ts'
import { thrustReckoners } from './reckon/thrust.ts'

/** Every reckoner of the jet. */
export const jetReckoners: readonly Reckoner[] = [
  ...bladeReckoners,
  ...thrustReckoners,
  ...numbersReckoners,
  ...intakeReckoners,
  ...suctionReckoners,
]
