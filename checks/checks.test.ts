import { existsSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { describe, expect, test } from 'vitest'
import { type CheckRow, holds } from '../src/base/answers/check.ts'
import { allChecks, groups } from './allChecks.ts'
import { renderChecks } from './render.ts'

for (const [name, load] of Object.entries(groups))
  describe(`check ${name}`, async () => {
    const rows = await load()
    test('ids are unique and each row has a source and a tolerance', () => {
      expect(new Set(rows.map((r) => r.id)).size).toBe(rows.length)
      for (const r of rows) {
        expect(r.source.length, r.id).toBeGreaterThan(5)
        expect(r.within !== undefined || r.withinPart !== undefined, r.id).toBe(true)
      }
    })
    test.each(rows.map((r) => [r.id, r.quantity, r] as const))('%s %s', (_id, _quantity, row) => {
      if (!holds(row)) expect(row).toEqual({ ...row, got: row.expected })
      expect(holds(row)).toBe(true)
    })
  })

test('docs/checks.md shows these rows; if not, run npm run docs', async () => {
  const path = resolve(import.meta.dirname, '../docs/checks.md')
  expect(existsSync(path)).toBe(true)
  expect(readFileSync(path, 'utf8')).toBe(renderChecks(await allChecks()))
})

test('a row outside its tolerance does not hold, nor does one that is not a number', () => {
  const row: CheckRow = {
    id: 'x',
    group: 'g',
    quantity: 'q',
    unit: 'm',
    expected: 2,
    got: 2.1,
    within: 0.05,
    origin: 'exact',
    source: 'none',
  }
  expect(holds(row)).toBe(false)
  expect(holds({ ...row, got: Number.NaN })).toBe(false)
  expect(holds({ ...row, withinPart: 0.1 })).toBe(true)
})
