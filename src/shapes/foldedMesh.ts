/** A strip rolled up from its own drawing, as a closed thin shell for a picture: half the sheet's thickness to either side of the middle. */
import type { SolidMesh } from '../base/answers/madePart.ts'
import { cross, dot, minus, unit, type Vec } from './placing.ts'
import { refold } from './refold.ts'
import { type Strip, spaceAt } from './strip.ts'

/** Outward normals at the rulings, each the mean of its two facets'. */
function normalsOf(strip: Strip): Vec[] {
  const facets = Array.from({ length: strip.count - 1 }, (_, i): Vec => {
    const [a, b] = [spaceAt(strip, i, 'near'), spaceAt(strip, i, 'far')]
    const [c, d] = [spaceAt(strip, i + 1, 'near'), spaceAt(strip, i + 1, 'far')]
    return unit(cross(minus(d, a), minus(b, c)))
  })
  return Array.from({ length: strip.count }, (_, i): Vec => {
    const [p, q] = [facets[Math.max(0, i - 1)]!, facets[Math.min(facets.length - 1, i)]!]
    const sum: Vec = [p[0] + q[0], p[1] + q[1], p[2] + q[2]]
    return dot(sum, sum) > 1e-12 ? unit(sum) : q
  })
}

/** The shell of a pattern, thickness in m; where the drawing is wrong, so is the shell. */
export function foldedMesh(strip: Strip, thickness: number): SolidMesh {
  const folded = refold(strip)
  const normals = normalsOf(folded)
  const n = folded.count
  const corners = new Float64Array(12 * n)
  for (let i = 0; i < n; i++)
    for (const [k, rim] of (['near', 'far'] as const).entries()) {
      const p = spaceAt(folded, i, rim)
      for (const side of [0, 1])
        for (let axis = 0; axis < 3; axis++)
          corners[12 * i + 6 * k + 3 * side + axis] =
            p[axis]! + (side === 0 ? -0.5 : 0.5) * thickness * normals[i]![axis]!
    }
  // corner numbers of a ruling: near inside, near outside, far inside, far outside
  const at = (i: number, far: 0 | 1, out: 0 | 1) => 4 * i + 2 * far + out
  const triangles: number[] = []
  const face = (a: number, b: number, c: number, d: number) => triangles.push(a, b, c, a, c, d)
  for (let i = 0; i + 1 < n; i++) {
    face(at(i, 0, 1), at(i + 1, 0, 1), at(i + 1, 1, 1), at(i, 1, 1))
    face(at(i, 0, 0), at(i, 1, 0), at(i + 1, 1, 0), at(i + 1, 0, 0))
    face(at(i, 0, 0), at(i + 1, 0, 0), at(i + 1, 0, 1), at(i, 0, 1))
    face(at(i, 1, 1), at(i + 1, 1, 1), at(i + 1, 1, 0), at(i, 1, 0))
  }
  face(at(0, 0, 0), at(0, 0, 1), at(0, 1, 1), at(0, 1, 0))
  const last = n - 1
  face(at(last, 0, 1), at(last, 0, 0), at(last, 1, 0), at(last, 1, 1))
  return { corners, triangles: Uint32Array.from(triangles) }
}
