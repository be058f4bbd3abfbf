import { expect, test } from 'vitest'
import { clippedBelow, tankFromAstern, tankFromSide } from './craftParts.ts'

const square = [0, 0, 1, 0, 1, 1, 0, 1]
const area = (p: readonly number[]) => {
  let twice = 0
  for (let i = 0; i < p.length; i += 2)
    twice += p[i]! * p[(i + 3) % p.length]! - p[(i + 2) % p.length]! * p[i + 1]!
  return Math.abs(twice) / 2
}

test('clippedBelow keeps what lies at or below a line: all, nothing, a half, a corner', () => {
  expect(area(clippedBelow(square, () => 2))).toBe(1)
  expect(clippedBelow(square, () => -1)).toEqual([])
  expect(area(clippedBelow(square, () => 0.5))).toBeCloseTo(0.5, 12)
  expect(area(clippedBelow(square, (x) => 0.5 - x))).toBeCloseTo(0.125, 12)
})

test('a tank is drawn with its liquid, and without when it is empty', () => {
  const tank = { name: 'tank', at: [1, 0.1, 0.2], size: [0.3, 0.2, 0.1] } as const
  const filled = { ...tank, surface: { height: 0.21, rise: 0 } }
  for (const view of [tankFromSide, tankFromAstern])
    expect(view(filled, 100).length).toBe(view(tank, 100).length + 1)
})
