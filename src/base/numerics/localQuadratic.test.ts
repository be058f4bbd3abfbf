import fc from 'fast-check'
import { expect, test } from 'vitest'
import { localQuadratic } from './localQuadratic.ts'

test('localQuadratic gives back a parabola exactly, on any spacing', () => {
  const n = fc.double({ min: -3, max: 3, noNaN: true })
  fc.assert(
    fc.property(n, n, n, fc.integer({ min: 1, max: 1000 }), (a, b, c, jitter) => {
      const x = Array.from({ length: 15 }, (_, i) => i * 0.1 + 0.04 * Math.sin(jitter * i))
      const y = x.map((t) => a + b * t + c * t * t)
      const f = localQuadratic(x, y, 0.7, 0.5)
      expect(f.value).toBeCloseTo(a + 0.7 * b + 0.49 * c, 8)
      expect(f.slope).toBeCloseTo(b + 1.4 * c, 7)
      expect(f.curvature).toBeCloseTo(2 * c, 6)
    }),
  )
})

test('localQuadratic is NaN with fewer than three distinct points in reach', () => {
  expect(localQuadratic([0, 1], [1, 2], 0.5, 2).value).toBeNaN()
  expect(localQuadratic([0, 0, 1, 1], [1, 1, 2, 2], 0.5, 2).value).toBeNaN()
  expect(localQuadratic([], [], 0, 1).points).toBe(0)
})
