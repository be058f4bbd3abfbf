import { readFileSync } from 'node:fs'
import axe from 'axe-core'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { readPdf } from '../pdfReader.ts'
import { onFreshPages } from './freshPages.ts'
import { openExampleOn } from './steps.ts'

let page: Page
onFreshPages((fresh) => {
  page = fresh
})

test('the book is made, and what was written into its boxes is typed back into craft and log', async () => {
  await openExampleOn(page, 'Heron', 'craft')
  const fold = page.locator('[data-fold="book"]')
  await fold.locator('summary').first().click()
  const [file] = await Promise.all([
    page.waitForEvent('download', { timeout: 280_000 }),
    fold.getByRole('button', { name: 'Make the book' }).click(),
  ])
  expect(file.suggestedFilename()).toBe('heron-book.pdf')
  const { pages } = await readPdf(readFileSync(await file.path()))
  expect(pages.length).toBeGreaterThan(40)
  expect(pages[0]!.words.map((w) => w.text)).toContain('Heron')
  // the boxes stay with the craft
  await page.reload()
  await fold.locator('summary').first().click()
  await fold.getByText(/Type back what was written/).click()
  const pitch = fold.getByLabel(/^box \d+: Impeller wrap, °$/)
  await pitch.fill('4000')
  await fold.getByRole('button', { name: 'Write into craft and log' }).click()
  await fold.getByText(/outside its limits/).waitFor()
  expect(await pitch.getAttribute('aria-invalid')).toBe('true')
  await pitch.fill('148')
  await fold.getByLabel(/^box \d+: Pull, kg$/).fill('52')
  await fold.getByRole('button', { name: 'Write into craft and log' }).click()
  await page.getByText('2 readings were written.').first().waitFor()
  await page.evaluate(axe.source)
  const faults = await page.evaluate(async () =>
    (await (globalThis as unknown as { axe: typeof axe }).axe.run('main')).violations.map(
      (v) => `${v.id} ${v.nodes[0]?.html}`,
    ),
  )
  expect(faults).toEqual([])
  if (process.env['SHOT']) await page.screenshot({ path: `${process.env['SHOT']}-book.png`, fullPage: true })
  await page.getByRole('button', { name: 'As text' }).click()
  await expect.poll(() => page.locator('textarea').first().inputValue()).toMatch(/wrap: 148 deg \(measured\)/)
})
