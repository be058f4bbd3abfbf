import fc from 'fast-check'
import { expect, test } from 'vitest'
import { spreadAt, spreadPoint } from './lowDiscrepancy.ts'

test('every aligned run of 2^k points has one point in each of 2^k slices of every coordinate', () => {
  fc.assert(
    fc.property(fc.nat(200), fc.integer(), fc.nat(9), fc.nat(500), (dimension, seed, k, run) => {
      const count = 2 ** k
      const slices = new Set<number>()
      for (let i = run * count; i < (run + 1) * count; i++)
        slices.add(Math.floor(spreadAt(i, dimension, seed) * count))
      expect(slices.size).toBe(count)
    }),
  )
})

test('two coordinates of 512 points are hardly more alike than chance makes them', () => {
  const points = Array.from({ length: 512 }, (_, i) => spreadPoint(i, 40, 1))
  let sum2 = 0
  let worst = 0
  let pairs = 0
  for (let a = 0; a < 40; a++)
    for (let b = 0; b < a; b++) {
      const r = points.reduce((s, p) => s + 12 * (p[a]! - 0.5) * (p[b]! - 0.5), 0) / points.length
      sum2 += r * r
      worst = Math.max(worst, Math.abs(r))
      pairs++
    }
  // n independent pairs scatter by 1/√n = 0.044; here by a quarter more, as neighbours share no half of any coordinate
  expect(Math.sqrt(sum2 / pairs)).toBeLessThan(1.35 * 0.0442)
  expect(worst).toBeLessThan(0.27)
})

test('a sum of many coordinates is averaged far closer than by chance', () => {
  const mean = Array.from({ length: 256 }, (_, i) => spreadPoint(i, 60, 7).reduce((s, x) => s + x, 0)).reduce(
    (s, x) => s + x / 256,
    0,
  )
  // independent draws would scatter by √(60/12/256) = 0.14
  expect(Math.abs(mean - 30)).toBeLessThan(0.02)
})

test('the same seed gives the same points and another seed others', () => {
  expect(spreadPoint(5, 3, 1)).toEqual(spreadPoint(5, 3, 1))
  expect(spreadPoint(5, 3, 1)).not.toEqual(spreadPoint(5, 3, 2))
})
