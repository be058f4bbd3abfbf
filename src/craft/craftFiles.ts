/** Files that a craft names and that lie beside it, such as its hull mesh: handed in by whoever can read files. */
import type { Craft } from './schema/craftSchema.ts'

/** One such file: its bytes, or why it could not be read, in words that follow "it" ("is not there"). */
export type FileBeside = { readonly bytes: Uint8Array } | { readonly trouble: string }

/** By the name the craft gives it. */
export type CraftFiles = Readonly<Record<string, FileBeside>>

/** beside the craft and not in it: a craft goes into keys and through workers as text, its files do not */
const held = new WeakMap<Craft, CraftFiles>()

/** What was handed in for a name; undefined when nobody looked for it. */
export function fileBeside(craft: Craft, name: string): FileBeside | undefined {
  return held.get(craft)?.[name]
}

/** All that was handed in for a craft; undefined when nothing was. */
export function filesOf(craft: Craft): CraftFiles | undefined {
  return held.get(craft)
}

/** Gives a craft its files. Call it before the craft is used: answers are kept by craft. */
export function giveFiles(craft: Craft, files: CraftFiles): void {
  held.set(craft, files)
}

/** A copy made of a craft has the same files beside it. */
export function carryFiles(from: Craft, to: Craft): void {
  const files = held.get(from)
  if (files) held.set(to, files)
}

/** Names of the files a craft asks for. */
export function filesNamed(craft: Craft): string[] {
  return craft.hull.mesh === undefined ? [] : [craft.hull.mesh]
}
