import type { Page, Route } from 'playwright-core'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { patience, serveApp, withoutServiceWorker } from './browser.ts'
import { onOneBrowser } from './freshPages.ts'
import { fileText, kept, nameLine, openExample, openFold, typeValue } from './steps.ts'

/** Tabs of one browser that share what is kept: reloads, two at once, one that froze, and no server. */

const on = onOneBrowser()
let first: Page
beforeEach(async () => {
  first = await on.bench.freshPage(on.served.address, withoutServiceWorker)
})
afterEach(() => first.context().close())

/** Another tab beside the first. */
async function anotherTab(): Promise<Page> {
  const tab = await first.context().newPage()
  tab.setDefaultTimeout(patience)
  await tab.goto(on.served.address)
  return tab
}

const pitch = '#in-jet-rotor-pitch'

test('undo and redo reach across a reload', async () => {
  await openExample(first, 'Heron')
  await openFold(first, 'Jet')
  await typeValue(first, pitch, 'Pitch', '100')
  await first.waitForTimeout(1600)
  await typeValue(first, pitch, 'Pitch', '90')
  await kept(first)
  await first.reload()
  await first.getByRole('heading', { name: 'The craft file' }).waitFor()
  await kept(first)
  await first.getByRole('button', { name: 'Undo' }).click()
  await expect.poll(() => fileText(first)).toContain('pitch: 100 mm')
  await kept(first)
  await first.reload()
  await first.getByRole('button', { name: 'Redo' }).click()
  await expect.poll(() => fileText(first)).toContain('pitch: 90 mm')
})

test('a second tab follows the first, is told so, and can take the craft over', async () => {
  await openExample(first, 'Heron')
  await kept(first)
  const second = await anotherTab()
  await second.getByText('open in another tab').waitFor()
  // the second tab cannot overwrite: its text is closed to typing
  await second.getByRole('button', { name: 'As text' }).click()
  await expect.poll(() => second.getByLabel('Text of the craft file').getAttribute('readonly')).not.toBeNull()

  await openFold(first, 'Jet')
  await typeValue(first, pitch, 'Pitch', '101')
  await expect.poll(() => second.getByLabel('Text of the craft file').inputValue()).toContain('pitch: 101 mm')

  await second.getByRole('button', { name: 'Take over here' }).click()
  await second.getByText('This tab keeps the craft now').waitFor()
  await first.getByText('another tab').first().waitFor()
  const text = await second.getByLabel('Text of the craft file').inputValue()
  await second.getByLabel('Text of the craft file').fill(text.replace('101 mm', '102 mm'))
  await kept(second)
  await expect.poll(() => fileText(first)).toContain('pitch: 102 mm')
})

test('a tab that froze in the middle of an edit loses the craft but not the edit', async () => {
  await openExample(first, 'Heron')
  const text = await fileText(first)
  await kept(first)
  const second = await anotherTab()
  await second.getByText('open in another tab').waitFor()
  // an edit, and the tab hangs before anything of it is written: it waits for an answer that does not come
  let hangs = (_: Route) => {}
  const asks = new Promise<Route>((done) => (hangs = done))
  await first.route('**/thaw', (route) => hangs(route))
  const frozen = first.getByLabel('Text of the craft file').evaluate(
    (element, typed) => {
      const set = Object.getOwnPropertyDescriptor(HTMLTextAreaElement.prototype, 'value')!.set!
      set.call(element, typed)
      element.dispatchEvent(new Event('input', { bubbles: true }))
      const call = new XMLHttpRequest()
      call.open('GET', './thaw', false)
      call.send()
    },
    text.replace('name: Heron', 'name: Heron of the first'),
  )
  // it hangs from here on: asked a moment earlier it would still hand the craft over in good order
  const hanging = await asks
  await second.getByRole('button', { name: 'Take over here' }).click()
  await second.getByText('This tab keeps the craft now').waitFor()
  await expect.poll(() => fileText(second)).toBe(text)
  await second
    .getByLabel('Text of the craft file')
    .fill(text.replace('name: Heron', 'name: Heron of the second'))
  await kept(second)
  await hanging.fulfill({ body: '' })
  await frozen
  // its user looks at it again: the browser lets a tab in the background wait
  await first.bringToFront()
  await first.getByText('kept as a craft of its own').waitFor()
  await expect
    .poll(() => first.getByLabel('Text of the craft file').inputValue())
    .toContain('name: Heron of the second')
  // the frozen tab's edit is on the shelf
  await first.getByRole('button', { name: 'File and units' }).click()
  await first.getByRole('menuitem', { name: 'All crafts' }).click()
  await first.getByRole('button', { name: 'heron (other tab).yaml', exact: true }).click()
  await expect.poll(() => fileText(first)).toContain('name: Heron of the first')
  await second.reload()
  await expect.poll(() => fileText(second)).toContain('name: Heron of the second')
})

test('the second tab takes the craft over by itself when the first closes', async () => {
  await openExample(first, 'Teal')
  await kept(first)
  const second = await anotherTab()
  await second.getByText('open in another tab').waitFor()
  await first.close()
  await second.getByText('This tab keeps the craft now').waitFor()
  await second.getByRole('button', { name: 'As text' }).click()
  const area = second.getByLabel('Text of the craft file')
  await area.fill((await area.inputValue()).replace('name: Teal', 'name: Teal two'))
  await kept(second)
  await second.reload()
  await expect.poll(() => fileText(second)).toContain('name: Teal two')
})

test('once opened, the app works with the server gone', async () => {
  const own = await serveApp()
  const page = await on.bench.freshPage(own.address)
  await openExample(page, 'Heron')
  await kept(page)
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true))
  await own.stop()
  await page.reload()
  await nameLine(page, 'Heron').waitFor()
  await openFold(page, 'Jet')
  await typeValue(page, pitch, 'Pitch', '99')
  await expect.poll(() => fileText(page)).toContain('pitch: 99 mm')
  await page.context().close()
})
