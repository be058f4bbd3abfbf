/** The order of work that keeps swarf out of the jets after a hole was made in the tank. Common practice, no source. */
import { inCm3, inMicrons, inMm, inPercent, inTimes } from '../../base/answers/amounts.ts'
import { say } from '../../base/answers/sentence.ts'
import type { Card } from '../trade.ts'
import type { FuelAnswer } from './fuelAnswer.ts'
import type { FuelCraft } from './fuelFromCraft.ts'
import { inTankLitres } from './fuelSay.ts'
import { bottleHead, bottleTest } from './workOrder.ts'

/** two jets that differ by more are not alike */
const alike = 0.05

export function swarfCard(c: FuelCraft, { tank, jets }: FuelAnswer): Card {
  const jet = Math.min(...jets.jets.map((j) => j.bore))
  const grain = 0.25 * jet
  return {
    id: 'swarf',
    title: 'After drilling the tank',
    says: say`a grain of ${inMicrons(grain)} is enough to spoil a jet of ${inMm(jet, 0.01)}: wash the tank before the lines go on`,
    steps: [
      'Drill only a tank that never held fuel, with a greased bit, from the inside out where it goes. A magnet does not pick up aluminium.',
      'Deburr both sides of the hole with the vacuum cleaner held at it, until no edge is left to feel.',
      say`Shake it upside down, dry, ${inTimes(3, 1)} times.`,
      say`Wash it with ${inTankLitres(3 * c.capacity)} of water in three lots, through a white cloth, until the cloth stays clean twice.`,
      'Dry it with air until no drop comes.',
      'Blow each line from the carburettor’s end back to its open tank end. Glasses on.',
      say`Put a filter of ${inMicrons(Math.min(100e-6, grain))} or finer in the trunk for the first tank of fuel, then look at it through a lens.`,
      say`Bottle test: each jet under ${inMm(bottleHead)} of petrol passes about ${inCm3(60 * bottleTest(jet, c.density.value))} in a minute; two that differ by more than ${inPercent(alike)} are not alike. Outdoors, no flame.`,
      say`Count the grains in the filter wider than ${inMicrons(grain)}; wash again as long as there is one.`,
      say`Fit the final filter, fill to ${inTankLitres(tank.fillTo * c.capacity)}, and look for wet joints before the first start.`,
    ],
  }
}
