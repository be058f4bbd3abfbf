/** Taper pipe threads against ASME B1.20.1, and what printed parts bear and how they balance, by hand. */
import type { CheckRow } from '../src/base/answers/check.ts'
import { cutBlades } from '../src/trades/prints/bladeCut.ts'
import { barBending, discBending, tubeBending } from '../src/trades/prints/partStrength.ts'
import { nptSmallEnd, readTaper } from '../src/trades/prints/taperThreads.ts'
import { type Line, letteredRows } from './row.ts'

const lettered = letteredRows('prints')
const mm = 1e-3
const inch = 0.0254

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

export function taperRows(): CheckRow[] {
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

export function partRows(): CheckRow[] {
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
