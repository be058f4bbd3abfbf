/**
 * Measured stations to the hull the drag model takes: each section reduced to keel, chine and deck edge, joined along the hull by
 * monotone cubics, and the few numbers read off them. Derived here.
 */
import { cubicAt, pchip } from '../../base/numerics/interpolate.ts'
import { type Stations, stationCount } from './dragForm.ts'
import type { HullSpec } from './hullSpec.ts'

/** One half section: points (out, up) from the keel out and up to the deck, m; `at` m forward of the transom. */
export interface MeasuredStation {
  at: number
  points: readonly (readonly [out: number, up: number])[]
}

interface Corners {
  keel: number
  chine: readonly [number, number]
  edge: readonly [number, number]
}

/** Keel, chine and deck edge of a section: the edge is the highest of its widest points, the chine the sharpest turn below it. */
function cornersOf(points: MeasuredStation['points']): Corners {
  const widest = Math.max(...points.map(([y]) => y))
  let edgeAt = 0
  points.forEach(([y, z], i) => {
    const best = points[edgeAt]!
    if (y >= 0.98 * widest && (best[0] < 0.98 * widest || z > best[1])) edgeAt = i
  })
  const angle = (a: readonly [number, number], b: readonly [number, number]) =>
    Math.atan2(b[1] - a[1], b[0] - a[0])
  let sharpest = 0
  let chineAt = 0
  for (let i = 1; i < edgeAt; i++) {
    const turn = angle(points[i]!, points[i + 1]!) - angle(points[i - 1]!, points[i]!)
    if (turn > sharpest) {
      sharpest = turn
      chineAt = i
    }
  }
  const edge = points[edgeAt]!
  // no corner on the way: the section is a plain V, chine and edge nearly one
  const chine = chineAt > 0 ? points[chineAt]! : ([edge[0], edge[1] - 1e-3] as const)
  return { keel: points[0]![1], chine, edge: [edge[0], Math.max(edge[1], chine[1] + 1e-3)] }
}

/** Lines and few numbers of a measured hull; `known` fills what stations do not tell (fins, intake, roughness). RangeError with fewer than 3 stations or out of order. */
export function specFromStations(
  measured: readonly MeasuredStation[],
  known: Partial<HullSpec> = {},
): HullSpec {
  if (measured.length < 3) throw new RangeError(`hull.stations: ${measured.length} given, expected 3 or more`)
  const first = measured[0]!.at
  const x = measured.map((s) => s.at - first)
  // heights from the lowest point of the keel, whatever line they were measured from
  const base = Math.min(...measured.map((s) => s.points[0]![1]))
  const corners = measured.map((s) => cornersOf(s.points.map(([y, z]) => [y, z - base] as const)))
  const along = (f: (c: Corners) => number) => pchip(x, corners.map(f))
  const curves = {
    half: along((c) => Math.max(1e-3, c.chine[0])),
    edge: along((c) => Math.max(1e-3, c.edge[0])),
    keel: along((c) => c.keel),
    chine: along((c) => Math.max(c.keel, c.chine[1])),
    deck: along((c) => c.edge[1]),
  }
  const length = x[x.length - 1]!
  const places = Float64Array.from({ length: stationCount }, (_, i) => (length * i) / (stationCount - 1))
  const table = (name: keyof typeof curves) => places.map((at) => cubicAt(curves[name], at))
  const stations: Stations = {
    x: places,
    half: table('half'),
    edge: table('edge'),
    keel: table('keel'),
    chine: table('chine'),
    deck: table('deck'),
  }
  const widestAt = stations.half.indexOf(Math.max(...stations.half))
  const low = Math.min(...stations.keel)
  const deadriseOf = (at: number) =>
    Math.atan2(cubicAt(curves.chine, at) - cubicAt(curves.keel, at), cubicAt(curves.half, at))
  const noseRise = cubicAt(curves.keel, length) - low
  const sternRise = cubicAt(curves.keel, 0) - low
  return {
    ...known,
    length,
    chineBeam: 2 * stations.half[widestAt]!,
    beam: 2 * Math.max(...stations.edge),
    deadrise: deadriseOf(0),
    midDeadrise: deadriseOf(0.5 * length),
    noseDeadrise: deadriseOf(0.95 * length),
    depth: stations.deck[widestAt]! - stations.keel[widestAt]!,
    noseRise,
    noseRiseFrom: rockerStart(stations, low, noseRise),
    sternRise,
    widestAt: places[widestAt]!,
    tailWidth: stations.half[0]! / stations.half[widestAt]!,
    stations,
  }
}

/** Where a parabola through the keel's quarter rise and its end at the stem leaves the straight run. */
function rockerStart(s: Stations, low: number, rise: number): number {
  const length = s.x[s.x.length - 1]!
  if (rise < 1e-3) return length
  let i = s.x.length - 1
  while (i > 0 && s.keel[i]! - low > 0.25 * rise) i--
  return Math.max(0.3 * length, 2 * s.x[i]! - length)
}
