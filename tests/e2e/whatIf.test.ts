import axe from 'axe-core'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { onFreshPages } from './freshPages.ts'
import { openExample } from './steps.ts'

let page: Page
onFreshPages((fresh) => {
  page = fresh
})

test('a switch changes numbers and picture at once, and nothing in the file', async () => {
  await openExample(page, 'Sandpiper')
  await page.locator('.nextcard').waitFor()
  const says = page.locator('.whatif p')
  const drawing = () => page.locator('.figure svg').first().innerHTML()
  const plain = await drawing()
  await page.getByLabel('one engine dead').check()
  await expect
    .poll(() => says.textContent())
    .toMatch(
      /^Then [\d.]+\skm\/h instead of [\d.]+\skm\/h, \d+\sN of pull instead of \d+\sN, tied up at .*front does not fire/,
    )
  const dead = Number(/(\d+)\sN of pull/.exec((await says.textContent())!)![1])
  const whole = Number(/instead of (\d+)\sN/.exec((await says.textContent())!)![1])
  expect(dead).toBeLessThan(0.6 * whole)
  await page.getByLabel('one engine dead').uncheck()
  await expect.poll(() => says.textContent()).toBe('')
  await page.getByLabel('rider aft').check()
  await expect.poll(drawing).not.toBe(plain)
  await page.getByLabel('rider aft').uncheck()
  await page.getByLabel('swamped').check()
  await expect.poll(() => page.locator('.figure svg').first().innerHTML()).toMatch(/swamped/)
  expect(await says.textContent()).toMatch(/^Swamped, it /)
  await expect.poll(drawing).not.toBe(plain)
  // nothing is tried and nothing is to be kept or undone
  expect(await page.locator('.trystrip').count()).toBe(0)
  await page.evaluate(axe.source)
  const faults = await page.evaluate(async () =>
    (await (globalThis as unknown as { axe: typeof axe }).axe.run('.whatif')).violations.map((v) => v.id),
  )
  expect(faults).toEqual([])
})
