import { expect, test } from 'vitest'
import { atmosphericPressure } from './atmosphere.ts'
import { saturationPressure, seaVapourPressure } from './vapour.ts'

test('saturation pressure returns the verification table of IAPWS-IF97', () => {
  // IF97 Table 35
  for (const [T, mpa] of [
    [300, 0.353658941e-2],
    [500, 0.263889776e1],
    [600, 0.123443146e2],
  ] as const)
    expect(Math.abs(saturationPressure(T) / (mpa * 1e6) - 1)).toBeLessThan(1e-8)
})

test('saturation pressure rises with temperature, and outside its range it throws instead of guessing', () => {
  for (let T = 274; T < 640; T += 5) expect(saturationPressure(T + 1)).toBeGreaterThan(saturationPressure(T))
  expect(() => saturationPressure(200)).toThrow(/273.15/)
  expect(() => saturationPressure(Number.NaN)).toThrow(RangeError)
})

test('salt lowers the vapour pressure by about 2 % at ocean strength', () => {
  const ratio = seaVapourPressure(288.15, 0.035) / saturationPressure(288.15)
  expect(ratio).toBeGreaterThan(0.975)
  expect(ratio).toBeLessThan(0.985)
})

test('the standard atmosphere has 89 875 Pa at 1000 m and 54 020 Pa at 5000 m', () => {
  // ISO 2533:1975 Table 5
  expect(atmosphericPressure(1000)).toBeCloseTo(89875, -1)
  expect(atmosphericPressure(5000)).toBeCloseTo(54020, -1)
  expect(() => atmosphericPressure(20000)).toThrow(RangeError)
})
