import { expect, test } from 'vitest'
import { shownNumber, stepOf, tidyNumber, withUnit, writtenNumber } from './shownValues.ts'

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

test('inches and pounds are shown as finely as they are read, and written as finely as they need', () => {
  expect(shownNumber(0.0015, 'length', 'in')).toBe('0.059')
  expect(writtenNumber(0.0015, 'length', 'in')).toBe('0.05906')
  expect(shownNumber(78, 'mass', 'lb')).toBe('172')
  expect(shownNumber(55, 'mass', 'lb')).toBe('121.3')
  expect(shownNumber(0.12, 'length', 'in')).toBe('4.724')
  expect(shownNumber(0.10795, 'length', 'mm')).toBe('107.95')
})
test('no step of an arrow key is too small to be seen', () => {
  expect(stepOf(0.059, 'length', 'in')).toBeGreaterThanOrEqual(0.001)
  expect(stepOf(0.059, 'length', 'mm')).toBe(0.0005)
})
