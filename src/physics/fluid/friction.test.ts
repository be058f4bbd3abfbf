import fc from 'fast-check'
import { expect, test } from 'vitest'
import { foilFormFactor, ittc57, laminarPlate, schoenherr, transitionalPlate } from './friction.ts'

const reynolds = fc.double({ min: 4.1, max: 9.5, noNaN: true }).map((e) => 10 ** e)

test('every friction line falls as the Reynolds number rises', () => {
  fc.assert(
    fc.property(reynolds, (Re) => {
      for (const line of [ittc57, schoenherr, laminarPlate]) expect(line(Re * 1.1)).toBeLessThan(line(Re))
    }),
  )
})

test('schoenherr satisfies its own equation', () => {
  fc.assert(
    fc.property(reynolds, (Re) => {
      const cf = schoenherr(Re)
      expect(0.242 / Math.sqrt(cf)).toBeCloseTo(Math.log10(Re * cf), 10)
    }),
  )
})

test('ITTC-57 and Schoenherr agree within 2.5 % from 1e7 to 1e9', () => {
  for (const Re of [1e7, 3e7, 1e8, 3e8, 1e9])
    expect(Math.abs(ittc57(Re) / schoenherr(Re) - 1)).toBeLessThan(0.025)
})

test('transitionalPlate is laminar below 1.5e6, continuous there, and never above the turbulent plate', () => {
  expect(transitionalPlate(1e6)).toBe(laminarPlate(1e6))
  fc.assert(
    fc.property(reynolds, (Re) => {
      expect(Math.abs(transitionalPlate(Re * 1.0001) / transitionalPlate(Re) - 1)).toBeLessThan(1e-3)
      expect(transitionalPlate(Re)).toBeLessThan(Math.max(0.074 / Re ** 0.2, laminarPlate(Re)) + 1e-15)
    }),
  )
})

test('a Reynolds number that is zero, negative or NaN is refused', () => {
  for (const Re of [0, -1, Number.NaN])
    for (const line of [ittc57, schoenherr, laminarPlate, transitionalPlate])
      expect(() => line(Re)).toThrow(RangeError)
})

test('a flat plate has foil form factor 1', () => {
  expect(foilFormFactor(0)).toBe(1)
  expect(foilFormFactor(0.1)).toBeCloseTo(1.206, 12)
})
