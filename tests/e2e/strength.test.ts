import type { Page } from 'playwright-core'
import { beforeEach, expect, test } from 'vitest'
import { axeFinds, onFreshPages } from './freshPages.ts'
import { expectNoSideScroll, kept, openExampleOn, openMore } from './steps.ts'

let page: Page
onFreshPages((fresh) => {
  page = fresh
})
beforeEach(async () => {
  await openExampleOn(page, 'Heron', 'strength')
  await page.locator('.answer h1').waitFor()
  await openMore(page, 'numbers')
})

const strip = () => page.getByRole('region', { name: 'What is being tried' })
const bays = () => page.getByRole('region', { name: 'The bays' }).locator('tbody tr')

test('the weakest bay is named in the answer and shown first; every bay has a row', async () => {
  const says = await page.locator('.answer h1').textContent()
  const shown = await page.locator('.switch button[aria-pressed="true"]').first().textContent()
  expect(says).toContain(shown)
  await expect.poll(() => bays().count()).toBe(3)
  await openMore(page, 'loads')
  // the bay, its load, its share, and the chain from the engines to the impeller
  await expect.poll(() => page.locator('.question .figure svg').count()).toBe(4)
})

test('a thicker skin is tried with the slider: now against tried in answer, pictures and table', async () => {
  const slider = page.getByRole('slider', { name: /: sheet, slider/ }).first()
  await slider.focus()
  for (let i = 0; i < 8; i++) await page.keyboard.press('ArrowRight')
  await strip().waitFor()
  // a bay goes by its own name, not by its place in the list
  await expect
    .poll(() => strip().textContent())
    .toMatch(/Trying (knee pads|engine hatch lid|fore deck), skin [\d.]+ mm, was/)
  await expect.poll(() => bays().count()).toBe(4)
  const margin = async (row: number) => Number(await bays().nth(row).locator('td').nth(4).textContent())
  const names = await bays().locator('th').allTextContents()
  const tried = names.findIndex((n) => n.endsWith(', tried'))
  await expect.poll(() => margin(tried)).toBeGreaterThan(await margin(tried - 1))
  await strip().getByRole('button', { name: 'Drop', exact: true }).click()
  await expect.poll(() => bays().count()).toBe(3)
})

test('the search sets options of every kind side by side; one of another kind is redrawn when picked, kept as a file that reads, and undone', async () => {
  await page.getByRole('button', { name: 'fore deck', exact: true }).click()
  await openMore(page, 'lightest')
  await page.getByRole('button', { name: 'Search' }).click()
  const table = page.getByRole('region', { name: 'Options compared' })
  await table.waitFor()
  await page.getByRole('button', { name: 'Search' }).waitFor()
  const masses = (await table.locator('tbody tr td:nth-child(2)').allTextContents()).map(Number)
  expect(masses.length).toBeGreaterThan(4)
  expect(Math.min(...masses.slice(1))).toBeLessThan(masses[0]!)
  const builds = (await table.locator('tbody th').allTextContents()).join('; ')
  for (const kind of [/sheet alone/, /on \d+ mm hats/, /foam/, /faces on/]) expect(builds).toMatch(kind)
  const lightest = page.locator('.lightest')
  await expect.poll(() => lightest.locator('.sections svg').count()).toBe(1)
  await lightest
    .getByRole('button', { name: /^Try .*faces on/ })
    .first()
    .click()
  await strip().waitFor()
  await expect.poll(() => strip().textContent()).toMatch(/kind sandwich, was stringers/)
  await expect.poll(() => lightest.locator('.sections svg').count()).toBe(2)
  await expect
    .poll(() => lightest.locator('.sections svg desc').last().textContent())
    .toMatch(/sheet on .* with .* under it/)
  await expect.poll(() => bays().count()).toBe(4)
  await strip().getByRole('button', { name: 'Keep', exact: true }).click()
  await expect.poll(() => bays().count()).toBe(3)
  await expect.poll(() => bays().nth(2).locator('td').first().textContent()).toMatch(/with .* under it/)
  await kept(page)
  await page.reload()
  await openMore(page, 'numbers')
  await expect.poll(() => bays().nth(2).locator('td').first().textContent()).toMatch(/with .* under it/)
  await page.keyboard.press('Control+z')
  await expect
    .poll(() => bays().nth(2).locator('td').first().textContent())
    .toBe('1.5 mm 5052-H32 sheet on hats 30 mm high every 120 mm')
})

test('a hatch says what to put back, hot parts how far they must stand off, findings include the printed impeller', async () => {
  await page.getByRole('button', { name: 'fore deck', exact: true }).click()
  await openMore(page, 'hatch', 'hot', 'frame', 'findings')
  await expect.poll(() => page.getByText(/Put back \d+ mm² of section/).count()).toBe(1)
  await page.getByRole('heading', { name: 'Foam beside hot parts' }).waitFor()
  await expect
    .poll(() => page.locator('.hotparts svg desc').last().textContent())
    .toMatch(/bare it wants \d+ mm|no distance/)
  const guards = page.getByRole('region', { name: /^Guards for/ }).locator('tbody tr')
  await expect.poll(() => guards.count()).toBe(3)
  await expect
    .poll(() => page.getByText(/With it fore deck bears [\d.]+ times what is asked/).count())
    .toBe(1)
  const findings = async () => (await page.locator('.findings').allTextContents()).join(' ')
  await expect.poll(findings).toMatch(/blade roots/)
  const found = await findings()
  for (const part of [
    /sealant/,
    /pops once it is/,
    /Beside a weld/,
    /Where foam cannot go/,
    /the hole under it/,
  ])
    expect(found).toMatch(part)
})

test('the page is sound to axe and needs no side scroll on a phone', async () => {
  expect(await axeFinds(page)).toEqual([])
  await page.setViewportSize({ width: 390, height: 844 })
  await expectNoSideScroll(page)
})
