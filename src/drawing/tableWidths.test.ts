import fc from 'fast-check'
import { expect, test } from 'vitest'
import { columnWidths } from './tableWidths.ts'

const wide = (text: string) => 2 * text.length
const cells = fc.array(fc.array(fc.stringMatching(/^[a-z ]{0,40}$/), { minLength: 3, maxLength: 3 }), {
  minLength: 1,
  maxLength: 8,
})

test('columns fill no more than there is room for, and none is nothing', () => {
  fc.assert(
    fc.property(cells, fc.double({ min: 60, max: 400, noNaN: true }), (rows, room) => {
      const widths = columnWidths(rows, room, wide)
      expect(widths.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(room + 1e-6)
      for (const w of widths) expect(w).toBeGreaterThan(0)
    }),
  )
})

test('where all goes in, no cell is broken', () => {
  expect(columnWidths([['ab', 'abcd']], 100, wide)).toEqual([3 + 4 * 1.02, 3 + 8 * 1.02])
})

test('short columns stay on one line beside a long one', () => {
  const [first, second] = columnWidths([['pitch', 'x '.repeat(200)]], 100, wide)
  expect(first).toBeGreaterThanOrEqual(wide('pitch'))
  expect(second).toBeGreaterThan(70)
})
