/**
 * A hull from a few tape-measure numbers: the lines of a small board or sled as short formulas.
 * Source: derived for this project (plan curve a generalised ellipse, keel rocker parabolas, deadrise linear between three places);
 * the measures are those a builder takes with a straight edge and a rule.
 */
import type { Flag } from '../../base/answers/solved.ts'
import { linearAt } from '../../base/numerics/interpolate.ts'
import type { Point2, Station } from './stations.ts'

/** SI; angles rad. What is left out is assumed as said. */
export interface FewNumbers {
  length: number
  /** deck, widest */
  beam: number
  /** widest distance between the chines; the beam when left out */
  chineBeam?: number
  /** keel to deck edge at mid-length */
  depth: number
  /** deadrise at the transom; amidships (as aft) and at the stem (as amidships) */
  deadrise?: number
  midDeadrise?: number
  noseDeadrise?: number
  /** rise of the keel at the stem, and where it starts (0.65 of the length) */
  noseRise?: number
  noseRiseFrom?: number
  /** rise of the keel at the transom, and over what length (a quarter of the length) */
  sternRise?: number
  sternRiseOver?: number
  /** widest station (0.45 of the length) */
  widestAt?: number
  /** half-breadth at the transom over the widest (0.92) */
  tailWidth?: number
  /** exponents of the nose plan (1 − s^p)^(1/q) (2.5, 2) */
  noseExponents?: readonly [number, number]
  /** radius of the bottom's edge (0) */
  railRadius?: number
  /** rise of the deck's middle above its edge (0) */
  deckCamber?: number
  /** rise of the deck edge at the stem (0) */
  noseSheer?: number
}

/** least half-breadth of the nose, m: keeps the stem a real edge */
const stemHalf = 1e-3

/** What is odd about the numbers; an empty list when nothing is. `stop` ones are thrown by `stationsFromFew`. */
export function fewTrouble(n: FewNumbers): Flag[] {
  const flags: Flag[] = []
  const need = (path: keyof FewNumbers, ok: boolean, range: string) => {
    if (!ok)
      flags.push({
        code: 'range',
        text: `hull.${path}: ${String(n[path])}, expected ${range}`,
        path: `hull.${path}`,
      })
  }
  need('length', n.length > 0.3 && n.length < 30, '0.3 to 30 m')
  need('beam', n.beam > 0.05 && n.beam <= n.length, `0.05 m to the length (${n.length} m)`)
  need('depth', n.depth > 0.01 && n.depth <= n.length, `0.01 m to the length (${n.length} m)`)
  const within = (path: keyof FewNumbers, low: number, high: number, range: string) => {
    const v = n[path]
    if (v !== undefined) need(path, (v as number) >= low && (v as number) <= high, range)
  }
  within('chineBeam', 0.01, 1.5 * n.beam, '0.01 m to 1.5 times the beam')
  for (const a of ['deadrise', 'midDeadrise', 'noseDeadrise'] as const) within(a, 0, 1.3, '0 to 75 deg')
  within('noseRise', 0, 2 * n.depth, '0 to twice the depth')
  within('noseRiseFrom', 0, 0.99 * n.length, '0 to the length')
  within('sternRise', 0, n.depth, '0 to the depth')
  within('sternRiseOver', 0, n.length, '0 to the length')
  within('widestAt', 0, 0.99 * n.length, '0 to the length')
  within('tailWidth', 0.05, 1, '0.05 to 1')
  within('railRadius', 0, 0.5 * n.depth, '0 to half the depth')
  within('deckCamber', -0.2, 0.5, '-0.2 to 0.5 m')
  within('noseSheer', 0, 2, '0 to 2 m')
  return flags
}

/** Stations of the hull, close together at the nose. RangeError naming the first number out of range. */
export function stationsFromFew(n: FewNumbers, count = 48): Station[] {
  const trouble = fewTrouble(n)[0]
  if (trouble !== undefined) throw new RangeError(trouble.text)
  const lines = linesOf(n)
  return Array.from({ length: count + 1 }, (_, i) => {
    // spacing shrinks towards the stem, where the plan turns fastest
    const s = i / count
    return stationAt(n, lines, n.length * (1 - (1 - s) ** 1.6))
  })
}

interface Lines {
  half(x: number): number
  keel(x: number): number
  deadrise(x: number): number
  sheer(x: number): number
}

function linesOf(n: FewNumbers): Lines {
  const L = n.length
  const widest = n.widestAt ?? 0.45 * L
  const full = (n.chineBeam ?? n.beam) / 2
  const tail = full * (n.tailWidth ?? 0.92)
  const [p, q] = n.noseExponents ?? [2.5, 2]
  const rise = n.noseRise ?? 0
  const from = n.noseRiseFrom ?? 0.65 * L
  const kick = n.sternRise ?? 0
  const reach = n.sternRiseOver ?? 0.25 * L
  const aft = n.deadrise ?? 0
  const mid = n.midDeadrise ?? aft
  const nose = n.noseDeadrise ?? mid
  return {
    half(x) {
      if (x <= widest) {
        // quadratic with its top at the widest station, so that the plan has no corner there
        const s = widest > 0 ? 1 - x / widest : 0
        return full - (full - tail) * s * s
      }
      const s = Math.min(1, (x - widest) / (L - widest))
      return Math.max(stemHalf, full * Math.max(0, 1 - s ** p) ** (1 / q))
    },
    keel: (x) =>
      (x > from ? rise * ((x - from) / (L - from)) ** 2 : 0) +
      (x < reach ? kick * ((reach - x) / reach) ** 2 : 0),
    deadrise: (x) => linearAt([0, L / 2, L], [aft, mid, nose], x),
    sheer: (x) => n.depth + (n.noseSheer ?? 0) * Math.max(0, (2 * x) / L - 1) ** 2,
  }
}

function stationAt(n: FewNumbers, lines: Lines, x: number): Station {
  const half = lines.half(x)
  const zKeel = lines.keel(x)
  const chine: Point2 = [half, zKeel + half * Math.tan(lines.deadrise(x))]
  const edge: Point2 = [(half * n.beam) / (n.chineBeam ?? n.beam), Math.max(lines.sheer(x), chine[1] + 1e-3)]
  const keel: Point2 = [0, zKeel]
  // camber shrinks with the breadth, as a deck bent over one mould does
  const camber = (n.deckCamber ?? 0) * ((2 * edge[0]) / n.beam) ** 2
  const deck: Point2[] = camber === 0 ? [[0, edge[1]]] : arch(edge, camber)
  const r = n.railRadius ?? 0
  if (r === 0) return { x, bottom: [keel, chine], side: [edge], deck }
  const round = rounded(keel, chine, edge, r)
  return { x, bottom: [keel, ...round], side: [edge], deck }
}

/** A parabola from the edge to the middle of the deck. */
function arch(edge: Point2, camber: number): Point2[] {
  return [0.75, 0.5, 0.25, 0].map((u): Point2 => [u * edge[0], edge[1] + camber * (1 - u * u)])
}

/** The chine rounded to a radius, as points from the bottom's tangent to the side's; the radius shrinks where a face is too short. */
function rounded(keel: Point2, chine: Point2, edge: Point2, radius: number): Point2[] {
  const away = (to: Point2): [number, number, number] => {
    const l = Math.hypot(to[0] - chine[0], to[1] - chine[1])
    return [(to[0] - chine[0]) / l, (to[1] - chine[1]) / l, l]
  }
  const [ax, az, al] = away(keel)
  const [bx, bz, bl] = away(edge)
  const between = Math.acos(Math.max(-1, Math.min(1, ax * bx + az * bz)))
  const tangent = Math.min(radius / Math.tan(between / 2), 0.45 * al, 0.45 * bl)
  const r = tangent * Math.tan(between / 2)
  const reach = r / Math.sin(between / 2)
  const ml = Math.hypot(ax + bx, az + bz)
  const centre: Point2 = [chine[0] + (reach * (ax + bx)) / ml, chine[1] + (reach * (az + bz)) / ml]
  const from = Math.atan2(chine[1] + tangent * az - centre[1], chine[0] + tangent * ax - centre[0])
  let sweep = Math.atan2(chine[1] + tangent * bz - centre[1], chine[0] + tangent * bx - centre[0]) - from
  if (sweep > Math.PI) sweep -= 2 * Math.PI
  if (sweep < -Math.PI) sweep += 2 * Math.PI
  return Array.from({ length: 6 }, (_, i): Point2 => {
    const a = from + (sweep * i) / 5
    return [centre[0] + r * Math.cos(a), centre[1] + r * Math.sin(a)]
  })
}
