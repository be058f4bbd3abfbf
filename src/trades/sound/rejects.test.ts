import { expect, test } from 'vitest'
import { isHollow } from './rejects.ts'

/** mean profile with whole multiples as given, from the fundamental up; half multiples lie in the noise */
const profile = (whole: readonly number[]) =>
  Float64Array.from({ length: 2 * whole.length }, (_, h) => (h % 2 === 1 ? whole[(h - 1) / 2]! : 0))

test('a comb laid under a higher note, with every second or third tooth only, is hollow', () => {
  expect(isHollow(profile([0, 2.5, 0, 2.2, 0, 1.8, 0, 1.5]), 200)).toBe(true)
  expect(isHollow(profile([0, 0, 2.5, 0, 0, 2, 0, 0, 1.5]), 150)).toBe(true)
})

test('teeth side by side are no whistle, whether all are there or a resonance lifts one out of the noise high up', () => {
  expect(isHollow(profile([2, 2.5, 2, 1.5, 1, 0.8]), 130)).toBe(false)
  expect(isHollow(profile([2, 2, 2, 2.3, 2.5, 1.3, 0.1, 0.2, 0, 0.1, 0, 0.1, 0.9]), 38)).toBe(false)
})

test('with under three teeth to look at nothing is called hollow', () => {
  expect(isHollow(profile([2]), 150)).toBe(false)
  expect(isHollow(profile([]), 150)).toBe(false)
})
