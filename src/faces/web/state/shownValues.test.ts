import { expect, test } from 'vitest'
import { stepOf, tidyNumber, withUnit } from './shownValues.ts'

test('numbers are shown with five digits and no trailing noughts', () => {
  expect([118, 0.95, 7600, 0.0012345678, 0, 39.3700787].map((n) => tidyNumber(n))).toEqual([
    '118',
    '0.95',
    '7600',
    '0.0012346',
    '0',
    '39.37',
  ])
})
test('a number that is none is a dash', () => {
  expect(tidyNumber(Number.NaN)).toBe('–')
})
test('an arrow key moves about one part in a hundred, by a round step', () => {
  expect([118, 0.95, 7600, 27].map((n) => stepOf(n, 'length'))).toEqual([1, 0.01, 100, 0.2])
  expect(stepOf(3, 'count')).toBe(1)
})
test('a bare number takes the unit shown; a text with a unit keeps its own', () => {
  expect([
    withUnit('95', 'mm'),
    withUnit('1 1/4', 'in'),
    withUnit('3.7 in', 'mm'),
    withUnit('3', ''),
  ]).toEqual(['95 mm', '1 1/4 in', '3.7 in', '3'])
})
