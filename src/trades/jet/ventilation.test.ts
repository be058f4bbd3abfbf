import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dipDepth, flowBeforeDip, submergenceNeeded } from './ventilation.ts'

test('dipDepth grows as the two fifths power of flow, is nothing at none, and flowBeforeDip undoes it', () => {
  expect(dipDepth(0)).toBe(0)
  expect(dipDepth(-0.01)).toBe(0)
  expect(flowBeforeDip(0)).toBe(0)
  expect(flowBeforeDip(-1)).toBe(0)
  expect(dipDepth(0.064) / dipDepth(0.002)).toBeCloseTo(4, 9)
  fc.assert(
    fc.property(fc.double({ min: 1e-4, max: 1, noNaN: true }), (Q) => {
      expect(flowBeforeDip(dipDepth(Q)) / Q).toBeCloseTo(1, 9)
    }),
  )
})

test('a swirl draws air from deeper than a dip over every opening a small jet has', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.008, max: 0.08, noNaN: true }),
      fc.double({ min: 0.5, max: 4, noNaN: true }),
      (area, speed) => {
        expect(submergenceNeeded(area, area * speed).needed).toBeGreaterThan(dipDepth(area * speed))
      },
    ),
  )
})
