import type { Page } from 'playwright-core'
import { beforeEach, expect, test } from 'vitest'
import { axeFinds, onFreshPages } from './freshPages.ts'
import { expectNoSideScroll, openExample } from './steps.ts'

let page: Page
onFreshPages((fresh) => {
  page = fresh
})
beforeEach(async () => {
  await openExample(page, 'Heron')
  await page.evaluate(() => {
    location.hash = '#/strength'
  })
  await page.locator('.answer h1').waitFor()
})

const strip = () => page.getByRole('region', { name: 'What is being tried' })
const bays = () => page.getByRole('region', { name: 'The bays' }).locator('tbody tr')

test('the weakest bay is named in the answer and shown first; every bay has a row', async () => {
  const says = await page.locator('.answer h1').textContent()
  const shown = await page.locator('.switch button[aria-pressed="true"]').first().textContent()
  expect(says).toContain(shown)
  expect(await bays().count()).toBe(3)
  expect(await page.locator('.pictures svg').count()).toBe(3)
})

test('a thicker skin is tried with the slider: now against tried in answer, pictures and table', async () => {
  const slider = page.getByRole('slider', { name: /skin, slider/ }).first()
  await slider.focus()
  for (let i = 0; i < 8; i++) await page.keyboard.press('ArrowRight')
  await strip().waitFor()
  await expect.poll(() => bays().count()).toBe(4)
  const margin = async (row: number) => Number(await bays().nth(row).locator('td').nth(4).textContent())
  const names = await bays().locator('th').allTextContents()
  const tried = names.findIndex((n) => n.endsWith(', tried'))
  expect(await margin(tried)).toBeGreaterThan(await margin(tried - 1))
  await strip().getByRole('button', { name: 'Drop', exact: true }).click()
  await expect.poll(() => bays().count()).toBe(3)
})

test('the search compares the options by mass, give and margin, and a build of the same kind can be tried', async () => {
  await page.getByRole('button', { name: 'Search' }).click()
  const table = page.getByRole('region', { name: 'Options compared' })
  await table.waitFor()
  const masses = (await table.locator('tbody tr td:nth-child(2)').allTextContents()).map(Number)
  expect(masses.length).toBeGreaterThan(3)
  expect(Math.min(...masses.slice(1))).toBeLessThan(masses[0]!)
  const option = page.locator('.lightest').getByRole('button', { name: /^Try / }).first()
  await option.click()
  await strip().waitFor()
  await page.locator('.answer .saystried, .strength').first().waitFor()
})

test('a hatch says what to put back, hot parts how far they must stand off, findings include the printed impeller', async () => {
  expect(await page.getByText(/Put back \d+ mm² of section/).count()).toBe(1)
  await page.getByRole('heading', { name: 'Foam beside hot parts' }).waitFor()
  expect(await page.locator('.hotparts svg desc').textContent()).toMatch(/wants \d+ mm|no distance/)
  await expect.poll(() => page.locator('.findings').textContent(), { timeout: 20_000 }).toMatch(/blade roots/)
})

test('the page is sound to axe and needs no side scroll on a phone', async () => {
  expect(await axeFinds(page)).toEqual([])
  await page.setViewportSize({ width: 390, height: 844 })
  await expectNoSideScroll(page)
})
