import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest'
import { type Bench, openBrowser, profileFolder, serveApp } from './browser.ts'

/** What a test file that uses one browser for all its tests has at hand. */
export interface OnFreshPages {
  bench: Bench
  served: Awaited<ReturnType<typeof serveApp>>
}

/**
 * One served app and one browser for a whole test file, and a page with nothing kept for each of its tests,
 * handed to `take`. A test fails when the console complained during it.
 */
export function onFreshPages(take: (page: Page) => void): OnFreshPages {
  const on = {} as OnFreshPages
  let profile: ReturnType<typeof profileFolder>
  let page: Page
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
  beforeEach(async () => {
    on.bench.complaints.length = 0
    page = await on.bench.freshPage(on.served.address)
    take(page)
  })
  afterEach(async () => {
    await page.context().close()
    expect(on.bench.complaints).toEqual([])
  })
  return on
}

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

interface Axe {
  axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }
}

/** What axe finds wrong with a page as it stands, in short. */
export async function axeFinds(page: Page): Promise<string[]> {
  await page.evaluate(axeSource)
  return page.evaluate(async () => {
    const { violations } = await (globalThis as unknown as Axe).axe.run()
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html.slice(0, 160)).join(' | ')}`)
  })
}
