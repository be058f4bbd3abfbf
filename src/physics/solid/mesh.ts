/** Closed triangle meshes: flat typed arrays, metres, outward faces anticlockwise seen from outside. */

export type Vec3 = readonly [number, number, number]

export interface Mesh {
  /** x0, y0, z0, x1 … */
  points: Float64Array
  /** three point numbers a triangle */
  triangles: Uint32Array
}

/** Mesh from lists of points and triangles; throws RangeError on an index out of range or a number that is not finite. */
export function makeMesh(points: ArrayLike<number>, triangles: ArrayLike<number>): Mesh {
  if (points.length % 3 !== 0)
    throw new RangeError(`mesh.points: ${points.length} numbers, expected a multiple of 3`)
  if (triangles.length % 3 !== 0)
    throw new RangeError(`mesh.triangles: ${triangles.length} numbers, expected a multiple of 3`)
  const mesh = { points: Float64Array.from(points), triangles: Uint32Array.from(triangles) }
  const count = points.length / 3
  for (let i = 0; i < mesh.points.length; i++)
    if (!Number.isFinite(mesh.points[i]!))
      throw new RangeError(`mesh.points[${i}]: ${mesh.points[i]}, expected a finite number`)
  for (let i = 0; i < triangles.length; i++) {
    const v = triangles[i]!
    if (!(v >= 0 && v < count) || v !== Math.floor(v))
      throw new RangeError(`mesh.triangles[${i}]: ${v}, expected 0 to ${count - 1}`)
  }
  return mesh
}

/** The point numbered i, m. */
export function pointOf(mesh: Mesh, i: number): [number, number, number] {
  return [mesh.points[3 * i]!, mesh.points[3 * i + 1]!, mesh.points[3 * i + 2]!]
}

/** Smallest box with sides along the axes, m; throws on an empty mesh. */
export function boundsOf(mesh: Mesh): { low: [number, number, number]; high: [number, number, number] } {
  const p = mesh.points
  if (p.length === 0) throw new RangeError('mesh.points: 0 points, expected at least 4')
  const low: [number, number, number] = [Infinity, Infinity, Infinity]
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity]
  for (let i = 0; i < p.length; i++) {
    const k = i % 3
    if (p[i]! < low[k]!) low[k] = p[i]!
    if (p[i]! > high[k]!) high[k] = p[i]!
  }
  return { low, high }
}

/** Longest side of the bounding box, m. */
export function sizeOf(mesh: Mesh): number {
  const { low, high } = boundsOf(mesh)
  return Math.max(high[0] - low[0], high[1] - low[1], high[2] - low[2])
}

/** The mesh with every point mapped; `turns` true reverses the faces, for maps that mirror. */
export function mapPoints(mesh: Mesh, map: (x: number, y: number, z: number) => Vec3, turns = false): Mesh {
  const points = new Float64Array(mesh.points.length)
  for (let i = 0; i < points.length; i += 3)
    points.set(map(mesh.points[i]!, mesh.points[i + 1]!, mesh.points[i + 2]!), i)
  return { points, triangles: turns ? reversedFaces(mesh.triangles) : mesh.triangles.slice() }
}

/** The mesh moved by d, m. */
export function moved(mesh: Mesh, d: Vec3): Mesh {
  return mapPoints(mesh, (x, y, z) => [x + d[0], y + d[1], z + d[2]])
}

/** Port for starboard. */
export function mirroredY(mesh: Mesh): Mesh {
  return mapPoints(mesh, (x, y, z) => [x, -y, z], true)
}

/** Inside out. */
export function flipped(mesh: Mesh): Mesh {
  return { points: mesh.points.slice(), triangles: reversedFaces(mesh.triangles) }
}

/** Several meshes in one, points not shared. */
export function joined(meshes: readonly Mesh[]): Mesh {
  const points = new Float64Array(meshes.reduce((n, m) => n + m.points.length, 0))
  const triangles = new Uint32Array(meshes.reduce((n, m) => n + m.triangles.length, 0))
  let p = 0
  let t = 0
  for (const m of meshes) {
    points.set(m.points, p)
    for (let i = 0; i < m.triangles.length; i++) triangles[t++] = m.triangles[i]! + p / 3
    p += m.points.length
  }
  return { points, triangles }
}

function reversedFaces(triangles: Uint32Array): Uint32Array {
  const out = new Uint32Array(triangles.length)
  for (let i = 0; i < out.length; i += 3) {
    out[i] = triangles[i]!
    out[i + 1] = triangles[i + 2]!
    out[i + 2] = triangles[i + 1]!
  }
  return out
}
