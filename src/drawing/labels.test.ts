import fc from 'fast-check'
import { expect, test } from 'vitest'
import { choosePlace, Occupied, placesRound, spreadApart, textBox } from './labels.ts'

test('spreadApart(wishes, gap, low, high) leaves neighbours at least a gap apart and inside when they fit', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -10, max: 110, noNaN: true }), { maxLength: 12 }),
      fc.double({ min: 0.5, max: 8, noNaN: true }),
      (wishes, gap) => {
        const out = spreadApart(wishes, gap, 0, 100)
        const sorted = [...out].sort((a, b) => a - b)
        for (let i = 1; i < sorted.length; i++)
          expect(sorted[i]! - sorted[i - 1]!).toBeGreaterThanOrEqual(gap - 1e-9)
        for (const v of out) {
          expect(v).toBeGreaterThanOrEqual(-1e-9)
          expect(v).toBeLessThanOrEqual(100 + 1e-9)
        }
      },
    ),
  )
})

test('wishes that are apart already are granted', () => {
  expect(spreadApart([50, 10, 30], 5, 0, 100)).toEqual([50, 10, 30])
})

test('two equal wishes move the same way up and down', () => {
  expect(spreadApart([50, 50], 4, 0, 100)).toEqual([48, 52])
})

test('a label avoids the ink that is already there and never leaves the frame', () => {
  const taken = new Occupied(60, 40)
  taken.line([0, 20, 60, 20])
  const frame = { left: 0, right: 60, bottom: 0, top: 40 }
  const place = choosePlace('a label', 3, placesRound(30, 20, 3, 2), frame, taken)!
  const box = textBox(place.x, place.y, 'a label', 3, place.anchor)
  expect(box.bottom > 20.5 || box.top < 19.5).toBe(true)
  expect(
    choosePlace(
      'far too long for the frame it was given, by a lot',
      6,
      placesRound(30, 20, 6, 2),
      frame,
      taken,
    ),
  ).toBe(undefined)
})

test('a second label at the same point takes another place', () => {
  const taken = new Occupied(60, 40)
  const frame = { left: 0, right: 60, bottom: 0, top: 40 }
  const first = choosePlace('one', 3, placesRound(30, 20, 3, 2), frame, taken)!
  const second = choosePlace('two', 3, placesRound(30, 20, 3, 2), frame, taken)!
  const a = textBox(first.x, first.y, 'one', 3, first.anchor)
  const b = textBox(second.x, second.y, 'two', 3, second.anchor)
  expect(a.right < b.left || b.right < a.left || a.top < b.bottom || b.top < a.bottom).toBe(true)
})
