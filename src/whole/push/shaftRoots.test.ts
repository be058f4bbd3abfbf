import fc from 'fast-check'
import { expect, test } from 'vitest'
import { allRoots, settle } from './shaftRoots.ts'

/** a drive with a hollow before its pipe, and a load k n² */
const drive = (n: number) =>
  9 -
  6 * Math.exp(-(((n - 60) / 14) ** 2)) +
  5 * Math.exp(-(((n - 110) / 12) ** 2)) -
  (n > 125 ? 0.4 * (n - 125) : 0)
const surplusOf = (k: number) => (n: number) => drive(n) - k * n * n
const loadOf = (k: number) => (n: number) => k * n * n

test('allRoots finds the three roots of a peaky engine, stable ones outside, and only the lowest is reachable', () => {
  const k = 0.00108
  const roots = allRoots(surplusOf(k), loadOf(k), 15, 150)
  expect(roots.map((r) => r.stable)).toEqual([true, false, true])
  expect(roots.map((r) => r.reachable)).toEqual([true, false, false])
  for (const r of roots) expect(Math.abs(surplusOf(k)(r.rotation))).toBeLessThan(1e-6)
})

test('settle climbs to the same root as the scan from idle, and stays on the upper root once there', () => {
  const k = 0.00108
  const roots = allRoots(surplusOf(k), loadOf(k), 15, 150)
  expect(settle(surplusOf(k), 15, 15, 150).rotation).toBeCloseTo(roots[0]!.rotation, 6)
  expect(settle(surplusOf(k), roots[2]!.rotation * 1.01, 15, 150).rotation).toBeCloseTo(roots[2]!.rotation, 6)
  expect(settle(surplusOf(k), roots[1]!.rotation * 1.001, 15, 150).rotation).toBeCloseTo(
    roots[2]!.rotation,
    6,
  )
})

test('a heavier load never raises the settled rotation', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 4e-4, max: 4e-3, noNaN: true }),
      fc.double({ min: 1, max: 1.3, noNaN: true }),
      (k, more) => {
        const light = settle(surplusOf(k), 15, 15, 170).rotation
        const heavy = settle(surplusOf(k * more), 15, 15, 170).rotation
        expect(heavy).toBeLessThanOrEqual(light * (1 + 1e-9))
      },
    ),
  )
})

test('a drive that cannot turn the load from idle settles nowhere', () => {
  expect(settle(() => -1, 20, 15, 150).rotation).toBeNaN()
  expect(
    allRoots(
      () => -1,
      () => 1,
      15,
      150,
    ),
  ).toEqual([])
})
