import type { CheckRow } from '../src/base/answers/check.ts'
import { threadLimits } from '../src/trades/prints/threadFits.ts'
import { metricThread, unifiedThread } from '../src/trades/prints/threadForms.ts'
import { identifyThread } from '../src/trades/prints/threadIdentify.ts'
import { steepestLayer } from '../src/trades/prints/threadPrinted.ts'
import { knownThreads, pipeThreadOf } from '../src/trades/prints/threadSizes.ts'
import {
  nearestStep,
  pitchToleranceFormula,
  pitchToleranceRows,
} from '../src/trades/prints/threadTolerances.ts'
import { partRows, taperRows } from './printsParts.ts'
import { ringRows } from './printsRings.ts'
import { type Line, letteredRows } from './row.ts'

const lettered = letteredRows('prints')
const mm = 1e-3
const inch = 0.0254

/** size, pitch: outside major high and low, pitch high and low; inside minor low and high, pitch low and high; 0 where not compared */
type LimitRow = readonly [d: number, pitch: number, ...limits: number[]]

const metric: readonly LimitRow[] = [
  [3, 0.5, 0, 0, 2.655, 2.58, 2.459, 2.599, 0, 0],
  [4, 0.7, 0, 0, 3.523, 3.433, 0, 0, 0, 0],
  [5, 0.8, 0, 0, 4.456, 4.361, 0, 0, 0, 0],
  [6, 1, 5.974, 5.794, 5.324, 5.212, 0, 0, 0, 0],
  [8, 1.25, 7.972, 7.76, 7.16, 7.042, 0, 0, 0, 0],
  [10, 1.5, 9.968, 9.732, 8.994, 8.862, 8.376, 8.676, 9.026, 9.206],
  [12, 1.75, 0, 0, 0, 0, 10.106, 10.441, 10.863, 11.063],
  [14, 2, 0, 0, 0, 0, 11.835, 12.21, 12.701, 12.913],
  [14, 1.5, 0, 0, 0, 0, 0, 12.676, 0, 13.216],
]
const metricFromMemory: readonly LimitRow[] = [
  [20, 2.5, 0, 0, 0, 0, 0, 17.744, 0, 18.6],
  [24, 3, 0, 0, 0, 21.803, 0, 0, 0, 22.316],
]
const names = [
  'over crests of the 6g thread, most',
  'over crests of the 6g thread, least',
  'pitch diameter 6g, most',
  'pitch diameter 6g, least',
  'across crests of the 6H thread, least',
  'across crests of the 6H thread, most',
  'pitch diameter 6H, least',
  'pitch diameter 6H, most',
]

function metricLines(rows: readonly LimitRow[]): Line[] {
  return rows.flatMap(([d, pitch, ...expected]) => {
    const { external: e, internal: i } = threadLimits(metricThread(d * mm, pitch * mm))
    const got = [
      e.major.high,
      e.major.low,
      e.pitch.high,
      e.pitch.low,
      i.minor.low,
      i.minor.high,
      i.pitch.low,
      i.pitch.high,
    ]
    return expected.flatMap((x, k): Line[] =>
      x > 0 ? [[`M${d} × ${pitch}, ${names[k]}`, 'mm', got[k]! / mm, x]] : [],
    )
  })
}

function metricRows(): CheckRow[] {
  const worst = pitchToleranceRows.reduce(
    (most, [range, pitch, um]) =>
      Math.max(most, Math.abs(Math.log(um / nearestStep(pitchToleranceFormula(range, pitch))))),
    0,
  )
  // ISO 261 coarse pitches
  const coarse: readonly (readonly [number, number])[] = [
    [3, 0.5],
    [6, 1],
    [12, 1.75],
    [24, 3],
    [36, 4],
    [48, 5],
    [64, 6],
  ]
  const coarsest = (d: number) =>
    Math.max(
      ...knownThreads.flatMap(({ thread: t }) =>
        t.form === 'metric' && Math.abs(t.d - d * mm) < 1e-9 ? [t.pitch] : [],
      ),
    )
  return [
    ...metric.flatMap((row, i) =>
      lettered(
        `PR-${8 + i}`,
        metricLines([row]),
        'published',
        'ISO 965-2 and ASME B1.13M, printed tables of limits 6g and 6H',
        { within: 1.01e-3 },
      ),
    ),
    ...lettered(
      'PR-18',
      metricLines(metricFromMemory),
      'memory',
      'ISO 965-1 tables of tolerances, from memory; worked out again from its formulas',
      { within: 1.01e-3 },
    ),
    ...lettered(
      'PR-20',
      [
        [
          'pitch diameter tolerances of the table against the standard’s formula rounded to its series, worst of all',
          '1',
          worst,
          0,
        ],
      ],
      'derived',
      'ISO 965-1:1998 clause 13: 90 P^0.4 d^0.1 and steps of the R40 series',
      { within: 0.065 },
    ),
    ...lettered(
      'PR-7',
      coarse.map(([d, pitch]) => [`coarse pitch of M${d}`, 'mm', coarsest(d) / mm, pitch]),
      'memory',
      'ISO 261, coarse series',
      { within: 1e-9 },
    ),
  ]
}

function inchRows(): CheckRow[] {
  const of = (d: number, n: number) => {
    const { external: e, internal: i } = threadLimits(unifiedThread(d * inch, n))
    return { e, i }
  }
  const quarter = of(0.25, 20)
  const three = of(0.375, 16)
  const half = of(0.5, 13)
  const ten = of(0.19, 32)
  return [
    ...lettered(
      'PR-23',
      [
        ['1/4-20 UNC 2A over crests, most', 'in', quarter.e.major.high / inch, 0.2489],
        ['1/4-20 UNC 2A over crests, least', 'in', quarter.e.major.low / inch, 0.2408],
        ['1/4-20 UNC 2A pitch diameter, most', 'in', quarter.e.pitch.high / inch, 0.2164],
        ['1/4-20 UNC 2A pitch diameter, least', 'in', quarter.e.pitch.low / inch, 0.2127],
        ['3/8-16 UNC 2B pitch diameter, least', 'in', three.i.pitch.low / inch, 0.3344],
        ['3/8-16 UNC 2B pitch diameter, most', 'in', three.i.pitch.high / inch, 0.3401],
        ['1/2-13 UNC 2B pitch diameter, most', 'in', half.i.pitch.high / inch, 0.4565],
      ],
      'published',
      'ASME B1.1, limits of classes 2A and 2B as printed in public tables',
      { within: 1.01e-4 },
    ),
    ...lettered(
      'PR-26',
      [
        ['10-32 UNF 2A over crests, most', 'in', ten.e.major.high / inch, 0.1891],
        ['10-32 UNF 2A over crests, least', 'in', ten.e.major.low / inch, 0.1831],
        ['10-32 UNF 2A pitch diameter, most', 'in', ten.e.pitch.high / inch, 0.1688],
        ['10-32 UNF 2A pitch diameter, least', 'in', ten.e.pitch.low / inch, 0.1658],
      ],
      'memory',
      'ASME B1.1, from memory; worked out again from its formulas',
      { within: 1.01e-4 },
    ),
    ...lettered(
      'PR-29',
      [
        ['G 1/8 pitch diameter', 'mm', pipeThreadOf('G 1/8').d2 / mm, 9.147],
        ['G 1/8 minor diameter', 'mm', pipeThreadOf('G 1/8').d1 / mm, 8.566],
        ['G 1/4 pitch diameter', 'mm', pipeThreadOf('G 1/4').d2 / mm, 12.301],
        ['G 1/4 minor diameter', 'mm', pipeThreadOf('G 1/4').d1 / mm, 11.445],
      ],
      'published',
      'ISO 228-1, as printed in a pocket book for engineers',
      { within: 1.01e-3 },
    ),
  ]
}

function namingRows(): CheckRow[] {
  const rank = (name: string, across: number, pitches: number, span: number) =>
    1 +
    identifyThread({ side: 'external', across: across * mm, span: span * mm, pitches }).guesses.findIndex(
      (g) => g.thread.name === name,
    )
  return lettered(
    'PR-31',
    [
      [
        'place of G 1/2 among guesses for 20.85 mm and 10 pitches in 18.14 mm',
        '1',
        rank('G 1/2', 20.85, 10, 18.14),
        1,
      ],
      [
        'place of 10-32 UNF for 4.79 mm and 10 pitches in 7.94 mm',
        '1',
        rank('#10-32 UNF', 4.79, 10, 7.94),
        1,
      ],
      ['place of M28 × 1.5 for 27.8 mm and 8 pitches in 12.1 mm', '1', rank('M28 × 1.5', 27.8, 8, 12.1), 1],
    ],
    'derived',
    'threads that lie nearest by their standards’ limits, by hand: ISO 965-1, ASME B1.1, ISO 228-1',
    { within: 0 },
  )
}

function layerRows(): CheckRow[] {
  const deg = Math.PI / 180
  return lettered(
    'PR-100',
    [
      ['thickest layer on a flank of 30°, line 0.45 mm', 'mm', steepestLayer(30 * deg, 0.45 * mm) / mm, 0.13],
      ['thickest layer on a flank of 45°', 'mm', steepestLayer(45 * deg, 0.45 * mm) / mm, 0.225],
    ],
    'exact',
    'half a line over the tangent, by hand',
    { within: 0.001 },
  )
}

export const printsChecks = (): CheckRow[] => [
  ...metricRows(),
  ...inchRows(),
  ...namingRows(),
  ...ringRows(),
  ...layerRows(),
  ...taperRows(),
  ...partRows(),
]
