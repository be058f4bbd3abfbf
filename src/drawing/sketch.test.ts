import fc from 'fast-check'
import { expect, test } from 'vitest'
import { moved, stacked } from './compose.ts'
import { centreLine, dimension } from './dimension.ts'
import { expectGolden } from './golden.testkit.ts'
import { hatch } from './hatching.ts'
import { polygon } from './marks.ts'
import type { Mark, Sheet } from './sheet.ts'

const outline = [20, 20, 80, 20, 80, 50, 20, 50]
const hole = [40, 30, 60, 30, 60, 40, 40, 40]
const lengthOf = (marks: readonly Mark[]) =>
  marks.reduce(
    (sum, m) =>
      sum +
      (m.kind === 'polyline' ? Math.hypot(m.points[2]! - m.points[0]!, m.points[3]! - m.points[1]!) : 0),
    0,
  )

test('a plate with a hole, dimensions all round and a centre line looks as it did', () => {
  const ink = { stroke: '#1b1b1b', width: 0.5 }
  const sheet: Sheet = {
    width: 110,
    height: 70,
    title: 'Plate',
    says: 'A plate of 60 by 30 mm with a hole.',
    marks: [
      ...hatch([outline, hole]),
      polygon(outline, ink, 'cut'),
      polygon(hole, ink, 'cut'),
      ...dimension(20, 20, 80, 20, -8, '60'),
      ...dimension(20, 20, 20, 50, 8, '30'),
      ...dimension(80, 50, 80, 20, 8, '30'),
      ...dimension(20, 50, 24, 50, 6, '4'),
      centreLine(20, 35, 80, 35),
    ],
  }
  expectGolden(sheet, import.meta.dirname, 'sketch')
})

test('figures of a dimension are never upside down, whichever way it runs', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
      fc.double({ min: 3, max: 60, noNaN: true }),
      (a, l) => {
        const marks = dimension(0, 0, l * Math.cos(a), l * Math.sin(a), 6, '12.5')
        const words = marks.find((m) => m.kind === 'text')!
        const angle = words.kind === 'text' ? (words.angle ?? 0) : 0
        expect(angle).toBeGreaterThan(-Math.PI / 2 - 1e-6)
        expect(angle).toBeLessThanOrEqual(Math.PI / 2 + 1e-6)
      },
    ),
  )
  expect(dimension(1, 1, 1, 1, 5, '0')).toEqual([])
})

test('hatch lines cover the area evenly: their length times the spacing is the area, holes left out', () => {
  for (const angle of [0, 0.3, Math.PI / 4, 2]) {
    const fine = hatch([outline, hole], 0.05, angle)
    expect(lengthOf(fine) * 0.05).toBeGreaterThan(1600 * 0.995)
    expect(lengthOf(fine) * 0.05).toBeLessThan(1600 * 1.005)
  }
  expect(hatch([], 1)).toEqual([])
  expect(() => hatch([outline], 0)).toThrow(RangeError)
})

test('moving and growing marks keeps shapes similar; stacking puts the first on top', () => {
  const [grown] = moved([polygon(outline, {}, 'cut')], 5, -2, 3)
  expect(grown!.kind === 'polygon' && [...grown!.points.subarray(0, 4)]).toEqual([65, 58, 245, 58])
  const one: Sheet = {
    width: 10,
    height: 4,
    title: '',
    says: '',
    marks: [polygon([0, 0, 1, 0, 1, 1], {}, 'cut', 'first')],
  }
  const both = stacked([one, { ...one, width: 20, height: 6 }], 2, 't', 's')
  expect([both.width, both.height]).toEqual([20, 12])
  expect(both.marks.map((m) => (m.kind === 'polygon' ? m.points[1] : 0))).toEqual([8, 0])
})
