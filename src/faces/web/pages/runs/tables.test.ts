import { expect, test } from 'vitest'
import { inSpeed } from '../../../../base/answers/amounts.ts'
import { atRpm } from '../../../../trades/sound/saySpeed.ts'
import { shownTable } from './tables.ts'

const table = {
  caption: 'Speeds',
  heads: ['Engine', 'Usual speed', 'Boat', 'Firing'],
  rows: [
    ['A', atRpm(6304), inSpeed(5), 'even'],
    ['B', atRpm(12_340), '–', 'misfires'],
  ],
}

test('a unit that a column shares stands in its head once, in the reader’s units, and words are left alone', () => {
  const metric = shownTable(table, 'metric')
  expect(metric.columns).toEqual([
    { head: 'Engine' },
    { head: 'Usual speed', unit: 'rpm' },
    { head: 'Boat', unit: 'km/h' },
    { head: 'Firing' },
  ])
  expect(metric.rows).toEqual([
    ['A', '6300', '18.0', 'even'],
    ['B', '12340', '–', 'misfires'],
  ])
  const inch = shownTable(table, 'inch')
  expect(inch.columns[2]).toEqual({ head: 'Boat', unit: 'mph' })
  expect(inch.rows[0]![2]).toBe('11.2')
})
