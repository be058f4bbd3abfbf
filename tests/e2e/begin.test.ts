import axe from 'axe-core'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { onFreshPages } from './freshPages.ts'
import { fileText, kept } from './steps.ts'

let page: Page
onFreshPages((fresh) => {
  page = fresh
})

const asked = () => page.locator('#asked')
const answer = async (text: string) => {
  const field = page.locator('.begin form input[type="text"], .begin form .entry input').first()
  await field.fill(text)
  await field.press('Enter')
  await field.press('Enter')
}
const begin = async (kind: string) => {
  await page.getByLabel('Its name').fill('Smew')
  await page.getByLabel(kind).check()
  await page.getByRole('button', { name: 'Begin: ten questions' }).click()
}

test('four answers by keyboard and the craft is one’s own, in twelve actions', async () => {
  let actions = 0
  const act = async (doing: Promise<unknown>) => {
    actions++
    await doing
  }
  await act(page.getByLabel('Its name').fill('Smew'))
  await act(page.getByLabel('kneel on, one engine').check())
  await act(page.getByRole('button', { name: 'Begin: ten questions' }).click())
  await asked().filter({ hasText: 'How large is the engine?' }).waitFor()
  await page.locator('.answer[data-not-yours]').waitFor()
  const readings = ['98.5', undefined, '1.5', '120', '108'] as const
  for (const reading of readings) {
    const before = await asked().textContent()
    if (reading === undefined) await act(page.getByRole('button', { name: 'I don’t know' }).click())
    else {
      const field = page.locator('.begin form .entry input').first()
      await act(field.fill(reading))
      await act(field.press('Enter').then(() => field.press('Enter')))
    }
    await expect.poll(() => asked().textContent()).not.toBe(before)
  }
  expect(actions).toBeLessThanOrEqual(12)
  // the fourth answer makes it the builder's: an answer stands without the hatching
  await page.locator('.answer[data-not-yours]').waitFor({ state: 'detached' })
  await expect.poll(() => page.locator('.answer h1').textContent()).toMatch(/It should reach/)
  await page.getByText('4 values of yours').waitFor()
  // a reload goes on at the same question with the same craft
  await kept(page)
  await page.reload()
  await asked().filter({ hasText: 'How wide is the hole where the jet leaves?' }).waitFor()
  await page.getByRole('link', { name: 'That is enough for now' }).click()
  expect(await fileText(page)).toMatch(/displacement: 98\.5 cm³ \(measured\)[\s\S]*ratio: 1\.5 \(measured\)/)
})

test('two engines take the same answer; about is a guess, an angle becomes the pitch, the end is the craft', async () => {
  await begin('stand on, two engines in line')
  await page.getByLabel('about').check()
  await answer('41')
  await asked().filter({ hasText: 'How strong' }).waitFor()
  for (const next of ['How many turns', 'How wide is the hole that', 'How steep']) {
    await page.getByRole('button', { name: 'I don’t know' }).click()
    await asked().filter({ hasText: next }).waitFor()
  }
  await page.getByRole('button', { name: 'I have an angle read by protractor' }).click()
  await page.getByLabel('Angle of the blade').fill('20')
  await page.getByLabel('How far from the shaft').fill('40')
  await page.getByText(/That is 91\s*mm of pitch/).waitFor()
  await page.getByRole('button', { name: 'That is it' }).click()
  for (let i = 0; i < 5; i++) await page.getByRole('button', { name: 'I don’t know' }).click()
  await page.getByRole('heading', { name: 'The craft file' }).waitFor()
  const text = await fileText(page)
  expect(text.match(/41 cm³ \(guess\)/g)).toHaveLength(2)
  expect(text).toMatch(/pitch: 91\.\d* mm \(measured\)/)
})

test('on a phone each question fits, its buttons are as large as a finger, and axe finds nothing', async () => {
  await page.setViewportSize({ width: 390, height: 844 })
  await begin('stand on, electric')
  await asked().filter({ hasText: 'How hard does the motor twist' }).waitFor()
  for (const button of await page.locator('.begin form button').all())
    expect((await button.boundingBox())!.height).toBeGreaterThanOrEqual(44)
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
  await page.evaluate(axe.source)
  const faults = await page.evaluate(async () =>
    (await (globalThis as unknown as { axe: typeof axe }).axe.run('main')).violations.map(
      (v) => `${v.id} ${v.nodes[0]?.html}`,
    ),
  )
  expect(faults).toEqual([])
  await page.setViewportSize({ width: 1280, height: 900 })
})
