import {
  closeSync,
  existsSync,
  fsyncSync,
  openSync,
  readFileSync,
  renameSync,
  unlinkSync,
  writeSync,
} from 'node:fs'
import { BadInput } from './outcome.ts'

/** The text of a file, '' when there is none. Throws BadInput when it is there and cannot be read. */
export function textBeside(path: string): string {
  if (!existsSync(path)) return ''
  try {
    return readFileSync(path, 'utf8')
  } catch (error) {
    throw new BadInput([`${path}:1:1: it cannot be read (${(error as NodeJS.ErrnoException).code})`])
  }
}

/**
 * Puts a text in the place of a file, whole or not at all, and keeps what stood there as `FILE.before`. `make` is handed what stands
 * there now; when somebody else wrote meanwhile it is asked once more. Throws BadInput when the folder cannot be written.
 */
export function rewrite(path: string, make: (now: string) => string): void {
  for (let turn = 0; ; turn++) {
    const now = textBeside(path)
    const aside = `${path}.${process.pid}.new`
    try {
      writeWhole(aside, make(now))
      if (textBeside(path) !== now && turn < 3) {
        unlinkSync(aside)
        continue
      }
      if (now !== '') writeWhole(`${path}.before`, now)
      renameSync(aside, path)
      return
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException
      if (existsSync(aside)) unlinkSync(aside)
      if (code === undefined) throw error
      throw new BadInput([`${path}: it cannot be written (${code}); what stood there stands`])
    }
  }
}

function writeWhole(path: string, text: string): void {
  const handle = openSync(path, 'w')
  try {
    writeSync(handle, text)
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
}
