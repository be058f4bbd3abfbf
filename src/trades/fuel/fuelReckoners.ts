/** Reckoners of mixture, tank, vent and lines. */
import {
  celsius,
  choice,
  count,
  hours,
  kgPerCubicMetre,
  kPa,
  kW,
  litres,
  litresPerHour,
  litresPerMinute,
  metres,
  millipascalSeconds,
  mm,
  pascals,
  percent,
  perKwh,
  portOf,
  ratio,
} from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { hoseDrop } from '../../physics/fluid/hoseDrop.ts'
import { airForFilling, blockedVentFall, drawnUntil } from './fuelAir.ts'
import { jetHoleReckoners } from './jetHoleReckoners.ts'
import { boilsAt, oilFor, petrolVapour, volumeCorrection } from './petrol.ts'

const api = 'API Manual of Petroleum Measurement Standards 11.1 (1980), table 54B, from memory'
const trade = 'fuel'
const petrol = kgPerCubicMetre('density', 'of the fuel at 15 °C', 650, 900, 745)
const step = portOf('temperatureStep', 'K')
const petrolCaution =
  'Petrol and its vapour burn: outdoors, engine stopped and cold, nothing burning near, wipe up before the start.'

const premix = defineReckoner({
  id: 'premix',
  title: 'Oil for a can of petrol',
  trade,
  says: 'Oil to pour into a volume of petrol for so many parts to one, and how much leaner the petrol gets through the same jet.',
  inputs: [litres('petrol', 'in the can', 1e-4, 0.2), count('parts', 'of petrol to one of oil', 10, 100, 33)],
  outputs: [
    portOf('volume', 'cm³')('oil', 'to pour in'),
    litres('mixture', 'in the end'),
    percent('leaner', 'less petrol through the same jet'),
  ],
  reckon: ({ petrol: p, parts }) => {
    const oil = oilFor(p, parts)
    return { oil, mixture: p + oil, leaner: oil / (p + oil) }
  },
  sources: ['Parts by volume; the engine maker’s own ratio goes first'],
  cautions: [petrolCaution],
})

const fuelUse = defineReckoner({
  id: 'fuel-use',
  title: 'Fuel for a power and a time',
  trade,
  says: 'Mass and volume of fuel that an engine burns. Carburetted two-strokes take 400 to 550 g/kWh flat out, above 600 at part load; below 350 is not to be believed of a home build.',
  inputs: [
    kW('power', 'at the crankshaft', 10, 1e5),
    perKwh('consumption', 'fuel for its work', 2e-4 / 3.6e3, 1.5e-3 / 3.6e3, 450e-3 / 3.6e6),
    hours('time', 'running', 60, 86400, 3600),
    petrol,
  ],
  outputs: [
    litres('volume', 'burnt in that time'),
    litresPerHour('rate', 'while it runs'),
    litres('withReserve', 'with a quarter over'),
  ],
  reckon: ({ power, consumption, time, density }) => {
    const rate = (power * consumption) / density
    return { volume: rate * time, rate, withReserve: 1.25 * rate * time }
  },
  sources: ['Power times consumption; consumption of carburetted two-strokes from memory'],
})

const tankFill = defineReckoner({
  id: 'tank-fill',
  title: 'How full a tank may be',
  trade,
  says: 'Room that petrol wants as it warms, and the most to fill in. Five in a hundred should stay empty at the least; a fill above what the tank holds is refused.',
  inputs: [
    litres('capacity', 'of the tank, inside', 1e-4, 1),
    litres('filled', 'now', 0, 1),
    step('warming', 'from filling to the warmest', 0, 80, 30),
    petrol,
  ],
  outputs: [
    litres('most', 'to fill in'),
    litres('ullage', 'left empty now'),
    percent('growth', 'of the fuel by warming'),
    litres('spill', 'that would be pushed out as it warms'),
  ],
  reckon: ({ capacity, filled, warming, density }) => {
    if (filled > capacity)
      throw new RangeError('filled: more than the tank holds, its ullage would be below nought')
    const growth = 1 / volumeCorrection(density, warming) - 1
    return {
      most: capacity * Math.min(0.95, 1 / (1 + growth)),
      ullage: capacity - filled,
      growth,
      spill: Math.max(0, filled * (1 + growth) - capacity),
    }
  },
  sources: [api, 'five in a hundred: guidance of USCG and ABYC, from memory'],
  cautions: [petrolCaution],
})

const ventFlow = defineReckoner({
  id: 'vent-flow',
  title: 'Pressure that a vent lets build up',
  trade,
  says: 'Air, or petrol that gets in its way, pushed out through a vent as a tank is filled. With liquid in it the pressure is hundreds of times as high.',
  inputs: [
    litresPerMinute('flow', 'of the filling', 1e-7, 2e-3),
    mm('bore', 'of the vent', 5e-4, 0.05),
    choice('through', 'it', ['air', 'petrol']),
  ],
  outputs: [pascals('pressure', 'over the air’s, in the tank')],
  reckon: ({ flow, bore }, { through }) => ({
    pressure: airForFilling(flow, bore, through === 'petrol' ? 745 : 1.2),
  }),
  sources: ['Orifice flow, discharge 0.6'],
  cautions: [petrolCaution],
})

const blockedVent = defineReckoner({
  id: 'blocked-vent',
  title: 'A vent that is shut',
  trade,
  says: 'How far the pressure falls in a tank whose vent is shut, and how much more a pump still draws: it dies after minutes and comes back when the cap is opened.',
  inputs: [
    litres('ullage', 'air in the tank', 1e-5, 1),
    litres('drawn', 'out of it', 1e-6, 1),
    kPa('lift', 'that the pump draws', 100, 6e4, 8e3),
    litresPerHour('flow', 'drawn', 1e-9, 1e-4, 3e-3 / 3600),
  ],
  outputs: [
    kPa('fall', 'of the tank’s pressure'),
    litres('until', 'drawn when the pump gives up'),
    portOf('time', 'min')('minutes', 'until then'),
  ],
  reckon: ({ ullage, drawn, lift, flow }) => {
    const until = drawnUntil(ullage, lift, 101_325)
    return { fall: blockedVentFall(ullage, drawn, 101_325), until, minutes: until / flow }
  },
  sources: ['Boyle’s law, still air; the vapour of the petrol softens it a little'],
})

const hose = defineReckoner({
  id: 'hose-drop',
  title: 'Pressure that a fuel hose takes',
  trade,
  says: 'Laminar or turbulent flow with its fittings. Half the bore takes sixteen times as much while it is laminar. Between Reynolds 2000 and 4000 the answer is led over smoothly and not sure.',
  inputs: [
    litresPerHour('flow', 'through it', 1e-9, 1e-3),
    mm('bore', 'of the hose', 5e-4, 0.05),
    metres('length', 'of the hose', 1e-3, 20),
    ratio('losses', 'of its fittings, added up: barb 0.5 to 1, elbow 1.2, tee 1.3 to 1.8', 0, 100, 0),
    mm('narrowest', 'hole of its fittings', 3e-4, 0.05, 3e-3),
    millipascalSeconds('viscosity', 'of the fuel', 1e-4, 0.1, 0.6e-3),
    petrol,
  ],
  outputs: [
    pascals('drop', 'along it'),
    ratio('reynolds', 'number'),
    metres('head', 'of fuel that this is worth'),
  ],
  reckon: ({ flow, bore, length, losses, narrowest, viscosity, density }) => {
    const got = hoseDrop(
      flow,
      { bore, length, roughness: 1.5e-6, losses, narrowest: Math.min(narrowest, bore) },
      { density, viscosity },
    )
    return { drop: got.drop, reynolds: got.reynolds, head: got.drop / (density * 9.80665) }
  },
  sources: ['Hagen and Poiseuille; C. F. Colebrook (1939)', 'loss factors from memory'],
})

const petrolBoils = defineReckoner({
  id: 'petrol-vapour',
  title: 'Vapour of petrol, and when it boils in a line',
  trade,
  says: 'Vapour pressure at a temperature, and the temperature at which the fuel boils under what a pump draws. Petrol is a mixture: its light ends go first, so take it as within ten in a hundred.',
  inputs: [
    kPa('reid', 'vapour pressure at 37.8 °C: summer 45 to 60, winter 60 to 90', 2e4, 1.2e5, 6e4),
    celsius('temperature', 'of the fuel', 253, 340, 293.15),
    kPa('suction', 'in the line under the air’s pressure', 0, 8e4, 5e3),
    kPa('air', 'pressure of the air', 4e4, 1.1e5, 101_325),
  ],
  outputs: [kPa('vapour', 'pressure of its vapour'), kPa('spare', 'before it boils'), celsius('boils', 'at')],
  reckon: ({ reid, temperature, suction, air }) => {
    if (!(air > suction)) throw new RangeError('suction: more than the pressure of the air')
    const vapour = petrolVapour(reid, temperature)
    return { vapour, spare: air - suction - vapour, boils: boilsAt(reid, air - suction) }
  },
  sources: ['Clausius and Clapeyron, 30 kJ/mol, from memory; EN 228'],
})

/** Reckoners of the fuel. */
export const fuelReckoners: readonly Reckoner[] = [
  premix,
  fuelUse,
  tankFill,
  ventFlow,
  blockedVent,
  hose,
  petrolBoils,
  ...jetHoleReckoners,
]
