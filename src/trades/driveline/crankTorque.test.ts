import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Cylinder, peakAtCrank, turnOrders, turnOrdersOf } from './crankTorque.ts'
import { peakAt } from './driveSetting.ts'

const sixty: Cylinder = { bore: 0.0424, stroke: 0.0424, rod: 0.083, exhaustOpens: 1.71, ratio: 6.8 }

test('the mean of the gas torque is what was asked for, with a peak pressure given or found', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1.5, max: 9, noNaN: true }),
      fc.option(fc.double({ min: 2.5e6, max: 6e6, noNaN: true })),
      (mean, peak) => {
        const orders = turnOrdersOf(sixty, mean, peak ?? undefined)
        expect(orders.gas[0]!).toBeCloseTo(mean, 6)
      },
    ),
    { numRuns: 40 },
  )
})

test('a pulse is six to ten times the mean at the crank, and its pressure that of a small two-stroke', () => {
  const orders = turnOrdersOf(sixty, 6)
  const peak = peakAtCrank({ ...orders, masses: orders.masses.map(() => 0) }, 100)
  expect(peak / 6).toBeGreaterThan(6)
  expect(peak / 6).toBeLessThan(10)
  expect(orders.peak).toBeGreaterThan(2.5e6)
  expect(orders.peak).toBeLessThan(6e6)
})

test('moving masses do no work over a turn and shake most at twice the turn', () => {
  const { masses } = turnOrdersOf(sixty, 6)
  expect(masses[0]!).toBeCloseTo(0, 9)
  const size = (h: number) => Math.hypot(masses[2 * h]!, masses[2 * h + 1]!)
  for (let h = 1; h <= turnOrders; h++) expect(size(h)).toBeLessThanOrEqual(size(2))
})

test('more torque means a higher pulse; a mean that no pressure gives is refused', () => {
  const peak = (mean: number) => turnOrdersOf(sixty, mean).peak
  expect(peak(8)).toBeGreaterThan(peak(5))
  expect(() => turnOrdersOf(sixty, 500)).toThrow(/mean: no pressure gives 500/)
})

test('peak pressure is read between simulated speeds only', () => {
  const peaks = { rotation: [50, 100], pressure: [3e6, 4e6] }
  expect(peakAt(peaks, 75)).toBe(3.5e6)
  expect(peakAt(peaks, 50)).toBe(3e6)
  expect(peakAt(peaks, 49)).toBeUndefined()
  expect(peakAt(peaks, 101)).toBeUndefined()
  expect(peakAt(undefined, 75)).toBeUndefined()
})
