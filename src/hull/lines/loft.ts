/** Half sections to a closed mesh: skin, its mirror image, and the two end caps. */
import { solidProperties } from '../../physics/solid/integrals.ts'
import { flipped, type Mesh, makeMesh } from '../../physics/solid/mesh.ts'
import type { HalfSection } from './stations.ts'

/** half-breadths below this share the centreline point, m */
const onCentre = 1e-9

/**
 * Closed mesh through half sections of equal point count at increasing x. Each end is closed with strips from a point to its
 * mirror image, so any section shape is capped exactly. RangeError when counts differ or x does not increase.
 */
export function lofted(sections: readonly HalfSection[]): Mesh {
  const rows = sections.length
  const cols = sections[0]?.points.length ?? 0
  if (rows < 2 || cols < 3)
    throw new RangeError(`loft: ${rows} sections of ${cols} points, expected 2 of 3 or more`)
  const points: number[] = []
  const port = new Int32Array(rows * cols)
  const starboard = new Int32Array(rows * cols)
  for (const [i, s] of sections.entries()) {
    if (s.points.length !== cols)
      throw new RangeError(`loft: section ${i} has ${s.points.length} points, expected ${cols}`)
    if (i > 0 && !(s.x > sections[i - 1]!.x))
      throw new RangeError(`loft: section ${i} at x = ${s.x} m, expected above ${sections[i - 1]!.x} m`)
    for (const [k, [y, z]] of s.points.entries()) {
      const centre = y < onCentre || k === 0 || k === cols - 1
      port[i * cols + k] = points.length / 3
      points.push(s.x, centre ? 0 : y, z)
      if (!centre) points.push(s.x, -y, z)
      starboard[i * cols + k] = points.length / 3 - 1
    }
  }
  const triangles: number[] = []
  const face = (a: number, b: number, c: number) => {
    if (a !== b && b !== c && c !== a) triangles.push(a, b, c)
  }
  for (let i = 0; i + 1 < rows; i++)
    for (let k = 0; k + 1 < cols; k++) {
      const at = i * cols + k
      for (const [side, turn] of [
        [port, false],
        [starboard, true],
      ] as const) {
        const corners = [side[at]!, side[at + cols]!, side[at + cols + 1]!, side[at + 1]!] as const
        const [a, b, c, d] = turn ? ([corners[0], corners[3], corners[2], corners[1]] as const) : corners
        // the shorter diagonal; a tie goes the same way on both sides because |ac| and |bd| are the same pair
        const ac = gap(points, a, c) <= gap(points, b, d)
        if (ac) {
          face(a, b, c)
          face(a, c, d)
        } else {
          face(a, b, d)
          face(b, c, d)
        }
      }
    }
  for (const [row, turn] of [
    [0, false],
    [rows - 1, true],
  ] as const)
    for (let k = 0; k + 1 < cols; k++) {
      const a = port[row * cols + k]!
      const b = port[row * cols + k + 1]!
      const c = starboard[row * cols + k + 1]!
      const d = starboard[row * cols + k]!
      if (turn) {
        face(a, c, b)
        face(a, d, c)
      } else {
        face(a, b, c)
        face(a, c, d)
      }
    }
  const mesh = makeMesh(points, triangles)
  return solidProperties(mesh).volume < 0 ? flipped(mesh) : mesh
}

function gap(p: readonly number[], i: number, j: number): number {
  return (
    (p[3 * i]! - p[3 * j]!) ** 2 + (p[3 * i + 1]! - p[3 * j + 1]!) ** 2 + (p[3 * i + 2]! - p[3 * j + 2]!) ** 2
  )
}
