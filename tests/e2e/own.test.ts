import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { onFreshPages } from './freshPages.ts'
import { fileText, kept, nameLine, newCraft, openExample, openFold, typeValue } from './steps.ts'

let page: Page
onFreshPages((fresh) => {
  page = fresh
})

test('a craft of one’s own is begun, filled in by the form alone, kept, left and taken up again', async () => {
  await newCraft(page, 'Grebe: the second')
  await nameLine(page, 'Grebe: the second').waitFor()

  // a value with its ± and its source
  await openFold(page, 'Jet')
  await typeValue(page, '#in-jet-rotor-pitch', 'Pitch', '4 in')
  const row = page.locator('#in-jet-rotor-pitch')
  await row.getByLabel('±').fill('2')
  await row.getByLabel('±').press('Enter')
  await row.getByRole('combobox').selectOption('measured')

  // an item more in a list
  await openFold(page, 'Weights')
  await page.locator('summary', { hasText: 'Add a weight' }).click()
  const add = page.locator('#in-weights-1')
  await add.getByRole('button', { name: 'Add' }).click()
  await add.getByText('Needed.').waitFor()
  await add.locator('[name="weights.1.name"]').fill('anchor: the small one')
  await add.locator('[name="weights.1.mass"]').fill('5 lb')
  await add.locator('[name="weights.1.at.0"]').fill('1.9')
  await add.locator('[name="weights.1.at.1"]').fill('0')
  await add.locator('[name="weights.1.at.2"]').fill('8 in')
  await add.getByRole('button', { name: 'Add' }).click()
  await page.locator('summary', { hasText: 'anchor: the small one' }).waitFor()

  // something the file does not have to have
  await page.locator('summary', { hasText: 'Grate: not given' }).click()
  await page.locator('[name="jet.grate.bar"]').fill('4')
  await page.locator('[name="jet.grate.gap"]').fill('20')
  await page.locator('#in-jet-grate').getByRole('button', { name: 'Add' }).click()
  await page.locator('#in-jet-grate-bar').waitFor()
  await kept(page)

  const text = await fileText(page)
  expect(text).toContain('pitch: 4 in ±2 (measured)')
  expect(text).toContain('anchor: the small one')
  await page.getByText('The text reads well').waitFor()

  // how it will go is worked out at once
  await page.locator('.words a[href="#/push"]').click()
  await page.getByRole('heading', { level: 1, name: /km\/h|not known/ }).waitFor()

  // put away, and taken up again from the shelf
  await page.getByRole('button', { name: 'File and units' }).click()
  await page.getByRole('menuitem', { name: 'All crafts' }).click()
  await page.getByRole('button', { name: 'grebe-the-second.yaml', exact: true }).click()
  await page.getByRole('link', { name: 'Craft' }).click()
  await expect.poll(() => fileText(page)).toBe(text)

  // an item is taken out, and undo brings it back
  await page.getByRole('button', { name: 'As a form' }).click()
  await openFold(page, 'Weights')
  await page.locator('summary', { hasText: 'anchor' }).click()
  await page.getByRole('button', { name: 'Take weight 2 out' }).click()
  await expect.poll(() => page.locator('summary', { hasText: 'anchor' }).count()).toBe(0)
  await page.getByRole('button', { name: 'Undo' }).click()
  await page.locator('summary', { hasText: 'anchor' }).waitFor()
})

test('an earlier text kept in the browser is gone back to', async () => {
  await openExample(page, 'Teal')
  const before = await fileText(page)
  await page.getByLabel('Text of the craft file').fill(before.replace('name: Teal', 'name: Teal, longer'))
  await kept(page)
  await openFold(page, 'Earlier texts')
  await page.getByText('name: Teal').first().waitFor()
  await page.getByRole('button', { name: 'Go back to this' }).last().click()
  await expect.poll(() => page.getByLabel('Text of the craft file').inputValue()).toBe(before)
})

test('forgetting a kept craft asks once more', async () => {
  await openExample(page, 'Teal')
  await kept(page)
  await page.getByRole('button', { name: 'File and units' }).click()
  await page.getByRole('menuitem', { name: 'All crafts' }).click()
  await page.getByRole('button', { name: 'Forget teal.yaml' }).click()
  await page.getByRole('button', { name: 'Keep it' }).click()
  await page.getByRole('button', { name: 'Forget teal.yaml' }).click()
  await page.getByRole('button', { name: 'Forget for good' }).click()
  await expect.poll(() => page.getByText('Kept in this browser').count()).toBe(0)
})
