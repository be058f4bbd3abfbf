/** Closed meshes of simple bodies: for tanks, foam blocks, weights and tests. Lengths in metres. */
import { type Mesh, makeMesh, type Vec3 } from './mesh.ts'

/** A box between two corners; throws RangeError when a side is not positive. */
export function boxMesh(low: Vec3, high: Vec3): Mesh {
  for (let k = 0; k < 3; k++)
    if (!(high[k]! > low[k]!))
      throw new RangeError(`box side ${'xyz'[k]}: ${low[k]} to ${high[k]}, expected low < high`)
  const points: number[] = []
  for (let i = 0; i < 8; i++)
    points.push(i & 1 ? high[0] : low[0], i & 2 ? high[1] : low[1], i & 4 ? high[2] : low[2])
  // biome-ignore format: one face a line
  return makeMesh(points, [
    0, 2, 3, 0, 3, 1,
    4, 5, 7, 4, 7, 6,
    0, 1, 5, 0, 5, 4,
    2, 6, 7, 2, 7, 3,
    0, 4, 6, 0, 6, 2,
    1, 3, 7, 1, 7, 5,
  ])
}

/** A prism along x whose section is a closed polygon y0, z0, y1, z1 … anticlockwise seen from +x (looking aft). */
function prismMesh(section: readonly number[], from: number, to: number): Mesh {
  const n = section.length / 2
  const points: number[] = []
  for (const x of [from, to]) for (let i = 0; i < n; i++) points.push(x, section[2 * i]!, section[2 * i + 1]!)
  const triangles: number[] = []
  for (let i = 0; i < n; i++) {
    const j = (i + 1) % n
    triangles.push(i, j, n + j, i, n + j, n + i)
  }
  for (let i = 1; i + 1 < n; i++) triangles.push(0, i + 1, i, n, n + i, n + i + 1)
  return makeMesh(points, triangles)
}

/** A cylinder along x, of `sides` facets, centred on the x axis. */
export function cylinderMesh(radius: number, from: number, to: number, sides: number): Mesh {
  const section: number[] = []
  for (let i = 0; i < sides; i++) {
    const a = (2 * Math.PI * i) / sides
    section.push(radius * Math.cos(a), radius * Math.sin(a))
  }
  return prismMesh(section, from, to)
}

/** A sphere of latitude and longitude bands about the origin. */
export function sphereMesh(radius: number, bands: number): Mesh {
  const around = 2 * bands
  const points: number[] = [0, 0, -radius]
  for (let i = 1; i < bands; i++) {
    const lat = -Math.PI / 2 + (Math.PI * i) / bands
    for (let j = 0; j < around; j++) {
      const a = (2 * Math.PI * j) / around
      points.push(
        radius * Math.cos(lat) * Math.cos(a),
        radius * Math.cos(lat) * Math.sin(a),
        radius * Math.sin(lat),
      )
    }
  }
  points.push(0, 0, radius)
  const top = points.length / 3 - 1
  const at = (i: number, j: number) => 1 + (i - 1) * around + (j % around)
  const triangles: number[] = []
  for (let j = 0; j < around; j++) {
    triangles.push(0, at(1, j + 1), at(1, j))
    triangles.push(top, at(bands - 1, j), at(bands - 1, j + 1))
    for (let i = 1; i + 1 < bands; i++) {
      triangles.push(at(i, j), at(i, j + 1), at(i + 1, j + 1))
      triangles.push(at(i, j), at(i + 1, j + 1), at(i + 1, j))
    }
  }
  return makeMesh(points, triangles)
}
