/** Plane cuts of a mesh: the lines they leave, for waterlines, sections and drawings. */
import type { Mesh, Vec3 } from './mesh.ts'

/** Line pieces of the cut n·x = h: x0, y0, z0, x1, y1, z1 a piece, the solid on the left when n points at the eye. */
export function cutLines(mesh: Mesh, n: Vec3, h: number): Float64Array {
  const { points: p, triangles: t } = mesh
  const side = new Float64Array(p.length / 3)
  for (let i = 0, k = 0; i < side.length; i++, k += 3)
    side[i] = n[0] * p[k]! + n[1] * p[k + 1]! + n[2] * p[k + 2]! - h
  const out: number[] = []
  for (let f = 0; f < t.length; f += 3) {
    const i = t[f]!
    const j = t[f + 1]!
    const k = t[f + 2]!
    // a point on the plane counts as above: every piece then has exactly two ends
    const bi = side[i]! < 0
    const bj = side[j]! < 0
    const bk = side[k]! < 0
    if (bi === bj && bj === bk) continue
    // turn the face so that a stands alone on its side
    const [a, b, c, below] =
      bi === bj ? ([k, i, j, bk] as const) : bi === bk ? ([j, k, i, bj] as const) : ([i, j, k, bi] as const)
    if (below) {
      addCrossing(p, side, a, c, out)
      addCrossing(p, side, a, b, out)
    } else {
      addCrossing(p, side, a, b, out)
      addCrossing(p, side, a, c, out)
    }
  }
  return Float64Array.from(out)
}

function addCrossing(p: Float64Array, side: Float64Array, i: number, j: number, out: number[]): void {
  const from = Math.min(i, j)
  const to = Math.max(i, j)
  const along = side[from]! / (side[from]! - side[to]!)
  for (let k = 0; k < 3; k++) out.push(p[3 * from + k]! + along * (p[3 * to + k]! - p[3 * from + k]!))
}

/** Cut lines joined end to end into closed loops of points x, y, z …; pieces that find no partner are left out. */
export function cutLoops(lines: Float64Array, tolerance = 1e-9): Float64Array[] {
  const name = (k: number) =>
    `${Math.round(lines[k]! / tolerance)},${Math.round(lines[k + 1]! / tolerance)},${Math.round(lines[k + 2]! / tolerance)}`
  const next = new Map<string, number[]>()
  for (let i = 0; i < lines.length; i += 6) {
    if (name(i) === name(i + 3)) continue
    const list = next.get(name(i))
    if (list) list.push(i)
    else next.set(name(i), [i])
  }
  const loops: Float64Array[] = []
  for (const list of next.values())
    while (list.length > 0) {
      const first = list.pop()!
      const start = name(first)
      const loop = [first]
      let end = name(first + 3)
      while (end !== start) {
        const follow = next.get(end)?.pop()
        if (follow === undefined) break
        loop.push(follow)
        end = name(follow + 3)
      }
      if (end === start && loop.length > 2)
        loops.push(Float64Array.from(loop.flatMap((i) => [lines[i]!, lines[i + 1]!, lines[i + 2]!])))
    }
  return loops
}

/** Heights at which the upright line through (x, y) meets the mesh, m, lowest first. */
export function heightsAt(mesh: Mesh, x: number, y: number): number[] {
  const { points: p, triangles: t } = mesh
  const found: number[] = []
  for (let f = 0; f < t.length; f += 3) {
    const a = 3 * t[f]!
    const b = 3 * t[f + 1]!
    const c = 3 * t[f + 2]!
    const ax = p[a]! - x
    const bx = p[b]! - x
    const cx = p[c]! - x
    if ((ax > 0 && bx > 0 && cx > 0) || (ax < 0 && bx < 0 && cx < 0)) continue
    const ay = p[a + 1]! - y
    const by = p[b + 1]! - y
    const cy = p[c + 1]! - y
    if ((ay > 0 && by > 0 && cy > 0) || (ay < 0 && by < 0 && cy < 0)) continue
    // barycentric weights from the signed areas in plan
    const wa = bx * cy - by * cx
    const wb = cx * ay - cy * ax
    const wc = ax * by - ay * bx
    if (!((wa >= 0 && wb >= 0 && wc >= 0) || (wa <= 0 && wb <= 0 && wc <= 0))) continue
    const w = wa + wb + wc
    if (w === 0) continue
    found.push((wa * p[a + 2]! + wb * p[b + 2]! + wc * p[c + 2]!) / w)
  }
  return found.sort((l, r) => l - r)
}
