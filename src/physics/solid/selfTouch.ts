/**
 * Do faces of a mesh cut through each other? An edge of one face that pierces the inside of another, for faces that share
 * no point. Candidates come from a hashed grid of boxes. Method: orientation signs of tetrahedra (segment against triangle).
 */
import { type Mesh, sizeOf } from './mesh.ts'

/** Number of cutting pairs (counted up to `most` at least) and where the first few are, m. */
export function selfTouches(mesh: Mesh, most = 5): { count: number; at: [number, number, number][] } {
  const t = mesh.triangles
  const faces = t.length / 3
  const boxes = faceBoxes(mesh)
  // cell: about twice the mean face's longest side, so that most faces fall in a few cells
  let mean = 0
  for (let f = 0; f < faces; f++)
    mean += Math.max(
      boxes[6 * f + 3]! - boxes[6 * f]!,
      boxes[6 * f + 4]! - boxes[6 * f + 1]!,
      boxes[6 * f + 5]! - boxes[6 * f + 2]!,
    )
  const cell = Math.max((2 * mean) / faces, sizeOf(mesh) / 120)
  // nearer than this is touching along a plane, not cutting through it
  const near = 1e-7 * sizeOf(mesh)
  const grid = new Map<number, number[]>()
  const seen = new Set<number>()
  const at: [number, number, number][] = []
  let count = 0
  for (let f = 0; f < faces; f++) {
    const lo = [0, 1, 2].map((k) => Math.floor(boxes[6 * f + k]! / cell))
    const hi = [0, 1, 2].map((k) => Math.floor(boxes[6 * f + 3 + k]! / cell))
    for (let i = lo[0]!; i <= hi[0]!; i++)
      for (let j = lo[1]!; j <= hi[1]!; j++)
        for (let k = lo[2]!; k <= hi[2]!; k++) {
          const key = ((i + 4096) * 8192 + (j + 4096)) * 8192 + (k + 4096)
          const list = grid.get(key)
          if (list === undefined) {
            grid.set(key, [f])
            continue
          }
          for (const g of list) {
            if (!overlap(boxes, f, g) || shareCorner(t, f, g)) continue
            const pair = f * faces + g
            if (seen.has(pair)) continue
            seen.add(pair)
            const hit = facesCut(mesh, f, g, near) ?? facesCut(mesh, g, f, near)
            if (hit === undefined) continue
            count++
            if (at.length < most) at.push(hit)
          }
          list.push(f)
        }
  }
  return { count, at }
}

function faceBoxes(mesh: Mesh): Float64Array {
  const { points: p, triangles: t } = mesh
  const boxes = new Float64Array(2 * t.length)
  for (let f = 0; f < t.length / 3; f++)
    for (let k = 0; k < 3; k++) {
      const a = p[3 * t[3 * f]! + k]!
      const b = p[3 * t[3 * f + 1]! + k]!
      const c = p[3 * t[3 * f + 2]! + k]!
      boxes[6 * f + k] = Math.min(a, b, c)
      boxes[6 * f + 3 + k] = Math.max(a, b, c)
    }
  return boxes
}

function overlap(b: Float64Array, f: number, g: number): boolean {
  for (let k = 0; k < 3; k++)
    if (b[6 * f + k]! > b[6 * g + 3 + k]! || b[6 * g + k]! > b[6 * f + 3 + k]!) return false
  return true
}

function shareCorner(t: Uint32Array, f: number, g: number): boolean {
  for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) if (t[3 * f + i] === t[3 * g + j]) return true
  return false
}

/** Where an edge of face f pierces the inside of face g. */
function facesCut(mesh: Mesh, f: number, g: number, near: number): [number, number, number] | undefined {
  const { points: p, triangles: t } = mesh
  const a = 3 * t[3 * g]!
  const b = 3 * t[3 * g + 1]!
  const c = 3 * t[3 * g + 2]!
  const twice = twiceArea(p, a, b, c)
  for (let e = 0; e < 3; e++) {
    const u = 3 * t[3 * f + e]!
    const v = 3 * t[3 * f + ((e + 1) % 3)]!
    const du = orient(p, a, b, c, u)
    const dv = orient(p, a, b, c, v)
    if (!(du * dv < 0) || Math.min(Math.abs(du), Math.abs(dv)) < near * twice) continue
    const s1 = orient(p, u, v, a, b)
    const s2 = orient(p, u, v, b, c)
    const s3 = orient(p, u, v, c, a)
    if (!((s1 > 0 && s2 > 0 && s3 > 0) || (s1 < 0 && s2 < 0 && s3 < 0))) continue
    const along = du / (du - dv)
    return [0, 1, 2].map((k) => p[u + k]! + along * (p[v + k]! - p[u + k]!)) as [number, number, number]
  }
  return undefined
}

/** Six times the signed volume of the tetrahedron of four points (offsets into p). */
function orient(p: Float64Array, a: number, b: number, c: number, d: number): number {
  const ax = p[a]! - p[d]!
  const ay = p[a + 1]! - p[d + 1]!
  const az = p[a + 2]! - p[d + 2]!
  const bx = p[b]! - p[d]!
  const by = p[b + 1]! - p[d + 1]!
  const bz = p[b + 2]! - p[d + 2]!
  const cx = p[c]! - p[d]!
  const cy = p[c + 1]! - p[d + 1]!
  const cz = p[c + 2]! - p[d + 2]!
  return ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)
}

function twiceArea(p: Float64Array, a: number, b: number, c: number): number {
  const ux = p[b]! - p[a]!
  const uy = p[b + 1]! - p[a + 1]!
  const uz = p[b + 2]! - p[a + 2]!
  const wx = p[c]! - p[a]!
  const wy = p[c + 1]! - p[a + 1]!
  const wz = p[c + 2]! - p[a + 2]!
  return Math.hypot(uy * wz - uz * wy, uz * wx - ux * wz, ux * wy - uy * wx)
}
