import { useEffect, useSyncExternalStore } from 'react'
import type { Flag } from '../../../answers/solved.ts'
import { type ImportChoices, type ImportedHull, importHull } from '../../../hull/shape/importMesh.ts'
import type { Mesh } from '../../../solid/mesh.ts'
import type { Craft } from '../../state/craftFile.ts'
import { keepMesh, keptMesh } from '../../state/hullShelf.ts'

/** A hull from a file, in body axes. */
export interface HullMesh {
  /** file name and how it was read */
  id: string
  fileName: string
  mesh: Mesh
  flags: readonly Flag[]
}

interface MeshState {
  /** the file being looked at */
  file: { name: string; bytes: Uint8Array } | undefined
  choices: ImportChoices
  looked: HullMesh | undefined
  /** why it is not taken */
  refused: string
  /** meshes that craft files name, by file name and unit */
  own: ReadonlyMap<string, HullMesh>
}

const empty: MeshState = { file: undefined, choices: {}, looked: undefined, refused: '', own: new Map() }
let state = empty
const listeners = new Set<() => void>()
const put = (part: Partial<MeshState>) => {
  state = { ...state, ...part }
  for (const listener of listeners) listener()
}
const listen = (listener: () => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** bytes; a hull of a hundred thousand triangles is 5 MB */
const mostBytes = 30_000_000

function read(file: { name: string; bytes: Uint8Array }, choices: ImportChoices): Partial<MeshState> {
  try {
    const { mesh, flags }: ImportedHull = importHull(file.bytes, choices)
    const id = `${file.name} ${JSON.stringify(choices)} ${file.bytes.length}`
    return { looked: { id, fileName: file.name, mesh, flags }, refused: '' }
  } catch (error) {
    return { looked: undefined, refused: (error as Error).message.replace(/^hull\.mesh: /, '') }
  }
}

export const hullMeshes = {
  /** Reads a file the user picked and looks at it as the tried hull. */
  async open(file: File): Promise<void> {
    if (file.size > mostBytes) {
      const size = `${(file.size / 1e6).toFixed(0)} MB is too much for a hull; 30 MB is the most. Draw it with fewer triangles.`
      return put({ ...empty, own: state.own, refused: size })
    }
    const bytes = new Uint8Array(await file.arrayBuffer())
    const opened = { name: file.name, bytes }
    put({ file: opened, choices: {}, ...read(opened, {}) })
  },
  /** Reads the same file again with other choices of unit and lie. */
  choose(choices: ImportChoices): void {
    if (state.file) put({ choices, ...read(state.file, choices) })
  },
  drop: () => put({ ...empty, own: state.own }),
  /** The mesh being looked at becomes the craft's own, under the file name the craft file then names. */
  async keep(unit: string): Promise<void> {
    const { file, looked, choices } = state
    if (!file || !looked) return
    put({ ...empty, own: new Map(state.own).set(`${file.name} ${unit}`, looked) })
    await keepMesh({ name: file.name, unit, bytes: file.bytes, choices })
  },
}

/** A mesh kept in this browser that the craft file names, read again. */
async function fetchOwn(name: string, unit: string): Promise<void> {
  const kept = await keptMesh(name, unit)
  if (!kept) return
  const { looked } = read({ name, bytes: kept.bytes }, kept.choices)
  if (looked) put({ own: new Map(state.own).set(`${name} ${unit}`, looked) })
}

/** The mesh the craft file names, when this browser has it, and the one being looked at. */
export function useHullMesh(craft: Craft | undefined) {
  const all = useSyncExternalStore(listen, () => state)
  const name = craft?.hull.mesh
  const unit = craft?.hull.meshUnit ?? ''
  const own = name === undefined ? undefined : all.own.get(`${name} ${unit}`)
  const missing = name !== undefined && own === undefined
  useEffect(() => {
    if (missing && name !== undefined) void fetchOwn(name, unit)
  }, [missing, name, unit])
  return { ...all, own }
}
