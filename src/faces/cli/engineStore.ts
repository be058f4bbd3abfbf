import { createHash } from 'node:crypto'
import {
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  statSync,
  unlinkSync,
  writeFileSync,
} from 'node:fs'
import { homedir } from 'node:os'
import { join } from 'node:path'
import type { EngineStore, SimulatedEngine } from '../../whole/breath/engineAnswers.ts'

/** simulated engines kept at most; each takes some kilobytes */
const most = 200

/** Where this system keeps what may be thrown away at any time. */
function cacheFolder(): string {
  const env = process.env
  const base =
    process.platform === 'win32'
      ? (env['LOCALAPPDATA'] ?? join(homedir(), 'AppData', 'Local'))
      : process.platform === 'darwin'
        ? join(homedir(), 'Library', 'Caches')
        : (env['XDG_CACHE_HOME'] ?? join(homedir(), '.cache'))
  return join(base, 'wakewright', 'engines')
}

/**
 * Simulated engines kept as files named by a hash of all they depend on, so that a second look is quick. A folder that
 * cannot be written, or a file that does not read, only means working it out again.
 */
export function fileStore(folder = cacheFolder()): EngineStore {
  const fileOf = (key: string) => join(folder, `${createHash('sha256').update(key).digest('hex')}.json`)
  return {
    get(key) {
      try {
        return sound(JSON.parse(readFileSync(fileOf(key), 'utf8')))
      } catch {
        return undefined
      }
    },
    set(key, engine) {
      try {
        mkdirSync(folder, { recursive: true })
        const file = fileOf(key)
        // written aside and moved, so that a reader never sees half a file
        const aside = `${file}.${process.pid}`
        writeFileSync(aside, JSON.stringify(engine))
        renameSync(aside, file)
        prune(folder)
      } catch {
        // kept nowhere: the next look works it out again
      }
    },
  }
}

/** JSON has no word for NaN and infinity: what became null is NaN again. */
function sound(read: SimulatedEngine): SimulatedEngine | undefined {
  if (!Array.isArray(read?.curve?.points) || !Array.isArray(read.outFlow)) return undefined
  return { ...read, at: read.at ?? Number.NaN }
}

function prune(folder: string): void {
  const files = readdirSync(folder).map((name) => join(folder, name))
  if (files.length <= most) return
  const old = files.map((file) => ({ file, age: statSync(file).mtimeMs })).sort((a, b) => a.age - b.age)
  for (const { file } of old.slice(0, files.length - most)) unlinkSync(file)
}
