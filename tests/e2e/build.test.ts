import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { builtApp, openBrowser, profileFolder, serveApp } from './browser.ts'
import { kept, nameLine, openExample } from './steps.ts'

const page = readFileSync(join(builtApp, 'index.html'), 'utf8')

/** Files that a module asks for before it can run, itself included. */
function loadedWith(file: string, seen = new Set<string>()): Set<string> {
  if (seen.has(file)) return seen
  seen.add(file)
  const text = readFileSync(join(builtApp, 'assets', file), 'utf8')
  for (const [, other] of text.matchAll(/(?:from|import)\s*["'`]\.\/([\w.-]+\.js)["'`]/g))
    loadedWith(other!, seen)
  return seen
}

test('the first load stays below 280 kB compressed', () => {
  const linked = [...page.matchAll(/(?:src|href)="\.\/assets\/([^"]+)"/g)].map((m) => m[1]!)
  expect(linked.length).toBeGreaterThan(1)
  const scripts = linked.filter((f) => f.endsWith('.js')).flatMap((f) => [...loadedWith(f)])
  // the page that is shown first comes with it
  const first = readdirSync(join(builtApp, 'assets')).filter((f) => /^CraftPage-.*\.(js|css)$/.test(f))
  const files = new Set([
    ...linked,
    ...scripts,
    ...first.flatMap((f) => (f.endsWith('.js') ? [...loadedWith(f)] : [f])),
  ])
  const bytes = [...files].reduce(
    (sum, f) => sum + gzipSync(readFileSync(join(builtApp, 'assets', f))).length,
    0,
  )
  console.log(`first load: ${(bytes / 1000).toFixed(0)} kB compressed in ${files.size} files`)
  expect(bytes).toBeLessThan(280_000)
})

test('everything the build made is listed for use without a network, and nothing else', () => {
  const worker = readFileSync(join(builtApp, 'sw.js'), 'utf8')
  const { files } = JSON.parse(/^self\.build=(\{.*?\});/.exec(worker)![1]!) as { files: string[] }
  const built = readdirSync(builtApp, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(builtApp.length + 1)
        .replaceAll('\\', '/'),
    )
  expect([...files].sort()).toEqual(built.filter((f) => f !== 'sw.js').sort())
})

test('nothing in the page may reach another machine', () => {
  const policy = /Content-Security-Policy"\s+content="([^"]+)"/.exec(page)![1]!
  expect(policy).toContain("default-src 'none'")
  expect(policy).toContain("connect-src 'self'")
  expect(policy).not.toMatch(/https?:|\*/)
  expect(page).not.toMatch(/(?:src|href)="(?:https?:)?\/\//)
})

test('a newer build is offered, not forced, and takes the craft along', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'build-'))
  cpSync(builtApp, folder, { recursive: true })
  const served = await serveApp(folder)
  const profile = profileFolder()
  const bench = await openBrowser(profile.folder)
  try {
    const tab = await bench.page(served.address)
    await openExample(tab, 'Heron')
    await kept(tab)
    await tab.evaluate(() => navigator.serviceWorker.ready.then(() => true))
    const edit = (name: string, from: RegExp, to: string) =>
      writeFileSync(join(folder, name), readFileSync(join(folder, name), 'utf8').replace(from, to))
    edit('index.html', /name="theme-color"/, 'name="theme-color" data-build="second"')
    edit('sw.js', /"version":"\w+"/, '"version":"second"')
    await tab.reload()
    await tab.getByText('A newer Wakewright is ready').waitFor()
    await expect.poll(() => tab.locator('meta[data-build="second"]').count()).toBe(0)
    await tab.getByRole('button', { name: 'Use it now' }).click()
    await tab.locator('meta[data-build="second"]').waitFor({ state: 'attached' })
    await nameLine(tab, 'Heron').waitFor()
    expect(bench.complaints).toEqual([])
  } finally {
    await bench.kill()
    profile.remove()
    await served.stop()
    rmSync(folder, { recursive: true })
  }
})
