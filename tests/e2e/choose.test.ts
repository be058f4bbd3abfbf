import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { axeFinds, onFreshPages } from './freshPages.ts'
import { expectNoSideScroll, fileText, goTo, kept, openExample, openExampleOn, openMore } from './steps.ts'

/** The search for impeller and nozzle, from the Push page. */

let page: Page
onFreshPages((fresh) => {
  page = fresh
})

const choose = () => page.locator('.choose')
const options = () => choose().locator('.trylist li')
const strip = () => page.getByRole('region', { name: 'What is being tried' })
const line = () => page.locator('.more[data-fold="choose"] .result')

test('the search tells the best with its regret, each option with change of pull and speed, two pictures; an option is tried and kept in sight', async () => {
  await openExampleOn(page, 'Sandpiper', 'push')
  await openMore(page, 'choose')
  expect(await line().textContent()).toContain('not searched yet')
  await choose().getByRole('button', { name: 'Search' }).click()
  await choose().getByRole('progressbar').waitFor()
  await choose().getByRole('progressbar').waitFor({ state: 'detached' })
  const says = await choose().textContent()
  expect(says).toMatch(/Best for .* is an impeller of/)
  expect(says).toMatch(/stays within \d+ % of the best whether the engines give [\d.]+ kW or [\d.]+ kW each/)
  const all = await options().allTextContents()
  expect(all.length).toBeGreaterThan(3)
  for (const one of all)
    expect(one).toMatch(/[+−]\d+ N \([+−−\d ]+ to .*of pull, [+−][\d.]+ km\/h \(.* to .*\)/)
  expect(all.some((t) => /2 blades instead of 3/.test(t))).toBe(true)
  expect(all.some((t) => /a nozzle of \d+ mm instead of/.test(t))).toBe(true)
  await expect.poll(() => choose().locator('figure svg').count()).toBe(3)
  expect(await axeFinds(page)).toEqual([])
  await options().first().getByRole('button').click()
  await strip().waitFor()
  await page.locator('.answer .saystried').waitFor()
  // what was found does not go away by being tried
  expect(await options().count()).toBe(all.length)
  expect(await line().textContent()).toContain('an impeller of')
  await page.setViewportSize({ width: 390, height: 844 })
  await expectNoSideScroll(page)
})

test('called off, the search keeps the best so far and can be taken up again', async () => {
  await openExampleOn(page, 'Sandpiper', 'push')
  await openMore(page, 'choose')
  await choose().getByRole('button', { name: 'Search' }).click()
  await options().first().waitFor()
  await choose().getByRole('button', { name: 'Cancel' }).click()
  await expect.poll(() => choose().textContent()).toMatch(/Called off.*So far: Best for/)
  expect(await options().count()).toBeGreaterThan(0)
  await choose().getByRole('button', { name: 'Search on' }).waitFor()
})

test('what the file leaves undecided is chosen first of all, and the answer is of what was chosen', async () => {
  await openExample(page, 'Sandpiper')
  const text = await fileText(page)
  const open = text.replace(/( {4}pitch: )100 mm.*/, '$1undecided')
  expect(open).not.toBe(text)
  await page.getByLabel('Text of the craft file').fill(open)
  await kept(page)
  await goTo(page, 'push')
  const first = page.locator('.question > :first-child')
  await expect.poll(() => first.textContent()).toMatch(/Choose the impeller.*not decided yet.*pitch \d+ mm/i)
  const put = /pitch (\d+) mm/.exec((await first.textContent())!)![1]
  // the input shows the pitch that was put in
  await expect
    .poll(() =>
      page.locator('#in-jet-rotor-pitch').getByLabel('Impeller pitch', { exact: true }).inputValue(),
    )
    .toContain(put!)
  await expect.poll(() => page.locator('.answer h1').textContent()).toMatch(/It should reach/)
})
