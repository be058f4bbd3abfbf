/** Handbook questions of floating: foam, weights under water, stability tests, leaks, centres of gravity. */
import { defineReckoner, type Port, type Reckoner } from '../answers/reckoner.ts'
import {
  basicFlotationWeights,
  foamFor,
  foamLift,
  levelFlotationPeople,
  personsCapacity,
  personsCount,
  submergedFactor,
  weightCapacity,
} from './float/flotation.ts'
import { angleOfLoll, wallSidedArm } from './float/righting.ts'
import { gmFromRoll, holeFlow, inclinedGm, rollPeriod } from './float/tests.ts'
import { centreByTwoScales, centreByTwoScalesGive, heightByTilting } from './float/weights.ts'

const naval = 'E. V. Lewis (ed.), Principles of Naval Architecture vol. I (1988)'
const mass = (name: string, says: string, more: Partial<Port> = {}): Port => ({
  name,
  says,
  kind: 'mass',
  unit: 'kg',
  min: 0,
  max: 5000,
  ...more,
})
const length = (name: string, says: string, unit: string, more: Partial<Port> = {}): Port => ({
  name,
  says,
  kind: 'length',
  unit,
  min: 0,
  max: 20,
  ...more,
})
const water: Port = {
  name: 'water',
  says: 'Density of the water: 999 fresh, 1025 sea.',
  kind: 'density',
  unit: 'kg/m³',
  min: 950,
  max: 1100,
  assumed: 999,
}
const swim =
  'A swamped craft is no raft to count on: wear a buoyancy aid, and try it in shallow water with a second person.'

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
    {
      name: 'foam',
      says: 'Density of the foam.',
      kind: 'density',
      unit: 'kg/m³',
      min: 5,
      max: 200,
      assumed: 30,
    },
    {
      name: 'soaked',
      says: 'Share of the foam’s volume that takes up water.',
      kind: 'ratio',
      unit: '%',
      min: 0,
      max: 0.5,
      assumed: 0.03,
    },
    {
      name: 'reserve',
      says: 'Lift to keep in hand, over the weight.',
      kind: 'ratio',
      unit: '%',
      min: 0,
      max: 2,
      assumed: 0.1,
    },
  ],
  outputs: [
    { name: 'volume', says: 'Foam to fit.', kind: 'volume', unit: 'L' },
    { name: 'weight', says: 'Weight under water to be carried.', kind: 'mass', unit: 'kg' },
    { name: 'lift', says: 'Lift of a cubic metre of it.', kind: 'density', unit: 'kg/m³' },
  ],
  reckon: (g) => {
    const weight =
      g.metal! * submergedFactor(2700, g.water!) + g.engine! * submergedFactor(7850, g.water!) + g.other!
    const lift = foamLift(g.water!, g.foam!, g.soaked!)
    return { volume: foamFor(weight * (1 + g.reserve!), lift), weight, lift }
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
    {
      name: 'density',
      says: 'Density of its material.',
      kind: 'density',
      unit: 'kg/m³',
      min: 10,
      max: 20000,
    },
    water,
  ],
  outputs: [
    { name: 'weight', says: 'Weight under water.', kind: 'mass', unit: 'kg' },
    { name: 'factor', says: 'Weight under water over weight in air.', kind: 'ratio', unit: '' },
  ],
  reckon: (g) => {
    const factor = submergedFactor(g.density!, g.water!)
    return { weight: g.mass! * factor, factor }
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
    { name: 'volume', says: 'Volume to fill.', kind: 'volume', unit: 'L', min: 0, max: 10, assumed: 0.05 },
  ],
  outputs: [
    { name: 'flow', says: 'Flow.', kind: 'volumeFlow', unit: 'L/min' },
    { name: 'time', says: 'Time to take on the volume.', kind: 'time', unit: 'min' },
  ],
  reckon: (g) => {
    const flow = holeFlow((Math.PI * g.diameter! ** 2) / 4, g.head!)
    if (!(flow > 0)) throw new RangeError('head: 0 m, expected above 0 for a flow')
    return { flow, time: g.volume! / flow }
  },
  sources: ['Q = 0.6 A √(2gz), Torricelli with the usual sharp-edge coefficient'],
})

const incline = defineReckoner({
  id: 'inclining-test',
  title: 'Metacentric height from a weight moved across',
  trade: 'hull',
  says: 'Float the craft quietly, move a known weight from the middle to the side, read the heel on a phone. Holds for heel below about 8°.',
  inputs: [
    mass('weight', 'The weight moved.', { min: 0.1 }),
    length('shift', 'How far it moves across.', 'cm', { min: 0.01, max: 3 }),
    mass('craft', 'Everything afloat, the weight included.', { min: 1 }),
    { name: 'heel', says: 'Heel it gives.', kind: 'angle', unit: 'deg', min: 0.0005, max: 0.35 },
  ],
  outputs: [
    { name: 'gm', says: 'Metacentric height: above 0 it stands by itself.', kind: 'length', unit: 'cm' },
  ],
  reckon: (g) => ({ gm: inclinedGm(g.weight!, g.shift!, g.craft!, g.heel!) }),
  sources: [`${naval}, ch. II: inclining`],
  cautions: ['Nobody aboard while you read; stand in the water only where you can stand.'],
})

const roll = defineReckoner({
  id: 'roll-period',
  title: 'Roll period and metacentric height',
  trade: 'hull',
  says: 'Push the side down, let go, time ten rolls on a video. Gives the period for a GM, and the GM for a timed period.',
  inputs: [
    length('beam', 'Beam of the craft.', 'm', { min: 0.2, max: 4 }),
    {
      name: 'radius',
      says: 'Roll radius over beam: 0.35 to 0.40 for a bare board, with the water it carries.',
      kind: 'ratio',
      unit: '',
      min: 0.2,
      max: 0.8,
      assumed: 0.4,
    },
    length('gm', 'Metacentric height.', 'cm', { min: 0.001, max: 3, assumed: 0.3 }),
    { name: 'timed', says: 'A period you timed.', kind: 'time', unit: 's', min: 0.1, max: 60, assumed: 1 },
  ],
  outputs: [
    { name: 'period', says: 'Roll period for that metacentric height.', kind: 'time', unit: 's' },
    { name: 'gmTimed', says: 'Metacentric height for the timed period.', kind: 'length', unit: 'cm' },
  ],
  reckon: (g) => {
    const k = g.radius! * g.beam!
    return { period: rollPeriod(k, g.gm!), gmTimed: gmFromRoll(k, g.timed!) }
  },
  sources: [`${naval} and vol. III, ch. VIII: T = 2πk/√(g GM)`],
})

const scales = defineReckoner({
  id: 'centre-by-scales',
  title: 'Centre of gravity by two scales',
  trade: 'hull',
  says: 'Hang or prop the craft level at two places and read a scale at each. Gives its weight and where its centre is along that line.',
  inputs: [
    length('at1', 'First place, forward of the transom.', 'm', { min: -1 }),
    mass('reading1', 'First reading.'),
    length('at2', 'Second place.', 'm', { min: -1 }),
    mass('reading2', 'Second reading.'),
    mass('give', 'How far a scale may be off.', { assumed: 0.2 }),
  ],
  outputs: [
    { name: 'mass', says: 'Weight.', kind: 'mass', unit: 'kg' },
    { name: 'centre', says: 'Centre, forward of the transom.', kind: 'length', unit: 'm' },
    { name: 'doubt', says: 'How far off that may be, tapes to 5 mm.', kind: 'length', unit: 'mm' },
  ],
  reckon: (g) => {
    if (!(g.reading1! + g.reading2! > 0)) throw new RangeError('reading1: both readings are 0')
    return {
      mass: g.reading1! + g.reading2!,
      centre: centreByTwoScales(g.at1!, g.reading1!, g.at2!, g.reading2!),
      doubt: centreByTwoScalesGive(g.at1!, g.reading1!, g.at2!, g.reading2!, g.give!, 0.005),
    }
  },
  sources: ['Moments about the transom'],
  cautions: ['Nobody under a hanging craft; empty the tank first.'],
})

const tilt = defineReckoner({
  id: 'centre-height',
  title: 'Height of the centre of gravity by tilting',
  trade: 'hull',
  says: 'The centre found level and again with the bow raised, both measured along the craft: the shift over the tangent of the tilt is its height above the line of the hooks.',
  inputs: [
    length('level', 'Centre found level, forward of the transom.', 'm'),
    length('tilted', 'Centre found tilted.', 'm'),
    { name: 'tilt', says: 'Bow up by.', kind: 'angle', unit: 'deg', min: 0.03, max: 1 },
  ],
  outputs: [{ name: 'height', says: 'Above the line of the two hooks.', kind: 'length', unit: 'cm' }],
  reckon: (g) => ({ height: heightByTilting(g.level!, g.tilted!, g.tilt!) }),
  sources: ['Statics: plumb line through the centre at two attitudes'],
  cautions: [
    'Tilt a hanging craft only with a safety line on the bow; fuel runs aft and spoils the reading.',
  ],
})

const slack = defineReckoner({
  id: 'free-surface',
  title: 'Stability lost to slack liquid',
  trade: 'hull',
  says: 'A rectangular tank neither full nor empty, divided into equal cells along the craft. The amount of liquid does not matter.',
  inputs: [
    length('tankLength', 'Along the craft.', 'cm', { min: 0.01, max: 10 }),
    length('tankWidth', 'Across the craft.', 'cm', { min: 0.01, max: 5 }),
    { name: 'cells', says: 'Cells side by side.', kind: 'count', unit: '1', min: 1, max: 20, assumed: 1 },
    {
      name: 'liquid',
      says: 'Density of the liquid: petrol 745, water 999.',
      kind: 'density',
      unit: 'kg/m³',
      min: 500,
      max: 2000,
      assumed: 745,
    },
    mass('craft', 'Everything afloat.', { min: 1 }),
  ],
  outputs: [{ name: 'loss', says: 'Metacentric height lost.', kind: 'length', unit: 'mm' }],
  reckon: (g) => ({
    loss: ((g.liquid! / g.craft!) * g.tankLength! * g.tankWidth! ** 3) / 12 / g.cells! ** 2,
  }),
  sources: [
    'D. R. Derrett, Ship Stability for Masters and Mates: l b³/12 over displacement, over n² for n cells',
  ],
})

const board = defineReckoner({
  id: 'board-stability',
  title: 'Draft and stability of a plain board',
  trade: 'hull',
  says: 'A box-shaped board with its load: draft, metacentric height, angle it falls to when that is below 0, arm at 10°. Holds until the deck dips or the chine lifts.',
  inputs: [
    length('length', 'Waterline length.', 'm', { min: 0.3 }),
    length('beam', 'Beam at the waterline.', 'm', { min: 0.1, max: 5 }),
    mass('load', 'Everything afloat.', { min: 1 }),
    length('centre', 'Height of the common centre of gravity above the bottom.', 'cm', { max: 3 }),
    water,
  ],
  outputs: [
    { name: 'draft', says: 'Draft.', kind: 'length', unit: 'cm' },
    { name: 'gm', says: 'Metacentric height.', kind: 'length', unit: 'cm' },
    { name: 'loll', says: 'Angle of loll; 0 when it stands by itself.', kind: 'angle', unit: 'deg' },
    { name: 'arm', says: 'Righting arm at 10°.', kind: 'length', unit: 'mm' },
  ],
  reckon: (g) => {
    const draft = g.load! / (g.water! * g.length! * g.beam!)
    const bm = g.beam! ** 2 / 12 / draft
    const gm = draft / 2 + bm - g.centre!
    return { draft, gm, loll: angleOfLoll(gm, bm), arm: wallSidedArm(gm, bm, Math.PI / 18) }
  },
  sources: [`${naval}, ch. II: wall-sided formula`],
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
    mass('sideLoad', 'Load on one side until water comes aboard, if you tried it.', { assumed: 0 }),
  ],
  outputs: [
    {
      name: 'capacity',
      says: 'Weight capacity, inboard boats (33 CFR 183.33 and after).',
      kind: 'mass',
      unit: 'kg',
    },
    {
      name: 'testWeights',
      says: 'Weights the swamped boat is tested with (33 CFR 183.105).',
      kind: 'mass',
      unit: 'kg',
    },
    {
      name: 'people',
      says: 'Lift for people, level flotation (Boatbuilder’s Handbook).',
      kind: 'mass',
      unit: 'kg',
    },
    {
      name: 'personsCapacity',
      says: 'Persons capacity from the side load (33 CFR 183.41).',
      kind: 'mass',
      unit: 'kg',
    },
    { name: 'count', says: 'The same as a number of persons, before rounding.', kind: 'count', unit: '1' },
  ],
  reckon: (g) => {
    const capacity = weightCapacity(g.displacement!, g.craft!, 'inboard')
    const side = personsCapacity(g.sideLoad!)
    return {
      capacity,
      testWeights: basicFlotationWeights(g.persons!, capacity).total,
      people: levelFlotationPeople(g.persons!, capacity),
      personsCapacity: side,
      count: personsCount(side),
    }
  },
  sources: [
    '33 CFR 183.105, 183.41, 183.43',
    '33 CFR 183.33 and after, from memory',
    'US Coast Guard, Boatbuilder’s Handbook, flotation part',
  ],
  cautions: ['These are sums to compare with. They are no proof that a craft meets any rule.', swim],
})

export const floatReckoners: readonly Reckoner[] = [
  foamNeeded,
  submerged,
  leak,
  incline,
  roll,
  scales,
  tilt,
  slack,
  board,
  rules,
]
