import fc from 'fast-check'
import { expect, test } from 'vitest'
import { numberMarks, numberRadius, placeNumbers } from './numberSigns.ts'

test('numbers never lie over one another and stay as near to their places as there is room', () => {
  const at = fc.double({ min: 0, max: 60, noNaN: true })
  fc.assert(
    fc.property(fc.array(fc.tuple(at, at), { maxLength: 14 }), (places) => {
      const spots = placeNumbers(places.map(([x, y], i) => ({ n: i + 1, x, y })))
      spots.forEach((a, i) => {
        for (const b of spots.slice(i + 1))
          expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeGreaterThanOrEqual(2 * numberRadius)
        expect(Math.hypot(a.x - a.to[0], a.y - a.to[1])).toBeLessThan(9 * numberRadius)
      })
      // the first stands where it belongs
      if (spots[0]) expect([spots[0].x, spots[0].y]).toEqual([...spots[0].to])
    }),
  )
})

test('a number that stands aside has a line to its place, one at its place has none', () => {
  const marks = numberMarks(
    placeNumbers([
      { n: 1, x: 10, y: 10 },
      { n: 2, x: 10, y: 10 },
    ]),
  )
  expect(marks.filter((m) => m.kind === 'polyline')).toHaveLength(1)
  expect(marks.flatMap((m) => (m.kind === 'text' ? [m.text] : []))).toEqual(['1', '2'])
})
