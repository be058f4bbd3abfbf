/**
 * Is a mesh a closed solid? Every directed edge must occur once and its opposite once; the area vectors must cancel;
 * the volume must be positive; no face may cut another (see selfTouch.ts). Each flaw says where it is.
 */
import { solidProperties } from './integrals.ts'
import { boundsOf, type Mesh, pointOf, sizeOf } from './mesh.ts'
import { selfTouches } from './selfTouch.ts'

type FlawKind =
  | 'empty'
  | 'open edge'
  | 'crowded edge'
  | 'turned face'
  | 'inside out'
  | 'flat'
  | 'self-touching'

export interface MeshFlaw {
  kind: FlawKind
  /** how many places */
  count: number
  /** the first few places, m */
  at: [number, number, number][]
  says: string
}

/** What is wrong with a mesh as a solid; an empty list when it is closed, outward and does not touch itself. */
export function flawsOf(mesh: Mesh, options: { touching?: boolean } = {}): MeshFlaw[] {
  if (mesh.triangles.length < 12)
    return [
      {
        kind: 'empty',
        count: 1,
        at: [],
        says: `The mesh has ${mesh.triangles.length / 3} triangles; a solid needs at least 4.`,
      },
    ]
  const flaws = edgeFlaws(mesh)
  if (flaws.length > 0) return flaws
  const { volume, area } = solidProperties(mesh)
  const size = sizeOf(mesh)
  const { low, high } = boundsOf(mesh)
  const middle: [number, number, number] = [
    (low[0] + high[0]) / 2,
    (low[1] + high[1]) / 2,
    (low[2] + high[2]) / 2,
  ]
  if (Math.abs(volume) < 1e-9 * area * size)
    return [
      {
        kind: 'flat',
        count: 1,
        at: [middle],
        says: `The mesh encloses no volume (${volume.toExponential(2)} m³).`,
      },
    ]
  if (volume < 0)
    flaws.push({
      kind: 'inside out',
      count: 1,
      at: [middle],
      says: `The faces point inwards: the volume comes out as ${volume.toPrecision(4)} m³. Reverse the faces.`,
    })
  if (options.touching ?? true) {
    const touching = selfTouches(mesh, 5)
    if (touching.count > 0)
      flaws.push({
        kind: 'self-touching',
        count: touching.count,
        at: touching.at,
        says: `Faces cut through each other in ${touching.count} places, first at ${say(touching.at[0]!)}.`,
      })
  }
  return flaws
}

/** Finds edges without a partner, edges used twice in one direction, and says where. */
function edgeFlaws(mesh: Mesh): MeshFlaw[] {
  const n = mesh.points.length / 3
  const t = mesh.triangles
  const uses = new Map<number, number>()
  for (let i = 0; i < t.length; i += 3)
    for (let k = 0; k < 3; k++) {
      const key = t[i + k]! * n + t[i + ((k + 1) % 3)]!
      uses.set(key, (uses.get(key) ?? 0) + 1)
    }
  const found: Record<'open edge' | 'crowded edge' | 'turned face', MeshFlaw> = {
    'open edge': { kind: 'open edge', count: 0, at: [], says: '' },
    'crowded edge': { kind: 'crowded edge', count: 0, at: [], says: '' },
    'turned face': { kind: 'turned face', count: 0, at: [], says: '' },
  }
  for (const [key, times] of uses) {
    const from = Math.floor(key / n)
    const to = key % n
    const back = uses.get(to * n + from) ?? 0
    if (times === 1 && back === 1) continue
    // an edge used twice one way and never the other joins two faces of which one is turned round
    const kind = times + back === 1 ? 'open edge' : back === 0 && times === 2 ? 'turned face' : 'crowded edge'
    const flaw = found[kind]
    flaw.count++
    if (flaw.at.length < 5) flaw.at.push(midway(mesh, from, to))
  }
  const words = {
    'open edge': 'The mesh leaks: edges with a face on one side only',
    'crowded edge': 'Edges shared by more than two faces',
    'turned face': 'Neighbouring faces point opposite ways along edges',
  }
  return Object.values(found)
    .filter((f) => f.count > 0)
    .map((f) => ({
      ...f,
      says: `${words[f.kind as keyof typeof words]}, ${f.count} in all, first at ${say(f.at[0]!)}.`,
    }))
}

function midway(mesh: Mesh, i: number, j: number): [number, number, number] {
  const a = pointOf(mesh, i)
  const b = pointOf(mesh, j)
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2]
}

const say = (p: readonly number[]): string => `(${p.map((v) => v.toFixed(3)).join(', ')}) m`
