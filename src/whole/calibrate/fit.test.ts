import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fitWithPriors, mostMoved, type Observation } from './fit.ts'

const linear = (rows: readonly (readonly number[])[]) => (z: Float64Array) =>
  rows.map((row) => row.reduce((sum, v, k) => sum + v * z[k]!, 0))
const slope = fc.double({ min: -0.5, max: 0.5, noNaN: true })
const rows3 = fc.array(fc.tuple(slope, slope, slope), { minLength: 1, maxLength: 5 })
const inside = fc.tuple(
  ...[0, 1, 2].map(() => fc.double({ min: -1.5, max: 1.5, noNaN: true })),
) as fc.Arbitrary<[number, number, number]>
const read = (rows: readonly (readonly number[])[], truth: readonly number[], sd: number): Observation[] =>
  [...linear(rows)(Float64Array.from(truth))].map((ln) => ({ ln, sd }))

test('readings without noise from parameters inside their priors are met, and the fit ends', () => {
  fc.assert(
    fc.property(rows3, inside, (rows, truth) => {
      const sd = 1e-5
      const { value, converged } = fitWithPriors(3, linear(rows), read(rows, truth, sd))
      expect(converged).toBe(true)
      // what the priors still pull at is a thousandth of the readings' own scatter
      for (const r of value.residuals)
        if (rows.length <= 2 && Math.hypot(...rows[0]!) > 0.05) expect(Math.abs(r * sd)).toBeLessThan(1e-3)
    }),
  )
  const rows = [
    [0.3, 0, 0],
    [0.1, 0.4, 0],
  ]
  const { value } = fitWithPriors(3, linear(rows), read(rows, [1, -0.7, 2], 1e-5))
  for (const r of value.residuals) expect(Math.abs(r * 1e-5)).toBeLessThan(1e-6)
  expect(value.z[0]).toBeCloseTo(1, 5)
  expect(value.z[1]).toBeCloseTo(-0.7, 5)
  // no reading says anything of the third: its prior stands
  expect(value.z[2]).toBe(0)
  expect(value.sd[2]).toBe(1)
})

test('no standard deviation grows beyond its prior, and one reading more makes none larger', () => {
  fc.assert(
    fc.property(rows3, inside, fc.tuple(slope, slope, slope), (rows, truth, more) => {
      const fewer = fitWithPriors(3, linear(rows), read(rows, truth, 0.05)).value
      const all = [...rows, more]
      const then = fitWithPriors(3, linear(all), read(all, truth, 0.05)).value
      for (let k = 0; k < 3; k++) {
        expect(fewer.sd[k]!).toBeLessThanOrEqual(1 + 1e-12)
        expect(then.sd[k]!).toBeLessThanOrEqual(fewer.sd[k]! + 1e-9)
      }
    }),
  )
})

test('nothing moves past its bounds, whatever is read', () => {
  fc.assert(
    fc.property(rows3, fc.double({ min: -40, max: 40, noNaN: true }), (rows, ln) => {
      const { value } = fitWithPriors(
        3,
        linear(rows),
        rows.map(() => ({ ln, sd: 0.02 })),
      )
      for (const z of value.z) expect(Math.abs(z)).toBeLessThanOrEqual(mostMoved)
    }),
  )
})

test('without readings the priors stand; a model that gives no number does not pass for a fit', () => {
  const none = fitWithPriors(2, () => [], [])
  expect([...none.value.z]).toEqual([0, 0])
  expect([...none.value.sd]).toEqual([1, 1])
  const bad = fitWithPriors(1, () => [Number.NaN], [{ ln: 0, sd: 0.1 }])
  expect(Math.abs(bad.value.residuals[0]!)).toBeGreaterThan(100)
})
