import fc from 'fast-check'
import { expect, test } from 'vitest'
import { seededRandom } from '../numerics/random.ts'
import { rangeOf } from './rangeOf.ts'

const about = (value: number, part: number) => ({ value, low: value * (1 - part), high: value * (1 + part) })

test('rangeOf holds about 95 in 100 draws of the model itself, also of a bent one', () => {
  const random = seededRandom(5)
  // a thick-walled guess of a deck: t³ over a span squared, and a load
  const answer = ([t, span, load]: readonly number[]) => t! ** 3 / span! ** 2 / load!
  const doubts = [about(1.5, 0.08), about(0.4, 0.05), about(80, 0.1)]
  const range = rangeOf(answer, doubts)
  let inside = 0
  for (let i = 0; i < 4000; i++) {
    const y = answer(doubts.map((d) => random.between(d.low, d.high)))
    if (y >= range.low && y <= range.high) inside++
  }
  expect(inside / 4000).toBeGreaterThan(0.935)
  expect(inside / 4000).toBeLessThan(0.975)
})

test('rangeOf is skewed where the answer is, and is a point where nothing is doubtful', () => {
  const square = rangeOf(([x]) => x! * x!, [{ value: 0, low: 0, high: 2 }])
  expect(square.low).toBe(0)
  expect(square.high).toBeCloseTo(4, 1)
  expect(square.value).toBeCloseTo(1, 1)
  expect(rangeOf(([x]) => 3 * x!, [{ value: 2, low: 2, high: 2 }])).toEqual({ value: 6, low: 6, high: 6 })
  expect(rangeOf(() => Number.NaN, [about(1, 0.1)]).low).toBeNaN()
})

test('no single value at its bound leaves the range', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 3, noNaN: true }),
      fc.double({ min: 0.01, max: 0.4, noNaN: true }),
      (a, w) => {
        const answer = ([x, y]: readonly number[]) => x! ** a - 0.2 * y!
        const doubts = [about(2, w), about(1, 0.02)]
        const { low, high } = rangeOf(answer, doubts)
        for (const x of [doubts[0]!.low, doubts[0]!.high]) {
          expect(answer([x, 1])).toBeGreaterThanOrEqual(low - 1e-12)
          expect(answer([x, 1])).toBeLessThanOrEqual(high + 1e-12)
        }
      },
    ),
  )
})
