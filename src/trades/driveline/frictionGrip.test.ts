import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  clampTorque,
  crossPin,
  flangeTorque,
  keyFor,
  keyStress,
  rubRadius,
  setScrewTorque,
  splinePressure,
} from './frictionGrip.ts'
import { boltOf } from './metricBolts.ts'
import { boltThreadArea, insertHolds, lengthThatHolds, nutThreadArea, stripsAt } from './threadStrip.ts'

test('a ring rubs between its inside and outside radius, a thin one in its middle', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-3, max: 0.2, noNaN: true }),
      fc.double({ min: 1e-3, max: 0.2, noNaN: true }),
      (inside, wide) => {
        const r = rubRadius(inside, inside + wide)
        expect(r).toBeGreaterThan(inside)
        expect(r).toBeLessThan(inside + wide)
      },
    ),
  )
  expect(rubRadius(0.05, 0.0501)).toBeCloseTo(0.05005, 6)
  expect(() => rubRadius(0.05, 0.04)).toThrow(/outside/)
})

test('flange and hub hold in proportion to the pull; a hub evenly gripped holds half as much again as along two lines', () => {
  expect(flangeTorque(0.15, 1, 2000, 0.02)).toBeCloseTo(2 * flangeTorque(0.15, 1, 1000, 0.02), 12)
  const { lines, even } = clampTorque(0.15, 8000, 0.012)
  expect(even / lines).toBeCloseTo(Math.PI / 2, 12)
  expect(setScrewTorque(4000, 0.012)).toBeCloseTo(13.68, 2)
})

test('keys grow with the shaft, and their stresses fall with length and diameter', () => {
  expect(keyFor(0.012)).toEqual({ width: 4e-3, height: 4e-3 })
  expect(keyFor(0.02)).toEqual({ width: 6e-3, height: 6e-3 })
  const a = keyStress(20, 0.015, 0.02)
  const b = keyStress(20, 0.015, 0.04)
  expect(b.flank).toBeCloseTo(a.flank / 2, 6)
  expect(b.shear).toBeCloseTo(a.shear / 2, 6)
  expect(splinePressure(20, 10, 1e-3, 0.02, 0.015)).toBeCloseTo(
    (2 * 20) / (0.75 * 10 * 1e-3 * 0.02 * 0.015),
    0,
  )
  expect(crossPin(10, 4e-3, 0.012, 5e-3).shear).toBeCloseTo(10 / 0.012 / (Math.PI * 4e-6), 0)
})

test('the nut’s thread is stronger than the bolt’s of the same metal, and strip grows with engagement', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('M3', 'M5', 'M8', 'M12'),
      fc.double({ min: 1e-3, max: 0.05, noNaN: true }),
      (size, engaged) => {
        const b = boltOf(size)
        expect(nutThreadArea(b, engaged)).toBeGreaterThan(boltThreadArea(b, engaged))
        expect(stripsAt(b, 2 * engaged, 140e6)).toBeCloseTo(2 * stripsAt(b, engaged, 140e6), 3)
        // at the length that holds both give way together
        const enough = lengthThatHolds(b, 800e6, 140e6)
        expect(stripsAt(b, enough, 140e6)).toBeCloseTo(lengthThatHolds(b, 800e6, 1) * nutThreadArea(b, 1), 0)
      },
    ),
  )
  expect(insertHolds(7e-3, 8e-3, 11e6)).toBeCloseTo(0.5 * Math.PI * 7e-3 * 8e-3 * 11e6, 6)
})
