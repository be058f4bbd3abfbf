import fc from 'fast-check'
import { expect, test } from 'vitest'
import { frictionPressure } from './burn.ts'
import {
  deadDragByLaw,
  deadDragByPressure,
  dragAt,
  motoredPressure,
  pumpingPressure,
  squareStroke,
  torqueOfPressure,
  usualFriction,
} from './deadDrag.ts'
import { referenceEngine } from './engineReference.ts'
import { deadDragOfMotored, motoredSpeeds, simulateMotored } from './motored.ts'
import { craftWith, sportEngine } from './twoStroke.testkit.ts'

test('a mean pressure of 1 bar takes 1.59 N·m from 100 cm³, over one turn', () => {
  expect(torqueOfPressure(1e5, 100e-6)).toBeCloseTo(1.5915, 4)
})

test('the friction in the drag is the friction that the firing engine loses', () => {
  for (const rpm of [2000, 6000, 10_000])
    expect(motoredPressure(0.05, rpm / 60).value - pumpingPressure.value).toBeCloseTo(
      frictionPressure(0, usualFriction.value, 0.05, rpm),
      6,
    )
})

test('the usual friction is the one that the craft file assumes', () => {
  const engine = craftWith(sportEngine).engines[0]!
  expect(engine.kind).toBe('two-stroke')
  if (engine.kind !== 'two-stroke') return
  const { value, low, high } = engine.friction
  expect({ value, low, high }).toEqual(usualFriction)
})

test('drag rises with speed and size, and its ends hold it', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 20e-6, max: 200e-6, noNaN: true }),
      fc.double({ min: 5, max: 200, noNaN: true }),
      (swept, n) => {
        const drag = deadDragByLaw(swept, squareStroke(swept))
        expect(dragAt(drag, n, -1)).toBeLessThan(dragAt(drag, n))
        expect(dragAt(drag, n, 1)).toBeGreaterThan(dragAt(drag, n))
        expect(dragAt(drag, 1.1 * n)).toBeGreaterThan(dragAt(drag, n))
        const larger = deadDragByLaw(1.2 * swept, squareStroke(1.2 * swept))
        expect(dragAt(larger, n)).toBeGreaterThan(dragAt(drag, n))
        expect(dragAt(drag, 0)).toBeGreaterThanOrEqual(0)
      },
    ),
  )
})

test('a pressure from the file drags alike at every speed', () => {
  const drag = deadDragByPressure(60e-6, { value: 1e5, low: 0.8e5, high: 1.3e5 })
  expect(dragAt(drag, 20)).toBe(dragAt(drag, 150))
  expect(dragAt(drag, 20, 1) / dragAt(drag, 20)).toBeCloseTo(1.3, 9)
  expect(dragAt(drag, 20, -0.5) / dragAt(drag, 20)).toBeCloseTo(0.9, 9)
})

test('a motored engine takes work at every speed, most of its pumping in the crankcase, and cells hardly matter', () => {
  const s = referenceEngine()
  const points = simulateMotored(s, motoredSpeeds(s))
  const fine = simulateMotored(s, [points[2]!.rpm], 0.015)[0]!
  for (const p of points) {
    expect(p.converged).toBe(true)
    expect(p.case).toBeGreaterThan(0.05e5)
    expect(p.pressure).toBeCloseTo(p.cylinder + p.case + p.friction, 6)
    expect(p.cylinder + p.case).toBeGreaterThan(pumpingPressure.low)
    expect(p.cylinder + p.case).toBeLessThan(pumpingPressure.high)
  }
  expect(Math.abs(fine.pressure / points[2]!.pressure - 1)).toBeLessThan(0.05)
  // two cylinders drag twice as much
  const one = deadDragOfMotored(s, points, 1)!
  const two = deadDragOfMotored(s, points, 2)!
  expect(dragAt(two, 100)).toBeCloseTo(2 * dragAt(one, 100), 9)
  expect(deadDragOfMotored(s, points.slice(0, 1), 1)).toBeUndefined()
})
