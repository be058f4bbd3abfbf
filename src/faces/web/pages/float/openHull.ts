import { giveFiles, whatIf } from '../../../../craft/index.ts'
import { namedMesh } from '../../../../hull/mesh/namedMesh.ts'
import { app } from '../../state/app.ts'
import type { Craft } from '../../state/craftFile.ts'
import { keepHullFile } from '../../state/hullFiles.ts'

/** bytes; a hull of a hundred thousand triangles is 5 MB */
const mostBytes = 30_000_000

/** how a file newly opened is to be read: guessed, and what was guessed is said */
const lie = ['hull.mesh unit', 'hull.bow along', 'hull.deck faces'] as const

/**
 * Takes a hull file the user picked: the one the craft names comes into use, any other is tried as the hull. Answers why it cannot
 * be used, in the words the findings and the command line have for it too, or nothing.
 */
export async function openHull(craft: Craft, file: File): Promise<string> {
  if (file.size > mostBytes)
    return `${(file.size / 1e6).toFixed(0)} MB is too much for a hull; 30 MB is the most. Draw it with fewer triangles.`
  const bytes = new Uint8Array(await file.arrayBuffer())
  const named = craft.hull.mesh === file.name
  const trial = whatIf(craft, named ? {} : { 'hull.mesh': file.name, ...guessed(craft) })
  giveFiles(trial, { [file.name]: { bytes } })
  const read = namedMesh(trial)
  const trouble = read && 'trouble' in read ? `${file.name} ${read.trouble}` : ''
  // a fault in the craft's own file is the craft's: it is found there as well
  if (trouble && !named) return trouble
  await keepHullFile(file.name, bytes)
  if (!named)
    app.tryAll(
      [
        ['hull.mesh', file.name, file.name],
        ...Object.entries(guessed(craft)).map(([path, word]) => [path, word, word] as const),
      ],
      'try a hull file',
    )
  return trouble
}

/** What the craft says of how another file lies does not hold for this one. */
function guessed(craft: Craft): Record<string, string> {
  const { meshUnit, bowAlong, deckFaces } = craft.hull
  const said = [meshUnit, bowAlong, deckFaces]
  return Object.fromEntries(lie.flatMap((path, i) => (said[i] === 'guess' ? [] : [[path, 'guess']])))
}

/** Takes the hull file's name, and how it lies, out of the craft file. */
export function backToMeasures(): void {
  const text = app.store.get().work?.text ?? ''
  for (const path of ['hull.mesh', ...lie]) if (app.isWritten(text, path)) app.remove(path)
}
