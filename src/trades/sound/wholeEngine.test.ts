import { expect, test } from 'vitest'
import { hasPauses, isFullComb } from './wholeEngine.ts'

/** mean profile with whole multiples as given; half multiples lie in the noise */
const profile = (whole: readonly number[]) =>
  Float64Array.from({ length: 2 * whole.length }, (_, h) => (h % 2 === 1 ? whole[(h - 1) / 2]! : 0))

test('a comb of three lines is no engine, one of six clear ones is', () => {
  expect(isFullComb(profile([1.5, 0.9, 0.7, 0.1, 0, 0]))).toBe(false)
  expect(isFullComb(profile([2, 1.8, 1.5, 1.2, 1, 0.8, 0.1]))).toBe(true)
})

test('sound that falls silent between syllables has pauses, an engine that idles and revs has none', () => {
  const s = { from: 0, to: 40 }
  expect(
    hasPauses(
      Float64Array.from({ length: 40 }, (_, i) => (i % 8 < 2 ? 0.001 : 1)),
      s,
    ),
  ).toBe(true)
  expect(
    hasPauses(
      Float64Array.from({ length: 40 }, (_, i) => (i % 20 < 10 ? 0.1 : 1)),
      s,
    ),
  ).toBe(false)
})
