import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type SetSheet, setLoad } from './permanentSet.ts'

const sheet: SetSheet = { span: 0.32, t: 2e-3, stress: 160e6, fixity: 1, held: true }
const num = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const any = fc.record({
  span: num(0.04, 1),
  t: num(0.5e-3, 5e-3),
  stress: num(40e6, 300e6),
  fixity: num(0, 1),
  held: fc.boolean(),
})
const area = num(1e-4, 0.05)
const dish = num(0, 5e-3)

test('a point load on a clamped sheet without a dish collapses it at 4π of its plastic moment', () => {
  expect(setLoad(sheet, 1e-12, 0)).toBeCloseTo(4 * Math.PI * ((160e6 * 4e-6) / 4), 2)
})

test('simply supported it is half of that', () => {
  expect(setLoad({ ...sheet, fixity: 0 }, 1e-12, 0) / setLoad(sheet, 1e-12, 0)).toBeCloseTo(0.5, 9)
})

test('a foot that fills the field asks three times the load of a point', () => {
  expect(setLoad(sheet, Math.PI * 0.16 ** 2, 0) / setLoad(sheet, 1e-12, 0)).toBeCloseTo(3, 4)
})

test('a dish of one thickness hangs a third as much again, and the law has no step there', () => {
  expect(setLoad(sheet, 1e-12, 2e-3) / setLoad(sheet, 1e-12, 0)).toBeCloseTo(4 / 3, 6)
  expect(setLoad(sheet, 1e-12, 2.000001e-3)).toBeCloseTo(setLoad(sheet, 1e-12, 1.999999e-3), 0)
})

test('closing the supports, thicker or stronger sheet, firmer edges, a larger foot or a deeper dish never lower it', () => {
  fc.assert(
    fc.property(any, area, dish, num(1, 3), (s, a, w, k) => {
      const now = setLoad(s, a, w) * (1 - 1e-9)
      expect(setLoad({ ...s, span: s.span / k }, a, w)).toBeGreaterThanOrEqual(now)
      expect(setLoad({ ...s, t: s.t * k }, a, w)).toBeGreaterThanOrEqual(now)
      expect(setLoad({ ...s, stress: s.stress * k }, a, w)).toBeGreaterThanOrEqual(now)
      expect(setLoad({ ...s, fixity: Math.min(1, s.fixity * k) }, a, w)).toBeGreaterThanOrEqual(now)
      expect(setLoad(s, a * k, w)).toBeGreaterThanOrEqual(now)
      expect(setLoad(s, a, w * k)).toBeGreaterThanOrEqual(now)
    }),
  )
})
