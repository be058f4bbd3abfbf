import fc from 'fast-check'
import { expect, test } from 'vitest'
import { harmonicSums } from './harmonic.ts'

test('a turn put together from harmonics gives back the amplitude of each, and nothing of the others', () => {
  const amplitude = fc.double({ min: -5, max: 5, noNaN: true })
  fc.assert(
    fc.property(fc.array(fc.tuple(amplitude, amplitude), { minLength: 1, maxLength: 8 }), (parts) => {
      const n = 64
      const turn = Array.from({ length: n }, (_, i) =>
        parts.reduce((sum, [c, s], k) => {
          const a = (2 * Math.PI * (k + 1) * i) / n
          return sum + c * Math.cos(a) + s * Math.sin(a)
        }, 0),
      )
      for (let h = 1; h <= 10; h++) {
        const { re, im } = harmonicSums(turn, h)
        const [c, s] = parts[h - 1] ?? [0, 0]
        expect((2 * re) / n).toBeCloseTo(c, 9)
        expect((2 * im) / n).toBeCloseTo(s, 9)
      }
    }),
  )
})

test('the harmonic of nothing is nothing, and a steady turn has none', () => {
  expect(harmonicSums([], 3)).toEqual({ re: 0, im: 0 })
  expect(Math.hypot(...Object.values(harmonicSums(new Float64Array(30).fill(7), 2)))).toBeLessThan(1e-12)
})
