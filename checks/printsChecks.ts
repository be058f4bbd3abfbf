import type { CheckRow } from '../src/base/answers/check.ts'
import { cutBlades } from '../src/trades/prints/bladeCut.ts'
import { barBending, discBending, tubeBending } from '../src/trades/prints/partStrength.ts'
import { drawnGroove } from '../src/trades/prints/ringChoice.ts'
import { freeRing, insideTolerance, ringOf } from '../src/trades/prints/ringSizes.ts'
import { closingLoad, glandState, grooveFor } from '../src/trades/prints/sealGland.ts'
import { nptSmallEnd, readTaper } from '../src/trades/prints/taperThreads.ts'
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

/** dash size and inside in inches */
const insides: readonly (readonly [string, number])[] = [
  ['008', 0.176],
  ['010', 0.239],
  ['014', 0.489],
  ['016', 0.614],
  ['110', 0.362],
  ['112', 0.487],
  ['116', 0.737],
  ['120', 0.987],
  ['210', 0.734],
  ['214', 0.984],
  ['218', 1.234],
  ['222', 1.484],
  ['228', 2.234],
  ['236', 3.234],
  ['243', 4.109],
  ['325', 1.475],
  ['341', 3.475],
  ['425', 4.475],
]
const printedInsides: readonly (readonly [string, number])[] = [
  ['150', 2.862],
  ['151', 2.987],
  ['152', 3.237],
  ['154', 3.737],
  ['160', 5.237],
]

function ringRows(): CheckRow[] {
  const inside = (list: readonly (readonly [string, number])[]): Line[] =>
    list.map(([dash, x]) => [`inside of AS568-${dash}`, 'in', ringOf(dash).inside / inch, x])
  const sections: Line[] = (
    [
      ['014', 1.78],
      ['112', 2.62],
      ['214', 3.53],
      ['325', 5.33],
      ['425', 6.99],
    ] as const
  ).map(([dash, x]) => [`section of AS568-${dash}`, 'mm', ringOf(dash).section / mm, x])
  const plain = { ...freeRing(25 * mm, 3.53 * mm), insideTolerance: 0 }
  const groove = { kind: 'plug', seat: 25 * mm, depth: 2.65 * mm, width: 4.9 * mm, seatDoubt: 0 } as const
  const state = glandState(
    { ...plain, sectionTolerance: 0.1 * mm },
    { ...groove, depthDoubt: 0.05 * mm, widthDoubt: 0.1 * mm },
  )
  const face = [1.78, 2.62, 3.53, 5.33, 6.99].map((s) => grooveFor('face', s * mm))
  return [
    ...lettered('PR-35', sections, 'published', 'AS568, sections as printed in public lists', {
      within: 0.011,
    }),
    ...lettered('PR-36', inside(printedInsides), 'published', 'AS568, as printed in an open parts list', {
      within: 1e-6,
    }),
    ...lettered('PR-37', inside(insides), 'memory', 'AS568, table of inside diameters, from memory', {
      within: 1e-6,
    }),
    ...lettered(
      'PR-39',
      [
        ['squeeze of 3.53 mm in a depth of 2.65 mm', '%', 100 * state.squeeze.value, 24.93],
        ['fill with a width of 4.9 mm', '%', 100 * state.fill.value, 75.37],
        ['squeeze at its least, section ±0.1 and depth ±0.05 mm', '%', 100 * state.squeeze.low, 21.3],
        ['squeeze at its most', '%', 100 * state.squeeze.high, 28.4],
        ['fill at its most, width 0.1 mm less', '%', 100 * state.fill.high, 82.9],
      ],
      'exact',
      'areas and depths, by hand',
      { within: 0.1 },
    ),
    ...lettered(
      'PR-38',
      [1.78, 2.62, 3.53, 5.33, 6.99].map((s, k) => [
        `depth of a face groove for ${s} mm`,
        'mm',
        face[k]!.depth / mm,
        ([1.359, 1.969, 2.654, 4.001, 5.258] as const)[k]!,
      ]),
      'published',
      'Face grooves as printed in a seal maker’s table, middle of its band (0.050 to 0.057 in and so on)',
      { within: 0.01 },
    ),
    ...lettered(
      'PR-42',
      [['tolerance of an inside of 24.99 mm, class B', 'mm', insideTolerance(24.99 * mm) / mm, 0.3]],
      'memory',
      'ISO 3601-1 class B, from memory',
      { within: 0.01 },
    ),
    ...lettered(
      'PR-43',
      [
        [
          'load of 3.53 mm squeezed by a quarter, 5.5 MPa',
          'N/mm',
          closingLoad(3.53 * mm, 0.25, 5.5e6) / 1e3,
          3.27,
        ],
      ],
      'memory',
      'P. B. Lindley (1967), from memory',
      { within: 0.02 },
    ),
    ...lettered(
      'PR-44',
      [
        [
          'width of a groove whose swollen ring of 3.53 mm fills 92 % at the worst',
          'mm',
          drawnGroove('face', plain, 0.3, { kind: 'resin' }).width / mm,
          ((Math.PI / 4) * 3.63 ** 2 * 1.3) / (0.92 * (2.654 - 0.05)) + 0.05,
        ],
      ],
      'exact',
      'areas, by hand',
      { within: 0.02 },
    ),
  ]
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

/** Pitch diameters at the small end, in inches, of ASME B1.20.1's table of basic dimensions. */
const nptTable: readonly (readonly [size: string, pipe: number, perInch: number, small: number])[] = [
  ['1/8', 0.405, 27, 0.36351],
  ['1/4', 0.54, 18, 0.47739],
  ['3/8', 0.675, 18, 0.61201],
  ['1/2', 0.84, 14, 0.75843],
  ['3/4', 1.05, 14, 0.96768],
  ['1', 1.315, 11.5, 1.21363],
  ['1 1/2', 1.9, 11.5, 1.79609],
  ['2', 2.375, 11.5, 2.26902],
]

function taperRows(): CheckRow[] {
  const small = nptTable.map(
    ([size, pipe, perInch, table]): Line => [
      `${size} NPT, pitch diameter at the small end`,
      'in',
      nptSmallEnd(pipe * inch, inch / perInch) / inch,
      table,
    ],
  )
  const read = readTaper(
    { side: 'external', across: 26.25 * mm, span: 10.89 * mm, pitches: 6, flanks: Math.PI / 3 },
    26.93 * mm,
  )
  return [
    ...lettered('PR-110', small, 'memory', 'ASME B1.20.1, table of basic dimensions, from memory', {
      within: 0.00002,
    }),
    ...lettered(
      'PR-111',
      [
        [
          'pitch of the taper thread named for 26.25 to 26.93 mm over 10.89 mm',
          'mm',
          read.guesses[0]!.thread.pitch / mm,
          25.4 / 14,
        ],
        ['its half flank', 'deg', (read.guesses[0]!.thread.half * 180) / Math.PI, 30],
      ],
      'memory',
      'ASME B1.20.1, 3/4 NPT, from memory',
      { within: 0.001 },
    ),
  ]
}

function partRows(): CheckRow[] {
  const all = Math.PI * 0.06 ** 2
  return [
    ...lettered(
      'PR-120',
      [
        [
          'disc 120 mm, 6 mm, evenly loaded with 1 kN',
          'MPa',
          discBending(1000, 0.06, 0.06, 6e-3) / 1e6,
          ((3 * 3.38) / 8) * (1000 / all) * (0.06 / 6e-3) ** 2 * 1e-6,
        ],
        ['bar 10 by 20 mm, 100 N at 60 mm', 'MPa', barBending(100, 0.06, 0.01, 0.02) / 1e6, 9],
        [
          'tube 10 mm of 6 mm bore, 30 N at 20 mm',
          'MPa',
          tubeBending(30, 0.02, 0.01, 0.006) / 1e6,
          0.6 / ((Math.PI * (0.01 ** 4 - 0.006 ** 4)) / (32 * 0.01)) / 1e6,
        ],
      ],
      'exact',
      'Timoshenko and Woinowsky-Krieger, evenly loaded disc 3(3+ν)q a²/8t²; section moduli by hand',
      { withinPart: 1e-6 },
    ),
    ...lettered(
      'PR-121',
      [
        [
          'depth of a hole of 8 mm at 17 mm that balances a blade of 1 g at 42 mm, PETG',
          'mm',
          cutBlades({
            blades: 3,
            cut: 1,
            bladeMass: 1e-3,
            bladeArm: 42 * mm,
            mass: 0.2,
            rotation: 100,
            density: 1270,
            hole: 8 * mm,
            holeArm: 17 * mm,
            deepest: 1,
          }).deep / mm,
          42 / (1.27e-3 * Math.PI * 16 * 17),
        ],
      ],
      'exact',
      'moments of mass, by hand',
      { withinPart: 1e-9 },
    ),
  ]
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
