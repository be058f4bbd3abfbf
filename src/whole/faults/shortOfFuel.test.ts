import fc from 'fast-check'
import { expect, test } from 'vitest'
import { leftWith, shortOfFuel } from './shortOfFuel.ts'

test('a jet part shut leaves less torque the more of it is shut, and a fifth of it shut leaves most', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.02, max: 0.8, noNaN: true }), (b) => {
      expect(leftWith(b)).toBeLessThanOrEqual(1)
      expect(leftWith(b + 0.05)).toBeLessThan(leftWith(b) + 1e-9)
    }),
  )
  const [slight, severe] = shortOfFuel
  expect(slight).toBeGreaterThan(0.88)
  expect(slight).toBeLessThan(0.97)
  expect(severe).toBeGreaterThan(0.55)
  expect(severe).toBeLessThan(0.68)
})
