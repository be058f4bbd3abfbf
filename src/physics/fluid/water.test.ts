import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  freshWaterDensity,
  kinematicViscosity,
  seaWaterDensity,
  seaWaterViscosity,
  waterAt,
  waterViscosity,
} from './water.ts'

test('freshWaterDensity has its maximum at 4 °C', () => {
  const at4 = freshWaterDensity(277.13)
  expect(at4).toBeCloseTo(999.975, 2)
  expect(freshWaterDensity(276.15)).toBeLessThan(at4)
  expect(freshWaterDensity(278.15)).toBeLessThan(at4)
})

test('waterViscosity is 1.002 mPa·s at 20 °C and falls as water warms', () => {
  expect(waterViscosity(293.15)).toBeCloseTo(1.002e-3, 9)
  fc.assert(
    fc.property(fc.double({ min: 274, max: 370, noNaN: true }), (T) => {
      expect(waterViscosity(T + 1)).toBeLessThan(waterViscosity(T))
    }),
  )
})

test('salt makes water denser and more viscous, and none leaves it fresh', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 274, max: 310, noNaN: true }),
      fc.double({ min: 0.001, max: 0.04, noNaN: true }),
      (T, salinity) => {
        expect(seaWaterDensity(T, salinity)).toBeGreaterThan(freshWaterDensity(T))
        expect(seaWaterViscosity(T, salinity)).toBeGreaterThan(waterViscosity(T))
        expect(seaWaterDensity(T, 0)).toBe(freshWaterDensity(T))
        expect(waterAt(T, 0).kinematicViscosity).toBe(kinematicViscosity(T))
      },
    ),
  )
})

test('water outside 271 to 373 K, NaN, and brine are refused with the value and the range', () => {
  expect(() => freshWaterDensity(20)).toThrow('water temperature 20 K is outside 271 to 373 K')
  expect(() => waterViscosity(Number.NaN)).toThrow(RangeError)
  expect(() => seaWaterDensity(288, 35)).toThrow('salinity 35 is outside 0 to 0.042')
})
