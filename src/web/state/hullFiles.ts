import { type Craft, type CraftFiles, giveFiles, whatIf } from '../../craft/index.ts'
import { keptMesh, onKept } from './hullShelf.ts'

/** Hull files of this browser by name and unit, as crafts name them; null where it has none. */
const known = new Map<string, { bytes: Uint8Array; count: number } | null>()
const asked = new Set<string>()
let arrived = 0
let tell: () => void = () => {}

const keyOf = (craft: Craft): string | undefined =>
  craft.hull.mesh === undefined ? undefined : `${craft.hull.mesh} ${craft.hull.meshUnit}`

function put(key: string, bytes: Uint8Array | undefined): void {
  arrived++
  known.set(key, bytes ? { bytes, count: arrived } : null)
  tell()
}

/** Calls back when a hull file came in, or turned out not to be here. */
export function onHullFile(callback: () => void): void {
  tell = callback
  onKept((mesh) => put(`${mesh.name} ${mesh.unit}`, mesh.bytes))
}

/** What this browser has of the files a craft names, and a name for that state; asks the shelf the first time. */
export function hullFilesOf(craft: Craft): { files?: CraftFiles; filesAre: string } {
  const key = keyOf(craft)
  const name = craft.hull.mesh
  if (key === undefined || name === undefined) return { filesAre: '' }
  const has = known.get(key)
  if (has) return { files: { [name]: { bytes: has.bytes } }, filesAre: `${key} ${has.count}` }
  if (has === undefined && !asked.has(key)) {
    asked.add(key)
    void keptMesh(name, craft.hull.meshUnit).then((mesh) => {
      // one that was kept meanwhile is newer
      if (!known.get(key)) put(key, mesh?.bytes)
    })
  }
  const trouble = 'is not in this browser: open it on the page Float'
  return { files: { [name]: { trouble } }, filesAre: `${key} none` }
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
