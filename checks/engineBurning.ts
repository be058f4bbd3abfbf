/** Scavenging and burning against published fits and tables. */
import type { CheckRow } from '../src/base/answers/check.ts'
import {
  annandCoefficient,
  dilutionFactor,
  frictionPressure,
  releaseFactor,
  wiebe,
} from '../src/trades/engine/burn.ts'
import { mixCv, mixR } from '../src/trades/engine/caloric.ts'
import { engineReckoners } from '../src/trades/engine/engineReckoners.ts'
import { scavengeEfficiency } from '../src/trades/engine/scavenge.ts'
import { reckonedBy } from './reckoned.ts'
import { type Line, letteredRows } from './row.ts'

const rows = letteredRows('engine')
const reckoned = reckonedBy(engineReckoners)

export function scavengeRows(): CheckRow[] {
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

export function burnRows(): CheckRow[] {
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
          1097.9,
        ],
      ],
      'derived',
      'W. J. D. Annand, Proc. IMechE 177 (1963) 973, worked by hand with the viscosity and conductivity of Blair (1996)',
      { withinPart: 2e-3 },
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
