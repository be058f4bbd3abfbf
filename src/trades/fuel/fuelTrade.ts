/** The trade fuel: from the tank to the jets, in every lean and at every flow. */
import { defineTrade, type Lever } from '../trade.ts'
import { chipFigure } from './chipFigure.ts'
import { circuitFigure } from './circuitFigure.ts'
import { type FuelAnswer, fuelAnswer } from './fuelAnswer.ts'
import { fuelFindings, fuelHeadline } from './fuelFindings.ts'
import { type FuelCraft, type FuelInputs, fuelFromCraft } from './fuelFromCraft.ts'
import { type FuelLimits, fuelLimits } from './fuelLimits.ts'
import { fuelNumbers } from './fuelNumbers.ts'
import { fuelReckoners } from './fuelReckoners.ts'
import type { FuelSetting } from './fuelSetting.ts'

export const fuelTrade = defineTrade<FuelInputs, FuelAnswer | undefined, FuelSetting>({
  id: 'fuel',
  question: 'fuel',
  title: 'Tank to jets',
  reads: ['fuel', 'tanks', 'engines', 'openings', 'rider', 'place', 'weights'],
  inputs: (craft, setting) => fuelFromCraft(craft, setting),
  answer: (inputs) => fuelAnswer(inputs),
  limits: fuelLimits,
  judge: ({ inputs, answer }, limits) => fuelFindings(inputs, answer, limits as FuelLimits),
  headline: ({ inputs, answer }, limits) => fuelHeadline(inputs, answer, limits as FuelLimits),
  levers: ({ inputs, answer }) => (inputs.known && answer ? levers(inputs.known, answer) : []),
  figures: [
    {
      id: 'circuit',
      title: 'From the tank to the jets',
      caption: () =>
        'From the side, to scale, as the craft lies; the fuel’s surface tips with the acceleration too.',
      draw: (now, tried, look) => circuitFigure(now, tried, look.width, look.system),
    },
    {
      id: 'chip',
      title: 'What a chip does to the mixture',
      caption: () =>
        'A strip across the jet is what drilling leaves; a choke brings the mixture back by a greater depression.',
      draw: (now, tried, look) => chipFigure(tried ?? now, look.width),
    },
  ],
  numbers: (now, tried) => fuelNumbers(tried ?? now),
  reckoners: fuelReckoners,
  cautions: [
    'Petrol: fill outdoors, engine stopped and cold, nothing burning near; its vapour lies low and runs far. Wipe up and air before the first pull of the cord.',
    'Static: fill a can on the ground with the nozzle touching it, never in a car; join can and metal tank by a wire before pouring.',
    'A tank that held fuel is a bomb: never weld, braze, grind or drill it; make a new one.',
    'Pressure test with water in most of the tank and a hand pump with a relief, never from a compressor; stand beside, not before, its flat sides.',
    'Petrol on the skin and in the eyes: gloves and glasses at jets and filters; the open bowl spits when blown through.',
    'What is compared here are published figures; ask the local authority which rules bind a home-built craft.',
  ],
  method: [
    'The tank’s inside is a closed mesh; the fuel in it lies level to gravity and acceleration together. What lies below the pick-up’s mouth is out of reach, and the fill at which the vent’s fitting is met is the volume below it, in ten ways of lying.',
    'The hoses are a network: pressures at its nodes by Newton’s method, laminar or turbulent flow in each, fittings on their narrowest hole, at twice the mean flow with the tank nearly empty. The fuel boils where the least pressure meets its vapour pressure.',
    'A chip shuts part of a circle; the mixture leans by what is shut, the torque follows a curve over the mixture, and the speed is where the thrust that is left meets the drag.',
  ],
})

/** What moves the answer most: where the vent and the pick-up sit, the filter, the hose, the day. */
function levers({ lines, section }: FuelCraft, { tank }: FuelAnswer): Lever[] {
  const reach = tank.body.half[0]
  const first = lines[0]?.path
  return [
    { path: 'fuel.vent.forward', low: -0.9 * reach, high: 0.9 * reach, effect: 'where it stays dry' },
    { path: 'fuel.pickup.forward', low: -0.9 * reach, high: 0.9 * reach, effect: 'what is left in the tank' },
    { path: 'fuel.filter.mesh', low: 40e-6, high: 300e-6, effect: 'which swarf reaches the jets' },
    ...(section.carburettor.jet ? [{ path: 'fuel.carburettor.jet' }] : []),
    ...(first
      ? [
          { path: `${first}.bore`, low: 2e-3, high: 8e-3 },
          { path: `${first}.rise`, low: -0.3, high: 0.4 },
        ]
      : []),
    { path: 'fuel.use.hours', low: 0.25 * 3600, high: 6 * 3600 },
  ]
}
