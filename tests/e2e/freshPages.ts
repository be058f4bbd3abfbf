import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest'
import { type Bench, openBrowser, profileFolder, serveApp, withoutServiceWorker } from './browser.ts'
import { drawn } from './steps.ts'

/** What a test file that uses one browser for all its tests has at hand. */
export interface OnOneBrowser {
  bench: Bench
  served: Awaited<ReturnType<typeof serveApp>>
  /** what this test provokes on purpose; a complaint may come at any moment until the page is gone */
  provokes(complaint: RegExp): void
}

/** One served app and one browser for a whole test file. A test fails when the console complained during it. */
export function onOneBrowser(): OnOneBrowser {
  const on = {} as OnOneBrowser
  let profile: ReturnType<typeof profileFolder>
  let provoked: RegExp[] = []
  on.provokes = (complaint) => void provoked.push(complaint)
  beforeAll(async () => {
    on.served = await serveApp()
    profile = profileFolder()
    on.bench = await openBrowser(profile.folder)
  })
  afterAll(async () => {
    await on.bench.kill()
    profile.remove()
    await on.served.stop()
  })
  beforeEach(() => {
    on.bench.complaints.length = 0
    provoked = []
  })
  afterEach(() => {
    expect(on.bench.complaints.filter((says) => !provoked.some((known) => known.test(says)))).toEqual([])
  })
  return on
}

/** As `onOneBrowser`, and a page with nothing kept for each of the tests, handed to `take`. */
export function onFreshPages(take: (page: Page) => void): OnOneBrowser {
  const on = onOneBrowser()
  let page: Page
  beforeEach(async () => {
    page = await on.bench.freshPage(on.served.address, withoutServiceWorker)
    take(page)
  })
  // runs before the one above: what a page complains of on leaving counts too
  afterEach(() => page.context().close())
  return on
}

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

interface Axe {
  axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
}

/**
 * What axe finds wrong with a page as it stands, in short. Nothing may fade in while it looks, as half-faded words have no
 * contrast: motion is off until it is done, so no animation begins, and those under way have ended.
 */
export async function axeFinds(page: Page): Promise<string[]> {
  await page.emulateMedia({ reducedMotion: 'reduce' })
  await drawn(page)
  await page.evaluate(() => Promise.allSettled(document.getAnimations().map((each) => each.finished)))
  await page.evaluate(axeSource)
  const found = await page.evaluate(async () => {
    const { violations } = await (globalThis as unknown as Axe).axe.run()
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html.slice(0, 160)).join(' | ')}`)
  })
  await page.emulateMedia({ reducedMotion: null })
  return found
}
