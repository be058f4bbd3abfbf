import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import axe from 'axe-core'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type PhoneServed, serveToPhone } from '../../src/faces/cli/phoneServe.ts'
import { makeClip } from '../../src/trades/sound/synth/clip.ts'
import { CONTROL_RATE, type EngineScript } from '../../src/trades/sound/synth/scriptTypes.ts'
import { writeWav } from '../../src/trades/sound/wav.ts'
import { type Bench, builtApp, openBrowser, patience, profileFolder } from './browser.ts'

/** A phone that comes in by the link and hears one engine of 6300 rpm. */
const LONG = 20
let folder: string
let served: PhoneServed
let profile: ReturnType<typeof profileFolder>
let bench: Bench
let page: Page
const complaints: string[] = []

const steady = (rpm: number): EngineScript => {
  const n = LONG * CONTROL_RATE
  const still = new Float64Array(n)
  return {
    rpm: new Float64Array(n).fill(rpm),
    load: new Float64Array(n).fill(1),
    alternate: still,
    every: 2,
    misfire: still,
    phase: 0,
    gain: 1,
  }
}

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'pond-'))
  const clip = makeClip(
    { kind: 'steady', duration: LONG, engines: [steady(6300)], events: [] },
    { snr: 20 },
    7,
  )
  writeFileSync(join(folder, 'one.wav'), writeWav([clip.samples], clip.rate))
  served = await serveToPhone(builtApp, {
    port: 0,
    addresses: ['127.0.0.1'],
    craft: resolve('demo/heron.yaml'),
  })
  profile = profileFolder()
  bench = await openBrowser(profile.folder, { microphone: join(folder, 'one.wav') })
  const context = await bench.context.browser()!.newContext({
    ignoreHTTPSErrors: true,
    viewport: { width: 390, height: 844 },
    permissions: ['microphone'],
  })
  context.setDefaultTimeout(patience)
  page = await context.newPage()
  page.on('pageerror', (e) => complaints.push(e.message))
})
afterAll(async () => {
  await bench.kill()
  profile.remove()
  served.server.closeAllConnections()
  served.server.close()
  rmSync(folder, { recursive: true })
})

const speed = async () =>
  Number((await page.getByLabel('Speed of engine A').textContent())!.replace(/[^\d]/g, '') || Number.NaN)

test('by the link the phone gets the app and the craft, and shows, holds, records and keeps', async () => {
  await page.goto(served.links[0]!)
  await page.getByRole('button', { name: 'Open it on this phone' }).click()
  await page.getByText('Heron', { exact: true }).first().waitFor()
  await page.getByText(/Predicted tied up: [\d\s]+ rpm \(.*kg .*on the scale/).waitFor()
  // the address no longer asks for the craft: a reload goes on with what was made of it
  expect(new URL(page.url()).search).toBe('')
  await page.getByRole('button', { name: 'Listen' }).click()
  await expect.poll(speed).toBeGreaterThan(6200)
  expect(Math.abs((await speed()) / 6300 - 1)).toBeLessThan(0.03)
  await expect
    .poll(() => page.locator('.ponddial strong').first().textContent())
    .toMatch(/^6[\s\u202f]?[23]\d0$/)
  await page.getByLabel('Pull read, kg').fill('50, 52')
  await page.getByRole('button', { name: 'Record', exact: true }).click()
  await page.getByText(/Recording 0:0[2-9]/).waitFor()
  await page.getByRole('button', { name: 'Stop and keep it' }).click()
  await page.getByRole('heading', { name: 'Recorded here' }).waitFor()
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /^Send as a file: run/ }).click(),
  ])
  expect(file.suggestedFilename()).toMatch(/^run .*\.wav$/)
  await page.getByRole('link', { name: 'Read it on Runs' }).click()
  await page.getByText('Runs of this craft').click()
  await page.getByText('Pull read: 50, 52 kg.').waitFor()
  expect(complaints).toEqual([])
})

test('its figure is as large as the screen takes, its buttons are as large as a thumb, and it reads in the dark', async () => {
  await page.goto(new URL('/#/pond', served.links[0]!).href)
  const box = await page.getByLabel('Speed of engine A').boundingBox()
  expect(box!.height).toBeGreaterThan(110)
  for (const button of await page.locator('.pondhand button').all())
    expect((await button.boundingBox())!.height).toBeGreaterThanOrEqual(44)
  await page.evaluate(axe.source)
  const faults = async () =>
    page.evaluate(async () =>
      (await (globalThis as unknown as { axe: typeof axe }).axe.run('.pond')).violations.map(
        (v) => `${v.id} ${v.nodes[0]?.html}`,
      ),
    )
  expect(await faults()).toEqual([])
  await page.getByRole('button', { name: 'Dark' }).click()
  expect(await faults()).toEqual([])
  // two pages wide is one too many
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
})
