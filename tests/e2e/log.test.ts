import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { axeFinds, onFreshPages } from './freshPages.ts'
import { goTo, openExampleOn, openMore } from './steps.ts'

/** The log of a craft on page Runs: written down, read after a reload, summed up, and a run card filled in. */
let page: Page
onFreshPages((fresh) => {
  page = fresh
})

const row = (words: string) => page.locator('.craftlog tbody tr', { hasText: words })
const add = async (says: string, numbers: Record<string, string> = {}) => {
  const form = page.locator('.addentry')
  await form.getByLabel('In your own words').fill(says)
  for (const [label, value] of Object.entries(numbers))
    await form.getByLabel(label, { exact: true }).fill(value)
  await form.getByRole('button', { name: 'Write it down' }).click()
}

test('what is written down stands after a reload, sums up to a season, and a wrong number is told', async () => {
  await openExampleOn(page, 'Heron', 'runs')
  await openMore(page, 'log')
  await add('first try', { 'pull, kg': '55', 'rpm, rpm': '6500' })
  await row('first try').waitFor()
  await add('too much', { 'pull, kg': '90000' })
  await page.locator('.addentry .blankfault', { hasText: 'no such craft does that' }).waitFor()
  expect(await row('too much').count()).toBe(0)
  await page.reload()
  await openMore(page, 'log', 'season')
  await row('first try').waitFor()
  await page.locator('[data-fold="season"] .numbers td', { hasText: '539' }).first().waitFor()
  await openMore(page, 'fit')
  await page.getByRole('button', { name: 'Fit to the runs' }).click()
  await page.getByText('thrust at an impeller speed').waitFor()
  expect(await axeFinds(page)).toEqual([])
  await page.getByRole('button', { name: 'Keep the fit' }).click()
  await page.locator('[data-fold="fit"] .result', { hasText: 'kept, from' }).waitFor()
  await page.getByRole('button', { name: 'Take the fit out' }).click()
  await page.locator('[data-fold="fit"] .result', { hasText: 'not kept' }).waitFor()
})

test('the next run is planned, its card filled in, kept over a reload, and written into the log', async () => {
  await openExampleOn(page, 'Heron', 'runs')
  await openMore(page, 'plan')
  const full = page.locator('.stepcard', { hasText: 'at full throttle. Say' })
  await full.getByLabel('scale 1').fill('54')
  await full.getByLabel('scale 2').fill('55')
  await goTo(page, 'push')
  await goTo(page, 'runs')
  await openMore(page, 'plan')
  await expect.poll(() => full.getByLabel('scale 2').inputValue()).toBe('55')
  expect(await axeFinds(page)).toEqual([])
  await page.getByRole('button', { name: 'Write this run into the log' }).click()
  await openMore(page, 'log')
  await row('pull 55 kg').waitFor()
})
