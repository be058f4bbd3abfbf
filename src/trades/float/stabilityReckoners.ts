/** Handbook questions of stability and centres of gravity. */
import {
  centimetres,
  count,
  degrees,
  kgPerCubicMetre,
  kilograms,
  metres,
  mm,
  plainRatio,
  seconds,
} from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import {
  centreByTwoScales,
  centreByTwoScalesGive,
  heightByTilting,
  scaleProcedure,
} from '../../hull/aboard/masses.ts'
import { length, mass, naval, water } from './floatPorts.ts'
import { angleOfLoll, wallSidedArm } from './righting.ts'
import { gmFromRoll, inclinedGm, rollPeriod } from './tests.ts'

// the steps up to the one that raises the bow, and that one, wherever they stand in the list
const raiseAt = scaleProcedure.findIndex((step) => step.startsWith('Raise the bow'))
const levelSteps = scaleProcedure.slice(0, raiseAt)
const raiseStep = scaleProcedure[raiseAt]!

const incline = defineReckoner({
  id: 'inclining-test',
  title: 'Metacentric height from a weight moved across',
  trade: 'hull',
  says: 'Float the craft quietly, move a known weight from the middle to the side, read the heel on a phone. Holds for heel below about 8°.',
  inputs: [
    mass('weight', 'The weight moved.', { min: 0.1 }),
    length('shift', 'How far it moves across.', 'cm', { min: 0.01, max: 3 }),
    mass('craft', 'Everything afloat, the weight included.', { min: 1 }),
    degrees('heel', 'Heel it gives.', 0.0005, 0.35),
  ],
  outputs: [centimetres('gm', 'Metacentric height: above 0 it stands by itself.')],
  reckon: (g) => ({ gm: inclinedGm(g.weight, g.shift, g.craft, g.heel) }),
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
    plainRatio(
      'radius',
      'Roll radius over beam: 0.35 to 0.40 for a bare board, with the water it carries.',
      0.2,
      0.8,
      0.4,
    ),
    length('gm', 'Metacentric height.', 'cm', { min: 0.001, max: 3, assumed: 0.3 }),
    seconds('timed', 'A period you timed.', 0.1, 60, 1),
  ],
  outputs: [
    seconds('period', 'Roll period for that metacentric height.'),
    centimetres('gmTimed', 'Metacentric height for the timed period.'),
  ],
  reckon: (g) => {
    const k = g.radius * g.beam
    return { period: rollPeriod(k, g.gm), gmTimed: gmFromRoll(k, g.timed) }
  },
  sources: [`${naval} and vol. III, ch. VIII: T = 2πk/√(g GM)`],
})

const scales = defineReckoner({
  id: 'centre-by-scales',
  title: 'Centre of gravity by two scales',
  trade: 'hull',
  says: `${levelSteps.join(' ')}`,
  inputs: [
    length('at1', 'First place, forward of the transom.', 'm', { min: -1 }),
    mass('reading1', 'First reading.'),
    length('at2', 'Second place.', 'm', { min: -1 }),
    mass('reading2', 'Second reading.'),
    mass('give', 'How far a scale may be off.', { assumed: 0.2 }),
  ],
  outputs: [
    kilograms('mass', 'Weight.'),
    metres('centre', 'Centre, forward of the transom.'),
    mm('doubt', 'How far off that may be, tapes to 5 mm.'),
  ],
  reckon: (g) => {
    if (!(g.reading1 + g.reading2 > 0)) throw new RangeError('reading1: both readings are 0')
    return {
      mass: g.reading1 + g.reading2,
      centre: centreByTwoScales(g.at1, g.reading1, g.at2, g.reading2),
      doubt: centreByTwoScalesGive(g.at1, g.reading1, g.at2, g.reading2, g.give, 0.005),
    }
  },
  sources: ['Moments about the transom'],
  cautions: ['Nobody under a hanging craft; empty the tank first.'],
})

const tilt = defineReckoner({
  id: 'centre-height',
  title: 'Height of the centre of gravity by tilting',
  trade: 'hull',
  says: `${raiseStep} Both centres are measured along the craft.`,
  inputs: [
    length('level', 'Centre found level, forward of the transom.', 'm'),
    length('tilted', 'Centre found tilted.', 'm'),
    degrees('tilt', 'Bow up by.', 0.03, 1),
  ],
  outputs: [centimetres('height', 'Above the line of the two hooks.')],
  reckon: (g) => ({ height: heightByTilting(g.level, g.tilted, g.tilt) }),
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
    count('cells', 'Cells side by side.', 1, 20, 1),
    kgPerCubicMetre('liquid', 'Density of the liquid: petrol 745, water 999.', 500, 2000, 745),
    mass('craft', 'Everything afloat.', { min: 1 }),
  ],
  outputs: [mm('loss', 'Metacentric height lost.')],
  reckon: (g) => ({
    loss: ((g.liquid / g.craft) * g.tankLength * g.tankWidth ** 3) / 12 / g.cells ** 2,
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
    centimetres('draft', 'Draft.'),
    centimetres('gm', 'Metacentric height.'),
    degrees('loll', 'Angle of loll; 0 when it stands by itself.'),
    mm('arm', 'Righting arm at 10°.'),
  ],
  reckon: (g) => {
    const draft = g.load / (g.water * g.length * g.beam)
    const bm = g.beam ** 2 / 12 / draft
    const gm = draft / 2 + bm - g.centre
    return { draft, gm, loll: angleOfLoll(gm, bm), arm: wallSidedArm(gm, bm, Math.PI / 18) }
  },
  sources: [`${naval}, ch. II: wall-sided formula`],
})

export const stabilityReckoners: readonly Reckoner[] = [incline, roll, scales, tilt, slack, board]
