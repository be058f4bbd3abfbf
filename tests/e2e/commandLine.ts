import { spawn } from 'node:child_process'
import { resolve } from 'node:path'

export const root = resolve(import.meta.dirname, '../..')

export interface Ended {
  code: number | null
  out: string
  err: string
}

/** Runs the built command line (`npm test` builds it first) and gathers what it says. */
export function wakewright(
  args: readonly string[],
  options: { cwd?: string; launcher?: boolean } = {},
): Promise<Ended> {
  const command = options.launcher ? resolve(root, 'wakewright') : process.execPath
  const all = options.launcher ? args : [resolve(root, 'dist/cli/main.js'), ...args]
  return new Promise((done, fail) => {
    const child = spawn(command, all, { cwd: options.cwd ?? root, stdio: ['ignore', 'pipe', 'pipe'] })
    let out = ''
    let err = ''
    child.stdout.on('data', (d) => (out += d))
    child.stderr.on('data', (d) => (err += d))
    child.on('error', fail)
    child.on('close', (code) => done({ code, out, err }))
  })
}
