import { expect, test } from 'vitest'
import { inKg, inMm, inRpm, inScaleKg, ranged } from '../../../base/answers/amounts.ts'
import { inUnits } from './TradeParts.tsx'

const table = {
  caption: 'Bays',
  heads: ['Bay', 'Sheet', 'Mass', 'Mixed'],
  rows: [
    ['fore', inMm(0.0015, 0.1), inKg(2), inRpm(120)],
    ['aft', inMm(0.002, 0.1), inKg(Number.NaN), inMm(0.1)],
  ],
}

test('a unit that a whole column shares stands in its head, and its cells are bare numbers', () => {
  const { columns, rows } = inUnits(table, 'metric')
  expect(columns).toEqual([
    { head: 'Bay' },
    { head: 'Sheet', unit: 'mm' },
    { head: 'Mass', unit: 'kg' },
    { head: 'Mixed' },
  ])
  expect(rows).toEqual([
    ['fore', '1.5', '2.0', '7200 rpm'],
    ['aft', '2.0', '–', '100 mm'],
  ])
})

test('a reader of inches sees no metric unit in head or cell', () => {
  const { columns, rows } = inUnits(table, 'inch')
  expect(columns.map((c) => c.unit)).toEqual([undefined, 'in', 'lb', undefined])
  expect(JSON.stringify(rows)).not.toMatch(/mm|kg/)
  expect(rows[0]![1]).toBe('0.059')
})

test('a force read off a scale goes by the scale’s unit, and a number with a range keeps its own', () => {
  const of = (cell: ReturnType<typeof inKg>) => inUnits({ caption: '', heads: ['x'], rows: [[cell]] }, 'inch')
  expect(of(inScaleKg(500))).toMatchObject({ columns: [{ unit: 'lb' }], rows: [['112']] })
  const range = of(ranged(inKg, { value: 1, low: 0.5, high: 2 }))
  expect(range.columns).toEqual([{ head: 'x' }])
  expect(range.rows[0]![0]).toMatch(/lb \(.* lb\)$/)
})
