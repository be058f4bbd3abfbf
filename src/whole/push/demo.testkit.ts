import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { type Craft, readCraft } from '../../craft/index.ts'

/** A demo craft, read; throws with the problems when it does not read. */
export function demoCraft(name: 'heron' | 'teal' | 'dabchick' | 'sandpiper'): Craft {
  const file = resolve(import.meta.dirname, `../../../demo/${name}.yaml`)
  const { craft, problems } = readCraft(readFileSync(file, 'utf8'), file)
  if (!craft) throw new Error(problems.map((p) => p.says).join('\n'))
  return craft
}
