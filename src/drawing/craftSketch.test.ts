import { expect, test } from 'vitest'
import { type CraftShape, craftSketch } from './craftSketch.ts'
import { expectGolden } from './golden.testkit.ts'
import type { Posture } from './riderFigure.ts'
import { riderFigure } from './riderFigure.ts'
import type { Mark, Sheet } from './sheet.ts'

/** a box of a boat, invented for this test */
const shape: CraftShape = {
  title: 'Box, to scale',
  says: 'A box from three sides.',
  length: 2,
  beam: 0.8,
  depth: 0.25,
  keel: [0, 0, 1.4, 0, 2, 0.15],
  chine: [0, 0.04, 1.4, 0.05, 2, 0.2],
  deck: [0, 0.25, 2, 0.25],
  chineHalf: [0, 0.34, 1.2, 0.36, 2, 0.02],
  deckHalf: [0, 0.38, 1.2, 0.4, 2, 0.03],
  widest: [[0, 0, 0.36, 0.05, 0.4, 0.25, -0.4, 0.25, -0.36, 0.05]],
  transom: [[0, 0, 0.34, 0.04, 0.38, 0.25, -0.38, 0.25, -0.34, 0.04]],
  parts: [
    { name: 'engine', at: [0.7, 0, 0.22], size: [0.3, 0.24, 0.26], sizeGuessed: false, look: 'engine' },
    { name: 'tank', at: [1.3, 0.1, 0.15], size: [0.3, 0.3, 0.2], sizeGuessed: true, look: 'tank' },
    { name: 'hull', at: [1, 0, 0.1], size: [1, 1, 1], sizeGuessed: true, look: 'weight' },
  ],
  tanks: [
    {
      name: 'fuel',
      at: [1.1, 0, 0.12],
      size: [0.15, 0.3, 0.15],
      round: 'across',
      surface: { height: 0.13, rise: 0.03 },
    },
  ],
  openings: [{ name: 'vent', at: [1.2, 0.1, 0.4] }],
  rider: { at: 0.9, off: 0, stature: 1.75, posture: 'kneeling' },
  jet: {
    bore: 0.12,
    nozzle: 0.07,
    height: 0.12,
    intakeFront: 0.6,
    intakeLength: 0.25,
    intakeWidth: 0.12,
    rotorAt: 0.25,
  },
  water: { aft: 0.11, forward: 0.05 },
  words: (m) => `${Math.round(m * 1000)} mm`,
}

function* corners(marks: readonly Mark[]): Generator<[number, number]> {
  for (const m of marks) {
    if (m.kind === 'polyline' || m.kind === 'polygon')
      for (let i = 0; i < m.points.length; i += 2) yield [m.points[i]!, m.points[i + 1]!]
    else if (m.kind === 'arc')
      yield* [
        [m.cx - m.r, m.cy - m.r],
        [m.cx + m.r, m.cy + m.r],
      ] as [number, number][]
    else yield [m.x, m.y]
  }
}
const outlineOf = (s: Sheet, name: string) =>
  s.marks.find((m) => (m.kind === 'polygon' || m.kind === 'polyline') && m.name === name)

test('a craft from three sides looks as it did, on a wide and on a narrow sheet', () => {
  expectGolden(craftSketch(shape, 240), import.meta.dirname, 'craft-wide')
  expectGolden(craftSketch(shape, 94), import.meta.dirname, 'craft-narrow')
})

test('nothing is drawn beyond the sheet, whatever the rider does', () => {
  for (const posture of ['standing', 'crouching', 'kneeling', 'sitting', 'prone'] as Posture[])
    for (const width of [94, 140, 160, 280]) {
      const s = craftSketch({ ...shape, rider: { ...shape.rider!, posture } }, width)
      for (const [x, y] of corners(s.marks)) {
        expect(x).toBeGreaterThanOrEqual(0)
        expect(x).toBeLessThanOrEqual(s.width)
        expect(y).toBeGreaterThanOrEqual(0)
        expect(y).toBeLessThanOrEqual(s.height)
      }
    }
})

test('the three views share one scale', () => {
  const s = craftSketch(shape, 240)
  const hull = outlineOf(s, 'hull')!
  const section = outlineOf(s, 'widest section')!
  if (hull.kind !== 'polygon' || section.kind !== 'polygon') throw new Error('no outlines')
  const span = (points: Float64Array, axis: 0 | 1) => {
    const v = [...points].filter((_, i) => i % 2 === axis)
    return Math.max(...v) - Math.min(...v)
  }
  expect(span(section.points, 0) / span(hull.points, 0)).toBeCloseTo(0.8 / 2, 9)
  expect(span(section.points, 1)).toBeCloseTo(span(hull.points, 1), 9)
})

test('a rider stands on the deck and no taller than the stature', () => {
  for (const posture of ['standing', 'crouching', 'kneeling', 'sitting', 'prone'] as Posture[]) {
    const heights = [...corners(riderFigure(posture, 3, 1, 1.8, {}))].map((p) => p[1])
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(1 - 1e-9)
    expect(Math.min(...heights)).toBeLessThan(1.1)
    expect(Math.max(...heights)).toBeLessThanOrEqual(1 + 1.8)
  }
})
