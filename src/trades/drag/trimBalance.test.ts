import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bowDownMoment } from './planing.testkit.ts'
import { type PlaningCase, planingAt, planingState } from './planing.ts'
import { easiestLambda, lambdaWindow, settle, settleBest, trimRange } from './trimBalance.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const cases = fc.record({
  speed: number(4, 12),
  weight: number(1200, 2400),
  beam: number(0.55, 0.95),
  deadrise: number(0, 0.3),
  density: fc.constant(999),
  kinematicViscosity: fc.constant(1.1e-6),
  roughness: fc.constant(4e-4),
  centreHeight: number(0.2, 0.7),
  thrustHeight: number(0, 0.2),
  thrustAngle: number(-0.05, 0.05),
  airDrag: number(0, 50),
  airHeight: number(0.3, 1.1),
  appendage: fc.constant(0),
}) satisfies fc.Arbitrary<PlaningCase>

test('settle leaves no moment and the flattest of all balances', () => {
  fc.assert(
    fc.property(cases, number(0.6, 1.3), (c, centre) => {
      const window = lambdaWindow(c, 2.5)
      const s = planingState()
      fc.pre(settle(c, centre, window, s) === 'balanced')
      expect(Math.abs(bowDownMoment(c, s, centre))).toBeLessThan(1e-6 * c.weight)
      // no sign change of the moment between here and the whole bottom wet
      const probe = planingState()
      for (let i = 1; i <= 40; i++) {
        const lambda = s.lambda * (window.high / s.lambda) ** (i / 40)
        expect(planingAt(c, lambda, probe).neededCentre).toBeGreaterThan(centre - 1e-6)
      }
    }),
  )
})

test('a centre further forward settles flatter', () => {
  fc.assert(
    fc.property(cases, number(0.7, 1.2), (c, centre) => {
      const window = lambdaWindow(c, 2.5)
      const here = planingState()
      const there = planingState()
      fc.pre(
        settle(c, centre, window, here) === 'balanced' &&
          settle(c, centre + 0.03, window, there) === 'balanced',
      )
      expect(there.trim).toBeLessThan(here.trim)
    }),
  )
})

test('states found stay inside the trims looked at and the bottom there is', () => {
  fc.assert(
    fc.property(cases, number(0.2, 2), (c, centre) => {
      const window = lambdaWindow(c, 2.5)
      fc.pre(!window.unsupported)
      const s = planingState()
      settle(c, centre, window, s)
      expect(s.trim).toBeLessThanOrEqual(trimRange[1] * 1.001)
      expect(s.trim).toBeGreaterThanOrEqual(trimRange[0] * 0.999)
      expect(s.wettedKeel).toBeLessThanOrEqual(2.5 * 1.001)
    }),
  )
})

test('a window kept wet to a point keeps it wet', () => {
  fc.assert(
    fc.property(cases, (c) => {
      const window = lambdaWindow(c, 2.5, 0.6, 0.12)
      // where the hull is too short of wet bottom the window is shut to its flat end
      fc.pre(window.low < 0.97 * window.high)
      const s = planingAt(c, window.low, planingState())
      const edge = s.wettedKeel - ((s.wettedKeel - s.wettedChine) * 0.12) / c.beam
      expect(edge).toBeGreaterThanOrEqual(0.6 - 1e-3)
    }),
  )
})

test('settleBest never drags more than any place tried in the range', () => {
  fc.assert(
    fc.property(cases, number(0.65, 0.9), (c, aft) => {
      const window = lambdaWindow(c, 2.5)
      const s = planingState()
      const fore = aft + 0.4
      const best = easiestLambda(c, window, s)
      fc.pre(settleBest(c, best, aft, fore, window, s) === 'balanced')
      const drag = s.drag
      const tried = planingState()
      for (let i = 0; i <= 20; i++)
        if (settle(c, aft + (0.4 * i) / 20, window, tried) === 'balanced')
          expect(drag).toBeLessThanOrEqual(tried.drag * 1.002)
    }),
    { numRuns: 60 },
  )
})
