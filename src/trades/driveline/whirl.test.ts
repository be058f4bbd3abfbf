import fc from 'fast-check'
import { expect, test } from 'vitest'
import { shaftMetalOf } from './shaftStress.ts'
import { plainWhirl, type WhirlingShaft, whirlByDunkerley, whirlByRayleigh, whirlSpeed } from './whirl.ts'

const metal = shaftMetalOf('stainless steel')
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const shafts = fc.record({
  diameter: between(8e-3, 0.03),
  bore: fc.constant(0),
  span: between(0.1, 1),
  overhang: between(0.01, 0.2),
  mass: between(0.02, 3),
  seat: between(1e6, 1e9),
})

test('the speed lies between Dunkerley’s bound and Rayleigh’s for any shaft with an overhung mass', () => {
  fc.assert(
    fc.property(shafts, (s) => {
      const shaft: WhirlingShaft = { metal, ...s }
      const found = whirlSpeed(shaft)
      expect(found.converged).toBe(true)
      expect(found.value).toBeGreaterThanOrEqual(whirlByDunkerley(shaft) * (1 - 1e-6))
      expect(found.value).toBeLessThanOrEqual(whirlByRayleigh(shaft) * (1 + 1e-6))
    }),
    { numRuns: 60 },
  )
})

test('a heavier impeller, a longer overhang and a softer seat each whirl earlier', () => {
  const base: WhirlingShaft = {
    metal,
    diameter: 0.012,
    bore: 0,
    span: 0.35,
    overhang: 0.06,
    mass: 0.4,
    seat: 1e7,
  }
  const speed = (over: Partial<WhirlingShaft>) => whirlSpeed({ ...base, ...over }).value
  expect(speed({ mass: 0.8 })).toBeLessThan(speed({}))
  expect(speed({ overhang: 0.12 })).toBeLessThan(speed({}))
  expect(speed({ seat: 1e6 })).toBeLessThan(speed({}))
  expect(speed({ diameter: 0.016 })).toBeGreaterThan(speed({}))
})

test('built-in ends whirl 2.27 times as fast as free ones', () => {
  const s = { metal, diameter: 0.012, bore: 0, span: 0.5 }
  expect(plainWhirl(s, true) / plainWhirl(s)).toBeCloseTo(22.373 / Math.PI ** 2, 9)
})

test('without a span it is a cantilever: stiffness 3EI/L³ at its end', () => {
  const light = { modulus: metal.modulus, density: 1e-3 }
  const s: WhirlingShaft = {
    metal: light,
    diameter: 0.012,
    bore: 0,
    span: 0,
    overhang: 0.2,
    mass: 1,
    seat: 1e15,
  }
  const k = (3 * metal.modulus * Math.PI * 0.012 ** 4) / 64 / 0.2 ** 3
  expect(whirlSpeed(s).value).toBeCloseTo(Math.sqrt(k) / (2 * Math.PI), 3)
})
