import fc from 'fast-check'
import { expect, test } from 'vitest'
import { effectAt, effectThrough, percentile } from './effects.ts'

const number = fc.double({ min: -5, max: 5, noNaN: true })

test('effectThrough meets its two or three points', () => {
  fc.assert(
    fc.property(number, number, number, fc.double({ min: -0.8, max: 0.8, noNaN: true }), (a, b, c, x) => {
      const three = effectThrough([
        [-1, a],
        [x, b],
        [1, c],
      ])
      expect(effectAt(three, -1)).toBeCloseTo(a, 9)
      expect(effectAt(three, x)).toBeCloseTo(b, 9)
      expect(effectAt(three, 1)).toBeCloseTo(c, 9)
      expect(
        effectAt(
          effectThrough([
            [-1, a],
            [1, c],
          ]),
          0,
        ),
      ).toBeCloseTo((a + c) / 2, 9)
    }),
  )
})

test('percentile goes through the middle of an odd set, stays inside it, and is NaN for none', () => {
  expect(percentile([1, 2, 10], 0.5)).toBe(2)
  expect(percentile([1, 2, 10], 0)).toBe(1)
  expect(percentile([1, 2, 10], 1)).toBe(10)
  expect(percentile([4, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY], 0.9)).toBe(
    Number.POSITIVE_INFINITY,
  )
  expect(percentile([], 0.5)).toBeNaN()
})
