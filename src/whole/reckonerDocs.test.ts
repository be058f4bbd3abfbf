import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, test } from 'vitest'
import { renderReckoners } from './reckonerDocs.ts'
import { reckoners } from './reckoners.ts'

test('docs/reckoners.md shows the registry; if not, run npm run docs', () => {
  const page = readFileSync(resolve(import.meta.dirname, '../../docs/reckoners.md'), 'utf8')
  expect(page).toBe(renderReckoners(reckoners))
})
