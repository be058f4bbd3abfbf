import { expect, test } from 'vitest'
import { type Beat, repeats } from './repeat.ts'

/** cycles of the given works; mass balances unless said otherwise */
const beats = (works: readonly number[], massOut = 1): Beat[] =>
  works.map((work) => ({ work, trapped: work, massIn: 1, massOut }))

test('three cycles alike settle as one', () => {
  expect(repeats(beats([5, 9, 10, 10.001, 10.002]), 6)).toMatchObject({ cycles: 1, apart: 0 })
})

test('cycles that still change, or whose mass does not balance, do not settle', () => {
  expect(repeats(beats([8, 9, 9.5, 9.8]), 20).cycles).toBe(0)
  expect(repeats(beats([10, 10, 10, 10], 1.02), 20).cycles).toBe(0)
  expect(repeats(beats([10, 10]), 20)).toEqual({ cycles: 0, residual: 1, apart: 0 })
})

test('cycles that repeat every other time settle as a pair, with how far apart they are, but not before the twelfth', () => {
  const list = beats([7.3, 8.01, 7.3, 8.01, 7.3, 8.01, 7.3, 8.01])
  expect(repeats(list, 8).cycles).toBe(0)
  const r = repeats(list, 14)
  expect(r.cycles).toBe(2)
  expect(r.apart).toBeCloseTo(0.0886, 3)
  expect(r.residual).toBe(0)
})

test('a pair whose mass balances only together is still a pair', () => {
  const list = beats([7.3, 8.01, 7.3, 8.01]).map((b, i) => ({ ...b, massOut: i % 2 === 0 ? 0.97 : 1.03 }))
  expect(repeats(list, 14).cycles).toBe(2)
})

test('a narrow wander settles as eight after many cycles, a wide one never', () => {
  const narrow = beats([10, 10.04, 9.98, 10.03, 10.05, 9.99, 10.02, 9.97])
  expect(repeats(narrow, 20).cycles).toBe(0)
  expect(repeats(narrow, 30).cycles).toBe(8)
  expect(repeats(beats([10, 10.4, 9.8, 10.3, 10.5, 9.9, 10.2, 9.7]), 60).cycles).toBe(0)
})
