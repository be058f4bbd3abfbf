/** A hull mesh read back as stations: for the drag methods' few numbers, and for a lighter mesh of the same shape. */

import { halfOutlines, thinned } from '../../physics/solid/halfOutline.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import { boundsOf, type Mesh } from '../../physics/solid/mesh.ts'
import { type Hull, hullFromStations } from '../lines/hullBody.ts'
import { type LoftDensity, stationFromPoints } from '../lines/stations.ts'

/** Stations of a mesh, points out from the centreline and up from its lowest point, m; corners kept, runs between them thinned. */
export function stationsOfMesh(
  mesh: Mesh,
  count: number,
): { at: number; points: (readonly [number, number])[] }[] | undefined {
  const outlines = halfOutlines(mesh, count)
  if (outlines === undefined) return undefined
  const { low, high } = boundsOf(mesh)
  const tolerance = 2e-3 * (high[1] - low[1])
  return outlines.map(({ x, points }, i) => ({
    at: endsOf(mesh, i, count) ?? x,
    points: thinned(points, tolerance),
  }))
}

/** The outermost sections stand in for the ends they were cut just inside of: where those are, m; undefined between. */
function endsOf(mesh: Mesh, i: number, count: number): number | undefined {
  const { low, high } = boundsOf(mesh)
  return i === 0 ? low[0] : i === count - 1 ? high[0] : undefined
}

/** more triangles than this and the findings, which settle the hull some hundreds of times, look for a lighter one */
const heavy = 1200

/** sections along and pieces round a half section, lightest first; a round bilge needs the second */
const tries: readonly { count: number; density: LoftDensity }[] = [
  { count: 23, density: { bottom: 4, side: 3, deck: 3, along: 1 } },
  { count: 33, density: { bottom: 9, side: 4, deck: 4, along: 1 } },
]

/**
 * The same shape with fewer triangles, for findings: lofted through its own sections. The hull itself where it is light already, lies
 * unlike on its two sides, has sections that are not one ring, or would change in volume or centre by more than half a part in a hundred.
 */
export function lighter(hull: Hull): Hull {
  if (hull.mesh.triangles.length / 3 <= heavy) return hull
  const own = solidProperties(hull.mesh)
  if (Math.abs(own.centroid[1]) > 2e-3 * hull.beam) return hull
  for (const { count, density } of tries) {
    const made = through(hull, count, density)
    if (made === undefined || made.mesh.triangles.length >= hull.mesh.triangles.length) continue
    const got = solidProperties(made.mesh)
    const same =
      Math.abs(got.volume - own.volume) < 5e-3 * own.volume &&
      Math.abs(got.centroid[0] - own.centroid[0]) < 5e-3 * hull.length &&
      Math.abs(got.centroid[2] - own.centroid[2]) < 5e-3 * hull.depth
    if (same) return { ...made, flags: hull.flags, edge: hull.edge }
  }
  return hull
}

/** Lofted through so many of the hull's own sections; undefined where they make no station table. */
function through(hull: Hull, count: number, density: LoftDensity): Hull | undefined {
  const outlines = halfOutlines(hull.mesh, count)
  if (outlines === undefined) return undefined
  const tolerance = 1e-4 * hull.beam
  try {
    const stations = outlines.map((o, i) =>
      stationFromPoints(endsOf(hull.mesh, i, count) ?? o.x, thinned(o.points, tolerance)),
    )
    return hullFromStations(stations, density, hull.from)
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}
