/** The hull file a craft names: read once, taken when it is a closed solid, and otherwise said why it is not. */
import { say } from '../../base/answers/sentence.ts'
import { type Flag, flagOf } from '../../base/answers/solved.ts'
import { fileBeside } from '../../craft/craftFiles.ts'
import type { Craft } from '../../craft/schema/craftSchema.ts'
import { MeshFileError } from '../../physics/solid/readStl.ts'
import { type Hull, hullFromClosed } from '../lines/hullBody.ts'
import { type ImportChoices, importHull } from './importMesh.ts'
import { lighter } from './meshLines.ts'

/** A hull, or why the file makes none, in words that follow its name. */
export type NamedMesh = { hull: Hull } | { trouble: string }

/** hulls read lately, by what the file holds and how it was to be read */
const read = new Map<string, NamedMesh>()
const kept = 6
const marks = new WeakMap<Uint8Array, string>()

/** FNV-1a over the bytes: tells two files of one name apart, also when they came through a worker's door as copies. */
function markOf(bytes: Uint8Array): string {
  let mark = marks.get(bytes)
  if (mark === undefined) {
    let h = 0x811c9dc5
    for (let i = 0; i < bytes.length; i++) h = Math.imul(h ^ bytes[i]!, 0x01000193)
    mark = `${bytes.length}:${h >>> 0}`
    marks.set(bytes, mark)
  }
  return mark
}

/** The words of the craft file on how its mesh is to be read. */
export function meshChoices(craft: Craft): ImportChoices {
  const { meshUnit, bowAlong, deckFaces } = craft.hull
  return {
    ...(meshUnit === 'guess' ? {} : { unit: meshUnit }),
    ...(bowAlong === 'guess' ? {} : { forward: bowAlong }),
    ...(deckFaces === 'guess' ? {} : { up: deckFaces }),
  }
}

/** What the craft's hull file gives; undefined when the craft names none. */
export function namedMesh(craft: Craft): NamedMesh | undefined {
  const name = craft.hull.mesh
  if (name === undefined) return undefined
  const file = fileBeside(craft, name)
  if (file === undefined) return { trouble: 'was not at hand' }
  if ('trouble' in file) return { trouble: file.trouble }
  const choices = meshChoices(craft)
  const key = keyOf(name, file.bytes, choices)
  return read.get(key) ?? keep(key, readIn(name, file.bytes, choices))
}

const keyOf = (name: string, bytes: Uint8Array, choices: ImportChoices): string =>
  `${name} ${markOf(bytes)} ${JSON.stringify(choices)}`

function keep(key: string, made: NamedMesh): NamedMesh {
  if (read.size >= kept) read.delete(read.keys().next().value!)
  read.set(key, made)
  return made
}

/** A hull file as one thread read and checked it, plain data for another that has the same craft. */
export interface HullRead {
  key: string
  made: NamedMesh
  light?: Hull
}

/** Reads the craft's hull file for another thread to take; undefined when it names none or none was handed in. */
export function hullRead(craft: Craft): HullRead | undefined {
  const made = namedMesh(craft)
  const name = craft.hull.mesh
  const file = name === undefined ? undefined : fileBeside(craft, name)
  if (made === undefined || name === undefined || file === undefined || 'trouble' in file) return undefined
  const key = keyOf(name, file.bytes, meshChoices(craft))
  return 'hull' in made ? { key, made, light: lightOf(made.hull) } : { key, made }
}

/** Takes what another thread read, so that this one need not. */
export function takeHullRead({ key, made, light: lightHull }: HullRead): void {
  keep(key, made)
  // one that is light already stays one object
  if ('hull' in made && lightHull) light.set(made.hull, lightHull)
}

const light = new WeakMap<Hull, Hull>()

/** The same hull with fewer triangles, for findings; found once. */
export function lightOf(hull: Hull): Hull {
  let found = light.get(hull)
  if (!found) {
    found = lighter(hull)
    light.set(hull, found)
  }
  return found
}

function readIn(name: string, bytes: Uint8Array, choices: ImportChoices): NamedMesh {
  try {
    const { mesh, flags } = importHull(bytes, choices)
    const hull = hullFromClosed(mesh, `the mesh ${name}`)
    return {
      hull: { ...hull, flags: flags.map((f) => flagOf(f.code, say`${name}: ${f.says ?? f.text}`, f.path)) },
    }
  } catch (error) {
    if (!(error instanceof MeshFileError)) throw error
    return { trouble: `is not used. ${error.message.replace(/^hull\.mesh: /, '')}` }
  }
}

/** The finding's words where the file is not used: what is wrong with it and what the answers rest on instead. */
export function meshNotUsed(craft: Craft, trouble: string): Flag {
  const instead =
    (craft.hull.stations?.length ?? 0) >= 3 ? 'the station table' : 'the few measures of the hull'
  return {
    code: 'mesh not used',
    text: `The hull file ${craft.hull.mesh} ${trouble.replace(/\.?$/, '.')} Everything here is worked out from ${instead} instead.`,
    path: 'hull.mesh',
  }
}
