import fc from 'fast-check'
import { expect, test } from 'vitest'
import { cubicAt, linearAt, pchip } from './interpolate.ts'

const table = fc
  .array(
    fc.tuple(fc.double({ min: 0.01, max: 3, noNaN: true }), fc.double({ min: -10, max: 10, noNaN: true })),
    {
      minLength: 2,
      maxLength: 12,
    },
  )
  .map((steps) => {
    let x = 0
    return { x: steps.map(([dx]) => (x += dx)), y: steps.map(([, y]) => y) }
  })

test('pchip goes through its points and never leaves the range of two neighbours', () => {
  fc.assert(
    fc.property(table, fc.double({ min: 0, max: 1, noNaN: true }), ({ x, y }, t) => {
      const c = pchip(x, y)
      for (let i = 0; i < x.length; i++) expect(cubicAt(c, x[i]!)).toBeCloseTo(y[i]!, 9)
      for (let i = 0; i + 1 < x.length; i++) {
        const v = cubicAt(c, x[i]! + t * (x[i + 1]! - x[i]!))
        expect(v).toBeGreaterThanOrEqual(Math.min(y[i]!, y[i + 1]!) - 1e-9)
        expect(v).toBeLessThanOrEqual(Math.max(y[i]!, y[i + 1]!) + 1e-9)
      }
    }),
  )
})

test('outside the knots the end values hold, and NaN stays NaN', () => {
  const c = pchip([0, 1], [3, 5])
  expect(cubicAt(c, -9)).toBe(3)
  expect(cubicAt(c, 9)).toBe(5)
  expect(cubicAt(c, Number.NaN)).toBeNaN()
  expect(linearAt([0, 1], [3, 5], 0.5)).toBe(4)
})

test('pchip refuses points out of order by name', () => {
  expect(() => pchip([0, 0], [1, 2])).toThrow(/increasing x/)
  expect(() => pchip([0], [1])).toThrow(/two or more/)
})
