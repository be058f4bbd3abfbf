import fc from 'fast-check'
import { expect, test } from 'vitest'
import { snorkelDrop, snorkelResonance } from './airIntake.ts'
import { boxPressure, chokedFunction, flowFunction, tubeDrop } from './backPressure.ts'
import { drawnIn, flapOpening, judgeSpill, quenched, suctionLift } from './outlet.ts'

const num = (min: number, max: number) => fc.double({ min, max, noNaN: true })

test('the flow function is nought without a pressure drop, rises to choking and stays there', () => {
  expect(flowFunction(1, 1.32)).toBe(0)
  fc.assert(
    fc.property(num(0, 1), num(0, 1), num(1.2, 1.67), (a, b, gamma) => {
      const [low, high] = [Math.min(a, b), Math.max(a, b)]
      expect(flowFunction(low, gamma)).toBeGreaterThanOrEqual(flowFunction(high, gamma) - 1e-12)
      expect(flowFunction(low, gamma)).toBeLessThanOrEqual(chokedFunction(gamma))
    }),
  )
})

test('a box stands over the air, more with more flow and less with a larger hole', () => {
  fc.assert(
    fc.property(num(0.002, 0.04), num(500, 1100), num(1.5e-4, 6e-4), (massFlow, temperature, area) => {
      const at = (m: number, a: number) => boxPressure({ massFlow: m, temperature, area: a, outside: 101325 })
      const p = at(massFlow, area)
      expect(p.converged).toBe(true)
      expect(p.value).toBeGreaterThan(101325)
      expect(at(1.1 * massFlow, area).value).toBeGreaterThan(p.value)
      expect(at(massFlow, 1.1 * area).value).toBeLessThan(p.value)
    }),
  )
})

test('pressure and flow of a box agree when turned round: the nozzle at that pressure passes the flow', () => {
  const p = boxPressure({ massFlow: 0.022, temperature: 790, area: 3e-4, outside: 101325 }).value
  expect((3e-4 * p * flowFunction(101325 / p, 1.32)) / Math.sqrt(295 * 790)).toBeCloseTo(0.022, 9)
})

test('measures that are none are refused by name', () => {
  const flow = { massFlow: 0.02, temperature: 800, pressure: 101325, bore: 0.02, length: 0.2, losses: 1 }
  expect(() => boxPressure({ massFlow: 0.02, temperature: 800, area: 0, outside: 101325 })).toThrow(/area/)
  expect(() => tubeDrop({ ...flow, bore: 0 })).toThrow(/bore/)
  expect(() => tubeDrop({ ...flow, length: -1 })).toThrow(/length/)
  expect(() => quenched(0, 800, 0.001)).toThrow(RangeError)
})

test('a tube drops nothing without flow, and more with flow, length and bends', () => {
  const flow = { massFlow: 0.02, temperature: 800, pressure: 101325, bore: 0.022, length: 0.2, losses: 1 }
  expect(tubeDrop({ ...flow, massFlow: 0 }).drop).toBe(0)
  const base = tubeDrop(flow)
  expect(tubeDrop({ ...flow, massFlow: 0.022 }).drop).toBeGreaterThan(base.drop)
  expect(tubeDrop({ ...flow, length: 0.3 }).drop).toBeGreaterThan(base.drop)
  expect(tubeDrop({ ...flow, losses: 2 }).drop).toBeCloseTo(base.drop + base.dynamic, 9)
  expect(base.choked).toBe(false)
  expect(tubeDrop({ ...flow, bore: 0.008 }).choked).toBe(true)
})

test('a snorkel costs nothing at rest, more with flow and bends, less with bore or an air box', () => {
  const s = {
    bore: 0.035,
    length: 0.6,
    bends: 2,
    smoothBends: true,
    belledEntry: false,
    roughness: 1.5e-6,
    box: 0,
  }
  const air = { massFlow: 0.015, rotation: 140, cylinders: 1, pressure: 101325, temperature: 293 }
  expect(snorkelDrop(s, { ...air, massFlow: 0 }).drop).toBe(0)
  const d = snorkelDrop(s, air).drop
  expect(snorkelDrop(s, { ...air, massFlow: 0.02 }).drop).toBeGreaterThan(d)
  expect(snorkelDrop({ ...s, bends: 4 }, air).drop).toBeGreaterThan(d)
  expect(snorkelDrop({ ...s, smoothBends: false }, air).drop).toBeGreaterThan(d)
  expect(snorkelDrop({ ...s, bore: 0.045 }, air).drop).toBeLessThan(d)
  expect(snorkelDrop({ ...s, box: 3e-3 }, air).drop).toBeLessThan(d)
  expect(snorkelDrop({ ...s, roughness: 2e-3 }, air).drop).toBeGreaterThan(d)
  expect(() => snorkelDrop({ ...s, bore: 0 }, air)).toThrow(/bore/)
  expect(() => snorkelDrop({ ...s, box: -1 }, air)).toThrow(/box/)
})

test('gulps of half the turn count π²/4 times a steady flow; two cylinders half of that', () => {
  const s = {
    bore: 0.035,
    length: 0.6,
    bends: 0,
    smoothBends: true,
    belledEntry: true,
    roughness: 1.5e-6,
    box: 0,
  }
  const air = { massFlow: 0.015, rotation: 140, pressure: 101325, temperature: 293 }
  expect(snorkelDrop(s, { ...air, cylinders: 1 }).pulsation).toBeCloseTo(Math.PI ** 2 / 4, 9)
  expect(snorkelDrop(s, { ...air, cylinders: 2 }).pulsation).toBeCloseTo(Math.PI ** 2 / 8, 9)
})

test('a snorkel rings lower with a larger box or a longer tube', () => {
  const f = snorkelResonance(0.04, 0.5, 1e-3)
  expect(snorkelResonance(0.04, 0.5, 4e-3)).toBeCloseTo(f / 2, 9)
  expect(snorkelResonance(0.04, 0.8, 1e-3)).toBeLessThan(f)
})

test('a flap takes the water above it and its own weight', () => {
  const flap = { area: 4e-4, arm: 0.015, weightMoment: 0, elasticMoment: 0 }
  expect(flapOpening(flap, 0.1)).toBeCloseTo(999 * 9.80665 * 0.1, 6)
  expect(flapOpening(flap, -0.2)).toBe(0)
  expect(flapOpening({ ...flap, weightMoment: 1e-3 }, 0)).toBeCloseTo(1e-3 / (4e-4 * 0.015), 9)
})

test('cooling gas draws in a part between nought and one, and lifts water by it', () => {
  fc.assert(
    fc.property(num(300, 1200), num(273, 300), (hot, cold) => {
      const share = drawnIn(hot, cold)
      expect(share).toBeGreaterThanOrEqual(0)
      expect(share).toBeLessThan(1)
      expect(suctionLift(hot, cold)).toBeCloseTo((101325 * share) / (999 * 9.80665), 9)
    }),
  )
  expect(drawnIn(280, 300)).toBe(0)
})

test('injected water cools the gas, never below where its vapour would be more than the gas holds', () => {
  expect(quenched(0.022, 790, 0)).toBe(790)
  fc.assert(
    fc.property(num(0, 0.02), num(1e-5, 0.005), (water, more) => {
      const a = quenched(0.022, 790, water)
      const b = quenched(0.022, 790, water + more)
      expect(b).toBeLessThan(a + 1e-6)
      expect(b).toBeGreaterThan(320)
    }),
  )
  // one gram a second into 22: by hand, 26.77 (790 - T) = 2484 + 1.9 (T - 298)
  expect(quenched(0.022, 790, 0.001)).toBeCloseTo(670.8, 0)
})

test('a spill-over is watched under 30 cm and a stop under water', () => {
  expect([0.4, 0.2, -0.01].map(judgeSpill)).toEqual(['good', 'watch', 'stop'])
})
