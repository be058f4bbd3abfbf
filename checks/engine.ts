import type { CheckRow, Origin } from '../src/answers/check.ts'
import {
  annandCoefficient,
  dilutionFactor,
  frictionPressure,
  releaseFactor,
  wiebe,
} from '../src/engine/burn.ts'
import { mixCv, mixR } from '../src/engine/caloric.ts'
import { clearanceOfTrapped, meanPistonSpeed, pistonTravel, sweptVolume } from '../src/engine/geometry.ts'
import { petalFrequency } from '../src/engine/inlet.ts'
import { blowdownTimeArea, portFigures } from '../src/engine/portFigures.ts'
import { engineReckoners } from '../src/engine/reckoners.ts'
import { referenceEngine, referenceTable } from '../src/engine/reference.ts'
import { scavengeEfficiency } from '../src/engine/scavenge.ts'
import { simulateCurve } from '../src/engine/simulate.ts'

type Line = readonly [string, string, number, number]
type Tolerance = { within?: number; withinPart?: number }

function rows(
  id: string,
  lines: readonly Line[],
  origin: Origin,
  source: string,
  tolerance: Tolerance,
): CheckRow[] {
  return lines.map(([quantity, unit, got, expected], i) => ({
    id: lines.length === 1 ? id : `${id}${String.fromCharCode(97 + i)}`,
    group: 'engine',
    quantity,
    unit,
    got,
    expected,
    origin,
    source,
    ...tolerance,
  }))
}

const degree = Math.PI / 180
const crank = { bore: 0.054, stroke: 0.0545, rod: 0.105 }

/** what a reckoner answers */
function reckoned(id: string, given: Record<string, number>, words: Record<string, string> = {}) {
  const r = engineReckoners.find((x) => x.id === id)!
  const assumed = Object.fromEntries(
    r.inputs.filter((p) => p.assumed !== undefined).map((p) => [p.name, p.assumed!]),
  )
  return r.reckon({ ...assumed, ...given }, words)
}

function crankRows(): CheckRow[] {
  const travel = (a: number): number => 1000 * pistonTravel(crank, a * degree)
  const swept = sweptVolume(crank)
  const clearance = clearanceOfTrapped(crank, 7, 92 * degree)
  return [
    ...rows(
      'engine-48',
      [
        ['piston travel at 30°, stroke 54.5, rod 105 mm', 'mm', travel(30), 4.5386],
        ['at 60°', 'mm', travel(60), 16.3114],
        ['at 90°', 'mm', travel(90), 30.8476],
        ['at 120°', 'mm', travel(120), 43.5614],
        ['at 150°', 'mm', travel(150), 51.7369],
      ],
      'exact',
      'slider-crank kinematics worked by hand',
      { within: 1e-4 },
    ),
    ...rows(
      'engine-49',
      [['swept volume of 54 × 54.5 mm', 'cm³', swept * 1e6, 124.817]],
      'exact',
      'volume of a cylinder',
      {
        within: 1e-3,
      },
    ),
    ...rows(
      'engine-compression',
      [['ratio over the whole stroke for 7 from exhaust closing at 92°', '1', swept / clearance + 1, 11.285]],
      'exact',
      'ratio of volumes worked by hand',
      { within: 1e-3 },
    ),
    ...rows(
      'engine-piston-speed',
      [['mean piston speed, 54.5 mm at 9000 rpm', 'm/s', meanPistonSpeed(0.0545, 9000), 16.35]],
      'exact',
      'twice the stroke for every turn',
      {
        within: 1e-9,
      },
    ),
  ]
}

function portRows(): CheckRow[] {
  const s = referenceEngine()
  // the worked example takes plain windows straight in
  const figures = portFigures(s, 9000)
  return rows(
    'engine-time-area',
    [
      ['exhaust time-area at 9000 rpm', 's/m', figures[0]!.timeArea, 1.482e-2],
      ['transfer time-area at 9000 rpm', 's/m', figures[1]!.timeArea, 1.212e-2],
      ['blowdown time-area at 9000 rpm', 's/m', blowdownTimeArea(s, 9000), 8.42e-4],
    ],
    'derived',
    'derived: an independent quadrature of the same windows (definition after G. Jennings)',
    { withinPart: 2e-3 },
  )
}

function scavengeRows(): CheckRow[] {
  const at = [0.5, 1, 1.5]
  const table = {
    'uniflow-like': [0.505, 0.788, 0.918],
    'good loop': [0.479, 0.752, 0.889],
    'mediocre loop': [0.417, 0.697, 0.856],
    mixing: [0.393, 0.632, 0.777],
  } as const
  const mixing = reckoned('charging-by-mixing', {
    bore: 0.1125,
    stroke: 0.15,
    ratio: 7,
    rpm: 30,
    flow: 4.5 / 60,
    temperature: 345,
    pressure: 98066.5,
    gas: 29.27 * 9.80665,
  })
  const textbook =
    'worked example of a textbook on internal combustion engines (two-stroke chapter): bore 11.25, stroke 15 cm, ratio 7, 1800 rpm, 4.5 kg/min, 345 K'
  return [
    ...(Object.keys(table) as (keyof typeof table)[]).flatMap((kind) =>
      rows(
        `engine-scavenging-${kind.replace(' ', '-')}`,
        at.map(
          (sr, i): Line => [
            `scavenging efficiency, ${kind}, delivery ${sr}`,
            '1',
            scavengeEfficiency(kind, sr),
            table[kind][i]!,
          ],
        ),
        'memory',
        'G. P. Blair, Design and Simulation of Two-Stroke Engines (1996), curve coefficients; from memory',
        { within: 1e-3 },
      ),
    ),
    ...rows(
      'engine-42',
      [
        ['ideal charge flow', 'kg/min', mixing['ideal']! * 60, 3.1],
        ['scavenging ratio', '1', mixing['scavengingRatio']!, 1.45],
        ['scavenging efficiency', '1', mixing['efficiency']!, 0.766],
        ['trapping', '1', mixing['trapping']!, 0.53],
      ],
      'published',
      textbook,
      { withinPart: 5e-3 },
    ),
    ...rows(
      'engine-44',
      [
        [
          'more scavenging ratio for 0.90 than for 0.75, perfect mixing',
          '%',
          100 * (Math.log(0.1) / Math.log(0.25) - 1),
          66.1,
        ],
      ],
      'published',
      'worked example of a textbook on internal combustion engines (scavenging)',
      { within: 0.1 },
    ),
  ]
}

function burnRows(): CheckRow[] {
  // angle at which a part has burnt, by bisection on the curve itself
  const at = (part: number): number => {
    let [a, b] = [0, 1]
    for (let k = 0; k < 60; k++) {
      const m = 0.5 * (a + b)
      if (wiebe(m, 5, 2) < part) a = m
      else b = m
    }
    return 0.5 * (a + b)
  }
  return [
    ...rows(
      'engine-52',
      [
        ['Wiebe a 5, m 2: place of 10 % burnt', '1', at(0.1), 0.2762],
        ['of 50 %', '1', at(0.5), 0.5175],
        ['of 90 %', '1', at(0.9), 0.7722],
        ['burnt just before the end', '1', wiebe(1 - 1e-9, 5, 2), 0.99326],
      ],
      'exact',
      'Wiebe (1956), inverted by hand',
      { within: 1e-4 },
    ),
    ...rows(
      'engine-dilution',
      [
        ['heat part at scavenging efficiency 0.5', '1', dilutionFactor(0.5), 0.703],
        ['at 0.6', '1', dilutionFactor(0.6), 0.85],
        ['at 0.7', '1', dilutionFactor(0.7), 0.872],
        ['at 0.8', '1', dilutionFactor(0.8), 0.904],
        ['at 0.9', '1', dilutionFactor(0.9), 0.995],
      ],
      'memory',
      'G. P. Blair, Design and Simulation of Two-Stroke Engines (1996); from memory',
      { within: 1.5e-3 },
    ),
    ...rows(
      'engine-mixture-heat',
      [
        [
          'heat per kg of charge, air ratio 0.75',
          'MJ/kg',
          reckoned('mixture-heat', { lambda: 0.75 })['heat']! / 1e6,
          2.4,
        ],
        ['air ratio 0.87', 'MJ/kg', reckoned('mixture-heat', { lambda: 0.87 })['heat']! / 1e6, 2.58],
        ['air ratio 1', 'MJ/kg', reckoned('mixture-heat', { lambda: 1 })['heat']! / 1e6, 2.74],
      ],
      'derived',
      'derived: frozen equilibrium products of iso-octane, 44 MJ/kg',
      { withinPart: 0.015 },
    ),
    ...rows(
      'engine-release',
      [['part of the fuel heat freed at air ratio 0.87', '1', releaseFactor(0.87), 0.827]],
      'derived',
      'derived: frozen equilibrium products of iso-octane',
      {
        within: 0.002,
      },
    ),
    ...rows(
      'engine-annand',
      [
        [
          'Annand coefficient, 1500 K, 20 bar, bore 54 mm, 16.35 m/s, a 0.26',
          'W/(m² K)',
          annandCoefficient(0.26, 0.054, 16.35, 2e6 / (299.4 * 1500), 1500),
          1109,
        ],
      ],
      'derived',
      'W. J. D. Annand, Proc. IMechE 177 (1963) 973, worked by hand with the viscosity and conductivity of Blair (1996)',
      { withinPart: 0.02 },
    ),
    ...rows(
      'engine-friction',
      [
        [
          'friction pressure, factor 200, 54.5 mm, 9000 rpm',
          'bar',
          frictionPressure(0, 200, 0.0545, 9000) / 1e5,
          0.981,
        ],
      ],
      'exact',
      'factor times stroke times rpm',
      {
        within: 1e-3,
      },
    ),
    ...rows(
      'engine-heats',
      [
        ['ratio of heats of burnt gas at 900 K', '1', 1 + mixR(0) / mixCv(900, 0), 1.3088],
        ['ratio of heats of burnt gas at 2000 K', '1', 1 + mixR(0) / mixCv(2000, 0), 1.2578],
        ['ratio of heats of fresh charge at 500 K', '1', 1 + mixR(1) / mixCv(500, 1), 1.313],
      ],
      'derived',
      'derived: thermochemical tables of the frozen mixtures',
      { withinPart: 3e-3 },
    ),
  ]
}

function ratingRows(): CheckRow[] {
  const kart = reckoned('power-to-pressure', { power: 21000, rpm: 11500 / 60, swept: 124.817e-6 })
  const research = reckoned('power-to-pressure', { power: 16000, rpm: 5000 / 60, swept: 400e-6 })
  const wave = reckoned('wave-temperature', { speed: 1700 * 0.3048 })
  return [
    ...rows(
      'engine-50',
      [
        [
          'mean pressure of a 124.8 cm³ kart engine, 21 kW at 11 500 rpm',
          'bar',
          kart['pressure']! / 1e5,
          8.779,
        ],
        ['its torque', 'N·m', kart['torque']!, 17.44],
      ],
      'published',
      'power rating of the 125 cm³ kart class (54 × 54.5 mm); rpm from memory',
      { withinPart: 1e-3 },
    ),
    ...rows(
      'engine-51',
      [
        [
          'mean pressure of a 400 cm³ research engine, 16 kW at 5000 rpm',
          'bar',
          research['pressure']! / 1e5,
          4.8,
        ],
        ['its torque', 'N·m', research['torque']!, 30.56],
      ],
      'published',
      'B. W. Hill and G. P. Blair, SAE 831303 (1983)',
      { withinPart: 1e-3 },
    ),
    ...rows(
      'engine-54',
      [
        ['gas temperature of a wave speed of 1700 ft/s, air', 'K', wave['air']!, 668],
        ['the same, exhaust gas', 'K', wave['exhaust']!, 689.5],
      ],
      'exact',
      'a = √(γ R T)',
      { within: 1 },
    ),
    ...rows(
      'engine-reed',
      [['lowest frequency of a steel petal 0.20 × 30 mm', 'Hz', petalFrequency('steel', 0.03, 0.0002), 184]],
      'derived',
      'derived: cantilever formula (W. T. Thomson, Theory of Vibration, 1981) worked by hand; materials from memory',
      { withinPart: 0.01 },
    ),
  ]
}

/** two speeds of the reference engine on a coarse grid; the slow tests run the whole table */
function referenceRows(): CheckRow[] {
  const curve = simulateCurve(referenceEngine(), [9500, 10000], { dx: 0.02 })
  return curve.points.flatMap((p) => {
    const ref = referenceTable.find((r) => r[0] === p.rpm)!
    const got = p.point
    return rows(
      `engine-58-${p.rpm}`,
      [
        [
          `reference engine at ${p.rpm} rpm: brake mean pressure`,
          'bar',
          (got?.bmep ?? Number.NaN) / 1e5,
          ref[1]!,
        ],
        ['delivery ratio', '1', got?.deliveryRatio ?? Number.NaN, ref[4]!],
        ['trapping', '1', got?.trapping ?? Number.NaN, ref[5]!],
      ],
      'regression',
      'an independent earlier program of the same models on the same made-up engine',
      { withinPart: 0.05 },
    )
  })
}

/** Engine: geometry, ports, scavenging, burning, ratings, and the reference engine. */
export function engineChecks(): CheckRow[] {
  return [
    ...crankRows(),
    ...portRows(),
    ...scavengeRows(),
    ...burnRows(),
    ...ratingRows(),
    ...referenceRows(),
  ]
}
