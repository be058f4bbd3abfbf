/**
 * The part of a solid between two planes across an axis, for compartments and foam blocks fitted to a hull.
 * The cut is closed with a fan of signed triangles from one point of the plane: as an oriented surface it is exactly the
 * missing face, so every integral and every later clip is exact, though the fan may overlap itself where the cut is hollow.
 */
import { boundsOf, type Mesh, makeMesh } from './mesh.ts'

/** What of the solid lies at or above `at` along axis k (0 x, 1 y, 2 z); undefined when nothing does. */
function keepAbove(mesh: Mesh, k: number, at: number): Mesh | undefined {
  const { points: p, triangles: t } = mesh
  const n = p.length / 3
  const points: number[] = []
  const kept = new Int32Array(n).fill(-1)
  const crossings = new Map<number, number>()
  const keep = (i: number): number => {
    if (kept[i]! < 0) {
      kept[i] = points.length / 3
      points.push(p[3 * i]!, p[3 * i + 1]!, p[3 * i + 2]!)
    }
    return kept[i]!
  }
  const cross = (i: number, j: number): number => {
    const from = Math.min(i, j)
    const to = Math.max(i, j)
    const key = from * n + to
    const old = crossings.get(key)
    if (old !== undefined) return old
    const along = (at - p[3 * from + k]!) / (p[3 * to + k]! - p[3 * from + k]!)
    const made = points.length / 3
    for (let m = 0; m < 3; m++)
      points.push(m === k ? at : p[3 * from + m]! + along * (p[3 * to + m]! - p[3 * from + m]!))
    crossings.set(key, made)
    return made
  }
  const triangles: number[] = []
  const rim: number[] = []
  for (let f = 0; f < t.length; f += 3) {
    const corner = [t[f]!, t[f + 1]!, t[f + 2]!]
    const above = corner.map((i) => p[3 * i + k]! >= at)
    const count = Number(above[0]) + Number(above[1]) + Number(above[2])
    if (count === 0) continue
    if (count === 3) {
      triangles.push(keep(corner[0]!), keep(corner[1]!), keep(corner[2]!))
      continue
    }
    const lone = above.indexOf(count === 1)
    const a = corner[lone]!
    const b = corner[(lone + 1) % 3]!
    const c = corner[(lone + 2) % 3]!
    const ab = cross(a, b)
    const ca = cross(c, a)
    if (count === 1) {
      triangles.push(keep(a), ab, ca)
      rim.push(ab, ca)
    } else {
      triangles.push(ab, keep(b), keep(c), ab, keep(c), ca)
      rim.push(ca, ab)
    }
  }
  if (triangles.length === 0) return undefined
  // close the rim: each rim edge runs along the kept faces, so the lid runs it backwards
  if (rim.length > 0) {
    const hub = rim[0]!
    for (let i = 0; i < rim.length; i += 2)
      if (rim[i] !== hub && rim[i + 1] !== hub) triangles.push(hub, rim[i + 1]!, rim[i]!)
  }
  return makeMesh(points, triangles)
}

/** Turns axis k of a mesh round (mirror), so that one cutter serves both ends. */
function turned(mesh: Mesh, k: number): Mesh {
  const points = mesh.points.map((v, i) => (i % 3 === k ? -v : v))
  const triangles = mesh.triangles.slice()
  for (let i = 0; i < triangles.length; i += 3) {
    triangles[i + 1] = mesh.triangles[i + 2]!
    triangles[i + 2] = mesh.triangles[i + 1]!
  }
  return { points, triangles }
}

/** The part of a solid from `low` to `high` along an axis; undefined when the solid has nothing there. */
export function sliceBetween(mesh: Mesh, axis: 'x' | 'y' | 'z', low: number, high: number): Mesh | undefined {
  if (!(high > low)) throw new RangeError(`slice along ${axis}: ${low} to ${high}, expected low < high`)
  const k = axis === 'x' ? 0 : axis === 'y' ? 1 : 2
  const b = boundsOf(mesh)
  let cut: Mesh | undefined = mesh
  if (low > b.low[k]!) cut = keepAbove(cut, k, low)
  if (cut !== undefined && high < b.high[k]!) {
    const other = keepAbove(turned(cut, k), k, -high)
    cut = other === undefined ? undefined : turned(other, k)
  }
  return cut
}

/** The part of a solid inside a box; undefined when there is none. */
export function sliceBox(
  mesh: Mesh,
  low: readonly [number, number, number],
  high: readonly [number, number, number],
): Mesh | undefined {
  let cut: Mesh | undefined = mesh
  for (const [k, axis] of (['x', 'y', 'z'] as const).entries())
    if (cut !== undefined) cut = sliceBetween(cut, axis, low[k]!, high[k]!)
  return cut
}
