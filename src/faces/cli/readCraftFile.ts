import { closeSync, fstatSync, openSync, readFileSync, readSync, statSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import {
  type Craft,
  type CraftFiles,
  decodeCraftBytes,
  type FileBeside,
  filesNamed,
  formatProblem,
  giveFiles,
  type Problem,
  readCraft,
} from '../../craft/index.ts'
import { BadInput } from './outcome.ts'

/** A craft file is some kilobytes of text; anything near this is something else. */
const most = 4 * 1024 * 1024

/** A hull of a hundred thousand triangles is 5 MB. */
const mostBeside = 100 * 1024 * 1024

export interface CraftOnDisk {
  craft: Craft
  text: string
  warnings: readonly Problem[]
  /** what the craft names and lies beside its file, for a job in another thread; the craft has them already */
  files: CraftFiles
}

/** Reads a craft file and the files it names from disk, or throws BadInput with located lines. Warnings come back beside the craft. */
export function readCraftFile(path: string): CraftOnDisk {
  const bytes = readBytes(path)
  const decoded = decodeCraftBytes(bytes, path)
  if (decoded.problem) throw new BadInput([formatProblem(decoded.problem)])
  const { craft, problems } = readCraft(decoded.text, path)
  const errors = problems.filter((p) => p.severity === 'error')
  if (!craft || errors.length > 0)
    throw new BadInput((errors.length > 0 ? errors : problems).map(formatProblem))
  const files = Object.fromEntries(filesNamed(craft).map((name) => [name, readBeside(path, name)]))
  giveFiles(craft, files)
  return { craft, text: decoded.text, warnings: problems, files }
}

const troubles: Record<string, string> = {
  ENOENT: 'there is no such file',
  EACCES: 'it may not be read',
  EISDIR: 'it is a folder',
}

/** A file a craft names, looked for from the folder the craft file is in. A fault is a finding, not an end. */
function readBeside(craftPath: string, name: string): FileBeside {
  const path = resolve(dirname(craftPath), name)
  try {
    const { size } = statSync(path)
    if (size > mostBeside)
      return {
        trouble: `is not used. It is ${Math.round(size / 1024 / 1024)} MB, expected at most ${mostBeside / 1024 / 1024} MB`,
      }
    return { bytes: new Uint8Array(readFileSync(path)) }
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? ''
    return {
      trouble: `is not used: beside the craft file ${troubles[code] ?? `it cannot be read (${code})`}`,
    }
  }
}

function readBytes(path: string): Uint8Array {
  let handle: number
  try {
    handle = openSync(path, 'r')
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code
    throw new BadInput([`${path}:1:1: ${troubles[code ?? ''] ?? `it cannot be read (${code})`}`])
  }
  try {
    const stat = fstatSync(handle)
    if (stat.isDirectory()) throw new BadInput([`${path}:1:1: it is a folder; expected a craft file`])
    const room = new Uint8Array(Math.min(most + 1, Math.max(stat.size, 64 * 1024)))
    let length = 0
    for (;;) {
      const got = readSync(handle, room, length, room.length - length, null)
      if (got === 0) break
      length += got
      if (length === room.length) break
    }
    if (length > most || stat.size > most)
      throw new BadInput([
        `${path}:1:1: the file is larger than ${most / 1024 / 1024} MB; a craft file is some kilobytes of text`,
      ])
    return room.subarray(0, length)
  } finally {
    closeSync(handle)
  }
}
