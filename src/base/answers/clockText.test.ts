import { expect, test } from 'vitest'
import { clockText } from './clockText.ts'

test('times are minutes, seconds and tenths, and carry over at the minute', () => {
  expect([0, 9.96, 59.96, 67.3].map(clockText)).toEqual(['0:00.0', '0:10.0', '1:00.0', '1:07.3'])
})

test('a moment before the recording is its beginning', () => {
  expect(clockText(-0.3)).toBe('0:00.0')
})
