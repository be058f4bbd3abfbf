/**
 * A hull as stations: half sections at increasing x, each three runs of points (bottom, side, deck).
 * Lengths in metres; x forward from the transom, y half-breadth, z up from the keel line.
 */
import { cubicAt, linspace, pchip } from '../../base/numerics/interpolate.ts'

export type Point2 = readonly [y: number, z: number]

/** One half section from the keel round to the deck's middle. */
export interface Station {
  x: number
  /** keel (y = 0) to chine */
  bottom: readonly Point2[]
  /** chine to deck edge; the chine may be left out */
  side: readonly Point2[]
  /** deck edge to the deck's middle (y = 0); empty for a flat deck */
  deck?: readonly Point2[]
}

/** Half section ready for lofting: the same count of points at every x, first and last on the centreline. */
export interface HalfSection {
  x: number
  points: Point2[]
}

/** How many pieces each run is cut into, and how many sections along the hull. */
export interface LoftDensity {
  bottom?: number
  side?: number
  deck?: number
  along?: number
}

/** Trouble with a station table, the first found; undefined when there is none. */
export function stationTrouble(stations: readonly Station[]): string | undefined {
  if (stations.length < 2) return `stations: ${stations.length} given, expected 2 or more`
  for (const [i, s] of stations.entries()) {
    const at = `stations[${i}] (x = ${s.x} m)`
    if (!Number.isFinite(s.x)) return `${at}: x is not a number`
    const before = stations[i - 1]
    if (before && !(s.x > before.x))
      return `${at}: stations out of order, x must be above the one before it (${before.x} m)`
    if (s.bottom.length < 2)
      return `${at}.bottom: ${s.bottom.length} points, expected 2 or more (keel and chine)`
    if (s.side.length < 1) return `${at}.side: no points, expected the deck edge at least`
    for (const [y, z] of [...s.bottom, ...s.side, ...(s.deck ?? [])]) {
      if (!(Number.isFinite(y) && Number.isFinite(z))) return `${at}: (${y}, ${z}) is not a point`
      if (y < 0) return `${at}: half-breadth ${y} m is below 0; give one side only`
    }
    if (s.bottom[0]![0] !== 0) return `${at}.bottom[0]: the keel point must be on the centreline (y = 0)`
    const edge = s.side.at(-1)!
    const chine = s.bottom.at(-1)!
    if (!(edge[1] >= chine[1]))
      return `${at}: deck edge (z = ${edge[1]} m) below the chine (z = ${chine[1]} m)`
  }
  return undefined
}

/** Half sections of a station table, resampled and interpolated along the hull by monotone cubics, never across a corner. RangeError on a bad table. */
export function sectionsOf(stations: readonly Station[], density: LoftDensity = {}): HalfSection[] {
  const trouble = stationTrouble(stations)
  if (trouble !== undefined) throw new RangeError(trouble)
  const rounded = stations.map((s) => evenPoints(s, density))
  const xs = stations.map((s) => s.x)
  const count = rounded[0]!.length
  // one curve in y and one in z for each point round the section
  const ys = Array.from({ length: count }, (_, k) =>
    pchip(
      xs,
      rounded.map((r) => r[k]![0]),
    ),
  )
  const zs = Array.from({ length: count }, (_, k) =>
    pchip(
      xs,
      rounded.map((r) => r[k]![1]),
    ),
  )
  return placesAlong(xs, density.along ?? 44).map((x) => ({
    x,
    points: ys.map((c, k): Point2 => [cubicAt(c, x), cubicAt(zs[k]!, x)]),
  }))
}

/** The stations' own places and about `along` more between them. */
function placesAlong(xs: readonly number[], along: number): number[] {
  const out: number[] = []
  const step = (xs.at(-1)! - xs[0]!) / along
  for (let i = 0; i + 1 < xs.length; i++) {
    const pieces = Math.max(1, Math.round((xs[i + 1]! - xs[i]!) / step))
    out.push(...linspace(xs[i]!, xs[i + 1]!, pieces + 1).slice(0, -1))
  }
  out.push(xs.at(-1)!)
  return out
}

function evenPoints(s: Station, density: LoftDensity): Point2[] {
  const chine = s.bottom.at(-1)!
  const edge = s.side.at(-1)!
  const side = same(s.side[0]!, chine) ? s.side : [chine, ...s.side]
  const given = s.deck ?? []
  const deck = [...(given.length > 0 && same(given[0]!, edge) ? [] : [edge]), ...given]
  if (deck.at(-1)![0] !== 0) deck.push([0, deck.at(-1)![1]])
  const pieces = { bottom: density.bottom ?? 6, side: density.side ?? 4 }
  // no chine: one run from keel to deck edge takes the pieces of both
  const skin =
    side.length < 2
      ? alongRun(s.bottom, pieces.bottom + pieces.side)
      : [...alongRun(s.bottom, pieces.bottom).slice(0, -1), ...alongRun(side, pieces.side)]
  return [...skin.slice(0, -1), ...alongRun(deck, density.deck ?? 4)]
}

const same = (a: Point2, b: Point2): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-9

/** `pieces` + 1 points evenly spaced along a run by arc length. */
function alongRun(run: readonly Point2[], pieces: number): Point2[] {
  const reach = [0]
  for (let i = 1; i < run.length; i++)
    reach.push(reach[i - 1]! + Math.hypot(run[i]![0] - run[i - 1]![0], run[i]![1] - run[i - 1]![1]))
  const whole = reach.at(-1)!
  const out: Point2[] = [run[0]!]
  let k = 0
  for (let i = 1; i < pieces; i++) {
    const want = (whole * i) / pieces
    while (k + 2 < reach.length && reach[k + 1]! < want) k++
    const gap = reach[k + 1]! - reach[k]!
    const along = gap > 0 ? (want - reach[k]!) / gap : 0
    const a = run[k]!
    const b = run[k + 1]!
    out.push([a[0] + along * (b[0] - a[0]), a[1] + along * (b[1] - a[1])])
  }
  out.push(run.at(-1)!)
  return out
}

/**
 * A station from one list of points, keel to deck middle: the deck edge is the widest point (the highest of several), the chine the
 * sharpest corner below it, of at least 10° where many points are given: a round bilge has none. With three points the middle one is both.
 */
export function stationFromPoints(x: number, points: readonly Point2[]): Station {
  if (points.length < 3)
    throw new RangeError(`station at ${x} m: ${points.length} points, expected 3 or more`)
  const widest = Math.max(...points.map((p) => p[0]))
  let edge = points.length - 2
  for (let i = points.length - 1; i > 0; i--)
    if (points[i]![0] > widest - 1e-9) {
      edge = i
      break
    }
  edge = Math.max(1, edge)
  let chine = edge
  // one or two points between keel and edge were measured because something turns there, however little
  let sharpest = edge <= 3 ? 1e-6 : 0.17
  for (let i = 1; i < edge; i++) {
    const a = points[i - 1]!
    const b = points[i]!
    const c = points[i + 1]!
    const turn = Math.abs(
      Math.atan2(
        (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]),
        (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]),
      ),
    )
    if (turn > sharpest) {
      sharpest = turn
      chine = i
    }
  }
  return {
    x,
    bottom: points.slice(0, chine + 1),
    side: points.slice(Math.min(chine + 1, edge), edge + 1),
    deck: points.slice(edge),
  }
}
