import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/** Steps of a user that several tests take. */

/** Opens one of the examples and waits for its form. */
export async function openExample(
  page: Page,
  name: 'Heron' | 'Teal' | 'Dabchick' | 'Sandpiper',
): Promise<void> {
  await page.getByRole('button', { name, exact: true }).click()
  await page.getByRole('heading', { name: 'The craft file' }).waitFor()
}

/**
 * Opens one of the examples right on a page: the address names it already, so that the form of the craft, the largest page
 * there is, need not be laid out first.
 */
export async function openExampleOn(
  page: Page,
  name: 'Heron' | 'Teal' | 'Dabchick' | 'Sandpiper',
  id: string,
): Promise<void> {
  await goTo(page, id)
  await page.getByRole('button', { name, exact: true }).click()
  await page.locator(`.words a[aria-current="page"][href="#/${id}"]`).waitFor()
}

/** The file of an example as it is opened. */
export const exampleText = (name: 'Heron' | 'Teal' | 'Dabchick' | 'Sandpiper') =>
  readFileSync(`demo/${name.toLowerCase()}.yaml`, 'utf8')

/** Begins a craft and leaves its questions for later. */
export async function newCraft(page: Page, name: string): Promise<void> {
  await page.getByLabel('Its name').fill(name)
  await page.getByRole('button', { name: 'Begin: ten questions' }).click()
  await page.getByRole('link', { name: 'That is enough for now' }).click()
}

/** Goes to a page by its address. */
export async function goTo(page: Page, id: string): Promise<void> {
  await page.evaluate((hash) => void (location.hash = hash), `#/${id}`)
}

/** Waits until the page says that what was typed is kept. */
export async function kept(page: Page): Promise<void> {
  await page.locator('.savemark[data-saving="saved"]').waitFor()
}

/** The craft file's text as the page holds it. */
export async function fileText(page: Page): Promise<string> {
  await page.getByRole('button', { name: 'As text' }).click()
  return page.getByLabel('Text of the craft file').inputValue()
}

/** Opens a fold of the form. */
export async function openFold(page: Page, name: string): Promise<void> {
  await page.locator('summary', { has: page.locator('.foldname', { hasText: name }) }).click()
}

/** Opens a fold of a question's page, where it is not open yet, and waits until what is in it stands. */
export async function openMore(page: Page, ...ids: string[]): Promise<void> {
  for (const id of ids) {
    const fold = page.locator(`.more[data-fold="${id}"]`)
    await fold.waitFor()
    if ((await fold.getAttribute('open')) === null) await fold.locator('summary').first().click()
    await fold.locator('.within').waitFor()
  }
}

/** The line over the answer of the Craft page, which has the craft's name. */
export const nameLine = (page: Page, name: string) => page.locator('.answer .asks', { hasText: name })

/** Types a value over the one in a field and leaves the field. */
export async function typeValue(page: Page, within: string, label: string, text: string): Promise<void> {
  const field = page.locator(within).getByLabel(label, { exact: true })
  await field.fill(text)
  await field.press('Enter')
}

/** Waits until the page is laid out and drawn as it now is: fonts are there, and figures have taken their new width. */
export async function drawn(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await document.fonts.ready
    // figures follow their box in one frame and are drawn in the next
    for (let i = 0; i < 2; i++) await new Promise((done) => requestAnimationFrame(done))
  })
}

/** Waits until the craft was looked at: the marks across the top stand, and move nothing down any more. */
export async function looked(page: Page): Promise<void> {
  await page.locator('.words a[href="#/float"] .mark').waitFor()
  await drawn(page)
}

/** A page must not be wider than its window. */
export async function expectNoSideScroll(page: Page): Promise<void> {
  await drawn(page)
  await expect
    .poll(() => page.evaluate(() => document.documentElement.scrollWidth - innerWidth))
    .toBeLessThanOrEqual(0)
}
