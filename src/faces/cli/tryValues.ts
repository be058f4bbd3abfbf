import { nearest } from '../../base/units/near.ts'
import { fieldAt, formatProblem, giveFiles, listFields, readCraft, setValue } from '../../craft/index.ts'
import { BadInput } from './outcome.ts'
import type { CraftOnDisk } from './readCraftFile.ts'

/** A craft on disk with other values put in, `path=value` as one would type them in the file. BadInput names what does not fit. */
export function craftWith(file: string, on: CraftOnDisk, values: readonly string[]): CraftOnDisk {
  let text = on.text
  for (const given of values) {
    const at = given.indexOf('=')
    const path = given.slice(0, at).trim()
    if (at <= 0)
      throw new BadInput([`try: "${given}" has no "="; expected path=value, such as jet.rotor.pitch="95 mm"`])
    if (!fieldAt(path)) {
      // a field of a list is known by a star where its number stands
      const known = listFields().map((f) => f.path)
      const near = nearest(path.replace(/\.\d+(?=\.|$)/g, '.*'), known)
      throw new BadInput([`try: a craft file has no "${path}"${near ? `; "${near}" may be meant` : ''}`])
    }
    try {
      text = setValue(text, path, given.slice(at + 1).trim())
    } catch (error) {
      if (!(error instanceof RangeError)) throw error
      throw new BadInput([`try: ${error.message}`])
    }
  }
  const { craft, problems } = readCraft(text, `${file} with what is tried`)
  const errors = problems.filter((p) => p.severity === 'error')
  if (!craft || errors.length > 0)
    throw new BadInput((errors.length > 0 ? errors : problems).map(formatProblem))
  giveFiles(craft, on.files)
  return { craft, text, warnings: problems, files: on.files }
}
