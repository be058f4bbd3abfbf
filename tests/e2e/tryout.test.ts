import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { onFreshPages } from './freshPages.ts'
import {
  drawn,
  goTo,
  looked,
  nameLine,
  newCraft,
  openExample,
  openExampleOn,
  openFold,
  typeValue,
} from './steps.ts'

/** What people met when they tried the app, each as a test that would have told. */

let page: Page
onFreshPages((fresh) => {
  page = fresh
})

const phone = { width: 390, height: 844 }
const questions = ['push', 'breath', 'float', 'strength', 'fuel', 'make', 'runs']
const focused = () => page.evaluate(() => document.activeElement?.id ?? '')
const strip = () => page.getByRole('region', { name: 'What is being tried' })
const pitch = '#in-jet-rotor-pitch'

test('a notice stands out from the page', async () => {
  await openExample(page, 'Heron')
  await openFold(page, 'Jet')
  await typeValue(page, '#in-jet-rotor-hub', 'Hub', '200')
  const notice = page.locator('.notice')
  await notice.waitFor()
  const ground = (of: string) => page.locator(of).evaluate((at) => getComputedStyle(at).backgroundColor)
  expect(await ground('.notice')).not.toBe('rgba(0, 0, 0, 0)')
  expect(await ground('.notice')).not.toBe(await ground('.top'))
})

test('a section of two words says what the file has in it', async () => {
  await openExample(page, 'Heron')
  const fold = page.locator('summary', { has: page.locator('.foldname', { hasText: 'Hot parts' }) })
  await expect.poll(() => fold.textContent()).toMatch(/2 items/)
})

test('with text twice as large the answer is on a phone’s first screen, under one row of words', async () => {
  await page.setViewportSize(phone)
  await page.evaluate(() => void (document.documentElement.style.fontSize = '200%'))
  await openExampleOn(page, 'Heron', 'push')
  await looked(page)
  const answer = (await page.locator('.answer h1').boundingBox())!
  expect(answer.y).toBeLessThan(phone.height / 2.5)
  // and the words stay in sight while the page scrolls under them
  await page.evaluate(() => scrollTo(0, 2000))
  await drawn(page)
  expect((await page.locator('.wordrow').boundingBox())!.y).toBe(0)
})

test('the menu of the file is in sight on a phone, with text twice as large too, and a page without a run has no mark', async () => {
  await page.setViewportSize(phone)
  await openExampleOn(page, 'Sandpiper', 'runs')
  await looked(page)
  const menu = page.getByRole('button', { name: 'File and units' })
  for (const size of ['', '200%']) {
    await page.evaluate((to) => void (document.documentElement.style.fontSize = to), size)
    await drawn(page)
    const box = (await menu.boundingBox())!
    expect(box.x).toBeGreaterThanOrEqual(0)
    expect(box.x + box.width).toBeLessThanOrEqual(phone.width)
  }
  expect(await page.locator('.words a[href="#/runs"] .mark').count()).toBe(0)
})

test('what is tried is marked inside its panel, which cuts nothing off', async () => {
  await openExampleOn(page, 'Heron', 'push')
  await typeValue(page, pitch, 'Impeller pitch', '96 mm')
  await page.locator(`${pitch} .tried[data-tried]`).waitFor()
  const cut = await page.locator(`${pitch} .tried`).evaluate((at) => {
    const own = at.getBoundingClientRect()
    for (let box = at.parentElement; box && box !== document.body; box = box.parentElement) {
      const style = getComputedStyle(box)
      if (style.overflowX !== 'visible' && box.getBoundingClientRect().left > own.left - 4)
        return box.className
    }
    return ''
  })
  expect(cut).toBe('')
})

test('the keyboard is taken to a craft that is opened, from a field to Keep with Enter, and back after keeping', async () => {
  await page.getByRole('button', { name: 'Heron', exact: true }).press('Enter')
  await nameLine(page, 'Heron').waitFor()
  await expect.poll(focused).toBe('page')
  await goTo(page, 'push')
  const field = page.locator(pitch).getByLabel('Impeller pitch', { exact: true })
  await field.fill('96')
  await field.press('Enter')
  await strip().waitFor()
  await field.press('Enter')
  await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Keep')
  await page.keyboard.press('Enter')
  await strip().waitFor({ state: 'detached' })
  await expect.poll(() => field.evaluate((at) => document.activeElement === at)).toBe(true)
})

test('the inputs of Push keep their places, and little moves, while its ranges come in', async () => {
  await page.evaluate(() => {
    const shifts = globalThis as unknown as { moved: number }
    shifts.moved = 0
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as unknown as { value: number; hadRecentInput: boolean }[])
        if (!entry.hadRecentInput) shifts.moved += entry.value
    }).observe({ type: 'layout-shift', buffered: true })
  })
  await openExampleOn(page, 'Heron', 'push')
  const order = () => page.locator('.beside .panel label').allTextContents()
  await page.locator('.beside .panel label').first().waitFor()
  const first = await order()
  await expect.poll(() => page.locator('.answer h1').textContent()).toMatch(/\(/)
  await looked(page)
  expect(await order()).toEqual(first)
  const moved = await page.evaluate(() => (globalThis as unknown as { moved: number }).moved)
  console.log(`layout shift on Push: ${moved.toFixed(3)}`)
  expect(moved).toBeLessThan(0.05)
})

test('each page is one sheet of paper', async () => {
  await openExampleOn(page, 'Heron', 'push')
  await looked(page)
  for (const id of ['craft', ...questions]) {
    await goTo(page, id)
    await page.locator('.answer h1').waitFor()
    await drawn(page)
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1')
    expect([id, pdf.match(/\/Type\s*\/Page\b/g)?.length]).toEqual([id, 1])
  }
})

test('a craft that nobody has filled in is not judged; with four values of its own it is', async () => {
  await newCraft(page, 'Grebe')
  await goTo(page, 'push')
  await page.locator('.answer[data-not-yours]').waitFor()
  await page.getByText('not yours yet').waitFor()
  await expect.poll(() => page.locator('.findings li').count()).toBeGreaterThan(0)
  expect(await page.locator('main .mark[data-standing]').count()).toBe(0)
  expect(await page.locator('.words .mark:not([data-standing="good"])').count()).toBe(0)
  await goTo(page, 'craft')
  expect(await page.locator('.nextcard, .todo').count()).toBe(0)
  await openFold(page, 'Jet')
  await typeValue(page, pitch, 'Pitch', '98 mm')
  await typeValue(page, '#in-jet-rotor-bore', 'Bore', '120 mm')
  await openFold(page, 'Hull')
  await typeValue(page, '#in-hull-length', 'Length', '2.25 m')
  await openFold(page, 'Rider')
  await typeValue(page, '#in-rider-mass', 'Mass', '82 kg')
  await page.locator('.answer[data-not-yours]').waitFor({ state: 'detached' })
  await page.locator('.nextcard').waitFor()
  await page.locator('.words a[href="#/push"] .mark').waitFor()
})

test('what is worth measuring is told once it is known what its doubt moves', async () => {
  await openExample(page, 'Heron')
  await page.locator('.more[data-fold="measure"] > summary').click()
  const list = page.locator('.measures li')
  await list.first().waitFor()
  expect(await list.first().textContent()).toMatch(/moves the top speed by ±/)
})

test('Craft opens with how it goes and the next thing to do, numbered as the list below it', async () => {
  await openExample(page, 'Heron')
  await expect.poll(() => page.locator('.answer h1').textContent()).toMatch(/It should reach .* km\/h/)
  await page.locator('.nextcard .do').waitFor()
  const counts = await page.locator('.todo .count').allTextContents()
  expect(counts).toEqual(counts.map((_, i) => String(i + 2)))
})

test('what is in sight of a page is at most 250 words: answer, inputs and three findings', async () => {
  await openExampleOn(page, 'Heron', 'push')
  await looked(page)
  for (const id of questions) {
    await goTo(page, id)
    await page.locator('.answer h1').waitFor()
    await drawn(page)
    expect(await page.locator('.question > .findings li[data-standing]').count()).toBeLessThanOrEqual(3)
    expect(await page.locator('.beside .panel > ul > li').count()).toBeLessThanOrEqual(3)
    const words = await page.locator('main').evaluate((main) => {
      const seen = main.cloneNode(true) as HTMLElement
      // letters and readings of drawings and the lines of folds are looked over, not read
      for (const aside of seen.querySelectorAll('svg, .hush, .folds, .live, details > :not(summary), select'))
        aside.remove()
      return seen.textContent!.split(/\s+/).filter((word) => word !== '').length
    })
    console.log(`${id}: ${words} words`)
    expect(words, id).toBeLessThanOrEqual(250)
  }
})
