import type { CheckRow } from '../src/answers/check.ts'
import { boxPressure, chokedFunction, flowFunction, tubeDrop } from '../src/exhaust/backPressure.ts'
import { chain, chamberLoss, transmissionLoss, tube } from '../src/exhaust/fourPole.ts'
import { aWeight, harmonicPressure, levelOf, passByLimit } from '../src/exhaust/level.ts'
import { boxLoss } from '../src/exhaust/muffler.ts'
import { drawnIn, flapOpening, suctionLift } from '../src/exhaust/outlet.ts'
import { absorption, delanyBazley, straightThroughLoss } from '../src/exhaust/packing.ts'
import { conePattern, proportionedPipe, taperedPipe } from '../src/exhaust/proportions.ts'
import { meanPressure, soundSpeed, tunedLength } from '../src/exhaust/tuning.ts'

const degree = Math.PI / 180
const davis = 'Davis, Stokes, Moore and Stevens 1954, NACA Report 1192: single expansion chamber, closed form'
const blair = 'Blair 1996, Design and Simulation of Two-Stroke Engines (SAE R-161), pipe chapter'
const delany = 'Delany and Bazley 1970, Applied Acoustics 3, 105: power laws, evaluated independently'
const row = (r: Omit<CheckRow, 'group'>): CheckRow => ({ group: 'exhaust', ...r })

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
    row({
      id: 'E-P1',
      quantity: 'cone 200 long, 40 to 90: sheet angle',
      unit: 'deg',
      expected: (180 * 50) / Math.hypot(200, 25),
      got: conePattern(0.2, 0.04, 0.09).angle / degree,
      within: 1e-9,
      origin: 'exact',
      source: 'Developed cone: arc π·Δd over the slant length',
    }),
  ]
}

function mufflerRows(): CheckRow[] {
  const most = (m: number) => chamberLoss(m, Math.PI / 2 / 0.3, 0.3)
  const c = 343.2
  const box = {
    length: 0.3,
    area: (Math.PI / 4) * 0.09 ** 2,
    inletBore: 0.03,
    outletBore: 0.03,
    inletReach: 0,
    outletReach: 0,
    packing: 0,
    resistivity: 1e4,
  }
  const tuned = { ...box, inletReach: 0.15, outletReach: 0.075 }
  const four = (f: number) => {
    const S = (Math.PI / 4) * 0.03 ** 2
    return transmissionLoss(chain([tube(0.3, box.area, (2 * Math.PI * f) / c, c)]), S, S, c)
  }
  const reach = [
    [100, 7.84],
    [200, 13.24],
    [286, 16.18],
    [400, 19.01],
    [500, 21.35],
    [700, 21.72],
    [858, 23.11],
  ] as const
  return [
    ...(
      [
        [4, 6.547],
        [9, 13.171],
        [10, 14.066],
        [16, 18.096],
        [25, 21.952],
        [64, 30.105],
      ] as const
    ).map(([m, dB]) =>
      row({
        id: `E-35-${m}`,
        quantity: `chamber, area ratio ${m}: most loss`,
        unit: 'dB',
        expected: dB,
        got: most(m),
        within: 1e-3,
        origin: 'exact',
        source: davis,
      }),
    ),
    ...(
      [
        [100, 8.05],
        [286, 13.171],
        [400, 11.452],
        [572, 0],
      ] as const
    ).map(([f, dB]) =>
      row({
        id: `E-37-${f}`,
        quantity: `30 in 90 mm chamber, 300 mm, at ${f} Hz by four-poles`,
        unit: 'dB',
        expected: dB,
        got: four(f),
        within: 1e-3,
        origin: 'exact',
        source: davis,
      }),
    ),
    ...reach.map(([f, dB]) =>
      row({
        id: `E-38-${f}`,
        quantity: `same with tubes reaching l/2 and l/4 at ${f} Hz`,
        unit: 'dB',
        expected: dB,
        got: boxLoss(tuned, [f], c, 1.2).loss[0]!,
        within: 0.02,
        origin: 'derived',
        source: 'Munjal 1987, extended-tube chamber, evaluated by an independent matrix code',
      }),
    ),
  ]
}

function packingRows(): CheckRow[] {
  const air = { density: 1.2041, c: 343.2 }
  const a = delanyBazley(1000, 1e4, air.density, air.c)
  const b = delanyBazley(500, 1e4, air.density, air.c)
  const Z0 = air.density * air.c
  const k0 = (f: number) => (2 * Math.PI * f) / air.c
  const s = { bore: 0.025, outer: 0.07, resistivity: 1e4, ...air }
  const one = (id: string, quantity: string, expected: number, got: number, within: number, unit = '1') =>
    row({ id, quantity, unit, expected, got, within, origin: 'derived', source: delany })
  return [
    one('E-40a', 'packing 1 kHz, 10 kPa·s/m²: Re Z/ρc', 1.2817, a.Z.re / Z0, 2e-3),
    one('E-40b', 'same: Im Z/ρc', -0.4097, a.Z.im / Z0, 2e-3),
    one('E-40c', 'same: Re k/k0', 1.4304, a.k.re / k0(1000), 2e-3),
    one('E-40d', 'same: Im k/k0', -0.666, a.k.im / k0(1000), 2e-3),
    one(
      'E-40e',
      'same: absorption of 50 mm on a hard wall',
      0.885,
      absorption(a, 0.05, air.density, air.c),
      2e-3,
    ),
    one('E-41a', 'packing 500 Hz: Re Z/ρc', 1.4751, b.Z.re / Z0, 2e-3),
    one('E-41b', 'same: Im k/k0', -1.006, b.k.im / k0(500), 2e-3),
    one('E-41c', 'same: absorption of 50 mm', 0.496, absorption(b, 0.05, air.density, air.c), 2e-3),
    one('E-41d', 'packed tube 25 in 70 mm at 250 Hz', 31.1, straightThroughLoss(s, 250), 0.3, 'dB/m'),
    one('E-41e', 'same at 500 Hz', 53.7, straightThroughLoss(s, 500), 0.5, 'dB/m'),
    one('E-41f', 'same at 1 kHz', 80.3, straightThroughLoss(s, 1000), 0.8, 'dB/m'),
  ]
}

function levelRows(): CheckRow[] {
  const iec = 'IEC 61672-1:2013 Table 3, A-weighting (from memory)'
  return [
    ...(
      [
        [100, -19.1],
        [200, -10.8],
        [500, -3.2],
        [1000, 0],
      ] as const
    ).map(([f, dB]) =>
      row({
        id: `E-56-${f}`,
        quantity: `A-weighting at ${f} Hz`,
        unit: 'dB',
        expected: dB,
        got: aWeight(f),
        within: 0.1,
        origin: 'published',
        source: iec,
      }),
    ),
    row({
      id: 'E-63a',
      quantity: 'monopole 0.01 kg/s at 150 Hz, 1 m, free space',
      unit: 'Pa',
      expected: 0.53,
      got: harmonicPressure(0.01, 150, 1, false),
      within: 1e-3,
      origin: 'exact',
      source: 'p = 2πf ṁ/(√2 4πr)',
    }),
    row({
      id: 'E-63b',
      quantity: 'same, level over water',
      unit: 'dB',
      expected: 94.5,
      got: levelOf(harmonicPressure(0.01, 150, 1, true)),
      within: 0.05,
      origin: 'exact',
      source: 'p = 2πf ṁ/(√2 2πr), re 20 µPa',
    }),
    row({
      id: 'E-64',
      quantity: 'pass-by limit, 15 kW, two engines',
      unit: 'dB(A)',
      expected: 75,
      got: passByLimit(15e3, 2),
      within: 0,
      origin: 'published',
      source: 'Directive 2013/53/EU, Annex I part C',
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
      expected: 148,
      got: stinger.velocity,
      withinPart: 0.06,
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
