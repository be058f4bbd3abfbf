import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { axeFinds, onFreshPages } from './freshPages.ts'
import { openExampleOn, openMore } from './steps.ts'

/** Which guesses would change a decision, asked for on the Craft page. */

let page: Page
onFreshPages((fresh) => {
  page = fresh
})

test('guesses are tried at both ends on request, with progress; called off, it keeps what it found and can be asked again', async () => {
  await openExampleOn(page, 'Heron', 'craft')
  await openMore(page, 'measure')
  const deciding = page.locator('.deciding')
  const ask = deciding.getByRole('button', { name: 'Which of them would change a decision?' })
  await ask.click()
  await deciding.getByRole('progressbar').waitFor()
  // the first value that turns a decision is told as soon as it is found, with where it stands in the form
  await deciding.locator('ol > li').first().waitFor({ timeout: 600_000 })
  expect(await deciding.locator('.says').textContent()).toMatch(/^So far: \d+ of \d+ values/)
  expect(await deciding.locator('ol > li').first().textContent()).toMatch(/at [\d.−]+ .+:/)
  await deciding.getByRole('button', { name: 'Cancel' }).click()
  await deciding.getByText('Called off; what was found so far is below.').waitFor()
  expect(await deciding.locator('ol > li').count()).toBeGreaterThan(0)
  await ask.waitFor()
  expect(await axeFinds(page)).toEqual([])
})
