import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bowDownMoment } from './planing.testkit.ts'
import {
  flatPlateLift,
  lambdaAtTrim,
  liftFunction,
  type PlaningCase,
  planingAt,
  planingState,
  savitsky1964,
} from './planing.ts'

const degree = Math.PI / 180
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const cases = fc.record({
  speed: number(4, 14),
  weight: number(1000, 3000),
  beam: number(0.5, 1.1),
  deadrise: number(0, 0.4),
  density: fc.constant(999),
  kinematicViscosity: fc.constant(1.1e-6),
  roughness: fc.constant(4e-4),
  centreHeight: number(0.15, 0.8),
  thrustHeight: number(0, 0.2),
  thrustAngle: number(-0.1, 0.1),
  airDrag: number(0, 80),
  airHeight: number(0.3, 1.2),
  appendage: number(0, 20),
}) satisfies fc.Arbitrary<PlaningCase>

test('flatPlateLift solves its equation, is never below the lift, and rises with deadrise', () => {
  fc.assert(
    fc.property(number(0.005, 1.5), number(0, 0.8), (lift, deadrise) => {
      const flat = flatPlateLift(lift, deadrise)
      expect(flat - 0.0065 * (deadrise / degree) * flat ** 0.6).toBeCloseTo(lift, 10)
      expect(flat).toBeGreaterThanOrEqual(lift)
      expect(flatPlateLift(lift, deadrise + 0.02)).toBeGreaterThan(flat)
    }),
  )
  expect(flatPlateLift(0.07, 0)).toBe(0.07)
})

test('lambdaAtTrim is the inverse of the lift function and falls as trim rises', () => {
  fc.assert(
    fc.property(number(0.01, 1), number(0.02, 0.3), number(0.6, 12), (flat, trim, Cv) => {
      const lambda = lambdaAtTrim(flat, trim, Cv)
      expect((trim / degree) ** 1.1 * liftFunction(lambda, Cv)).toBeCloseTo(flat, 9)
      expect(lambdaAtTrim(flat, trim * 1.05, Cv)).toBeLessThan(lambda)
    }),
  )
})

test('the three forces balance to 1e-9 of the weight, along and across, and about the centre of gravity', () => {
  fc.assert(
    fc.property(cases, number(0.5, 4), (c, lambda) => {
      const s = planingAt(c, lambda, planingState())
      const along = s.friction + s.spray + s.appendage
      const turned = s.trim + c.thrustAngle
      const up = s.normal * Math.cos(s.trim) + s.thrust * Math.sin(turned) - along * Math.sin(s.trim)
      const ahead =
        s.thrust * Math.cos(turned) - along * Math.cos(s.trim) - c.airDrag - s.normal * Math.sin(s.trim)
      expect(Math.abs(up - c.weight)).toBeLessThan(1e-9 * c.weight)
      expect(Math.abs(ahead)).toBeLessThan(1e-9 * c.weight)
      expect(Math.abs(bowDownMoment(c, s, s.neededCentre))).toBeLessThan(1e-9 * c.weight)
      expect(s.thrust).toBeGreaterThan(0)
    }),
  )
})

test('the moment found here is N c + D a − T f − air × arm with f the distance of the thrust line below the centre', () => {
  fc.assert(
    fc.property(cases, number(0.5, 4), number(0.3, 1.6), (c, lambda, centre) => {
      const s = planingAt(c, lambda, planingState())
      const f = (c.centreHeight - c.thrustHeight) * Math.cos(c.thrustAngle) - centre * Math.sin(c.thrustAngle)
      const along = s.friction + s.spray + s.appendage
      const direct =
        s.normal * (centre - s.pressureCentre) +
        along * (c.centreHeight - (c.beam / 4) * Math.tan(c.deadrise)) -
        s.thrust * f -
        c.airDrag * (c.airHeight - c.centreHeight)
      expect(bowDownMoment(c, s, centre)).toBeCloseTo(direct, 6)
    }),
  )
})

test('drag is never below weight × tan trim when the thrust runs along the keel and nothing lifts but the water', () => {
  fc.assert(
    fc.property(cases, number(0.5, 4), (any, lambda) => {
      const c = { ...any, thrustAngle: 0, airDrag: 0, appendage: 0 }
      const s = planingAt(c, lambda, planingState())
      fc.pre(s.trim < 0.5)
      // T cos τ = (D + W sin τ) cos τ; per unit of what the water carries it is at least tan τ
      expect(s.drag).toBeGreaterThanOrEqual(
        (c.weight - s.thrust * Math.sin(s.trim)) * Math.tan(s.trim) - 1e-9,
      )
      expect(c.weight * Math.sin(s.trim)).toBeLessThan(s.thrust)
    }),
  )
})

test('thrust that carries some of the weight flattens the trim, wherever the trim is one a boat can run at', () => {
  fc.assert(
    fc.property(cases, number(0.8, 3), (any, lambda) => {
      const c = { ...any, thrustAngle: 0.1 }
      const plain = planingAt(c, lambda, planingState())
      fc.pre(plain.trim < 0.5)
      const helped = planingAt({ ...c, thrustLifts: true }, lambda, planingState())
      expect(helped.trim).toBeLessThan(plain.trim)
    }),
  )
})

test('savitsky1964: weight further forward flattens the trim, and D is W tan τ + Df / cos τ', () => {
  fc.assert(
    fc.property(number(0.75, 1.1), number(6, 11), number(0, 0.3), (centre, speed, deadrise) => {
      const at = (x: number) =>
        savitsky1964({
          speed,
          weight: 1800,
          beam: 0.7,
          deadrise,
          centre: x,
          centreHeight: 0.3,
          thrustAngle: 0,
          thrustBelow: 0.2,
          density: 999,
          kinematicViscosity: 1.1e-6,
          roughness: 4e-4,
        })
      const here = at(centre)
      const forward = at(centre + 0.05)
      expect(here.converged && forward.converged).toBe(true)
      expect(forward.value.trim).toBeLessThan(here.value.trim)
      const s = here.value
      expect(s.drag).toBeGreaterThanOrEqual(1800 * Math.tan(s.trim))
      expect(s.drag).toBeCloseTo(1800 * Math.tan(s.trim) + s.friction / Math.cos(s.trim), 8)
      expect(here.residual).toBeLessThan(1e-9)
    }),
    { numRuns: 60 },
  )
})

test('savitsky1964 with the weight on the transom does not converge: it does not plane', () => {
  const s = savitsky1964({
    speed: 4,
    weight: 1800,
    beam: 0.7,
    deadrise: 0,
    centre: 0.05,
    centreHeight: 0.3,
    thrustAngle: 0,
    thrustBelow: 0.2,
    density: 999,
    kinematicViscosity: 1.1e-6,
    roughness: 4e-4,
  })
  expect(s.converged).toBe(false)
})
