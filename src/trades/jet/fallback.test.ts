import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  cordierDiameter,
  fallbackAt,
  fallbackMap,
  fallbackPump,
  fitMeasured,
  measuredAt,
  measuredMap,
  stepUp,
} from './fallback.ts'
import { solveJet } from './jet.ts'
import { referenceJet } from './jetReference.ts'
import { jetPoint } from './pumpMap.ts'

test('Cordier’s line passes through its points, falls between them and is refused outside', () => {
  expect(cordierDiameter(2)).toBeCloseTo(1.89, 9)
  expect(cordierDiameter(8)).toBeCloseTo(1.04, 9)
  fc.assert(
    fc.property(fc.double({ min: 1, max: 9.9, noNaN: true }), (w) => {
      expect(cordierDiameter(w * 1.01)).toBeLessThan(cordierDiameter(w))
    }),
  )
  expect(() => cordierDiameter(0.5)).toThrow(/1 to 10/)
  expect(() => cordierDiameter(Number.NaN)).toThrow(RangeError)
})

test('the curve is best at its best flow, has its own head there and refuses torque far from it', () => {
  const pump = fallbackPump(3, 'sanded print')
  const best = fallbackAt(pump, pump.flow)
  expect(best.eta).toBeCloseTo(0.75, 12)
  expect(best.head).toBeCloseTo(pump.head, 12)
  for (const x of [0.7, 0.85, 1.15, 1.3]) expect(fallbackAt(pump, x * pump.flow).eta).toBeLessThan(best.eta)
  expect(fallbackAt(pump, 0.3 * pump.flow).torque).toBeNaN()
})

test('a jet of unknown blades still has an operating point, rougher finish takes more torque for the same flow', () => {
  const spec = referenceJet()
  const torque = (['tight metal', 'sanded print', 'raw print'] as const).map((finish) => {
    const p = jetPoint(fallbackMap(spec.rotor, fallbackPump(3, finish)), spec, 70, 0)
    expect(p.state).toBe('wet')
    expect(p.confidence).toBe('ok')
    return p.T
  })
  expect(torque[0]!).toBeLessThan(torque[1]!)
  expect(torque[1]!).toBeLessThan(torque[2]!)
})

test('a measured curve is fitted exactly when it is a parabola, and refused 15 % beyond its data', () => {
  const points = [0.25, 0.3, 0.35, 0.4].map((q) => ({ q, head: 3 - 5 * q * q, power: 0.4 + q - 2 * q * q }))
  const fit = fitMeasured(points)
  expect(fit.converged).toBe(true)
  expect(measuredAt(fit.value, 0.33).head).toBeCloseTo(3 - 5 * 0.33 ** 2, 9)
  expect(measuredAt(fit.value, 0.33).power).toBeCloseTo(0.4 + 0.33 - 2 * 0.33 ** 2, 9)
  expect(() => measuredAt(fit.value, 0.45)).toThrow(/15 %/)
  expect(fitMeasured(points.slice(0, 2)).converged).toBe(false)
})

test('a curve measured on the model itself gives the model’s operating point back', () => {
  const spec = referenceJet()
  const D = spec.rotor.tipDiameter
  const n = 70
  const points = [0.058, 0.061, 0.064, 0.067, 0.07].map((d) => {
    const p = solveJet({ ...spec, system: { ...spec.system, nozzleDiameter: d } }, n, 0)
    const T = p.T * spec.system.mechanicalEfficiency
    return {
      q: p.Q / (n * D ** 3),
      head: p.gH / (n * D) ** 2,
      power: (2 * Math.PI * T) / (998.2 * n * n * D ** 5),
    }
  })
  const fit = fitMeasured(points)
  const got = jetPoint(measuredMap(spec.rotor, fit.value), spec, 85, 3)
  const want = solveJet(spec, 85, 3)
  expect(Math.abs(got.T / want.T - 1)).toBeLessThan(0.01)
  expect(Math.abs(got.Q / want.Q - 1)).toBeLessThan(0.01)
})

test('efficiency steps up with size and smoothness, and not at all for the same pump', () => {
  const small = { chord: 0.06, speed: 25, kinematic: 1e-6, roughness: 12e-6 }
  expect(stepUp(0.7, small, small)).toBeCloseTo(0.7, 12)
  expect(stepUp(0.7, small, { ...small, chord: 0.3 })).toBeGreaterThan(0.7)
  expect(stepUp(0.7, small, { ...small, roughness: 1e-6 })).toBeGreaterThan(0.7)
})
