import type { Craft } from '../../state/craftFile.ts'

/** The craft to scale; nothing until there is a drawing of it. */
export function Picture(_: { craft: Craft }) {
  return null
}
