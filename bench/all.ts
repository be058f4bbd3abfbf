/**
 * Runs every bench in this folder, one after the other, built as the command line is, so that what is timed is what runs.
 * Run: npm run bench [name…] [-- options of the bench]
 */
import { spawnSync } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { build } from 'vite'

const args = process.argv.slice(2)
const options = args.filter((a) => a.startsWith('-') || args[args.indexOf(a) - 1]?.startsWith('--'))
const wanted = args.filter((a) => !options.includes(a))
const folder = import.meta.dirname
const built = join(folder, '../node_modules/.cache/wakewright-bench')
const names = readdirSync(folder)
  .filter((f) => f.endsWith('.ts') && f !== 'all.ts' && f !== 'best.ts')
  .map((f) => f.slice(0, -3))
  .filter((name) => wanted.length === 0 || wanted.includes(name))

for (const name of names) {
  console.log(`\n== ${name} ==`)
  await build({
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    // a bench finds its files beside its source
    define: { 'import.meta.dirname': JSON.stringify(folder) },
    ssr: { noExternal: true, external: ['piscina', 'vite'] },
    build: { ssr: join(folder, `${name}.ts`), target: 'node20', outDir: join(built, name), minify: false },
  })
  const { status } = spawnSync(process.execPath, [join(built, name, `${name}.js`), ...options], {
    stdio: 'inherit',
  })
  if (status !== 0) process.exitCode = 1
}
