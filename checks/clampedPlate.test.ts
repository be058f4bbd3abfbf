import fc from 'fast-check'
import { expect, test } from 'vitest'
import { evenLoadOnPlate, type Plate } from '../src/trades/strength/loadedPlate.ts'
import { clampedPlate } from './clampedPlate.ts'

const plate: Plate = { a: 0.4, b: 0.25, t: 1.5e-3, modulus: 70e9, poisson: 0.33 }
const foot = { load: 900, u: 0.08, v: 0.08 }

test('supported edges bend more than clamped ones', () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 3, noNaN: true }), (ratio) => {
      const p = { ...plate, a: ratio * plate.b }
      const load = { load: 100, u: p.a, v: p.b }
      expect(evenLoadOnPlate(p, 100 / (p.a * p.b)).deflection).toBeGreaterThan(
        clampedPlate(p, load, 8).deflection,
      )
    }),
    { numRuns: 8 },
  )
})

test('an off-centre load on a clamped plate deflects the middle less than a centred one', () => {
  const c = clampedPlate(plate, foot, 10)
  const off = clampedPlate(plate, { ...foot, x: 0.1, y: 0.1 }, 10)
  expect(off.deflection).toBeLessThan(c.deflection)
  expect(off.deflection).toBeGreaterThan(0)
})
