import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { axeFinds, onFreshPages } from './freshPages.ts'
import { drawn, expectNoSideScroll, goTo, looked, openExample } from './steps.ts'

/** What to do, numbered on the picture of the craft. */

let page: Page
onFreshPages((fresh) => {
  page = fresh
})

const spots = () => page.locator('.spot')
const address = () => page.evaluate(() => decodeURIComponent(location.hash))
const focusIn = (selector: string) =>
  page.evaluate((at) => document.activeElement?.closest(at) !== null, selector)

async function open(name: 'Heron' | 'Sandpiper'): Promise<void> {
  await openExample(page, name)
  await looked(page)
  await spots().first().waitFor()
}

test('the numbers on the picture are those of the list, stand on the drawing of the craft, and are large enough to press', async () => {
  await open('Heron')
  const numbers = (await spots().allTextContents()).map((t) => Number.parseInt(t, 10))
  expect(numbers.length).toBeGreaterThan(5)
  const listed = await page.locator('.nextcard .count, .todo .count').allTextContents()
  expect(listed.map(Number)).toEqual([1, 2, 3])
  for (const n of listed) expect(numbers).toContain(Number(n))
  const sheet = (await page.locator('.sheet:has(.spot)').boundingBox())!
  for (const spot of await spots().all()) {
    const box = (await spot.boundingBox())!
    expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(24)
    expect(box.x).toBeGreaterThan(sheet.x)
    expect(box.x + box.width).toBeLessThan(sheet.x + sheet.width)
    expect(box.y).toBeGreaterThan(sheet.y)
    expect(box.y + box.height).toBeLessThan(sheet.y + sheet.height)
  }
  expect(await axeFinds(page)).toEqual([])
  await page.setViewportSize({ width: 390, height: 844 })
  await expectNoSideScroll(page)
})

test('a number leads by keyboard to its page and the input there; one about no input alone leads to the finding', async () => {
  await open('Sandpiper')
  await page.locator('.spot', { hasText: 'The impeller is too steep' }).press('Enter')
  await page.locator('.words a[aria-current="page"]', { hasText: 'Push' }).waitFor()
  expect(await address()).toBe('#/push/jet.rotor.pitch')
  await expect.poll(() => focusIn('#in-jet-rotor-pitch')).toBe(true)
  await goTo(page, 'craft')
  await page.locator('.spot', { hasText: 'Swamped, it floats' }).press('Enter')
  await page.locator('.words a[aria-current="page"]', { hasText: 'Float' }).waitFor()
  await expect.poll(() => focusIn('.findings li[id]')).toBe(true)
  expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Swamped')
})

test('the number in the list leads the same way; an input that its page does not show is found on the Craft page', async () => {
  await open('Heron')
  const first = page.locator('.nextcard .count')
  expect(await first.getAttribute('href')).toBe(await spots().first().getAttribute('href'))
  await goTo(page, `strength/${encodeURIComponent('place.water temperature')}`)
  await page.locator('.words a[aria-current="page"]', { hasText: 'Craft' }).waitFor()
  await expect.poll(() => focusIn('#in-place-water-temperature')).toBe(true)
  await drawn(page)
})
