import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  add,
  type Complex,
  complex,
  cosine,
  divide,
  magnitude,
  multiply,
  sine,
  squareRoot,
  subtract,
} from './complex.ts'

const near = (a: Complex, b: Complex, within = 1e-9) =>
  expect(magnitude(subtract(a, b))).toBeLessThanOrEqual(within * (1 + magnitude(b)))
const any = fc
  .tuple(fc.double({ min: -8, max: 8, noNaN: true }), fc.double({ min: -8, max: 8, noNaN: true }))
  .map(([re, im]) => complex(re, im))

test('divide undoes multiply, and the square of a root is the number', () => {
  fc.assert(
    fc.property(any, any, (a, b) => {
      if (magnitude(b) > 1e-6) near(multiply(divide(a, b), b), a)
      const r = squareRoot(a)
      near(multiply(r, r), a)
      expect(r.re).toBeGreaterThanOrEqual(0)
    }),
  )
})

test('cos² + sin² = 1 for every complex number', () => {
  fc.assert(
    fc.property(any, (a) => {
      const c = cosine(a)
      const s = sine(a)
      const sum = add(multiply(c, c), multiply(s, s))
      // cosh squared is lost and found again, so the error grows with it
      expect(magnitude(subtract(sum, complex(1)))).toBeLessThan(1e-13 * Math.cosh(2 * Math.abs(a.im)) + 1e-12)
    }),
  )
})
