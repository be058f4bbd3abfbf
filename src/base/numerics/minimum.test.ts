import fc from 'fast-check'
import { expect, test } from 'vitest'
import { minimumIn } from './minimum.ts'

test('minimumIn finds the dip of a smooth function anywhere in its interval', () => {
  fc.assert(
    fc.property(fc.double({ min: -2, max: 3, noNaN: true }), (at) => {
      const s = minimumIn((x) => Math.cosh(x - at), -2.5, 3.5, { tolerance: 1e-7 })
      expect(s.converged).toBe(true)
      expect(Math.abs(s.value - at)).toBeLessThan(1e-6)
    }),
  )
})

test('minimumIn of a monotone function is the end of the interval', () => {
  expect(minimumIn((x) => x, 1, 4).value).toBe(1)
  expect(minimumIn((x) => -x, 1, 4).value).toBe(4)
})

test('minimumIn says not converged for NaN and for an interval the wrong way round', () => {
  expect(minimumIn(() => Number.NaN, 0, 1).converged).toBe(false)
  expect(minimumIn((x) => x, 1, 0).converged).toBe(false)
})

test('minimumIn takes few calls', () => {
  let calls = 0
  minimumIn(
    (x) => {
      calls++
      return x ** 2 - 3 * Math.sqrt(x)
    },
    0.01,
    10,
    { tolerance: 1e-4 },
  )
  expect(calls).toBeLessThan(20)
})
