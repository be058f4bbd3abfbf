import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import type { Readable } from 'node:stream'
import { type BrowserContext, chromium, type Page } from 'playwright-core'
import { serveFolder } from '../../src/faces/cli/serve.ts'

/** Where Debian, other Linux systems, macOS and Windows put a Chromium; the CHROMIUM variable goes first. */
const places = [
  process.env['CHROMIUM'],
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
]

const flags = [
  '--no-sandbox',
  // a container may have next to no shared memory
  '--disable-dev-shm-usage',
  // a tab or window that is not in front must not be slowed down
  '--disable-background-timer-throttling',
  '--disable-backgrounding-occluded-windows',
  '--disable-renderer-backgrounding',
  '--disable-gpu',
  // pictures in space are drawn by the processor, without a warning about it
  '--enable-unsafe-swiftshader',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // the list below the address bar is a page of its own: half a second of work for each window, never opened here
  '--disable-features=WebUIOmniboxPopup,WebUIOmniboxAimPopup',
]

/** ms a step may take on a machine busy with other work; only a step that fails takes as long */
export const patience = 60_000

/** the built app; BUILT_APP names another build to test */
export const builtApp = process.env['BUILT_APP'] ?? resolve(import.meta.dirname, '../../dist/web')

/** The program to drive; throws with what to install when there is none. */
function chromiumPath(): string {
  const found = places.find((place) => place && existsSync(place))
  if (!found)
    throw new Error('no Chromium found: install the package "chromium" or name one in the CHROMIUM variable')
  return found
}

/** The built app, or a copy of it, on a free port of this machine. */
export async function serveApp(folder = builtApp): Promise<{ address: string; stop(): Promise<void> }> {
  if (!existsSync(join(folder, 'index.html'))) throw new Error('dist/web is not built: run npm run build:web')
  const { server, address } = await serveFolder(folder)
  const stop = () =>
    new Promise<void>((done) => {
      server.close(() => done())
      server.closeAllConnections()
    })
  return { address, stop }
}

export interface Bench {
  context: BrowserContext
  /** what the console said that was an error or a warning, and what pages threw */
  complaints: string[]
  page(address: string): Promise<Page>
  /** a page that shares nothing with the others and has nothing kept; `before` runs in it ahead of the app */
  freshPage(address: string, before?: () => void): Promise<Page>
  close(): Promise<void>
  /** ends the browser as a crash would: nothing is told, nothing is flushed */
  kill(): Promise<void>
}

/**
 * Taken to a fresh page as its `before`: as in a browser that keeps no app, so that every file comes from the server.
 * Fetching the whole build once more for each page is most of its cost; the tests of keeping and of a newer build do it.
 */
export function withoutServiceWorker(): void {
  Reflect.deleteProperty(Navigator.prototype, 'serviceWorker')
}

/** A folder for a browser's own files, so that a test can open the same browser again. */
export function profileFolder(): { folder: string; remove(): void } {
  const folder = mkdtempSync(join(tmpdir(), 'profile-'))
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 }) }
}

interface Setting {
  width?: number
  height?: number
  /** a made-up microphone: true = one that beeps, a path = one that plays this WAV file over and over */
  microphone?: boolean | string
}

const withMicrophone = ['--use-fake-device-for-media-stream', '--use-fake-ui-for-media-stream']

/** A browser with a profile of its own; give the same folder again to reopen what was closed or killed. */
export async function openBrowser(
  folder: string,
  { width = 1280, height = 900, microphone = false }: Setting = {},
): Promise<Bench> {
  // in a process group of its own, so that a kill takes its helpers along
  const program = spawn(
    chromiumPath(),
    [
      ...flags,
      ...(microphone ? withMicrophone : []),
      ...(typeof microphone === 'string' ? [`--use-file-for-fake-audio-capture=${microphone}`] : []),
      '--headless',
      '--remote-debugging-port=0',
      `--user-data-dir=${folder}`,
      'about:blank',
    ],
    { detached: true, stdio: ['ignore', 'ignore', 'pipe'] },
  )
  const gone = new Promise<void>((done) => program.once('exit', () => done()))
  const kill = async () => {
    if (program.exitCode === null && program.signalCode === null) process.kill(-program.pid!, 'SIGKILL')
    await gone
  }
  const browser = await chromium.connectOverCDP(await debugAddress(program.stderr))
  const context = browser.contexts()[0]!
  const complaints: string[] = []
  const watch = (page: Page) => {
    page.on('console', (message) => {
      // a driver's note on how fast it draws says nothing about the app
      const drivers = message.text().includes('GL Driver Message')
      if (['error', 'warning'].includes(message.type()) && !drivers) complaints.push(message.text())
    })
    page.on('pageerror', (error) => complaints.push(error.message))
  }
  context.on('page', watch)
  const show = async (where: BrowserContext, address: string) => {
    const page = await where.newPage()
    page.setDefaultTimeout(patience)
    await page.setViewportSize({ width, height })
    await page.goto(address)
    return page
  }
  return {
    context,
    complaints,
    page: (address) => show(context, address),
    async freshPage(address, before) {
      const fresh = await browser.newContext({ acceptDownloads: true })
      if (before) await fresh.addInitScript(before)
      fresh.on('page', watch)
      return show(fresh, address)
    },
    async close() {
      // asks the browser itself to close, so that it puts its files in order
      const session = await browser.newBrowserCDPSession()
      await session.send('Browser.close').catch(() => {})
      await Promise.race([gone, new Promise((done) => setTimeout(done, 5000))])
      await kill()
    },
    kill,
  }
}

/** The address the browser prints when it is ready to be driven. */
function debugAddress(stderr: Readable): Promise<string> {
  return new Promise((done, fail) => {
    let said = ''
    stderr.on('data', (part) => {
      said += part
      const address = /DevTools listening on (ws:\S+)/.exec(said)?.[1]
      if (address) done(address)
    })
    stderr.on('end', () => fail(new Error(`the browser did not start: ${said.slice(-500)}`)))
  })
}
