/** Handbook questions of floating: foam, weights under water, leaks, published sums; stability joins from its own file. */
import {
  count,
  degrees,
  kgPerCubicMetre,
  kilograms,
  litres,
  percent,
  plainRatio,
} from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { length, mass, swim, water } from './floatPorts.ts'
import {
  basicFlotationWeights,
  foamFor,
  foamLift,
  handbookFoam,
  levelFlotationPeople,
  offsetLoadHeel,
  personsCapacity,
  personsCount,
  submergedFactor,
  submergedWeight,
  weightCapacity,
} from './flotation.ts'
import { stabilityReckoners } from './stabilityReckoners.ts'
import { holeFlow } from './tests.ts'

const foamNeeded = defineReckoner({
  id: 'foam-needed',
  title: 'Foam that keeps a swamped craft afloat',
  trade: 'hull',
  says: 'Litres of foam for the weight that is left when the craft is full of water. How it then lies needs the whole hull.',
  inputs: [
    mass('metal', 'Hull, deck and parts of aluminium.'),
    mass('engine', 'Engine, shaft and parts of steel.', { assumed: 0 }),
    mass('other', 'Everything counted at its full weight: people on deck, gear out of the water.', {
      assumed: 0,
    }),
    water,
    kgPerCubicMetre('foam', 'Density of the foam.', 5, 200, 30),
    percent('soaked', 'Share of the foam’s volume that takes up water.', 0, 0.5, 0.03),
    percent('reserve', 'Lift to keep in hand, over the weight.', 0, 2, 0.1),
  ],
  outputs: [
    litres('volume', 'Foam to fit.'),
    kilograms('weight', 'Weight under water to be carried.'),
    kgPerCubicMetre('lift', 'Lift of a cubic metre of it.'),
  ],
  reckon: (g) => {
    const parts = [
      { name: 'aluminium', mass: g.metal, density: 2700 },
      { name: 'steel', mass: g.engine, density: 7850 },
    ]
    const weight = submergedWeight(parts, g.water) + g.other
    const lift = foamLift(g.water, g.foam, g.soaked)
    return { volume: foamFor(weight * (1 + g.reserve), lift), weight, lift }
  },
  sources: [
    'Submerged weight (S − 1)/S',
    '46 CFR 170.245: foam credited with at most 881 kg/m³',
    'US Coast Guard, Boatbuilder’s Handbook, flotation part',
  ],
  cautions: [
    swim,
    'Foam low and near the middle lets a swamped craft roll over: put it high and along the sides.',
    'Petrol eats polystyrene.',
  ],
})

const submerged = defineReckoner({
  id: 'submerged-weight',
  title: 'Weight of a thing under water',
  trade: 'hull',
  says: 'Negative when it floats.',
  inputs: [
    mass('mass', 'Its weight in air.'),
    kgPerCubicMetre('density', 'Density of its material.', 10, 20000),
    water,
  ],
  outputs: [
    kilograms('weight', 'Weight under water.'),
    plainRatio('factor', 'Weight under water over weight in air.'),
  ],
  reckon: (g) => {
    const factor = submergedFactor(g.density, g.water)
    return { weight: g.mass * factor, factor }
  },
  sources: ['Archimedes: (S − 1)/S'],
})

const leak = defineReckoner({
  id: 'leak-rate',
  title: 'Water through a hole',
  trade: 'hull',
  says: 'Flow through a sharp-edged round hole under a steady head, and the time to take on a volume. As the craft settles the head grows: the Float page follows that.',
  inputs: [
    length('diameter', 'Of the hole.', 'mm', { min: 1e-4, max: 0.5 }),
    length('head', 'Depth of the hole below the water outside, less the water inside.', 'mm', { max: 3 }),
    litres('volume', 'Volume to fill.', 0, 10, 0.05),
  ],
  outputs: [
    { name: 'flow', says: 'Flow.', kind: 'volumeFlow', unit: 'L/min' },
    { name: 'time', says: 'Time to take on the volume.', kind: 'time', unit: 'min' },
  ],
  reckon: (g) => {
    const flow = holeFlow((Math.PI * g.diameter ** 2) / 4, g.head)
    if (!(flow > 0)) throw new RangeError('head: 0 m, expected above 0 for a flow')
    return { flow, time: g.volume / flow }
  },
  sources: ['Q = 0.6 A √(2gz), Torricelli with the usual sharp-edge coefficient'],
})

const rules = defineReckoner({
  id: 'flotation-guidance',
  title: 'Published flotation sums to compare with',
  trade: 'hull',
  says: 'Test weights and capacities from rules for small boats. None was written for a craft like this; compare only, and ask the local authority.',
  inputs: [
    mass('displacement', 'Water displaced when sunk to the lowest place where water gets in.', { min: 1 }),
    mass('craft', 'The craft ready to run, without people.', { min: 1 }),
    mass('persons', 'People it is meant for.'),
    length('length', 'Length of the hull.', 'm', { min: 1, max: 6, assumed: 2.5 }),
    mass('sideLoad', 'Load on one side until water comes aboard, if you tried it.', { assumed: 0 }),
  ],
  outputs: [
    kilograms('capacity', 'Weight capacity, inboard boats (33 CFR 183.33 and after).'),
    kilograms('testWeights', 'Weights the swamped boat is tested with (33 CFR 183.105).'),
    kilograms('people', 'Lift for people, level flotation (Boatbuilder’s Handbook).'),
    kilograms('personsCapacity', 'Persons capacity from the side load (33 CFR 183.41).'),
    count('count', 'The same as a number of persons, before rounding.'),
    degrees('heel', 'Heel an offset-load test allows at this length (ISO 12217-3, from memory).'),
    litres(
      'foam',
      'Foam by the handbook’s sum: the craft as aluminium under water, people as above, 881 kg/m³.',
    ),
  ],
  reckon: (g) => {
    const capacity = weightCapacity(g.displacement, g.craft, 'inboard')
    const side = personsCapacity(g.sideLoad)
    return {
      capacity,
      testWeights: basicFlotationWeights(g.persons, capacity).total,
      people: levelFlotationPeople(g.persons, capacity),
      personsCapacity: side,
      count: personsCount(side),
      heel: offsetLoadHeel(g.length),
      foam: handbookFoam(g.craft, submergedFactor(2700), levelFlotationPeople(g.persons, capacity), 881),
    }
  },
  sources: [
    '33 CFR 183.105, 183.41, 183.43',
    '33 CFR 183.33 and after, from memory',
    'US Coast Guard, Boatbuilder’s Handbook, flotation part',
  ],
  cautions: ['These are sums to compare with. They are no proof that a craft meets any rule.', swim],
})

export const floatReckoners: readonly Reckoner[] = [foamNeeded, submerged, leak, rules, ...stabilityReckoners]
