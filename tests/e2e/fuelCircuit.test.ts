import type { Page } from 'playwright-core'
import { beforeEach, expect, test } from 'vitest'
import { axeFinds, onFreshPages } from './freshPages.ts'
import { expectNoSideScroll, openExampleOn, openMore } from './steps.ts'

let page: Page
onFreshPages((fresh) => {
  page = fresh
})
beforeEach(async () => {
  await openExampleOn(page, 'Teal', 'fuel')
  await page.locator('.answer h1').waitFor()
})

const strip = () => page.getByRole('region', { name: 'What is being tried' })

test('the circuit is drawn in four leans beside what moves it, and a chip’s row stands among the numbers', async () => {
  await expect.poll(() => page.locator('.answer h1').textContent()).toMatch(/It will be fed/)
  const words = await page.locator('.question .figure svg').first().locator('text').allTextContents()
  for (const head of ['At rest, idling', 'Flat out', 'Bow up, over the hump', 'Bow down 5°'])
    expect(words).toContain(head)
  await openMore(page, 'fuel-numbers')
  const chips = page.locator('section.numbers', { hasText: 'A chip in the main jet' })
  expect(await chips.locator('tbody tr').count()).toBe(9)
})

test('a vent’s fitting dragged aft is tried, and the tank’s row tells how far it stays dry', async () => {
  await openMore(page, 'fuel-numbers')
  const row = page
    .locator('section.numbers', { hasText: 'The tank in every lean' })
    .locator('tbody tr', { hasText: 'hump' })
    .first()
  const dry = async () => Number((await row.locator('td').nth(2).textContent())?.replace('%', '').trim())
  const before = await dry()
  const slider = page.getByRole('slider', { name: /Vent forward/ }).first()
  await slider.focus()
  for (let i = 0; i < 15; i++) await page.keyboard.press('ArrowLeft')
  await strip().waitFor()
  await expect.poll(dry).toBeLessThan(before)
})

test('on a phone it does not scroll aside, and nothing on it is out of reach of a reader', async () => {
  await page.setViewportSize({ width: 390, height: 844 })
  await expectNoSideScroll(page)
  expect(await axeFinds(page)).toEqual([])
})
