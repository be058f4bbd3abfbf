import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { pagesFor } from '../../src/faces/web/pages/registry.ts'
import { trades } from '../../src/whole/trades.ts'
import { withoutServiceWorker } from './browser.ts'
import { axeFinds, onOneBrowser } from './freshPages.ts'
import { expectNoSideScroll, goTo, looked, openExample } from './steps.ts'

/** Every page as it first stands: sound to axe, and never wider than its window. */

const pages = pagesFor(trades.map((entry) => entry.trade.question))
const on = onOneBrowser()
const phone = { width: 390, height: 844 }
const desk = { width: 1280, height: 900 }
const freshPage = () => on.bench.freshPage(on.served.address, withoutServiceWorker)
const fontSize = (page: Page, size: string) =>
  page.evaluate((to) => void (document.documentElement.style.fontSize = to), size)

/** Opens a page of an example and waits until it stands. */
async function stand(page: Page, { id, word }: (typeof pages)[number]): Promise<void> {
  await goTo(page, id)
  await page.locator('.words a[aria-current="page"]', { hasText: word }).waitFor()
  await page.locator('main h1').first().waitFor()
  await looked(page)
  // what Breath works out takes long; the others stand when their job is done
  if (id !== 'breath') await page.locator('.job').first().waitFor({ state: 'detached' })
}

/** Breath comes last: what it works out goes on after it is left, and would slow the others. */
const breathLast = [...pages].sort((a, b) => Number(a.id === 'breath') - Number(b.id === 'breath'))

describe('the example with the most in it', () => {
  let page: Page
  beforeAll(async () => {
    page = await freshPage()
    await openExample(page, 'Dabchick')
  })
  afterAll(() => page.context().close())

  for (const which of breathLast)
    test(`${which.word}: axe finds nothing, and it fits a phone and text twice as large`, async () => {
      await page.setViewportSize(desk)
      await fontSize(page, '')
      await stand(page, which)
      await page.locator('details').evaluateAll((all) => {
        for (const fold of all) (fold as HTMLDetailsElement).open = true
      })
      expect(await axeFinds(page)).toEqual([])
      await expectNoSideScroll(page)
      await page.setViewportSize(phone)
      await expectNoSideScroll(page)
      await fontSize(page, '200%')
      await expectNoSideScroll(page)
      await page.setViewportSize(desk)
      await expectNoSideScroll(page)
    })
})

for (const example of ['Heron', 'Teal'] as const)
  test(`every page shows ${example} on a phone, without a complaint and without side scroll`, async () => {
    const page = await freshPage()
    await openExample(page, example)
    await page.setViewportSize(phone)
    for (const which of pages) {
      await stand(page, which)
      await expectNoSideScroll(page)
    }
    await page.context().close()
  })

test('the first page, with nothing on the bench, is sound to axe and fits a phone', async () => {
  const page = await freshPage()
  await page.getByRole('heading', { level: 1 }).waitFor()
  expect(await axeFinds(page)).toEqual([])
  await page.setViewportSize(phone)
  await expectNoSideScroll(page)
  await page.context().close()
})

test('Reckoners need no craft: search, give what is asked by keyboard, read the answer; axe finds nothing and it fits a phone', async () => {
  const page = await freshPage()
  await page.getByRole('link', { name: 'Reckoners' }).click()
  await page.getByRole('searchbox', { name: 'Look for' }).fill('protractor')
  await page.getByRole('link', { name: 'Pitch from a protractor reading' }).press('Enter')
  await page.getByRole('heading', { level: 1, name: 'Pitch from a protractor reading' }).waitFor()
  await page.getByText(/^Still needed/).waitFor()
  const fields = page.getByRole('region', { name: 'What you give' }).getByRole('textbox')
  await fields.nth(0).fill('60 mm')
  await fields.nth(0).press('Enter')
  await fields.nth(1).fill('15 deg')
  await fields.nth(1).press('Enter')
  // P = 2π r tan β
  await page.getByText('101 mm').waitFor()
  await fields.nth(0).fill('60 kg')
  await page.getByText(/kg/).first().waitFor()
  expect(await axeFinds(page)).toEqual([])
  await page.setViewportSize(phone)
  await expectNoSideScroll(page)
  await fontSize(page, '200%')
  await expectNoSideScroll(page)
  await page.context().close()
})
