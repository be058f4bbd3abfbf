import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { type Bench, openBrowser, profileFolder, serveApp } from './browser.ts'
import { fileText, kept, openExample, openFold, typeValue } from './steps.ts'

let served: Awaited<ReturnType<typeof serveApp>>
let profile: ReturnType<typeof profileFolder>
let bench: Bench

beforeAll(async () => {
  served = await serveApp()
})
afterAll(() => served.stop())
beforeEach(async () => {
  profile = profileFolder()
  bench = await openBrowser(profile.folder)
})
afterEach(async () => {
  await bench.kill()
  profile.remove()
})

const pitch = '#in-jet-rotor-pitch'

test('what was typed survives a browser that is killed, and can still be undone', async () => {
  const page = await bench.page(served.address)
  await openExample(page, 'Heron')
  const before = await fileText(page)
  await page.getByRole('button', { name: 'As a form' }).click()
  await openFold(page, 'Jet')
  await typeValue(page, pitch, 'Pitch', '95.5')
  await kept(page)
  await bench.kill()

  bench = await openBrowser(profile.folder)
  const again = await bench.page(served.address)
  await again.getByRole('heading', { name: 'The craft file' }).waitFor()
  expect(await fileText(again)).toContain('pitch: 95.5 mm ±3 (measured)')
  await again.getByRole('button', { name: 'Undo' }).click()
  expect(await again.getByLabel('Text of the craft file').inputValue()).toBe(before)
})

test('killed over and over in the middle of saving, the craft always reads and is one of the last two texts', async () => {
  for (let round = 1; round <= 3; round++) {
    const page = await bench.page(served.address)
    if (round === 1) await openExample(page, 'Heron')
    await page.getByRole('heading', { name: 'The craft file' }).waitFor()
    const before = await fileText(page)
    const area = page.getByLabel('Text of the craft file')
    const after = before.replace(/about: .*/, `about: round ${round} ${'x'.repeat(40_000)}`)
    await area.evaluate((element, text) => {
      const field = element as HTMLTextAreaElement
      Object.getOwnPropertyDescriptor(HTMLTextAreaElement.prototype, 'value')!.set!.call(field, text)
      field.dispatchEvent(new Event('input', { bubbles: true }))
    }, after)
    await new Promise((done) => setTimeout(done, round * 4))
    await bench.kill()
    bench = await openBrowser(profile.folder)
    const again = await bench.page(served.address)
    await again.getByRole('heading', { name: 'The craft file' }).waitFor()
    expect([before, after]).toContain(await fileText(again))
    await again.close()
  }
})

test('undo and redo reach across a reload', async () => {
  const page = await bench.page(served.address)
  await openExample(page, 'Heron')
  await openFold(page, 'Jet')
  await typeValue(page, pitch, 'Pitch', '100')
  await page.waitForTimeout(1600)
  await typeValue(page, pitch, 'Pitch', '90')
  await kept(page)
  await page.reload()
  await page.getByRole('heading', { name: 'The craft file' }).waitFor()
  await kept(page)
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await fileText(page)).toContain('pitch: 100 mm')
  await kept(page)
  await page.reload()
  await page.getByRole('button', { name: 'Redo' }).click()
  expect(await fileText(page)).toContain('pitch: 90 mm')
})

test('a second tab follows the first, is told so, and can take the craft over', async () => {
  const first = await bench.page(served.address)
  await openExample(first, 'Heron')
  await kept(first)
  const second = await bench.page(served.address)
  await second.getByText('open in another tab').waitFor()
  // the second tab cannot overwrite: its text is closed to typing
  await second.getByRole('button', { name: 'As text' }).click()
  expect(await second.getByLabel('Text of the craft file').getAttribute('readonly')).not.toBeNull()

  await openFold(first, 'Jet')
  await typeValue(first, pitch, 'Pitch', '101')
  await expect.poll(() => second.getByLabel('Text of the craft file').inputValue()).toContain('pitch: 101 mm')

  await second.getByRole('button', { name: 'Take over here' }).click()
  await second.getByText('This tab keeps the craft now').waitFor()
  await first.getByText('another tab').first().waitFor()
  const text = await second.getByLabel('Text of the craft file').inputValue()
  await second.getByLabel('Text of the craft file').fill(text.replace('101 mm', '102 mm'))
  await kept(second)
  expect(await fileText(first)).toContain('pitch: 102 mm')
  expect(bench.complaints).toEqual([])
})

test('a tab that froze in the middle of an edit loses the craft but not the edit', async () => {
  const first = await bench.page(served.address)
  await openExample(first, 'Heron')
  const text = await fileText(first)
  await kept(first)
  const second = await bench.page(served.address)
  await second.getByText('open in another tab').waitFor()
  // an edit, and the tab hangs before anything of it is written
  const frozen = first.getByLabel('Text of the craft file').evaluate(
    (element, typed) => {
      const set = Object.getOwnPropertyDescriptor(HTMLTextAreaElement.prototype, 'value')!.set!
      set.call(element, typed)
      element.dispatchEvent(new Event('input', { bubbles: true }))
      // until the other tab says so: cookies are read across tabs even while nothing else runs
      for (const end = Date.now() + 60_000; !document.cookie.includes('thaw') && Date.now() < end; );
    },
    text.replace('name: Heron', 'name: Heron of the first'),
  )
  await second.getByRole('button', { name: 'Take over here' }).click()
  await second.getByText('This tab keeps the craft now').waitFor()
  expect(await fileText(second)).toBe(text)
  await second
    .getByLabel('Text of the craft file')
    .fill(text.replace('name: Heron', 'name: Heron of the second'))
  await kept(second)
  // biome-ignore lint/suspicious/noDocumentCookie: the one signal a frozen tab can read
  await second.evaluate(() => (document.cookie = 'thaw=1'))
  await frozen
  await first.getByText('kept as a craft of its own').waitFor()
  await expect
    .poll(() => first.getByLabel('Text of the craft file').inputValue())
    .toContain('name: Heron of the second')
  // the frozen tab's edit is on the shelf
  await first.getByRole('button', { name: 'File and units' }).click()
  await first.getByRole('menuitem', { name: 'All crafts' }).click()
  await first.getByRole('button', { name: 'heron (other tab).yaml', exact: true }).click()
  expect(await fileText(first)).toContain('name: Heron of the first')
  await second.reload()
  expect(await fileText(second)).toContain('name: Heron of the second')
})

test('the second tab takes the craft over by itself when the first closes', async () => {
  const first = await bench.page(served.address)
  await openExample(first, 'Teal')
  await kept(first)
  const second = await bench.page(served.address)
  await second.getByText('open in another tab').waitFor()
  await first.close()
  await second.getByText('This tab keeps the craft now').waitFor()
  await second.getByRole('button', { name: 'As text' }).click()
  const area = second.getByLabel('Text of the craft file')
  await area.fill((await area.inputValue()).replace('name: Teal', 'name: Teal two'))
  await kept(second)
  await second.reload()
  expect(await fileText(second)).toContain('name: Teal two')
})

test('once opened, the app works with the server gone', async () => {
  const own = await serveApp()
  const page = await bench.page(own.address)
  await openExample(page, 'Heron')
  await kept(page)
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true))
  await own.stop()
  await page.reload()
  await page.getByRole('heading', { name: 'Heron' }).waitFor()
  await openFold(page, 'Jet')
  await typeValue(page, pitch, 'Pitch', '99')
  expect(await fileText(page)).toContain('pitch: 99 mm')
})
