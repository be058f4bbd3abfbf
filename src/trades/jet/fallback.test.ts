import fc from 'fast-check'
import { expect, test } from 'vitest'
import { cordierDiameter, fallbackAt, fallbackPump, stepUp } from './fallback.ts'

test('Cordier’s line passes through its points, falls between them and is refused outside', () => {
  expect(cordierDiameter(2)).toBeCloseTo(1.89, 9)
  expect(cordierDiameter(8)).toBeCloseTo(1.04, 9)
  fc.assert(
    fc.property(fc.double({ min: 1, max: 9.9, noNaN: true }), (w) => {
      expect(cordierDiameter(w * 1.01)).toBeLessThan(cordierDiameter(w))
    }),
  )
  expect(() => cordierDiameter(0.5)).toThrow(/1 to 10/)
  expect(() => cordierDiameter(Number.NaN)).toThrow(RangeError)
})

test('the curve is best at its best flow, has its own head there and refuses torque far from it', () => {
  const pump = fallbackPump(3, 'sanded print')
  const best = fallbackAt(pump, pump.flow)
  expect(best.eta).toBeCloseTo(0.75, 12)
  expect(best.head).toBeCloseTo(pump.head, 12)
  for (const x of [0.7, 0.85, 1.15, 1.3]) expect(fallbackAt(pump, x * pump.flow).eta).toBeLessThan(best.eta)
  expect(fallbackAt(pump, 0.3 * pump.flow).torque).toBeNaN()
})

test('efficiency steps up with size and smoothness, and not at all for the same pump', () => {
  const small = { chord: 0.06, speed: 25, kinematic: 1e-6, roughness: 12e-6 }
  expect(stepUp(0.7, small, small)).toBeCloseTo(0.7, 12)
  expect(stepUp(0.7, small, { ...small, chord: 0.3 })).toBeGreaterThan(0.7)
  expect(stepUp(0.7, small, { ...small, roughness: 1e-6 })).toBeGreaterThan(0.7)
})
