/** Rings and their grooves against the tables of AS568 and ISO 3601, and what is worked out by hand. */
import type { CheckRow } from '../src/base/answers/check.ts'
import { drawnGroove } from '../src/trades/prints/ringChoice.ts'
import { freeRing, insideTolerance, ringOf } from '../src/trades/prints/ringSizes.ts'
import { closingLoad, glandState, grooveFor } from '../src/trades/prints/sealGland.ts'
import { type Line, letteredRows } from './row.ts'

const lettered = letteredRows('prints')
const mm = 1e-3
const inch = 0.0254

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

export function ringRows(): CheckRow[] {
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
