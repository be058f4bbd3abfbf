import fc from 'fast-check'
import { expect, test } from 'vitest'
import { chineHalfBreadth, deadriseAt, floatAtRest, keelHeight } from './dragForm.ts'
import type { HullSpec } from './hullSpec.ts'

const box: HullSpec = {
  length: 2,
  chineBeam: 0.7,
  deadrise: 0,
  depth: 0.3,
  noseRise: 0,
  widestAt: 2,
}
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

test('a box floats at mass over density over waterplane, level when its weight is amidships', () => {
  const s = floatAtRest(box, 190, 1, 0.2, 999.1)
  expect(s.converged).toBe(true)
  expect(s.value.draft).toBeCloseTo(190 / (999.1 * 2 * 0.7), 3)
  expect(s.value.trim).toBeCloseTo(0, 4)
  expect(s.value.transomRatio).toBeCloseTo(1, 3)
  expect(s.value.wettedSurface).toBeCloseTo(2 * (0.7 + 2 * s.value.draft), 1)
})

test('a box trims by m (x_G − L/2) over the longitudinal stiffness', () => {
  const mass = 190
  const draft = mass / (999.1 * 1.4)
  // GM_L = KB + L²/(12 T) − KG
  const stiffness = draft / 2 + 4 / (12 * draft) - 0.2
  const s = floatAtRest(box, mass, 0.98, 0.2, 999.1)
  expect(s.value.trim).toBeCloseTo(0.02 / stiffness, 3)
})

const sleds = fc.record({
  length: number(1.8, 3.2),
  chineBeam: number(0.5, 1),
  deadrise: number(0, 0.35),
  noseDeadrise: number(0.2, 0.6),
  depth: fc.constant(0.35),
  noseRise: number(0, 0.3),
  tailWidth: number(0.7, 1),
})

test('the float carries its mass, and moving weight forward lowers the bow', () => {
  fc.assert(
    fc.property(sleds, number(100, 220), (spec, mass) => {
      const x = 0.42 * spec.length
      const s = floatAtRest(spec, mass, x, 0.3, 999)
      fc.pre(s.converged)
      expect(s.value.volume).toBeCloseTo(mass / 999, 9)
      const forward = floatAtRest(spec, mass, x + 0.02, 0.3, 999)
      fc.pre(forward.converged)
      expect(forward.value.trim).toBeLessThan(s.value.trim)
      expect(s.value.transomRatio).toBeLessThanOrEqual(1)
      expect(s.value.length).toBeLessThanOrEqual(spec.length + 1e-9)
      expect(s.value.beam).toBeLessThanOrEqual(spec.chineBeam + 1e-9)
    }),
  )
})

test('more mass sits deeper', () => {
  fc.assert(
    fc.property(sleds, number(100, 200), (spec, mass) => {
      const at = (m: number) => floatAtRest(spec, m, 0.45 * spec.length, 0.2, 999)
      const light = at(mass)
      const heavy = at(mass + 10)
      fc.pre(light.converged && heavy.converged)
      expect(heavy.value.waterAtTransom + heavy.value.draft).toBeGreaterThan(
        light.value.waterAtTransom + light.value.draft,
      )
    }),
  )
})

test('a mass the hull cannot carry is not converged', () => {
  expect(floatAtRest(box, 900, 1, 0.2, 999).converged).toBe(false)
})

test('the plan, the keel and the deadrise run through their given points', () => {
  const spec: HullSpec = {
    length: 2.4,
    chineBeam: 0.7,
    deadrise: 0.1,
    midDeadrise: 0.2,
    noseDeadrise: 0.5,
    depth: 0.24,
    noseRise: 0.16,
    noseRiseFrom: 1.5,
    sternRise: 0.01,
    sternRiseOver: 0.4,
    widestAt: 1.1,
    tailWidth: 0.9,
  }
  expect(chineHalfBreadth(spec, 1.1)).toBeCloseTo(0.35, 12)
  expect(chineHalfBreadth(spec, 0)).toBeCloseTo(0.315, 12)
  expect(keelHeight(spec, 2.4)).toBeCloseTo(0.16, 12)
  expect(keelHeight(spec, 0)).toBeCloseTo(0.01, 12)
  expect(keelHeight(spec, 1)).toBe(0)
  expect([0, 1.2, 2.4].map((x) => deadriseAt(spec, x))).toEqual([0.1, 0.2, 0.5])
})
