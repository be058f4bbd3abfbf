/** Runs every bench in this folder, one after the other. Run: npm run bench [name…] */
import { spawnSync } from 'node:child_process'
import { readdirSync } from 'node:fs'
import { join } from 'node:path'

const wanted = process.argv.slice(2)
const files = readdirSync(import.meta.dirname).filter(
  (f) =>
    f.endsWith('.ts') &&
    f !== 'all.ts' &&
    f !== 'best.ts' &&
    (wanted.length === 0 || wanted.includes(f.slice(0, -3))),
)
for (const file of files) {
  console.log(`\n== ${file.slice(0, -3)} ==`)
  const { status } = spawnSync(process.execPath, ['--import', 'tsx', join(import.meta.dirname, file)], {
    stdio: 'inherit',
  })
  if (status !== 0) process.exitCode = 1
}
