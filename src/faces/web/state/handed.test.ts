import { expect, test } from 'vitest'
import { handedName } from './handed.ts'

test('an address names the craft that is handed over, and nothing but a craft file', () => {
  expect(handedName('?handed=a%20craft.yaml')).toBe('a craft.yaml')
  expect(handedName('')).toBeUndefined()
  expect(handedName('?other=1')).toBeUndefined()
  for (const bad of ['?handed=', '?handed=a.js', '?handed=..%2Fa.yaml', '?handed=b%5Ca.yaml'])
    expect(handedName(bad), bad).toBeUndefined()
})
