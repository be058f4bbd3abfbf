import { expect, test } from 'vitest'
import { linesChanged } from './linesChanged.ts'

test('lines the earlier text had and the present one has not are counted and shown', () => {
  expect(linesChanged('a\npitch: 108 mm\nb', 'a\npitch: 95 mm\nb')).toBe('1 line differs: pitch: 108 mm')
})
test('a text with fewer lines says so', () => {
  expect(linesChanged('a', 'a\nb\nc')).toBe('without 2 of the lines there are now')
})
test('equal texts have the same lines', () => {
  expect(linesChanged('a\nb', 'a\nb')).toBe('the same lines')
})
