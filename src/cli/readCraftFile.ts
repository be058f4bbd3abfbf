import { closeSync, fstatSync, openSync, readSync } from 'node:fs'
import { type Craft, decodeCraftBytes, formatProblem, type Problem, readCraft } from '../craft/index.ts'
import { BadInput } from './outcome.ts'

/** A craft file is some kilobytes of text; anything near this is something else. */
const most = 4 * 1024 * 1024

/** Reads a craft file from disk, or throws BadInput with located lines. Warnings come back beside the craft. */
export function readCraftFile(path: string): { craft: Craft; text: string; warnings: readonly Problem[] } {
  const bytes = readBytes(path)
  const decoded = decodeCraftBytes(bytes, path)
  if (decoded.problem) throw new BadInput([formatProblem(decoded.problem)])
  const { craft, problems } = readCraft(decoded.text, path)
  const errors = problems.filter((p) => p.severity === 'error')
  if (!craft || errors.length > 0)
    throw new BadInput((errors.length > 0 ? errors : problems).map(formatProblem))
  return { craft, text: decoded.text, warnings: problems }
}

function readBytes(path: string): Uint8Array {
  let handle: number
  try {
    handle = openSync(path, 'r')
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code
    const says: Record<string, string> = {
      ENOENT: 'there is no such file',
      EACCES: 'it may not be read',
      EISDIR: 'it is a folder',
    }
    throw new BadInput([`${path}:1:1: ${says[code ?? ''] ?? `it cannot be read (${code})`}`])
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
