import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { type Bench, openBrowser, profileFolder, serveApp } from './browser.ts'
import { fileText, kept, openExample, openFold, typeValue } from './steps.ts'

/** Browsers that die: each test has its own, opened again on what the last one left behind. */

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

test('what was typed survives a browser that is killed, and can still be undone', async () => {
  const page = await bench.page(served.address)
  await openExample(page, 'Heron')
  const before = await fileText(page)
  await page.getByRole('button', { name: 'As a form' }).click()
  await openFold(page, 'Jet')
  await typeValue(page, '#in-jet-rotor-pitch', 'Pitch', '95.5')
  await kept(page)
  await bench.kill()

  bench = await openBrowser(profile.folder)
  const again = await bench.page(served.address)
  await again.getByRole('heading', { name: 'The craft file' }).waitFor()
  await expect.poll(() => fileText(again)).toContain('pitch: 95.5 mm ±3 (measured)')
  await again.getByRole('button', { name: 'Undo' }).click()
  await expect.poll(() => again.getByLabel('Text of the craft file').inputValue()).toBe(before)
})

test('killed over and over in the middle of saving, the craft always reads and is one of the last two texts', async () => {
  let page = await bench.page(served.address)
  await openExample(page, 'Heron')
  // a browser killed before anything is kept has nothing to show
  await kept(page)
  for (let round = 1; round <= 3; round++) {
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
    page = await bench.page(served.address)
    await page.getByRole('heading', { name: 'The craft file' }).waitFor()
    expect([before, after]).toContain(await fileText(page))
  }
})
