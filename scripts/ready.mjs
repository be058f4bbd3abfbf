// Makes a fresh clone ready: installs packages, builds what is missing or old, finds Chromium for the tests.
// Plain JavaScript without dependencies, because it runs before anything is installed.
import { execFileSync, spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = resolve(dirname(fileURLToPath(import.meta.url)), '..')
const wants = new Set(process.argv.slice(2))
const quiet = wants.has('--quiet')
const say = (text) => quiet || console.error(text)

const [major, minor] = process.versions.node.split('.').map(Number)
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(`Wakewright needs node 20.19 or newer; this is ${process.version}.`)
  process.exit(3)
}

function run(command, args) {
  const npm = command === 'npm' && process.platform === 'win32'
  const result = spawnSync(npm ? 'npm.cmd' : command, args, {
    cwd: root,
    stdio: ['ignore', quiet ? 'ignore' : 2, 2],
    shell: npm,
  })
  if (result.status !== 0) {
    console.error(
      `"${command} ${args.join(' ')}" did not finish (${result.error?.message ?? `exit ${result.status}`}).`,
    )
    process.exit(3)
  }
}

/** a stamp inside node_modules tells whether it was made from this very lock file */
function install() {
  const lock = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex')
  const stamp = join(root, 'node_modules', '.wakewright-lock')
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === lock) return
  say('Installing packages …')
  run('npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error'])
  writeFileSync(stamp, lock)
}

function newest(path) {
  if (!existsSync(path)) return 0
  const s = statSync(path)
  if (!s.isDirectory()) return s.mtimeMs
  return Math.max(
    0,
    ...readdirSync(path)
      .filter((n) => !n.includes('.test.'))
      .map((n) => newest(join(path, n))),
  )
}

/** build again when the built file is missing or older than its sources */
function build(name, target, sources) {
  const made = join(root, target)
  const age = existsSync(made) ? statSync(made).mtimeMs : 0
  if (age > Math.max(...sources.map((s) => newest(join(root, s))))) return
  say(`Building ${name} …`)
  mkdirSync(join(root, 'dist'), { recursive: true })
  run('npm', ['run', '--silent', `build:${name}`])
}

function findChromium() {
  const places = [
    process.env.CHROMIUM,
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/snap/bin/chromium',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  ]
  return places.find((p) => p && existsSync(p))
}

/** what the whole test suite needs from Debian: a browser, and the sound and paper readers it compares with */
function systemTools() {
  const has = (tool) => spawnSync(tool, ['-version'], { stdio: 'ignore' }).error === undefined
  const missing = []
  if (!findChromium()) missing.push('chromium')
  if (!has('ffmpeg')) missing.push('ffmpeg')
  if (!has('pdftoppm')) missing.push('poppler-utils')
  if (missing.length === 0) return
  const apt = ['/usr/bin/apt-get', '/bin/apt-get'].find(existsSync)
  if (!apt) {
    console.error(
      `The tests need ${missing.join(', ')}: install them, or name the browser in the variable CHROMIUM.`,
    )
    process.exit(3)
  }
  say(`Installing ${missing.join(', ')} for the tests …`)
  const sudo = process.getuid?.() === 0 ? [] : ['sudo', '-n']
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  const step = (args) => {
    const [command, ...rest] = [...sudo, apt, ...args]
    execFileSync(command, rest, { stdio: ['ignore', 'ignore', 'inherit'], env })
  }
  step(['update', '-qq'])
  step(['install', '-y', '-qq', '--no-install-recommends', ...missing])
}

install()
const shared = ['src', 'demo', 'package-lock.json', 'package.json']
if (!wants.has('--no-build')) {
  build('cli', 'dist/cli/main.js', [...shared, 'vite.cli.config.ts'])
  if (!wants.has('--no-web')) build('web', 'dist/web/index.html', [...shared, 'index.html', 'vite.config.ts'])
}
if (wants.has('--tests')) systemTools()
