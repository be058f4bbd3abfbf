import type { CheckRow } from '../src/base/answers/check.ts'
import { engineReckoners } from '../src/trades/engine/engineReckoners.ts'
import { referenceEngine, referenceTable } from '../src/trades/engine/engineReference.ts'
import {
  clearanceOfTrapped,
  meanPistonSpeed,
  pistonTravel,
  sweptVolume,
} from '../src/trades/engine/geometry.ts'
import { petalFrequency } from '../src/trades/engine/inletFlow.ts'
import { blowdownTimeArea, portFigures } from '../src/trades/engine/portFigures.ts'
import { simulateCurve } from '../src/trades/engine/simulate.ts'
import { airRows } from './engineAir.ts'
import { burnRows, scavengeRows } from './engineBurning.ts'
import { motoredRows } from './engineMotored.ts'
import { reckonedBy } from './reckoned.ts'
import { letteredRows } from './row.ts'

const rows = letteredRows('engine')
const reckoned = reckonedBy(engineReckoners)
const degree = Math.PI / 180
const crank = { bore: 0.054, stroke: 0.0545, rod: 0.105 }

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
    ...motoredRows(),
    ...airRows(),
    ...ratingRows(),
    ...referenceRows(),
  ]
}
