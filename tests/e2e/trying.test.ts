import type { Page } from 'playwright-core'
import { beforeEach, expect, test } from 'vitest'
import { parse } from 'yaml'
import { onFreshPages } from './freshPages.ts'
import { exampleText, fileText, kept, openExampleOn, typeValue } from './steps.ts'

let page: Page
const before = exampleText('Heron')
onFreshPages((fresh) => {
  page = fresh
})
beforeEach(async () => {
  await openExampleOn(page, 'Heron', 'push')
})

const show = (word: string) => page.getByRole('link', { name: word }).first().click()
const pitch = '#in-jet-rotor-pitch'
const strip = () => page.getByRole('region', { name: 'What is being tried' })
const textNow = async () => {
  await show('Craft')
  return fileText(page)
}

test('a tried value is shown against the one in the file, and the file stays as it was', async () => {
  await typeValue(page, pitch, 'Impeller pitch', '96 mm')
  await strip().getByText('Impeller pitch 96 mm, was 108 mm').waitFor()
  await page.locator('.answer .saystried').waitFor()
  await kept(page)
  expect(await textNow()).toBe(before)
})

test('what is tried is still tried after a reload', async () => {
  await typeValue(page, pitch, 'Impeller pitch', '96 mm')
  await kept(page)
  await page.reload()
  await strip().getByText('96 mm').waitFor()
})

test('dropping leaves no trace', async () => {
  await typeValue(page, pitch, 'Impeller pitch', '96 mm')
  await strip().getByRole('button', { name: 'Drop' }).click()
  await strip().waitFor({ state: 'detached' })
  await page.locator('.answer .saystried').waitFor({ state: 'detached' })
  expect(await textNow()).toBe(before)
})

test('the slider tries too, with the arrow keys as with the pointer', async () => {
  const slider = page.locator(pitch).getByRole('slider')
  await slider.focus()
  await page.keyboard.press('ArrowLeft')
  await strip().getByText('107 mm').waitFor()
  for (let i = 0; i < 4; i++) await page.keyboard.press('ArrowLeft')
  await strip().getByText('103 mm, was 108 mm').waitFor()
  // back where the file is: nothing is tried any more
  for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight')
  await strip().waitFor({ state: 'detached' })
})

test('keeping writes the file and the log, and can be undone after a reload', async () => {
  await typeValue(page, pitch, 'Impeller pitch', '96 mm')
  await typeValue(page, '#in-jet-nozzle-bore', 'Nozzle bore', '62 mm')
  await strip().getByRole('button', { name: 'Why' }).click()
  await strip().getByLabel('Why this change').fill('it bogs: at full throttle')
  await strip().getByLabel('What it should do').fill('reach 7200 rpm')
  await strip().getByRole('button', { name: 'Keep' }).click()
  await strip().waitFor({ state: 'detached' })
  const text = await textNow()
  expect(text).toContain('pitch: 96 mm')
  const { log } = parse(text) as { log: Record<string, string>[] }
  expect(log).toHaveLength(2)
  expect(log[0]).toMatchObject({
    date: expect.stringMatching(/^\d{4}-\d{2}-\d{2}$/),
    path: 'jet.rotor.pitch',
    from: '108 mm ±3 (measured)',
    to: '96 mm',
    reason: 'it bogs: at full throttle',
    expect: 'reach 7200 rpm',
  })
  expect(log[1]).toMatchObject({ path: 'jet.nozzle.bore', to: '62 mm' })
  await page.getByRole('region', { name: 'Changes kept' }).getByText('it bogs').first().waitFor()
  // every line that was not about these two stands as it was
  const own = new Set(text.split('\n'))
  expect(before.split('\n').filter((line) => !own.has(line))).toHaveLength(2)

  await kept(page)
  await page.reload()
  await page.getByRole('button', { name: 'Undo' }).click()
  await strip().getByText('96 mm').waitFor()
  await expect.poll(() => fileText(page)).toBe(before)
})

test('Escape and a wrong value try nothing', async () => {
  const field = page.locator(pitch).getByLabel('Impeller pitch', { exact: true })
  await field.fill('nonsense')
  await page.keyboard.press('Enter')
  await page.keyboard.press('Escape')
  await expect.poll(() => field.inputValue()).toBe('108')
  await expect.poll(() => strip().count()).toBe(0)
})
