import { type Craft, type CraftFiles, filesNamed, giveFiles, whatIf } from '../../../craft/index.ts'
import { keepMesh, keptMesh, onKept } from './hullShelf.ts'

/** Hull files of this browser by the name crafts give them; null where it has none. */
const known = new Map<string, { bytes: Uint8Array; count: number } | null>()
const asked = new Set<string>()
let arrived = 0
let tell: () => void = () => {}

function put(name: string, bytes: Uint8Array | undefined): void {
  arrived++
  known.set(name, bytes ? { bytes, count: arrived } : null)
  tell()
}

/** Calls back when a hull file came in, or turned out not to be here. */
export function onHullFile(callback: () => void): void {
  tell = callback
  onKept((mesh) => put(mesh.name, mesh.bytes))
}

/** The file is in this browser from now on, for every craft that names it. */
export const keepHullFile = (name: string, bytes: Uint8Array): Promise<void> => keepMesh({ name, bytes })

export const haveHullFile = (name: string): boolean => Boolean(known.get(name))

/** What this browser has of the files crafts name, and a name for that state; asks the shelf the first time. */
export function hullFilesOf(...crafts: readonly (Craft | undefined)[]): {
  files?: CraftFiles
  filesAre: string
} {
  const names = [...new Set(crafts.flatMap((craft) => (craft ? filesNamed(craft) : [])))]
  if (names.length === 0) return { filesAre: '' }
  const trouble = 'is not in this browser: open it on the page Float'
  for (const name of names) if (!known.has(name)) fetchOnce(name)
  return {
    files: Object.fromEntries(
      names.map((name) => {
        const has = known.get(name)
        return [name, has ? { bytes: has.bytes } : { trouble }]
      }),
    ),
    filesAre: names.map((name) => `${name} ${known.get(name)?.count ?? 'none'}`).join('; '),
  }
}

function fetchOnce(name: string): void {
  if (asked.has(name)) return
  asked.add(name)
  void keptMesh(name).then((mesh) => {
    // one that was kept meanwhile is newer
    if (!known.get(name)) put(name, mesh?.bytes)
  })
}

/** The craft with the files this browser has of it. */
export function withHullFiles(craft: Craft): Craft {
  const { files } = hullFilesOf(craft)
  if (files) giveFiles(craft, files)
  return craft
}

/** The same craft again, as a new one with the files that came in since. */
export function refreshed(craft: Craft): Craft {
  return withHullFiles(whatIf(craft, {}))
}
