import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { onFreshPages } from './freshPages.ts'
import { goTo, looked, openExample, openMore } from './steps.ts'

/** For a reader of inches and pounds nothing metric stands on any page, in words, tables or drawings. */

let page: Page
onFreshPages((fresh) => {
  page = fresh
})

const pages = ['craft', 'push', 'breath', 'float', 'strength', 'fuel', 'make', 'runs']

/** Everything there is to read: words, tables, letters of drawings, what fields and buttons are called. */
async function metricFigures(): Promise<string[]> {
  return page.evaluate(() => {
    const figure =
      /\d[\d.\u202F]*\s?(mm|cm|m|km|km\/h|m\/s|kg|g|N|kN|kPa|MPa|bar|°C|K|L|N·m|kW|W|mm²|cm²|mm³|cm³|cm⁴|L\/s|kg\/m²|kg\/m³|N\/mm|µm)(?![\w/²³·⁴])/g
    const heads = /^(mm|cm|m|kg|N|kPa|MPa|km\/h|m\/s|kW|N·m|°C|L|cm²|cm³|kg\/m²|N\/mm)$/
    const main = document.querySelector('main')!
    const found: string[] = []
    const note = (text: string) => {
      for (const { 0: hit, index } of text.matchAll(figure))
        found.push(`${hit} in “${text.slice(Math.max(0, index - 50), index + 30)}”`)
    }
    const walk = document.createTreeWalker(main, NodeFilter.SHOW_TEXT)
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      const parent = node.parentElement!
      // the builder's own words stay as they were written
      if (parent.closest('textarea, [data-fold="about"], .changelog, #in-about')) continue
      const text = node.textContent!.trim()
      note(text)
      if (heads.test(text) && parent.closest('th, .unit, td')) found.push(`head ${text}`)
    }
    // sentences are made of pieces: what a piece of its own cannot show
    for (const p of main.querySelectorAll('p, li, td, th, figcaption, summary'))
      if (!p.closest('textarea, [data-fold="about"], .changelog, #in-about')) note(p.textContent!)
    for (const at of main.querySelectorAll('[aria-label], [aria-valuetext], [title], [placeholder]'))
      for (const name of ['aria-label', 'aria-valuetext', 'title', 'placeholder'])
        note(at.getAttribute(name) ?? '')
    return [...new Set(found)]
  })
}

for (const name of ['Heron', 'Dabchick'] as const)
  test(`${name}: every page with all its folds open has no metric figure`, async () => {
    await openExample(page, name)
    await looked(page)
    await page.getByRole('button', { name: 'File and units' }).click()
    await page.getByRole('menuitem', { name: 'Show inches and pounds' }).click()
    const left: Record<string, string[]> = {}
    for (const id of pages) {
      await goTo(page, id)
      await page.locator('main h1').first().waitFor()
      if (id === 'runs') await page.getByRole('button', { name: 'Try an invented run' }).click()
      if (id === 'runs') await page.locator('.runview').waitFor()
      if (id === 'push' && name === 'Heron') {
        await openMore(page, 'choose')
        await page.locator('.choose').getByRole('button', { name: 'Search' }).click()
        await page.locator('.choose .job').waitFor({ state: 'detached' })
      }
      for (let i = 0; i < 2; i++) {
        await page.locator('main details').evaluateAll((all) => {
          for (const fold of all) (fold as HTMLDetailsElement).open = true
        })
        await page.waitForTimeout(300)
      }
      left[id] = await metricFigures()
    }
    for (const [id, list] of Object.entries(left)) if (list.length > 0) console.log(id, list)
    expect(left).toEqual(Object.fromEntries(pages.map((id) => [id, []])))
  })
