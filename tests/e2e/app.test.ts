import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { axeFinds, onFreshPages } from './freshPages.ts'
import { fileText, kept, nameLine, openExample, openFold } from './steps.ts'

let page: Page
const on = onFreshPages((fresh) => {
  page = fresh
})

test('a value is found, changed, stepped and taken back with the keyboard alone', async () => {
  await page.getByRole('heading', { level: 1 }).waitFor()
  const press = (...keys: string[]) =>
    keys.reduce((last, key) => last.then(() => page.keyboard.press(key)), Promise.resolve())
  const focused = () =>
    page.evaluate(
      () => document.activeElement?.closest('label, summary, button, a, input, select')?.textContent ?? '',
    )
  const tabTo = async (words: string) => {
    for (let i = 0; i < 80; i++) {
      await press('Tab')
      if ((await focused()).includes(words)) return
      const label = await page.evaluate(
        () => (document.activeElement as HTMLInputElement | null)?.labels?.[0]?.textContent ?? '',
      )
      if (label === words) return
    }
    throw new Error(`the keyboard never reached "${words}"`)
  }
  await tabTo('Heron')
  await press('Enter')
  await page.getByRole('heading', { name: 'The craft file' }).waitFor()
  // the skip link is the first thing the keyboard meets
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
  await tabTo('To the answer')
  await press('Enter')
  await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('page')
  await tabTo('Jet')
  await press('Enter')
  await tabTo('Pitch')
  await page.keyboard.press('ControlOrMeta+a')
  await page.keyboard.type('4 1/4 in')
  await press('Enter')
  await kept(page)
  const inches = page.locator('#in-jet-rotor-pitch input').first()
  await expect.poll(() => inches.inputValue()).toBe('107.95')
  await press('ArrowUp')
  await expect.poll(() => inches.inputValue()).toBe('109')
  await press('PageDown')
  await expect.poll(() => inches.inputValue()).toBe('99')
  // back to the top bar, and take the step back
  for (let i = 0; i < 80 && !(await focused()).startsWith('Undo'); i++) await press('Shift+Tab')
  await press('Enter')
  await expect.poll(() => inches.inputValue()).not.toBe('99')
})

test('a value that cannot stand is refused beside its field, and the craft stays', async () => {
  await openExample(page, 'Heron')
  const before = await fileText(page)
  await page.getByRole('button', { name: 'As a form' }).click()
  await openFold(page, 'Jet')
  const field = page.locator('#in-jet-rotor-pitch')
  for (const [text, says] of [
    ['12 kg', 'unit of mass'],
    ['1,5', 'comma'],
    ['-5', 'outside'],
    ['NaN', 'not a number'],
    ['banana', 'does not begin with a number'],
  ] as const) {
    await field.getByRole('textbox', { name: 'Pitch', exact: true }).fill(text)
    await field.getByText(says).waitFor()
    await page.keyboard.press('Enter')
  }
  await page.keyboard.press('Escape')
  // nor is a ± that cannot be read written, whether the field is left or not
  const spread = field.getByLabel('±')
  await spread.fill('three')
  await field.getByText('after the ±').waitFor()
  await page.waitForTimeout(700)
  await spread.press('Enter')
  await spread.press('Escape')
  // a value that can stand alone but not with the others is refused with the reason, and the file still reads
  const hub = page.locator('#in-jet-rotor-hub')
  await hub.getByRole('textbox', { name: 'Hub', exact: true }).fill('200')
  await hub.getByText('Not written: jet.rotor.hub').waitFor()
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Done' }).click()
  // a name is needed
  await page.getByLabel('Name', { exact: true }).first().fill('')
  await page.getByText('It needs some text').waitFor()
  await page.keyboard.press('Escape')
  await expect.poll(() => fileText(page)).toBe(before)
})

test('a broken file is refused place by place and the craft on the bench stays', async () => {
  await openExample(page, 'Heron')
  const broken = 'wakewright: 1\nname: Broken\njet:\n  rotor: { bore: 110, pich: 90 mm }\n'
  await drop(page, 'broken.yaml', broken)
  const alert = page.getByRole('alert')
  await alert.getByText('broken.yaml was not opened').waitFor()
  await alert.getByText('broken.yaml:4:').first().waitFor()
  expect(await axeFinds(page)).toEqual([])
  await page.getByRole('button', { name: 'Leave it' }).click()
  await expect.poll(() => page.locator('.craftname').textContent()).toBe('Heron')
})

test('a broken file can be taken on to be mended, and works once it reads', async () => {
  await page.getByRole('heading', { level: 1 }).waitFor()
  const heron = readFileSync('demo/heron.yaml', 'utf8')
  await drop(page, 'mine.yaml', heron.replace('blades: 3', 'blads: 3'))
  await page.getByRole('button', { name: 'Mend it here' }).click()
  const area = page.getByLabel('Text of the craft file')
  await page.getByText('"blads" is not a key').waitFor()
  await area.fill((await area.inputValue()).replace('blads', 'blades'))
  await page.getByText('The text reads well').waitFor()
  await nameLine(page, 'Heron').waitFor()
})

const hostile: [string, string | number[], RegExp][] = [
  ['ten megabytes', 'a'.repeat(10_000_000), /too big/],
  ['another encoding', [0xff, 0xfe, 0x41, 0x00, 0x42, 0x00], /UTF-16/],
  ['a picture', [0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3], /not UTF-8|binary/],
  ['nothing', '', /empty/],
  ['aliases in aliases', `a: &a [x]\n${'b: &b [*a,*a,*a,*a,*a,*a,*a,*a]\n'}c: [*b,*b]\n`, /found/],
  ['deep brackets', '['.repeat(50_000), /found|could not be read/],
  ['markup', 'wakewright: 1\nname: "<img src=x onerror=alert(1)>"\n', /missing/],
]
test('hostile files are refused with a reason, one after the other, and the craft stays', async () => {
  await openExample(page, 'Teal')
  for (const [what, content, reason] of hostile) {
    await drop(page, 'odd.yaml', content)
    const alert = page.getByRole('alert')
    await alert.getByText('odd.yaml was not opened').waitFor()
    await expect.poll(() => alert.textContent(), { message: what }).toMatch(reason)
    await expect.poll(() => page.locator('.craftname').textContent()).toBe('Teal')
    await page.getByRole('button', { name: 'Leave it' }).click()
    await alert.waitFor({ state: 'detached' })
  }
})

test('a craft saved to a file is the text on the screen, byte for byte', async () => {
  await page.addInitScript(() => Object.assign(globalThis, { showSaveFilePicker: undefined }))
  await page.reload()
  await openExample(page, 'Heron')
  const text = await fileText(page)
  const download = page.waitForEvent('download')
  await page.keyboard.press('ControlOrMeta+s')
  const saved = await download
  expect(saved.suggestedFilename()).toBe('heron.yaml')
  expect(readFileSync((await saved.path())!, 'utf8')).toBe(text)
})

test('inches are shown on request and the file stays as written', async () => {
  await openExample(page, 'Heron')
  const before = await fileText(page)
  await page.getByRole('button', { name: 'As a form' }).click()
  await openFold(page, 'Jet')
  await page.getByRole('button', { name: 'File and units' }).click()
  await page.getByRole('menuitem', { name: 'Show inches' }).click()
  await page.locator('#in-jet-rotor-bore .unit', { hasText: 'in' }).waitFor()
  await expect.poll(() => page.locator('#in-jet-rotor-bore input').first().inputValue()).toBe('4.724')
  await expect.poll(() => fileText(page)).toBe(before)
})

test('a table is copied with a tab between cells, plain minus signs, and nothing a spreadsheet would run', async () => {
  await openExample(page, 'Heron')
  const text = await fileText(page)
  const entry = { date: '2026-05-14', path: 'jet.rotor.pitch', to: '97 mm', reason: '"=SUM(1)"' }
  const log = Object.entries(entry).map(([key, value]) => `${key}: ${value}`)
  await page.getByLabel('Text of the craft file').fill(`${text}\nlog:\n  - { ${log.join(', ')} }\n`)
  const table = page.locator('.numbers', { hasText: 'Changes kept' })
  await table.waitFor()
  await page.evaluate(() => {
    const taken = globalThis as unknown as { taken: string }
    Object.defineProperty(navigator, 'clipboard', {
      value: { writeText: async (words: string) => void (taken.taken = words) },
    })
  })
  await table.getByRole('button', { name: 'Copy table' }).click()
  await table.getByText('Copied.').waitFor()
  const copied = await page.evaluate(() => (globalThis as unknown as { taken: string }).taken)
  const lines = copied.split('\n').map((line) => line.split('\t'))
  expect(lines[0]).toEqual(['Date', 'What', 'From', 'To', 'Why', 'What it should do'])
  expect(lines.at(-1)).toEqual(['2026-05-14', 'Impeller pitch', '', '97 mm', "'=SUM(1)", ''])
})

test('a page that cannot be fetched says so, leaves the others working, and comes when it can be fetched', async () => {
  // the failed fetch is in the console, and nothing else
  on.provokes(/Failed to|ERR_FAILED|PushPage/)
  await openExample(page, 'Heron')
  await page.route('**/PushPage-*.js', (route) => route.abort())
  await page.getByRole('link', { name: 'Push' }).click()
  await page.getByRole('heading', { name: 'This page failed' }).waitFor()
  await page.getByRole('link', { name: 'Craft' }).click()
  await page.getByRole('heading', { name: 'The craft file' }).waitFor()
  await page.unroute('**/PushPage-*.js')
  await page.getByRole('link', { name: 'Push' }).click()
  await page.getByRole('button', { name: 'Try again' }).click()
  await page.getByRole('heading', { level: 1, name: 'km/h' }).waitFor()
})

/** Drops a file on the window, as from the desktop. */
async function drop(on: Page, name: string, content: string | number[]): Promise<void> {
  const data = await on.evaluateHandle(
    ([fileName, body]) => {
      const transfer = new DataTransfer()
      const part = typeof body === 'string' ? body : new Uint8Array(body)
      transfer.items.add(new File([part], fileName))
      return transfer
    },
    [name, content] as const,
  )
  await on.dispatchEvent('body', 'drop', { dataTransfer: data })
}
