import type { Page } from 'playwright-core'
import { beforeEach, expect, test } from 'vitest'
import { axeFinds, onFreshPages } from './freshPages.ts'
import { expectNoSideScroll, fileText, goTo, kept, openExample, openExampleOn, openMore } from './steps.ts'

let page: Page
onFreshPages((fresh) => {
  page = fresh
})
beforeEach(async () => {
  page.setDefaultTimeout(60_000)
})

const answer = () => page.locator('.answer h1')
const triedAnswer = () => page.locator('.answer .saystried')
const go = (id: string) => goTo(page, id)
const figure = (name: string) => page.getByRole('button', { name: `Save picture ${name}`, exact: true })

/** Opens the example with ports and pipe on this page and waits for its first curve. */
async function openBreath(change?: (text: string) => string): Promise<void> {
  if (change) {
    await openExample(page, 'Dabchick')
    const text = change(await fileText(page))
    await page.getByLabel('Text of the craft file').fill(text)
    await kept(page)
    await go('breath')
  } else await openExampleOn(page, 'Dabchick', 'breath')
  await page.getByRole('heading', { level: 1, name: /gives [\d.]+ kW/ }).waitFor()
}

/** Calls off what is being worked out, so that a test does not wait for a band it does not need. */
async function callOff(): Promise<void> {
  await page.locator('.job').first().getByRole('button', { name: 'Cancel' }).click()
  await page.getByRole('button', { name: 'Work it out' }).waitFor()
}

test('a rough answer comes first, then the fine one; going away and back loses neither', async () => {
  await openBreath()
  await expect
    .poll(() => answer().textContent())
    .toMatch(
      /gives [\d.]+ kW \([\d.]+ to [\d.]+ kW\) at [\d\s]+ rpm and [\d.]+ N·m \([\d.]+ to [\d.]+ N·m\) at [\d\s]+ rpm by simulation\./,
    )
  const sure = () => page.locator('.answer .sure').textContent()
  await expect.poll(sure).toMatch(/rough first answer/)
  await page.getByText('On cells of 10 mm.').waitFor()
  const says = await answer().textContent()
  await expect.poll(sure).toMatch(/Its power stays within a tenth of that from [\d\s]+ rpm to [\d\s]+ rpm/)
  await go('craft')
  await page.getByRole('heading', { name: 'The craft file' }).waitFor()
  await go('breath')
  await answer().waitFor()
  await expect.poll(() => answer().textContent()).toBe(says)
})

test('the pictures stand there: curves, port, pipe, ports, muffler, waves; each can be saved', async () => {
  await openBreath()
  await openMore(page, 'power', 'port', 'waves', 'pipe', 'ports', 'muffler')
  await page.locator('svg text', { hasText: 'burnt gas leaves' }).waitFor()
  for (const name of ['torque', 'power', 'port pressure', 'pipe', 'ports', 'muffler', 'waves'])
    await figure(name).waitFor()
  const texts = async (name: string) =>
    page
      .locator('figure', { has: figure(name) })
      .locator('svg text')
      .allTextContents()
  expect((await texts('port pressure')).join(' ')).toMatch(
    /burnt gas leaves.*pushed back|pushed back.*burnt gas leaves/s,
  )
  expect((await texts('pipe')).join(' ')).toMatch(/tuned \d+/)
  expect((await texts('ports')).join(' ')).toMatch(/exhaust: [\d.]+, (short|right|ample)/)
  expect(
    await page
      .locator('figure', { has: figure('waves') })
      .locator('svg image')
      .count(),
  ).toBe(2)
})

test('another speed is looked at when it is asked for, and the wave is moved by keyboard', async () => {
  await openBreath()
  await callOff()
  await openMore(page, 'port', 'waves')
  const speed = page.getByLabel('At engine speed')
  const other = await speed.locator('option').nth(3).textContent()
  await speed.selectOption(other!)
  await page.locator('.more[data-fold="waves"] .result', { hasText: other! }).waitFor()
  const crank = page.getByRole('slider', { name: 'Crank angle', exact: true })
  const path = page.locator('.stage > svg path')
  const before = await path.getAttribute('d')
  await crank.focus()
  for (let i = 0; i < 30; i++) await crank.press('ArrowRight')
  await expect
    .poll(() => crank.getAttribute('aria-valuetext'))
    .toMatch(/125 degrees after top, exhaust and transfers open/)
  await expect.poll(() => path.getAttribute('d')).not.toBe(before)
  await page.getByRole('button', { name: 'Play slowly' }).click()
  const was = await crank.inputValue()
  await expect.poll(() => crank.inputValue()).not.toBe(was)
  await page.getByRole('button', { name: 'Pause' }).click()
})

test('with motion reduced the wave moves in steps', async () => {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await openBreath()
  await callOff()
  await openMore(page, 'waves')
  const crank = page.getByRole('slider', { name: 'Crank angle', exact: true })
  await crank.waitFor()
  await page.getByRole('button', { name: 'Play slowly' }).click()
  await expect.poll(() => crank.inputValue()).not.toBe('95')
  expect((Number(await crank.inputValue()) - 95) % 15).toBe(0)
  await page.getByRole('button', { name: 'Pause' }).click()
})

test('a tried stinger is simulated, drawn dashed, told for the log, and dropped without a trace', async () => {
  await openBreath()
  await callOff()
  await openMore(page, 'inputs')
  const field = page.getByRole('slider', { name: 'Stinger bore, slider' })
  await field.focus()
  for (let i = 0; i < 15; i++) await field.press('ArrowLeft')
  await triedAnswer().waitFor()
  const torque = page.locator('figure', { has: figure('torque') })
  await torque.locator('svg path[stroke-dasharray="2.4 1.2"]').first().waitFor()
  const strip = page.getByRole('region', { name: 'What is being tried' })
  await expect.poll(() => strip.textContent()).toMatch(/most torque [\d.]+ N·m at \d+ rpm, was/)
  await strip.getByRole('button', { name: 'Drop' }).click()
  await triedAnswer().waitFor({ state: 'detached' })
})

test('the search gives a first answer early, can be called off, and what it found can be tried', async () => {
  // a pipe far too long for the engine, so that the handbook's is better at once
  await openBreath((text) =>
    text.replace('length: 215 mm ±1 (measured), from: 31 mm', 'length: 420 mm, from: 31 mm'),
  )
  await callOff()
  await openMore(page, 'pipe-search')
  await page.getByRole('button', { name: 'Search for a pipe' }).click()
  const search = page.locator('.more[data-fold="pipe-search"] .search')
  await search.getByText('A first answer:').waitFor()
  await search.locator('.job').getByRole('button', { name: 'Cancel' }).click()
  await search.getByText('Called off').waitFor()
  await figure('now against found').waitFor()
  await figure('pipe found').waitFor()
  await search.getByRole('button', { name: 'Try these' }).click()
  const strip = page.getByRole('region', { name: 'What is being tried' })
  await strip.waitFor()
  await triedAnswer().waitFor()
  // a whole pipe is many values: the rest of them is folded
  await strip.locator('summary').waitFor()
  await strip.getByRole('button', { name: 'Keep' }).click()
  await strip.waitFor({ state: 'detached' })
  await go('craft')
  await expect.poll(() => fileText(page)).toContain('path: engines.0.exhaust.stinger.bore')
  await page.getByRole('button', { name: 'Undo' }).click()
  await strip.waitFor()
  await page.getByRole('button', { name: 'Undo' }).click()
  await strip.waitFor({ state: 'detached' })
  await expect.poll(() => fileText(page)).not.toContain('path: engines.0.exhaust.stinger.bore')
})

test('the note is played without a complaint', async () => {
  await openBreath()
  await callOff()
  await openMore(page, 'listen')
  await page.getByRole('button', { name: 'Play the note' }).click()
  await page.getByRole('button', { name: 'Stop' }).click()
  await page.getByRole('button', { name: 'Play the note' }).waitFor()
})

test('an engine known by its curve shows it and teaches what to measure', async () => {
  await openExampleOn(page, 'Heron', 'breath')
  await answer().waitFor()
  await expect.poll(() => answer().textContent()).toContain('how it breathes is not known yet')
  await figure('torque').waitFor()
  await openMore(page, 'teach')
  const teach = page.locator('.more[data-fold="teach"] .within')
  await expect.poll(() => teach.textContent()).toMatch(/degree wheel.*about 30 minutes/s)
  await teach.getByRole('link').click()
  await page.getByRole('heading', { name: 'The craft file' }).waitFor()
})

test('two engines are looked at one after the other', async () => {
  await openExampleOn(page, 'Teal', 'breath')
  await answer().waitFor()
  await page.getByRole('button', { name: 'rear' }).click()
  await expect.poll(() => answer().textContent()).toMatch(/^Rear gives/)
})

test('an engine whose timings contradict its heights is not simulated, and the fault leads to its input', async () => {
  await openExample(page, 'Dabchick')
  const text = await fileText(page)
  await page
    .getByLabel('Text of the craft file')
    .fill(text.replace('exhaust: { opens: 97 deg ±1 (measured),', 'exhaust: { opens: 97 deg, height: 12 mm,'))
  await kept(page)
  await go('breath')
  await page.getByRole('heading', { name: 'How it breathes cannot be worked out yet' }).waitFor()
  await expect.poll(() => page.locator('.empty').textContent()).toContain('measure both again')
  await page.getByRole('link', { name: 'Fill it in on the Craft page' }).click()
  await page.getByRole('heading', { name: 'The craft file' }).waitFor()
})

test('with curves, waves and a stinger search on it, axe finds nothing and it fits a phone', async () => {
  await openBreath()
  await callOff()
  await openMore(page, 'waves', 'stinger-search')
  await page.getByRole('button', { name: 'Look at other stingers' }).click()
  await figure('stinger').waitFor()
  expect(await axeFinds(page)).toEqual([])
  await page.setViewportSize({ width: 390, height: 844 })
  await expectNoSideScroll(page)
  await page.evaluate(() => {
    document.documentElement.style.fontSize = '200%'
  })
  await expectNoSideScroll(page)
})
