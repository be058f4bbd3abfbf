import axe from 'axe-core'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { onFreshPages } from './freshPages.ts'
import { openExampleOn } from './steps.ts'

let page: Page
onFreshPages((fresh) => {
  page = fresh
})

const pick = (part: string | RegExp) =>
  page.locator('.partchoice select').evaluate(
    (select, wanted) => {
      const box = select as HTMLSelectElement
      const found = [...box.options].find((o) => new RegExp(wanted).test(o.label))
      box.value = found?.value ?? ''
      box.dispatchEvent(new Event('change', { bubbles: true }))
    },
    typeof part === 'string' ? part : part.source,
  )

test('parts of sheet are shown flat and rolled, handed over as pages, and marked as made', async () => {
  await openExampleOn(page, 'Dabchick', 'make')
  await expect
    .poll(() => page.locator('.answer h1').textContent())
    .toMatch(/\d+ of \d+ parts are left to make/)
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Pages (PDF)' }).click(),
  ])
  expect(file.suggestedFilename()).toMatch(/\.pdf$/)
  const left = async () => Number(/(\d+) of/.exec((await page.locator('.answer h1').textContent())!)![1])
  const before = await left()
  await page.getByRole('button', { name: 'Mark as made' }).click()
  await page.getByRole('button', { name: 'Made', exact: true }).waitFor()
  await expect.poll(left).toBe(before - 1)
  // it is in the log: a reload knows it
  await page.reload()
  await page.getByRole('button', { name: 'Made', exact: true }).waitFor()
  await page.getByLabel('Printed square, mm').fill('50')
  await page.getByRole('button', { name: 'Pages (PDF)' }).click()
  await page.getByRole('alert').filter({ hasText: 'expected 90 to 110 mm' }).waitFor()
  await page.evaluate(axe.source)
  const faults = await page.evaluate(async () =>
    (await (globalThis as unknown as { axe: typeof axe }).axe.run('main')).violations.map(
      (v) => `${v.id} ${v.nodes[0]?.html}`,
    ),
  )
  expect(faults).toEqual([])
  if (process.env['SHOT']) await page.screenshot({ path: `${process.env['SHOT']}-sheet.png` })
})

test('a part to print is made in a worker, shown from outside and cut through, and handed over for the printer', async () => {
  await openExampleOn(page, 'Heron', 'make')
  await page.locator('.partchoice select').waitFor()
  await pick(/[Ii]mpeller/)
  const stl = page.getByRole('button', { name: /\.stl$/ }).first()
  await stl.waitFor()
  if (process.env['SHOT']) await page.screenshot({ path: `${process.env['SHOT']}-print.png` })
  const [file] = await Promise.all([page.waitForEvent('download'), stl.click()])
  expect(file.suggestedFilename()).toMatch(/impeller.*\.stl$/)
  await page.setViewportSize({ width: 390, height: 844 })
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
  if (process.env['SHOT']) await page.screenshot({ path: `${process.env['SHOT']}-phone.png`, fullPage: true })
})
