/** The hull that everything else takes: a closed mesh in body axes, and what a builder would point at on it. */
import type { Flag } from '../../base/answers/solved.ts'
import { flawsOf } from '../../physics/solid/closed.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import { boundsOf, type Mesh, type Vec3 } from '../../physics/solid/mesh.ts'
import { cutLines, heightsAt } from '../../physics/solid/section.ts'
import { type FewNumbers, stationsFromFew } from './few.ts'
import { lofted } from './loft.ts'
import { type LoftDensity, type Station, sectionsOf } from './stations.ts'

export interface Hull {
  /** closed, outward; x forward from the transom, y to port, z up from the keel line; m */
  mesh: Mesh
  length: number
  beam: number
  depth: number
  /** volume inside the skin, m³ */
  volume: number
  /** points along the port deck edge, stern to bow */
  edge: Vec3[]
  /** how the shape was come by, one sentence */
  from: string
  flags: Flag[]
}

/** Hull from a few numbers; RangeError naming the number out of range. */
export function hullFromFew(numbers: FewNumbers, density: LoftDensity = {}): Hull {
  const stations = stationsFromFew(numbers, density.along ?? 48)
  const rail = (numbers.railRadius ?? 0) > 0
  return hullFromStations(stations, { bottom: rail ? 10 : 6, ...density, along: 1 }, 'a few measures')
}

/** Hull from a station table; RangeError naming the station at fault. */
export function hullFromStations(
  stations: readonly Station[],
  density: LoftDensity = {},
  from = 'a station table',
): Hull {
  const mesh = lofted(sectionsOf(stations, density))
  const flags = hullFlags(mesh, { touching: false })
  return describe(mesh, from, flags)
}

/** Hull from a closed mesh already in body axes. RangeError saying where it leaks when it is not closed. */
export function hullFromMesh(mesh: Mesh, from = 'a mesh'): Hull {
  const flaws = flawsOf(mesh)
  if (flaws.length > 0) throw new RangeError(`hull.mesh: ${flaws.map((f) => f.says).join(' ')}`)
  return describe(mesh, from, [])
}

/** Hull from a mesh known to be closed and laid in body axes, as `importHull` gives it. */
export function hullFromClosed(mesh: Mesh, from: string): Hull {
  return describe(mesh, from, [])
}

function hullFlags(mesh: Mesh, options: { touching: boolean }): Flag[] {
  return flawsOf(mesh, options).map((f) => ({ code: `mesh ${f.kind}`, text: f.says, path: 'hull' }))
}

function describe(mesh: Mesh, from: string, flags: Flag[]): Hull {
  const { low, high } = boundsOf(mesh)
  return {
    mesh,
    length: high[0] - low[0],
    beam: high[1] - low[1],
    depth: high[2] - low[2],
    volume: solidProperties(mesh).volume,
    edge: deckEdge(mesh, 40),
    from,
    flags,
  }
}

/** The highest of the widest points of each section: where the deck meets the side, port, stern to bow. */
function deckEdge(mesh: Mesh, count: number): Vec3[] {
  const { low, high } = boundsOf(mesh)
  const inset = 1e-4 * (high[0] - low[0])
  const edge: Vec3[] = []
  for (let i = 0; i < count; i++) {
    const x = low[0] + inset + ((high[0] - low[0] - 2 * inset) * i) / (count - 1)
    const lines = cutLines(mesh, [1, 0, 0], x)
    let widest = Number.NEGATIVE_INFINITY
    for (let k = 1; k < lines.length; k += 3) widest = Math.max(widest, lines[k]!)
    let top = Number.NEGATIVE_INFINITY
    for (let k = 1; k < lines.length; k += 3)
      if (lines[k]! > widest - 1e-3 * (high[1] - low[1])) top = Math.max(top, lines[k + 1]!)
    if (Number.isFinite(top)) edge.push([x, widest, top])
  }
  return edge
}

/** Height of the deck (the topmost surface) at a place, m; undefined off the hull. */
export function deckHeight(mesh: Mesh, x: number, y: number): number | undefined {
  return heightsAt(mesh, x, y).at(-1)
}
