/**
 * Sums of lift and weight under water, and published flotation guidance to compare with.
 * None of the rules was written for a craft like this; nothing here says that anything meets them.
 * Sources: 33 CFR 183.105 (basic flotation), 183.41 and 183.43 (persons capacity), 183.33 (weight capacity, from memory);
 * US Coast Guard, Boatbuilder's Handbook, flotation part (foam sums); 46 CFR 170.245 (greatest credit for foam).
 */

/** Greatest lift credited to foam by 46 CFR 170.245, kg/m³ (55 lb/ft³). */
export const mostFoamCredit = 881

/** Weight under water over weight in air, (S − 1)/S: 1 sinks wholly, below 0 floats. density and water in kg/m³. */
export function submergedFactor(density: number, water = 1000): number {
  return (density - water) / density
}

/** Net lift of foam, kg per m³ of it: water less foam less water soaked in (`soaked`, a fraction of its volume), credited up to 881. */
export function foamLift(water: number, foam: number, soaked: number, credit = mostFoamCredit): number {
  return Math.min(credit, water - foam - soaked * water)
}

interface SubmergedItem {
  name: string
  /** kg in air */
  mass: number
  /** kg/m³ of its material; the air inside counts for nothing */
  density: number
}

/** Weight of items under water, kg: negative when together they float. */
export function submergedWeight(items: readonly SubmergedItem[], water: number): number {
  return items.reduce((w, i) => w + i.mass * submergedFactor(i.density, water), 0)
}

/** Foam still needed to carry `deficit` kg under water, m³; 0 when nothing is missing. `lift` in kg per m³. */
export function foamFor(deficit: number, lift: number): number {
  if (!(lift > 0)) throw new RangeError(`foam lift: ${lift} kg/m³, expected above 0`)
  return Math.max(0, deficit) / lift
}

const pound = 0.45359237
const foot = 0.3048

/**
 * Weights a swamped inboard boat must carry in the test of 33 CFR 183.105, kg: two fifteenths of the persons capacity, a quarter of
 * what else the capacity allows, and 62.4 lb for each cubic foot of the two largest air chambers. SI in, kg out.
 */
export function basicFlotationWeights(
  persons: number,
  mostLoad: number,
  airChambers = 0,
): { persons: number; dead: number; air: number; total: number } {
  const people = (2 / 15) * persons
  const dead = 0.25 * Math.max(0, mostLoad - persons)
  const air = (62.4 * pound * airChambers) / foot ** 3
  return { persons: people, dead, air, total: people + dead + air }
}

/** Persons capacity from the side-load test of 33 CFR 183.41, kg: the load at which water comes aboard over 0.6; 183.43 turns pounds into persons. */
export function personsCapacity(sideLoad: number): number {
  return sideLoad / 0.6
}

/** Number of persons of a persons capacity in kg: (lb + 32)/141, before rounding (33 CFR 183.43). */
export function personsCount(capacity: number): number {
  return (capacity / pound + 32) / 141
}

/** Weight capacity of small craft, kg: part of displacement to the lowest place where water gets in, less the craft (33 CFR 183.33 and after, from memory). */
export function weightCapacity(
  displacement: number,
  craft: number,
  kind: 'inboard' | 'outboard' | 'manual',
): number {
  const free = displacement - craft
  return Math.max(
    0,
    kind === 'inboard' ? displacement / 1.4 - craft : kind === 'outboard' ? free / 5 : 0.3 * free,
  )
}

/** Foam of the Boatbuilder's Handbook, m³: (hull under water × K + deck + people terms)/B, all kg, B = net lift in kg/m³. */
export function handbookFoam(hull: number, factor: number, above: number, lift: number): number {
  return (hull * factor + above) / lift
}

/** People term of the handbook's level flotation, kg of lift: half of the first 550 lb, an eighth of the rest, a quarter of other load. */
export function levelFlotationPeople(persons: number, mostLoad: number): number {
  const first = Math.min(persons, 550 * pound)
  return 0.5 * first + 0.125 * (persons - first) + 0.25 * Math.max(0, mostLoad - persons)
}

/** Heel allowed in an offset-load test by a published small-craft stability standard, rad: 10 + (24 − L)³/600 degrees (ISO 12217-3, from memory). */
export function offsetLoadHeel(length: number): number {
  return ((10 + (24 - length) ** 3 / 600) * Math.PI) / 180
}
