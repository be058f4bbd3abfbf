/** The thinnest wall of a solid: rays from the middles of its faces straight in, as far as the next face. Derived; lengths m. */
import type { SolidMesh } from '../../base/answers/madePart.ts'

/** cosine of the angle within which two faces make a wall */
const parallel = 0.7

/** Lies the crossing in the triangle? Möller and Trumbore, "Fast, minimum storage ray/triangle intersection", J. Graphics Tools 2(1), 1997. */
function hit(c: Float64Array, t: Uint32Array, f: number, o: readonly number[], d: readonly number[]): number {
  const [a, b, e] = [3 * t[3 * f]!, 3 * t[3 * f + 1]!, 3 * t[3 * f + 2]!]
  const ux = c[b]! - c[a]!
  const uy = c[b + 1]! - c[a + 1]!
  const uz = c[b + 2]! - c[a + 2]!
  const wx = c[e]! - c[a]!
  const wy = c[e + 1]! - c[a + 1]!
  const wz = c[e + 2]! - c[a + 2]!
  const [dx, dy, dz] = d as [number, number, number]
  const px = dy * wz - dz * wy
  const py = dz * wx - dx * wz
  const pz = dx * wy - dy * wx
  const det = ux * px + uy * py + uz * pz
  if (Math.abs(det) < 1e-18) return Number.POSITIVE_INFINITY
  const sx = o[0]! - c[a]!
  const sy = o[1]! - c[a + 1]!
  const sz = o[2]! - c[a + 2]!
  const u = (sx * px + sy * py + sz * pz) / det
  if (u < 0 || u > 1) return Number.POSITIVE_INFINITY
  const qx = sy * uz - sz * uy
  const qy = sz * ux - sx * uz
  const qz = sx * uy - sy * ux
  const v = (dx * qx + dy * qy + dz * qz) / det
  if (v < 0 || u + v > 1) return Number.POSITIVE_INFINITY
  return (wx * qx + wy * qy + wz * qz) / det
}

/**
 * The least way, m, from a face straight in to a far face that lies about parallel; rays from faces spread over the whole area. An upper bound of the
 * thinnest wall: one thinner than any ray met may hide between them. Infinity where no two faces lie so.
 */
export function thinWall(
  { corners: c, triangles: t }: SolidMesh,
  rays = 200,
): { wall: number; at: readonly number[] } {
  const count = t.length / 3
  const middle = new Float64Array(3 * count)
  const normal = new Float64Array(3 * count)
  /** area of all faces up to and with this one */
  const upTo = new Float64Array(count)
  let sum = 0
  for (let f = 0; f < count; f++) {
    const [a, b, e] = [3 * t[3 * f]!, 3 * t[3 * f + 1]!, 3 * t[3 * f + 2]!]
    for (let k = 0; k < 3; k++) middle[3 * f + k] = (c[a + k]! + c[b + k]! + c[e + k]!) / 3
    const [ux, uy, uz] = [c[b]! - c[a]!, c[b + 1]! - c[a + 1]!, c[b + 2]! - c[a + 2]!]
    const [wx, wy, wz] = [c[e]! - c[a]!, c[e + 1]! - c[a + 1]!, c[e + 2]! - c[a + 2]!]
    const n = [uy * wz - uz * wy, uz * wx - ux * wz, ux * wy - uy * wx]
    const size = Math.hypot(n[0]!, n[1]!, n[2]!) || 1
    sum += size / 2
    upTo[f] = sum
    for (let k = 0; k < 3; k++) normal[3 * f + k] = n[k]! / size
  }
  let wall = Number.POSITIVE_INFINITY
  let at: readonly number[] = [0, 0, 0]
  let f = 0
  for (let r = 0; r < rays; r++) {
    while (f < count - 1 && upTo[f]! < (sum * (r + 0.5)) / rays) f++
    const d = [-normal[3 * f]!, -normal[3 * f + 1]!, -normal[3 * f + 2]!]
    const o = [middle[3 * f]!, middle[3 * f + 1]!, middle[3 * f + 2]!]
    let nearest = wall
    let far = -1
    for (let g = 0; g < count; g++) {
      if (g === f) continue
      const way = hit(c, t, g, o, d)
      if (way > 1e-7 && way < nearest) {
        nearest = way
        far = g
      }
    }
    // at an edge the far face leans: no wall
    const along =
      far < 0 ? 0 : d[0]! * normal[3 * far]! + d[1]! * normal[3 * far + 1]! + d[2]! * normal[3 * far + 2]!
    if (along > parallel) {
      wall = nearest
      at = o
    }
  }
  return { wall, at }
}
