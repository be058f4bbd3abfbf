import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bisect, brent, scanRoots } from './roots.ts'

test('brent and bisect find the root of a cubic anywhere in a bracket', () => {
  fc.assert(
    fc.property(fc.double({ min: -5, max: 5, noNaN: true }), (r) => {
      const f = (x: number) => (x - r) * ((x - r) ** 2 + 0.3)
      for (const solve of [brent, bisect]) {
        const s = solve(f, -6, 6.5)
        expect(s.converged).toBe(true)
        expect(s.value).toBeCloseTo(r, 9)
      }
    }),
  )
})

test('a bracket without a sign change is not converged and gives no number', () => {
  const s = brent((x) => x * x + 1, -1, 1)
  expect(s.converged).toBe(false)
  expect(s.value).toBeNaN()
  expect(bisect((x) => x * x + 1, -1, 1).converged).toBe(false)
})

test('NaN inside the bracket is not converged', () => {
  expect(brent((x) => (Math.abs(x) < 0.5 ? Number.NaN : x), -1, 1).converged).toBe(false)
})

test('brent takes few calls on a stiff exponential', () => {
  let calls = 0
  const s = brent(
    (x) => {
      calls++
      return Math.exp(20 * x) - 2
    },
    -1,
    1,
  )
  expect(s.value).toBeCloseTo(Math.log(2) / 20, 10)
  expect(calls).toBeLessThan(40)
})

test('scanRoots finds every root of sin in order and an exact grid hit once', () => {
  const grid = Array.from({ length: 101 }, (_, i) => i * 0.1)
  const roots = scanRoots(Math.sin, grid).map((r) => r.value)
  expect(roots).toHaveLength(4)
  roots.forEach((r, i) => {
    expect(r).toBeCloseTo(i * Math.PI, 9)
  })
  expect(scanRoots((x) => x - 0.5, [0, 0.5, 1])).toHaveLength(1)
})
