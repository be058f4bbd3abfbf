import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { expect } from 'vitest'
import type { Sheet } from './sheet.ts'
import { svgOf } from './svg.ts'

/**
 * Compares a drawing with the picture kept beside the test. A difference writes `…-changed.svg` next to it for a person to
 * look at; UPDATE_GOLDEN=1 keeps the new picture instead.
 */
export function expectGolden(sheet: Sheet, folder: string, name: string): void {
  const got = svgOf(sheet)
  const kept = `${folder}/${name}.golden.svg`
  const changed = `${folder}/${name}-changed.svg`
  if (process.env['UPDATE_GOLDEN'] === '1') writeFileSync(kept, got)
  const want = existsSync(kept) ? readFileSync(kept, 'utf8') : ''
  if (got === want) rmSync(changed, { force: true })
  else writeFileSync(changed, got)
  expect(got === want, `${name}: the drawing changed, see ${changed}`).toBe(true)
}
