import type { CheckRow } from '../src/base/answers/check.ts'
import { colebrook, hoseDrop } from '../src/physics/fluid/hoseDrop.ts'
import { chipInJet } from '../src/trades/fuel/chipInJet.ts'
import { airForFilling, blockedVentFall } from '../src/trades/fuel/fuelAir.ts'
import { fuelReckoners } from '../src/trades/fuel/fuelReckoners.ts'
import { chipBlocks, chokeFactor, jetFlow } from '../src/trades/fuel/jetFlow.ts'
import { oilFor, petrolExpansion, petrolVapour, volumeCorrection } from '../src/trades/fuel/petrol.ts'
import { bottleTest, systemTest } from '../src/trades/fuel/workOrder.ts'
import { reckonedBy } from './reckoned.ts'
import { near, type Row, row, rowOf, rows } from './row.ts'

const reckoned = reckonedBy(fuelReckoners)

const petrol = { density: 745, viscosity: 0.6e-3 }
const line = (bore: number) =>
  hoseDrop(3.62e-3 / 3600, { bore, length: 1, roughness: 0, losses: 0, narrowest: bore }, petrol)

function properties(): Row[] {
  const api =
    'API MPMS 11.1 (1980), table 54B: constants from memory, the product worked out outside this code'
  return [
    near(
      '77a',
      'expansion of petrol of 745 kg/m³',
      '1/K',
      1.2132e-3,
      petrolExpansion(745),
      1e-6,
      'memory',
      api,
    ),
    near(
      '77b',
      'volume correction, 30 K warmer',
      '1',
      0.96324,
      volumeCorrection(745, 30),
      1e-5,
      'memory',
      api,
    ),
    near(
      '77c',
      'volume correction, 40 K warmer',
      '1',
      0.95084,
      volumeCorrection(745, 40),
      1e-5,
      'memory',
      api,
    ),
    row(
      '89a',
      'vapour pressure at 20 °C, Reid 60 kPa',
      'kPa',
      29.7,
      petrolVapour(60e3, 293.15) / 1e3,
      0.02,
      'memory',
      'Clausius and Clapeyron with 30 kJ/mol, worked out outside this code',
    ),
    row(
      '89b',
      'vapour pressure at 45 °C, Reid 60 kPa',
      'kPa',
      78.1,
      petrolVapour(60e3, 318.15) / 1e3,
      0.02,
      'memory',
      'Clausius and Clapeyron with 30 kJ/mol, worked out outside this code',
    ),
    near(
      '88a',
      'oil for 5 L of petrol at 25 to 1',
      'mL',
      200,
      1e6 * oilFor(5e-3, 25),
      1e-9,
      'exact',
      'arithmetic',
    ),
    near(
      '88b',
      'oil for 5 L of petrol at 50 to 1',
      'mL',
      100,
      1e6 * oilFor(5e-3, 50),
      1e-9,
      'exact',
      'arithmetic',
    ),
  ]
}

function lines(): Row[] {
  const haaland = (Re: number, e: number) => (-1.8 * Math.log10((e / 3.7) ** 1.11 + 6.9 / Re)) ** -2
  return [
    ...rows('exact', 'Hagen and Poiseuille, 128 μ L Q/(π d⁴)', 3e-3, [
      ['80a', 'hose of 3 mm, 1 m, 3.62 L/h: Reynolds number', '1', 530, line(3e-3).reynolds],
      ['80b', 'hose of 3 mm, 1 m, 3.62 L/h: drop', 'Pa', 303.5, line(3e-3).drop],
      ['81a', 'the same of 2 mm', 'Pa', 1536, line(2e-3).drop],
      ['81b', 'the same of 4 mm', 'Pa', 96.0, line(4e-3).drop],
    ]),
    near(
      '82a',
      'friction factor, Re 32 936, ε/d 1.875e-4',
      '1',
      0.0235,
      colebrook(32_936, 1.875e-4),
      1e-4,
      'published',
      'Colebrook (1939), solved outside this code',
    ),
    near(
      '82b',
      'friction factor, Re 1e5, ε/d 1e-4',
      '1',
      0.01851,
      colebrook(1e5, 1e-4),
      1e-4,
      'published',
      'Colebrook (1939), solved outside this code',
    ),
    row(
      '82c',
      'friction factor, Re 1e6, ε/d 1e-3, beside the explicit formula',
      '1',
      haaland(1e6, 1e-3),
      colebrook(1e6, 1e-3),
      0.02,
      'published',
      'S. E. Haaland, J. Fluids Eng. 105 (1983), within 2 % of Colebrook',
    ),
  ]
}

function holes(): Row[] {
  const flow = jetFlow(0.8e-3, 2e3, 745, 0.75)
  const chip = chipInJet({ k: 0.25, form: 'strip', engine: 0, engines: [{ name: 'a', lambda: 13 / 14.7 }] })
  const geometry = 'area of a circle less a strip or a segment, worked out outside this code'
  return [
    row(
      '84a',
      'jet of 0.80 mm at 2 kPa',
      'mL/min',
      52.41,
      flow * 60e6,
      3e-3,
      'derived',
      'orifice, Cd 0.75, ρ 745',
    ),
    row(
      '84b',
      'the same by mass',
      'kg/h',
      2.343,
      flow * 745 * 3600,
      3e-3,
      'derived',
      'orifice, Cd 0.75, ρ 745',
    ),
    near(
      '86a',
      'strip of a quarter of the bore: share shut',
      '1',
      0.315,
      chipBlocks(0.25, 'strip'),
      5e-4,
      'exact',
      geometry,
    ),
    near(
      '86b',
      'edge chip of a quarter of the bore: share shut',
      '1',
      0.1955,
      chipBlocks(0.25, 'edge'),
      5e-4,
      'exact',
      geometry,
    ),
    near('86c', 'air to fuel 13 behind that strip', '1', 19, chip.airFuel, 0.05, 'derived', '13/(1 − 0.315)'),
    near(
      '86d',
      'depression a choke has to bring',
      '1',
      2.13,
      chokeFactor(chip.blocked),
      5e-3,
      'derived',
      '1/(1 − 0.315)²',
    ),
    near(
      '97',
      'jet of 0.80 mm under 300 mm of petrol',
      'mL/min',
      54.87,
      bottleTest(0.8e-3, 745) * 60e6,
      0.05,
      'derived',
      'Torricelli, Cd 0.75',
    ),
    row(
      '84c',
      'flow of a jet 0.75 for one of 0.80 mm',
      '1',
      0.8789,
      jetFlow(0.75e-3, 2e3, 745) / jetFlow(0.8e-3, 2e3, 745),
      1e-4,
      'exact',
      '(0.75/0.80)²',
    ),
  ]
}

function tank(): Row[] {
  const use = reckoned('fuel-use', { power: 3e3, time: 3600, consumption: 450e-3 / 3.6e6 })
  return [
    row('87a', '3 kW at 450 g/kWh', 'L/h', 1.812, use['rate']! * 3.6e6, 2e-3, 'exact', 'arithmetic, ρ 745'),
    near(
      '78a',
      'pressure to test a low system with',
      'kPa',
      20.684,
      systemTest(0.3, 745) / 1e3,
      0.02,
      'published',
      '33 CFR 183.542: 3 psi or 1.5 times the head',
    ),
    row(
      '78f',
      'the same where the head decides, 3 m',
      'kPa',
      32.88,
      systemTest(3, 745) / 1e3,
      1e-3,
      'published',
      '33 CFR 183.542; 1.5 ρ g h',
    ),
    near(
      '103',
      'shut vent: 1 L of air, 0.1 L drawn',
      'kPa',
      9.21,
      blockedVentFall(1e-3, 1e-4, 101_325) / 1e3,
      0.02,
      'exact',
      'Boyle’s law',
    ),
    row(
      '78g',
      '10 L/min through a vent of 6 mm, air',
      'Pa',
      58,
      airForFilling(1e-2 / 60, 6e-3, 1.2),
      0.02,
      'derived',
      'orifice, Cd 0.6, air 1.2 kg/m³',
    ),
    row(
      '78h',
      'the same with petrol in the vent',
      'kPa',
      36,
      airForFilling(1e-2 / 60, 6e-3, 745) / 1e3,
      0.02,
      'derived',
      'orifice, Cd 0.6',
    ),
  ]
}

/** Fuel: petrol, lines, holes, tank. */
export function fuelChecks(): CheckRow[] {
  return [...properties(), ...lines(), ...holes(), ...tank()].map(rowOf('fuel'))
}
