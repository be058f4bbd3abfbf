import type { CheckRow } from '../src/base/answers/check.ts'
import { boxPressure, chokedFunction, flowFunction, tubeDrop } from '../src/trades/exhaust/backPressure.ts'
import { drawnIn, flapOpening, suctionLift } from '../src/trades/exhaust/outlet.ts'
import { proportionedPipe, taperedPipe } from '../src/trades/exhaust/proportions.ts'
import { meanPressure, soundSpeed, tunedLength } from '../src/trades/exhaust/tuning.ts'
import { levelRows, mufflerRows, packingRows } from './exhaustSilencing.ts'
import { rowOf } from './row.ts'

const degree = Math.PI / 180
const blair = 'Blair 1996, Design and Simulation of Two-Stroke Engines (SAE R-161), pipe chapter'
const row = rowOf('exhaust')

/** Handbook sizing, silencers, levels and outlets against published and closed-form values. */
export function exhaustChecks(): CheckRow[] {
  return [...tuningRows(), ...mufflerRows(), ...packingRows(), ...levelRows(), ...flowRows()]
}

function tuningRows(): CheckRow[] {
  const a = proportionedPipe({
    tunedLength: 0.868,
    portDiameter: 0.0333,
    kind: 'motocross',
    stages: 3,
    horn: 1.5,
    figures: { stinger: 0.65, header: 1.06, belly: 2.7 },
  })
  const j = taperedPipe({ tunedLength: 0.8636, portDiameter: 0.02564, stingerShare: 0.6 })
  const part = (pipe: typeof a, name: string) => pipe.segments.find((s) => s.name === name)!
  return [
    row({
      id: 'E-45',
      quantity: 'tuned length, 176°, 592.3 m/s, 10 000 rpm',
      unit: 'mm',
      expected: 868.4,
      got: 1000 * tunedLength(176 * degree, 10000 / 60, 592.3),
      within: 0.4,
      origin: 'published',
      source: `${blair}, formula with its constant 83.3, rounded from 83 1/3`,
    }),
    row({
      id: 'E-46',
      quantity: 'tuned length, 180°, 1700 ft/s, 9000 rpm',
      unit: 'in',
      expected: 34,
      got: tunedLength(Math.PI, 150, 1700 * 0.3048) / 0.0254,
      within: 0.005,
      origin: 'published',
      source: 'Jennings 1973, Two-Stroke Tuner’s Handbook, formula, from memory',
    }),
    row({
      id: 'E-45a',
      quantity: 'wave speed at 600 °C, γ 1.4, R 287',
      unit: 'm/s',
      expected: 592,
      got: soundSpeed(873.15),
      within: 0.5,
      origin: 'published',
      source: `${blair}, class table`,
    }),
    row({
      id: 'E-47',
      quantity: 'diffuser outlet of a 1.5 in inlet, area ratio 6.25',
      unit: 'in',
      expected: 3.75,
      got: 1.5 * (part(j, 'diffuser').d1 / part(j, 'diffuser').d0),
      within: 1e-9,
      origin: 'published',
      source: 'Jennings 1973, diffuser section',
    }),
    row({
      id: 'E-A1',
      quantity: 'example pipe: second diffuser inlet',
      unit: 'mm',
      expected: 49.2,
      got: 1000 * part(a, 'diffuser 2').d0,
      within: 0.1,
      origin: 'derived',
      source: `${blair}, shares; horn law with exponent 1.5 worked by hand`,
    }),
    row({
      id: 'E-A2',
      quantity: 'example pipe: baffle length',
      unit: 'mm',
      expected: 208.3,
      got: 1000 * part(a, 'baffle').length,
      within: 0.2,
      origin: 'derived',
      source: `${blair}, share 0.24 of the tuned length`,
    }),
    row({
      id: 'E-C1',
      quantity: 'tapered pipe: header, 8 diameters',
      unit: 'mm',
      expected: 217.5,
      got: 1000 * part(j, 'header').length,
      within: 0.5,
      origin: 'derived',
      source: 'Jennings 1973 proportions worked by hand (13.3° port of 25.6 mm)',
    }),
    row({
      id: 'E-C2',
      quantity: 'tapered pipe: 8° diffuser length',
      unit: 'mm',
      expected: 291.6,
      got: 1000 * part(j, 'diffuser').length,
      within: 0.7,
      origin: 'derived',
      source: 'Jennings 1973 proportions worked by hand',
    }),
    row({
      id: 'E-C3',
      quantity: 'tapered pipe: belly length',
      unit: 'mm',
      expected: 233.5,
      got: 1000 * part(j, 'belly').length,
      within: 1,
      origin: 'derived',
      source: 'Jennings 1973 proportions worked by hand',
    }),
    row({
      id: 'E-50',
      quantity: 'mean pressure of 21 kW from 124.82 cm³ at 11 500 rpm',
      unit: 'bar',
      expected: 8.779,
      got: meanPressure(21e3, 124.817e-6, 11500 / 60) / 1e5,
      withinPart: 1e-3,
      origin: 'published',
      source: '125 cc kart class ratings (54 × 54.5 mm, 21 kW); rotation from memory',
    }),
    row({
      id: 'E-51',
      quantity: 'mean pressure of 16 kW from 400 cm³ at 5000 rpm',
      unit: 'bar',
      expected: 4.8,
      got: meanPressure(16e3, 400e-6, 5000 / 60) / 1e5,
      within: 1e-9,
      origin: 'published',
      source: 'Hill and Blair 1983, SAE 831303: rating of the research engine',
    }),
  ]
}

function flowRows(): CheckRow[] {
  const nozzle = 'Isentropic nozzle flow, NACA Report 1135 (1953) equations'
  const stinger = tubeDrop({
    massFlow: 23.5e-3,
    temperature: 800,
    pressure: 107e3,
    bore: 21.7e-3,
    length: 0.208,
    losses: 0,
  })
  return [
    ...(
      [
        [1.4, 0.684731],
        [1.33, 0.672628],
        [1.32, 0.670852],
        [1.3, 0.667262],
      ] as const
    ).map(([g, psi]) =>
      row({
        id: `E-22-${g}`,
        quantity: `choked flow function, γ ${g}`,
        unit: '1',
        expected: psi,
        got: chokedFunction(g),
        within: 1e-6,
        origin: 'exact',
        source: nozzle,
      }),
    ),
    row({
      id: 'E-23a',
      quantity: 'flow function 0.8, γ 1.32',
      unit: '1',
      expected: 0.556601,
      got: flowFunction(0.8, 1.32),
      within: 1e-6,
      origin: 'exact',
      source: nozzle,
    }),
    row({
      id: 'E-23b',
      quantity: 'flow function 0.95, γ 1.32',
      unit: '1',
      expected: 0.307129,
      got: flowFunction(0.95, 1.32),
      within: 1e-6,
      origin: 'exact',
      source: nozzle,
    }),
    row({
      id: 'E-57',
      quantity: 'box pressure, 22 g/s, 790 K, 22 mm outlet Cd 0.8',
      unit: 'kPa',
      expected: 107.37,
      got:
        boxPressure({
          massFlow: 22e-3,
          temperature: 790,
          area: 0.8 * (Math.PI / 4) * 0.022 ** 2,
          outside: 101.3e3,
        }).value / 1e3,
      withinPart: 1e-3,
      origin: 'exact',
      source: nozzle,
    }),
    row({
      id: 'E-64a',
      quantity: 'stinger 21.7 mm, 23.5 g/s, 800 K: velocity',
      unit: 'm/s',
      expected: 140.15,
      got: stinger.velocity,
      withinPart: 2e-3,
      origin: 'derived',
      source: 'Continuity with ideal gas at box pressure',
    }),
    row({
      id: 'E-65a',
      quantity: 'flap 50 mm under water, no moments',
      unit: 'Pa',
      expected: 490,
      got: flapOpening({ area: 1, arm: 1, weightMoment: 0, elasticMoment: 0 }, 0.05),
      within: 1,
      origin: 'exact',
      source: 'Hydrostatics ρgh',
    }),
    row({
      id: 'E-65b',
      quantity: 'water drawn in, gas 700 K to 300 K',
      unit: '1',
      expected: 0.571,
      got: drawnIn(700, 300),
      within: 1e-3,
      origin: 'exact',
      source: 'Ideal gas at constant pressure',
    }),
    row({
      id: 'E-65c',
      quantity: 'possible lift, gas 700 K to 300 K',
      unit: 'm',
      expected: 5.9,
      got: suctionLift(700, 300),
      within: 0.02,
      origin: 'exact',
      source: 'Ideal gas and hydrostatics',
    }),
  ]
}
