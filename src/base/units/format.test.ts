import { expect, test } from 'vitest'
import { findUnit } from './convert.ts'
import { displayUnit, formatNumber, formatQuantity } from './format.ts'
import { type Kind, kinds } from './kinds.ts'

const allKinds = Object.keys(kinds) as Kind[]

import { editDistance, nearest } from './near.ts'

test.each([
  [0.047, 'length', 'mm', 3, '47 mm'],
  [0.0254, 'length', 'in', 3, '1 in'],
  [125, 'rotation', 'rpm', 4, '7500 rpm'],
  [200, 'rotation', 'rpm', 4, '12\u202F000 rpm'],
  [289.15, 'temperature', '°C', 3, '16 °C'],
  [0.08, 'ratio', '%', 3, '8 %'],
  [1.25, 'ratio', undefined, 3, '1.25'],
  [-0.02, 'length', 'mm', 3, '−20 mm'],
  [1.5e-5, 'length', 'm', 3, '1.5e-5 m'],
  [0, 'length', 'mm', 3, '0 mm'],
  [Number.NaN, 'length', 'mm', 3, '— mm'],
  [Number.POSITIVE_INFINITY, 'length', 'mm', 3, '— mm'],
] as const)('formatQuantity(%d, %s, %s, %d) is "%s"', (value, kind, unit, digits, text) => {
  expect(formatQuantity(value, kind, unit, digits)).toBe(text)
})

test('formatNumber shows no more digits than asked for', () => {
  expect(formatNumber(1234.5678, 6)).toBe('1234.57')
  expect(formatNumber(0.00123456, 2)).toBe('0.0012')
})

test.each([
  ['length', 'inch', 'mm', 'in'],
  ['length', 'inch', 'm', 'ft'],
  ['length', 'metric', 'mm', 'mm'],
  ['length', 'metric', 'in', 'mm'],
  ['mass', 'inch', 'kg', 'lb'],
  ['speed', 'inch', undefined, 'mph'],
  ['speed', 'metric', undefined, 'km/h'],
  ['temperature', 'inch', '°C', '°F'],
  ['torque', 'inch', 'N·m', 'lbf·ft'],
  ['power', 'inch', 'kW', 'hp'],
  ['volume', 'inch', 'L', 'US gal'],
  ['rotation', 'inch', 'rpm', 'rpm'],
] as const)('displayUnit(%s, %s, %s) is %s', (kind, system, hint, unit) => {
  expect(displayUnit(kind, system, hint)).toBe(unit)
})

test('displayUnit always names a unit of the kind', () => {
  for (const kind of allKinds) {
    if (kind === 'choice') continue
    for (const system of ['metric', 'inch'] as const)
      expect(findUnit(kind, displayUnit(kind, system)), kind).toBeDefined()
  }
})

test('editDistance counts inserts, deletes, replacements and swaps of neighbours', () => {
  expect(editDistance('pitch', 'pitch')).toBe(0)
  expect(editDistance('pich', 'pitch')).toBe(1)
  expect(editDistance('ptich', 'pitch')).toBe(1)
  expect(editDistance('', 'abc')).toBe(3)
  expect(editDistance('kpa', 'kPa')).toBe(0.5)
})

test('nearest finds the word meant and nothing when no word is near', () => {
  expect(nearest('blads', ['bore', 'blades'])).toBe('blades')
  expect(nearest('colour', ['bore', 'blades'])).toBeUndefined()
  expect(nearest('x'.repeat(100_000), ['bore'])).toBeUndefined()
})
