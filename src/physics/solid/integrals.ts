/**
 * Exact volume, area and moments of a closed triangle mesh.
 * Source: Gauss's theorem on the tetrahedra from the origin to each face, the integrals of S. Lien and
 * J. T. Kajiya, "A symbolic method for calculating the integral properties of arbitrary nonconvex polyhedra",
 * IEEE Computer Graphics and Applications 4(10), 1984; derived again here and tested on boxes.
 */
import { boundsOf, type Mesh, type Vec3 } from './mesh.ts'

export interface SolidProperties {
  /** m³; negative when the mesh is inside out */
  volume: number
  /** m */
  centroid: [number, number, number]
  /** m² */
  area: number
  /** sum of the faces' area vectors, m²; zero when the mesh is closed */
  openArea: [number, number, number]
  /** ∫ x_i x_j dV about the centroid, m⁵: xx, xy, xz, yy, yz, zz */
  second: Float64Array
}

/** Volume, centroid, area and second moments of a closed mesh. The origin is moved into the mesh so that far meshes lose nothing. */
export function solidProperties(mesh: Mesh): SolidProperties {
  const { low, high } = boundsOf(mesh)
  const o: Vec3 = [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2]
  const p = mesh.points
  const t = mesh.triangles
  let v = 0
  let mx = 0
  let my = 0
  let mz = 0
  let area = 0
  let sx = 0
  let sy = 0
  let sz = 0
  const c2 = new Float64Array(6)
  for (let i = 0; i < t.length; i += 3) {
    const a = 3 * t[i]!
    const b = 3 * t[i + 1]!
    const c = 3 * t[i + 2]!
    const ax = p[a]! - o[0]
    const ay = p[a + 1]! - o[1]
    const az = p[a + 2]! - o[2]
    const bx = p[b]! - o[0]
    const by = p[b + 1]! - o[1]
    const bz = p[b + 2]! - o[2]
    const cx = p[c]! - o[0]
    const cy = p[c + 1]! - o[1]
    const cz = p[c + 2]! - o[2]
    // six times the signed volume of the tetrahedron origin-a-b-c
    const d = ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)
    const x = ax + bx + cx
    const y = ay + by + cy
    const z = az + bz + cz
    v += d / 6
    mx += (d / 24) * x
    my += (d / 24) * y
    mz += (d / 24) * z
    const e = d / 120
    c2[0]! += e * (x * x + ax * ax + bx * bx + cx * cx)
    c2[1]! += e * (x * y + ax * ay + bx * by + cx * cy)
    c2[2]! += e * (x * z + ax * az + bx * bz + cx * cz)
    c2[3]! += e * (y * y + ay * ay + by * by + cy * cy)
    c2[4]! += e * (y * z + ay * az + by * bz + cy * cz)
    c2[5]! += e * (z * z + az * az + bz * bz + cz * cz)
    // the face's area vector
    const ux = bx - ax
    const uy = by - ay
    const uz = bz - az
    const wx = cx - ax
    const wy = cy - ay
    const wz = cz - az
    const nx = (uy * wz - uz * wy) / 2
    const ny = (uz * wx - ux * wz) / 2
    const nz = (ux * wy - uy * wx) / 2
    area += Math.sqrt(nx * nx + ny * ny + nz * nz)
    sx += nx
    sy += ny
    sz += nz
  }
  const gx = mx / v
  const gy = my / v
  const gz = mz / v
  // parallel axes: from the box centre to the centroid
  c2[0]! -= v * gx * gx
  c2[1]! -= v * gx * gy
  c2[2]! -= v * gx * gz
  c2[3]! -= v * gy * gy
  c2[4]! -= v * gy * gz
  c2[5]! -= v * gz * gz
  return {
    volume: v,
    centroid: [gx + o[0], gy + o[1], gz + o[2]],
    area,
    openArea: [sx, sy, sz],
    second: c2,
  }
}
