import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/** Steps of a user that several tests take. */

/** Opens one of the examples and waits for its form. */
export async function openExample(page: Page, name: 'Heron' | 'Teal' | 'Dabchick'): Promise<void> {
  await page.getByRole('button', { name, exact: true }).click()
  await page.getByRole('heading', { name: 'The craft file' }).waitFor()
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

/** Types a value over the one in a field and leaves the field. */
export async function typeValue(page: Page, within: string, label: string, text: string): Promise<void> {
  const field = page.locator(within).getByLabel(label, { exact: true })
  await field.fill(text)
  await field.press('Enter')
}

/** A page must not be wider than its window. */
export async function expectNoSideScroll(page: Page): Promise<void> {
  const [wide, window] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth])
  expect(wide).toBeLessThanOrEqual(window!)
}
