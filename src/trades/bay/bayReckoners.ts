/** Handbook questions of bays: temperature, openings, vapour, ventilation, cooling water. */
import {
  celsius,
  cm2,
  cm3,
  count,
  kW,
  litres,
  litresPerSecond,
  metres,
  mm,
  pascals,
  ratio,
  seconds,
  squareMetres,
} from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { brent } from '../../base/numerics/roots.ts'
import { airDensity } from '../../physics/fluid/atmosphere.ts'
import { waterAt } from '../../physics/fluid/water.ts'
import type { AirOpening } from './bayFlow.ts'
import { type BayModel, steadyBay } from './bayHeat.ts'
import { waterOut, waterThrough } from './coolingWater.ts'
import { airingTime, petrolToFlammable, ventilationArea } from './vapourInBay.ts'

const source = 'Stack pressure and orifice flow (ASHRAE Handbook of Fundamentals), heat balance of the air'
const pressure = 101325
/** W/(m²K) through a sheet between still airs: films of 8 and 15 */
const perWall = 5

const heatPorts = [
  kW('heat', 'Given to the air of the bay.', 1, 5e4),
  celsius('outside', 'Air outside.', 233, 330, 293.15),
  metres('apart', 'Height between the low opening and the high one.', 0.02, 5, 0.2),
  ratio('discharge', 'Bare hole 0.6, louvre 0.45, baffled box 0.35.', 0.1, 1, 0.6),
  litresPerSecond('fan', 'Of a fan that blows out, free; nought without one.', 0, 1, 0),
  squareMetres('walls', 'Walls that let heat out; each square metre takes 5 W a kelvin.', 0, 50, 0),
] as const

type Heat = Readonly<Record<(typeof heatPorts)[number]['name'], number>>

/** A low and a high opening of one area each, walls as a single conductance. */
function bayOf(g: Heat, area: number): BayModel {
  const one = (height: number): AirOpening => ({ area, height, tall: 0, discharge: g.discharge, wind: 0 })
  return {
    outside: g.outside,
    pressure,
    openings: [one(0), one(g.apart)],
    fans: g.fan > 0 ? [{ free: g.fan, shut: 100, blows: 'out', height: 0 }] : [],
    burnt: 0,
    sources: [{ air: g.heat, walls: 0, from: Infinity, at: g.outside, slow: false }],
    film: 0,
    toAir: { conductance: 1, T: g.outside },
    toWater: { conductance: perWall * g.walls, T: g.outside },
    capacity: 1,
  }
}

const temperature = defineReckoner({
  id: 'bay-temperature',
  title: 'How warm an engine bay gets',
  trade: 'bay',
  says: 'Steady air temperature of a bay with a heat in it, a low and a high opening of one area each, a fan where there is one.',
  inputs: [...heatPorts, cm2('area', 'Of each of the two openings.', 1e-6, 4)],
  outputs: [celsius('inside', 'Air in the bay.'), litresPerSecond('flow', 'Air that passes through.')],
  reckon: (g) => {
    const found = steadyBay(bayOf(g, g.area))
    if (!found.converged)
      throw new RangeError('area: no balance found; the openings are too small for this heat')
    return { inside: found.value.air, flow: found.value.flow.exchanged / airDensity(pressure, g.outside) }
  },
  sources: [source],
  cautions: ['Air over 65 °C softens polystyrene foam beside it; petrol boils off from about 50 °C.'],
})

const opening = defineReckoner({
  id: 'bay-opening',
  title: 'Openings that keep a bay cool',
  trade: 'bay',
  says: 'Area of a low and of a high opening, each, that holds the air of a bay at a temperature.',
  inputs: [
    ...heatPorts,
    celsius('inside', 'Hottest the air may be: 65 °C beside foam, 50 °C beside petrol.', 250, 500, 323.15),
  ],
  outputs: [cm2('area', 'Of each of the two openings.'), litresPerSecond('flow', 'Air that passes through.')],
  reckon: (g) => {
    if (!(g.inside > g.outside))
      throw new RangeError(`inside: ${g.inside} K, expected above the air outside of ${g.outside} K`)
    // through next to nothing no balance is found: far too hot
    const over = (ln: number) => {
      const found = steadyBay(bayOf(g, Math.exp(ln)))
      return (found.converged ? found.value.air : 1e4) - g.inside
    }
    const found = brent(over, Math.log(1e-6), Math.log(4), { tolerance: 1e-9 })
    if (!found.converged)
      throw new RangeError(`inside: ${g.inside} K is held without openings, or not with 4 m² of them`)
    const area = Math.exp(found.value)
    const flow = steadyBay(bayOf(g, area)).value.flow.exchanged / airDensity(pressure, g.outside)
    return { area, flow }
  },
  sources: [source],
})

const vapour = defineReckoner({
  id: 'vapour-flammable',
  title: 'How little petrol makes a space flammable',
  trade: 'bay',
  says: 'Petrol that, gone to vapour, brings a closed space to its lower flammable limit, and how long the vapour takes to leave through a low and a high opening.',
  inputs: [
    litres('volume', 'Of air in the space.', 1e-4, 100),
    celsius('temperature', 'Of the air.', 233, 330, 293.15),
    cm2('area', 'Of each of two openings, one at the floor; nought for none.', 0, 1, 0),
    metres('apart', 'Height between them.', 0.01, 5, 0.2),
  ],
  outputs: [
    cm3('petrol', 'Liquid petrol.'),
    { name: 'mass', says: 'Vapour.', kind: 'mass', unit: 'g' },
    seconds('airing', 'Until a quarter of the limit is left; an hour where it takes longer.'),
  ],
  reckon: (g) => {
    const made = petrolToFlammable(g.volume, g.temperature)
    const one = (height: number): AirOpening => ({ area: g.area, height, tall: 0, discharge: 0.6, wind: 0 })
    const aired =
      g.area > 0 ? airingTime(g.volume, [one(0), one(g.apart)], [], g.temperature).value : Infinity
    return { petrol: made.liquid, mass: made.mass, airing: Math.min(3600, aired) }
  },
  sources: ['Lower flammable limit 1.4 %, 68 g/mol (Fire Engineering 1988, Gasoline in brief); ideal gas'],
  cautions: ['Vapour lies on the floor and in the bilge: an open lid does not let it out.'],
})

const rule = defineReckoner({
  id: 'ventilation-area',
  title: 'Natural ventilation to compare with',
  trade: 'bay',
  says: 'Clear area of the supply and of the exhaust opening that 33 CFR 183.630 asks of a compartment with a petrol engine or tank.',
  inputs: [litres('volume', 'Net volume of the compartment.', 1e-3, 100)],
  outputs: [
    cm2('area', 'Of each of the two openings, 3 square inches at least.'),
    count('openings', 'Supply and exhaust, the exhaust in the lowest third.'),
  ],
  reckon: (g) => ({ area: ventilationArea(g.volume), openings: 2 }),
  sources: ['33 CFR 183.630: A = 5 ln(V/5), square inches and cubic feet'],
})

const water = defineReckoner({
  id: 'cooling-water',
  title: 'Cooling water from the jet',
  trade: 'bay',
  says: 'Flow through a hose tapped from a pressure, and how warm it leaves with a heat in it.',
  inputs: [
    pascals('pressure', 'At the tap, over the water outside.', 0, 1e6),
    kW('heat', 'It takes up.', 0, 5e4),
    mm('bore', 'Of the hose.', 1e-3, 0.05, 8e-3),
    mm('narrowest', 'Smallest place on its way.', 5e-4, 0.05, 6e-3),
    metres('length', 'Of the hose.', 0.05, 20, 1.5),
    metres('outlet', 'Its end above the water outside.', 0, 3, 0.15),
    celsius('water', 'The water outside.', 273.15, 310, 288.15),
  ],
  outputs: [litresPerSecond('flow', 'Through the hose.'), celsius('out', 'Where it leaves.')],
  reckon: (g) => {
    const { density, kinematicViscosity } = waterAt(g.water)
    const way = { bore: g.bore, narrowest: g.narrowest, length: g.length, outlet: g.outlet }
    const q = waterThrough(way, g.pressure, density, density * kinematicViscosity)
    if (!q.converged) throw new RangeError(`bore: ${g.bore} m, no flow found for this pressure`)
    return { flow: q.value, out: waterOut(g.water, g.heat, q.value, density) }
  },
  sources: ['Bernoulli; Blasius 1913; loss factors after Miller 1978, from memory'],
  cautions: ['A hose that is blocked says nothing: lead it out where it is seen.'],
})

export const bayReckoners: readonly Reckoner[] = [temperature, opening, vapour, rule, water]
