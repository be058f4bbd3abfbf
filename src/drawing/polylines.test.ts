import fc from 'fast-check'
import { expect, test } from 'vitest'
import { clipLine, clipPolygon, finiteRuns, thinLine } from './polylines.ts'

const box = { left: 0, right: 10, bottom: 0, top: 5 }
const points = fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 4, maxLength: 80 })

test('finiteRuns breaks at every NaN and infinity and keeps the other points in order', () => {
  expect(finiteRuns([0, 1, Number.NaN, 3, 4, 5], [0, 1, 2, 3, Number.POSITIVE_INFINITY, 5])).toEqual([
    [0, 0, 1, 1],
    [3, 3],
    [5, 5],
  ])
  expect(finiteRuns([], [])).toEqual([])
})

test('a clipped line lies inside the box, whatever the line', () => {
  fc.assert(
    fc.property(points, (flat) => {
      const run = flat.slice(0, flat.length - (flat.length % 2))
      for (const part of clipLine(run, box))
        for (let i = 0; i < part.length; i += 2) {
          expect(part[i]).toBeGreaterThanOrEqual(box.left - 1e-9)
          expect(part[i]).toBeLessThanOrEqual(box.right + 1e-9)
          expect(part[i + 1]).toBeGreaterThanOrEqual(box.bottom - 1e-9)
          expect(part[i + 1]).toBeLessThanOrEqual(box.top + 1e-9)
        }
    }),
  )
})

test('a line wholly inside the box is returned as it was', () => {
  expect(clipLine([1, 1, 5, 4, 9, 2], box)).toEqual([[1, 1, 5, 4, 9, 2]])
})

test('a line that leaves and comes back gives two parts that end on the box', () => {
  expect(clipLine([5, 1, 5, 9, 7, 9, 7, 1], box)).toEqual([
    [5, 1, 5, 5],
    [7, 5, 7, 1],
  ])
})

test('clipPolygon keeps the area of a square half inside', () => {
  const cut = clipPolygon([-5, 1, 5, 1, 5, 3, -5, 3], box)
  let twice = 0
  for (let i = 0; i < cut.length; i += 2) {
    const j = (i + 2) % cut.length
    twice += cut[i]! * cut[j + 1]! - cut[j]! * cut[i + 1]!
  }
  expect(twice / 2).toBeCloseTo(10, 12)
})

test('thinning keeps the highest and the lowest value, both ends and the order', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 1, maxLength: 3000 }),
      fc.double({ min: 0.05, max: 50, noNaN: true }),
      (ys, column) => {
        const run = ys.flatMap((y, i) => [i * 0.01, y])
        const thin = thinLine(run, column)
        const kept = [...thin].filter((_, i) => i % 2 === 1)
        expect(Math.max(...kept)).toBe(Math.max(...ys))
        expect(Math.min(...kept)).toBe(Math.min(...ys))
        expect([thin[0], thin[1]]).toEqual([run[0], run[1]])
        expect([thin.at(-2), thin.at(-1)]).toEqual([run.at(-2), run.at(-1)])
        expect(kept.length).toBeLessThanOrEqual(4 * (Math.floor((ys.length * 0.01) / column) + 1))
        for (let i = 2; i < thin.length; i += 2) expect(thin[i]).toBeGreaterThan(thin[i - 2]!)
      },
    ),
    { numRuns: 60 },
  )
})
