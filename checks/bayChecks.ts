import type { CheckRow } from '../src/base/answers/check.ts'
import { solveAirFlow } from '../src/trades/bay/bayFlow.ts'
import { steadyBay } from '../src/trades/bay/bayHeat.ts'
import { bayReckoners } from '../src/trades/bay/bayReckoners.ts'
import { tapPressure, waterThrough } from '../src/trades/bay/coolingWater.ts'
import { petrolToFlammable, ventilatedVolume, ventilationArea } from '../src/trades/bay/vapourInBay.ts'
import { reckonedBy } from './reckoned.ts'
import { near, type Row, row, rowOf } from './row.ts'

const ashrae =
  'ASHRAE Handbook of Fundamentals, stack flow Q = C_D A √(2 g ΔH (T_i − T_o)/T_i) with ΔH to the neutral level, worked outside this code'
const single =
  'Single-sided opening, Q = (C_d A/3) √(g H ΔT/T): D. W. Etheridge and M. Sandberg, Building Ventilation (1996), from memory'

/** Two equal openings 0.5 m apart, and one tall one, 20 K warmer than 293.15 K. */
function flows(): Row[] {
  const [outside, inside] = [1.2041, 1.2041 * (293.15 / 313.15)]
  const one = (height: number, tall: number, area: number) => ({
    area,
    height,
    tall,
    discharge: 0.6,
    wind: 0,
  })
  const solve = (openings: ReturnType<typeof one>[]) =>
    solveAirFlow({ openings, fans: [], burnt: 0, outside, inside }).value.exchanged /
    Math.sqrt(outside * inside)
  const two = solve([one(0, 0, 0.01), one(0.5, 0, 0.01)])
  const tall = solve([one(0.5, 1, 0.1)])
  // neutral level half way, less the little that the warmer air is thinner
  return [
    row(
      'V-1',
      'two openings of 100 cm², 0.5 m apart, 20 K',
      'L/s',
      3.36,
      1e3 * two,
      0.025,
      'published',
      ashrae,
    ),
    row('V-2', 'one opening 1 m tall of 0.1 m², 20 K', 'L/s', 16.0, 1e3 * tall, 0.03, 'published', single),
  ]
}

/** 1 kW into air that passes at a known flow by a fan. */
function heat(): Row[] {
  const area = 0.5
  const found = steadyBay({
    outside: 293.15,
    pressure: 101325,
    openings: [{ area, height: 0, tall: 0, discharge: 0.6, wind: 0 }],
    fans: [{ free: 0.05, shut: 1e5, blows: 'in', height: 0 }],
    burnt: 0,
    sources: [{ air: 1000, walls: 0, from: Infinity, at: 293.15, slow: false }],
    film: 0,
    toAir: { conductance: 1, T: 293.15 },
    toWater: { conductance: 0, T: 293.15 },
    capacity: 1,
  })
  return [
    row(
      'V-3',
      'rise of 50 L/s of air at 20 °C by 1 kW',
      'K',
      16.5,
      found.value.air - 293.15,
      0.01,
      'published',
      'sensible heat of air, 1.21 kW for each m³/s and K (ASHRAE Handbook of Fundamentals: q = 1.23 Q ΔT at 1.2 kg/m³, from memory)',
    ),
  ]
}

function petrol(): Row[] {
  const { mass, liquid } = petrolToFlammable(0.1, 293.15)
  const uscg = '33 CFR 183.630: A = 5 ln(V/5), inches squared and cubic feet'
  return [
    row(
      'V-4a',
      'petrol vapour at the flammable limit in 100 L',
      'g',
      3.96,
      1e3 * mass,
      0.03,
      'derived',
      'ideal gas, 1.4 %, 68 g/mol',
    ),
    row(
      'V-4b',
      'the same as liquid',
      'cm³',
      5.3,
      1e6 * liquid,
      0.03,
      'derived',
      'petrol of 745 kg/m³, EN 228',
    ),
    near(
      'V-5a',
      'opening for 20 cubic feet',
      'in²',
      6.931,
      ventilationArea(20 * 0.3048 ** 3) / 0.0254 ** 2,
      0.005,
      'published',
      uscg,
    ),
    near(
      'V-5b',
      'volume for 3 square inches',
      'ft³',
      9.111,
      ventilatedVolume(3 * 0.0254 ** 2) / 0.3048 ** 3,
      0.005,
      'published',
      uscg,
    ),
    near(
      'V-5c',
      'least opening, of a space of 60 L',
      'mm²',
      1935,
      1e6 * ventilationArea(0.06),
      1,
      'published',
      '33 CFR 183.630: 3 square inches',
    ),
  ]
}

function water(): Row[] {
  const p = tapPressure(1000, 0.04, (Math.PI / 4) * 0.065 ** 2, (Math.PI / 4) * (0.12 ** 2 - 0.05 ** 2))
  // 8 mm hose of 1.5 m without a narrower place, its end at the water: friction of Blasius at Re 22 500 and 4 velocity heads
  const q = waterThrough({ bore: 8e-3, narrowest: 8e-3, length: 1.5, outlet: 0 }, 35e3, 1000, 1e-3)
  return [
    row(
      'V-6',
      'pressure before a 65 mm nozzle, 40 L/s',
      'kPa',
      63.5,
      p / 1e3,
      0.01,
      'exact',
      'Bernoulli, worked outside this code',
    ),
    row(
      'V-7',
      'water through 1.5 m of 8 mm hose at 35 kPa',
      'L/s',
      0.1415,
      1e3 * q.value,
      0.01,
      'derived',
      'Blasius 0.316 Re^-1/4 and four velocity heads, worked outside this code',
    ),
  ]
}

/** The reckoners turn each other round. */
function reckoned(): Row[] {
  const reckon = reckonedBy(bayReckoners)
  const { area } = reckon('bay-opening', { heat: 500, inside: 333.15 })
  const { inside } = reckon('bay-temperature', { heat: 500, area: area! })
  return [
    near(
      'V-8',
      'the opening wanted for 60 °C, put back',
      'K',
      333.15,
      inside!,
      0.01,
      'exact',
      'the same balance turned round',
    ),
  ]
}

export const bayChecks = (): CheckRow[] =>
  [...flows(), ...heat(), ...petrol(), ...water(), ...reckoned()].map(rowOf('bay'))
