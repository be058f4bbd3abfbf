import { expect, test } from 'vitest'
import { full, problemsOf } from './craft.testkit.ts'
import { type Migration, migrate, migrations } from './migrate.ts'
import { currentVersion } from './schema/craftSchema.ts'

test('a file of every version up to now reads without problem', () => {
  // one fixture a version; a new version adds its own and keeps these
  expect(currentVersion).toBe(1)
  expect(problemsOf(full)).toEqual([])
})

test('there is a step from every old version to the next', () => {
  for (let v = 1; v < currentVersion; v++) expect(migrations[v], `from version ${v}`).toBeTypeOf('function')
})

const renamed: Migration = (text) => text.replace('wakewright: 1', 'wakewright: 2').replace('jet:', 'pump:')
const again: Migration = (text) => text.replace('wakewright: 2', 'wakewright: 3')

test('steps are taken in order and keep comments and every other byte', () => {
  const text = '# mine\nwakewright: 1\njet: # the pump\n  x: 1\n'
  expect(migrate(text, 1, 3, { 1: renamed, 2: again })).toBe(
    '# mine\nwakewright: 3\npump: # the pump\n  x: 1\n',
  )
  expect(migrate(text, 1, 1, {})).toBe(text)
})

test('a newer version and a missing step are RangeErrors', () => {
  expect(() => migrate('', 2, 1)).toThrow(/newer/)
  expect(() => migrate('', 1, 3, { 1: renamed })).toThrow(/from version 2 to 3/)
})
