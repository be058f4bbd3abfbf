import { expect, test } from 'vitest'
import { keptBy } from './keep.ts'

test('keptBy makes once for the same parts, and again when one is another thing', () => {
  let made = 0
  const get = keptBy(
    2,
    (of: { a: object; b: number }) => [of.a, of.b],
    () => ++made,
  )
  const a = {}
  expect(get({ a, b: 1 })).toBe(1)
  expect(get({ a, b: 1 })).toBe(1)
  expect(get({ a: {}, b: 1 })).toBe(2)
  expect(get({ a, b: Number.NaN })).toBe(3)
  expect(get({ a, b: Number.NaN })).toBe(3)
})

test('keptBy lets the one used longest ago go, and keeps nothing that threw', () => {
  let made = 0
  const get = keptBy(
    2,
    (of: string) => [of],
    (of) => {
      if (of === 'bad') throw new RangeError('bad')
      return `${of}${++made}`
    },
  )
  expect([get('a'), get('b'), get('a'), get('c'), get('a'), get('b')]).toEqual([
    'a1',
    'b2',
    'a1',
    'c3',
    'a1',
    'b4',
  ])
  expect(() => get('bad')).toThrow('bad')
  expect(() => get('bad')).toThrow('bad')
})
