import { expect, test } from 'vitest'
import { inputId, readRoute } from './pageRoute.ts'

test('an address names a page and, where it has one, an input of it', () => {
  expect(readRoute('#/push')).toEqual({ page: 'push' })
  expect(readRoute('#/craft/jet.rotor.trailing%20edge')).toEqual({
    page: 'craft',
    path: 'jet.rotor.trailing edge',
  })
})
test('an empty or broken address leads somewhere', () => {
  expect(readRoute('')).toEqual({ page: 'craft' })
  expect(readRoute('#/craft/%E0%A4%A')).toEqual({ page: 'craft' })
})
test('an input has one id whatever its path holds', () => {
  expect(inputId('engines.0.power at')).toBe('in-engines-0-power-at')
})
