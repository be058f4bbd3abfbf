import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { onFreshPages } from './freshPages.ts'
import { exampleText, fileText, goTo, kept, openExample, openExampleOn, openMore } from './steps.ts'

let page: Page
onFreshPages((fresh) => {
  page = fresh
})

const answer = () => page.locator('.answer h1')
const triedAnswer = () => page.locator('.answer .saystried')
const strip = () => page.getByRole('region', { name: 'What is being tried' })
const slider = (name: string) => page.getByRole('slider', { name: `${name}, slider` })

/** Opens an example on the Push page and waits for its ranges. */
async function open(name: 'Heron' | 'Teal'): Promise<void> {
  await openExampleOn(page, name, 'push')
  await answer().waitFor()
  await expect.poll(() => answer().textContent()).toMatch(/km\/h \([\d.]+ to [\d.]+ km\/h\)/)
}

test('the answer is a sentence with speed, pull, rotation and range, and the figures say the same in words', async () => {
  await open('Heron')
  const says = await answer().textContent()
  expect(says).toMatch(
    /It should reach [\d.]+ km\/h \([\d.]+ to [\d.]+ km\/h\) and pull \d+ N \(\d+ to \d+ N\), \d+ kg on a luggage scale, tied up at \d+ rpm\./,
  )
  await expect
    .poll(() => page.locator('.answer .sure').textContent())
    .toMatch(/\d+ % of the doubt comes from/)
  // the figure marks the answer as the sentence has it; where the lines cross is what the file's values alone would give
  const answered = /reach ([\d.]+) km\/h/.exec(says!)![1]
  await page.locator('.pictures svg text', { hasText: `top speed ${answered} km/h` }).waitFor()
  await page.locator('.pictures svg text', { hasText: 'by the file’s values' }).waitFor()
  await openMore(page, 'push-matching', 'push-run', 'push-numbers')
  await expect.poll(() => page.locator('.question .figure svg').count()).toBe(3)
})

test('a slider moved by keyboard changes the answer, is shown as tried, kept in file and log, and undone', async () => {
  await open('Heron')
  const before = exampleText('Heron')
  const pitch = slider('Impeller pitch')
  await pitch.focus()
  for (let i = 0; i < 6; i++) await pitch.press('ArrowLeft')
  await triedAnswer().waitFor()
  await expect.poll(() => triedAnswer().textContent()).not.toBe(`tried ${await answer().textContent()}`)
  const said = await strip().textContent()
  const to = /Impeller pitch (\d+ mm), was (\d+ mm)/.exec(said!)!
  expect(Number.parseInt(to[1]!, 10)).toBeLessThan(Number.parseInt(to[2]!, 10))
  // now solid and tried dashed, on the same figure
  const figure = page.locator('.pictures figure').first()
  await expect.poll(() => figure.locator('svg path[stroke-dasharray="2.4 1.2"]').count()).toBeGreaterThan(0)
  await expect.poll(() => figure.locator('svg text', { hasText: /tried/ }).count()).toBeGreaterThan(0)

  await strip().getByRole('button', { name: 'Why' }).click()
  const hope = strip().getByLabel('What it should do')
  await expect.poll(() => hope.inputValue()).toMatch(/tied up \d+ rpm, was \d+ rpm/)
  await strip().getByLabel('Why this change').fill('the engines do not come up')
  await strip().getByRole('button', { name: 'Keep' }).click()
  await strip().waitFor({ state: 'detached' })
  const after = await fileTextOnCraft()
  expect(after).toContain(`pitch: ${to[1]}`)
  expect(after).toContain('the engines do not come up')
  expect(after).toMatch(/jet\.rotor\.pitch/)
  await kept(page)

  await page.reload()
  await page.getByRole('button', { name: 'Undo' }).click()
  expect(await fileTextOnCraft()).toBe(before)
})

test('dropping what was tried leaves the file as it was', async () => {
  await open('Heron')
  const before = exampleText('Heron')
  await slider('Nozzle bore').focus()
  await slider('Nozzle bore').press('ArrowRight')
  await strip().getByRole('button', { name: 'Drop' }).click()
  await strip().waitFor({ state: 'detached' })
  await triedAnswer().waitFor({ state: 'detached' })
  expect(await fileTextOnCraft()).toBe(before)
})

test('a change from the list can be tried, and the keyboard reads the curves', async () => {
  await open('Teal')
  await openMore(page, 'changes')
  await page.locator('.trylist button').first().click()
  await strip().waitFor()
  await triedAnswer().waitFor()
  const reader = page.getByRole('slider', { name: /Read “Thrust against drag”/ })
  await reader.focus()
  for (let i = 0; i < 20; i++) await reader.press('ArrowRight')
  await expect
    .poll(() => reader.getAttribute('aria-valuetext'))
    .toMatch(/boat speed [\d.]+ km\/h: thrust \d+ N.*drag \d+ N/)
})

test('one engine marked dead is tried like any other value', async () => {
  await open('Teal')
  await openMore(page, 'inputs')
  await page.getByLabel('rear, running').selectOption('no')
  await triedAnswer().waitFor()
  const pull = (text: string | null) => Number(/pull (\d+) N/.exec(text ?? '')?.[1])
  const now = pull(await answer().textContent())
  await expect.poll(async () => pull(await triedAnswer().textContent())).toBeLessThan(0.8 * now)
})

test('units switch everywhere: pounds and miles in answer and figures', async () => {
  await open('Heron')
  await page.getByRole('button', { name: 'File and units' }).click()
  await page.getByRole('menuitem', { name: 'Show inches and pounds' }).click()
  await expect
    .poll(() => answer().textContent())
    .toMatch(/mph \([\d.]+ to [\d.]+ mph\) and pull \d+ lbf .* lb on a luggage scale/)
  await expect.poll(() => page.locator('.pictures svg text', { hasText: 'force, lbf' }).count()).toBe(1)
})

test('an engine without a torque curve gives no answer but says what is missing and leads to it', async () => {
  await openExample(page, 'Heron')
  const text = await fileText(page)
  const ports = text.replace(
    / {4}kind: curve[\s\S]*?(?=\ndrive:)/,
    '    kind: two-stroke\n    bore: 52 mm\n    stroke: 47 mm\n',
  )
  await page.getByLabel('Text of the craft file').fill(ports)
  await kept(page)
  await goTo(page, 'push')
  await page.getByRole('heading', { name: 'How it will go cannot be worked out yet' }).waitFor()
  await expect.poll(() => page.locator('.empty').textContent()).toContain('torque curve')
  await page.getByRole('link', { name: 'Fill it in on the Craft page' }).click()
  await page.getByRole('heading', { name: 'The craft file' }).waitFor()
})

test('while an engine is simulated that is said with how far it is, then a coarse answer, then the fine one', async () => {
  await page.evaluate(() => {
    const seen = { says: [] as string[] }
    Object.assign(globalThis, { seen })
    new MutationObserver(() => {
      const says = `${document.querySelector('.answer h1')?.textContent} | ${document.querySelector('.status')?.textContent} | ${document.querySelector('main [role=progressbar]')?.textContent} | ${document.querySelector('main .empty')?.textContent}`
      if (seen.says.at(-1) !== says) seen.says.push(says)
    }).observe(document.body, { subtree: true, childList: true, characterData: true })
  })
  await openExampleOn(page, 'Dabchick', 'push')
  await expect.poll(() => answer().textContent()).toMatch(/It should reach .*km\/h \(/)
  await page.locator('.status', { hasText: 'coarse' }).waitFor({ state: 'attached' })
  await expect.poll(() => page.locator('.status').textContent()).toBe('')
  const seen = await page.evaluate(() => (globalThis as unknown as { seen: { says: string[] } }).seen.says)
  expect(seen.some((s) => /Being worked out… .*Looking at the craft/.test(s))).toBe(true)
  expect(seen.some((s) => /It should reach .*first range from few draws/.test(s))).toBe(true)
  expect(seen.join('\n')).not.toContain('cannot be worked out')
})

test('a slider move is worked out again at once; the times are printed, not judged', async () => {
  await open('Heron')
  await timeFromThumbToPaint()
  const times: Record<string, number[]> = {}
  const painted: Record<string, number[]> = {}
  for (const name of ['Impeller pitch', 'Nozzle bore', 'Drive ratio']) {
    await openMore(page, 'inputs')
    await page.evaluate(() => performance.clearMeasures())
    const solved = () => page.evaluate(() => performance.getEntriesByName('balance').map((e) => e.duration))
    await slider(name).focus()
    // sixteen there and fifteen back, so that one step is left to drop
    for (let i = 1; i < 32; i++) {
      await slider(name).press(i <= 16 ? 'ArrowLeft' : 'ArrowRight')
      // the answer may be a frame behind the thumb
      await expect.poll(async () => (await solved()).length).toBeGreaterThanOrEqual(i)
    }
    times[name] = await solved()
    painted[name] = await page.evaluate(() =>
      performance.getEntriesByName('thumb to paint').map((e) => e.duration),
    )
    await strip().getByRole('button', { name: 'Drop' }).click()
    await strip().waitFor({ state: 'detached' })
  }
  for (const [name, all] of Object.entries(times)) {
    const sorted = [...all].sort((a, b) => a - b)
    const paint = painted[name]!.sort((a, b) => a - b)
    expect(paint.length, name).toBeGreaterThan(0)
    const middle = (list: number[]) => list[list.length >> 1]!.toFixed(1)
    console.log(
      `${name}: ${all.length} moves, balance median ${middle(sorted)} ms, ${paint.length} from key to painted answer, median ${middle(paint)} ms`,
    )
  }
})

/** From a key on a slider to the frame after the one that shows the answer changed: entries "thumb to paint". */
const timeFromThumbToPaint = () =>
  page.evaluate(() => {
    let began = Number.NaN
    addEventListener(
      'keydown',
      (e) => {
        began = e.timeStamp
      },
      true,
    )
    const inAnswer = (n: Node) => (n instanceof Element ? n : n.parentElement)?.closest('.answer')
    new MutationObserver((all) => {
      if (Number.isNaN(began) || !all.some((m) => inAnswer(m.target))) return
      const start = began
      began = Number.NaN
      requestAnimationFrame(() =>
        setTimeout(() => performance.measure('thumb to paint', { start, end: performance.now() })),
      )
    }).observe(document.body, { subtree: true, childList: true, characterData: true })
  })

async function fileTextOnCraft(): Promise<string> {
  await goTo(page, 'craft')
  await page.getByRole('heading', { name: 'The craft file' }).waitFor()
  return fileText(page)
}
