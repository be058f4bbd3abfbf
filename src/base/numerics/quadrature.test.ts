import fc from 'fast-check'
import { expect, test } from 'vitest'
import { gaussLegendre, integrate } from './quadrature.ts'

test('the 2- and 5-point rules are those of Abramowitz and Stegun, table 25.4', () => {
  expect(gaussLegendre(2).node[1]).toBeCloseTo(0.577350269189626, 14)
  expect(Array.from(gaussLegendre(5).node).slice(2)).toEqual([
    0,
    expect.closeTo(0.538469310105683, 14),
    expect.closeTo(0.906179845938664, 14),
  ])
  expect(gaussLegendre(5).weight[2]).toBeCloseTo(0.568888888888889, 14)
})

test('n points integrate every polynomial of degree 2n − 1 exactly', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 40 }), (n) => {
      const degree = 2 * n - 1
      expect(integrate((x) => (degree + 1) * x ** degree, 0, 1, n)).toBeCloseTo(1, 11)
      let sum = 0
      for (const w of gaussLegendre(n).weight) sum += w
      expect(sum).toBeCloseTo(2, 12)
    }),
  )
})

test('a count that is not a whole number of points is refused', () => {
  expect(() => gaussLegendre(0)).toThrow(RangeError)
  expect(() => gaussLegendre(2.5)).toThrow(RangeError)
})
