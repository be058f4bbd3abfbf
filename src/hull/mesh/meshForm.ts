/**
 * Form data of the submerged part of a hull at a waterline: the numbers that resistance and stability formulas ask for.
 * Definitions: E. V. Lewis (ed.), Principles of Naval Architecture, vol. I (1988), chapter I; integrals exact on the mesh.
 */
import {
  AREA,
  AREA_P,
  AREA_PP,
  AREA_Q,
  AREA_QQ,
  addBelow,
  clipBody,
  SUMS,
  VOLUME,
  VOLUME_P,
  VOLUME_Q,
  VOLUME_S,
} from '../../physics/solid/below.ts'
import { boundsOf, type Mesh, mapPoints } from '../../physics/solid/mesh.ts'
import { cutLines } from '../../physics/solid/section.ts'
import { sliceBetween } from '../../physics/solid/slice.ts'
import { makeFrame } from '../../physics/solid/waterFrame.ts'

/** The water surface seen from the body: n·x = h with the normal of (trim, heel). */
export interface Waterline {
  /** m; on an even keel the draft above the keel line */
  h: number
  /** rad, bow up positive */
  trim?: number
  /** rad, port down positive */
  heel?: number
}

/** All in the water's own axes: x along the surface forward, heights from the water. SI. */
export interface HullForm {
  /** displaced volume */
  volume: number
  /** centre of buoyancy forward of the body origin, to port, and height above the lowest point */
  lcb: number
  tcb: number
  kb: number
  waterplaneArea: number
  /** centre of the waterplane forward of the body origin */
  lcf: number
  /** second moments of the waterplane about its own axes */
  transverseMoment: number
  longitudinalMoment: number
  bmTransverse: number
  bmLongitudinal: number
  /** the whole wet skin, transom included */
  wettedSurface: number
  waterlineLength: number
  waterlineBeam: number
  draft: number
  /** aft and fore ends of the waterline, m forward of the body origin */
  waterlineAft: number
  waterlineFore: number
  /** length over the cube root of the volume */
  slenderness: number
  /** immersed area of the transom, m² */
  transomArea: number
  /** greatest immersed section, m², and where */
  greatestSection: number
  greatestSectionAt: number
  /** half angle of entrance of the waterline, rad */
  entrance: number
}

/** Form data; undefined when nothing is submerged. */
export function hullFormOf(mesh: Mesh, waterline: Waterline): HullForm | undefined {
  const frame = makeFrame(waterline.trim ?? 0, waterline.heel ?? 0)
  const sums = new Float64Array(SUMS)
  addBelow(clipBody(mesh), frame, waterline.h, sums)
  const volume = sums[VOLUME]!
  const { low, high } = boundsOf(mesh)
  if (!(volume > 1e-12 * (high[0] - low[0]) ** 3)) return undefined
  // the submerged solid in water axes
  const inWater = mapPoints(mesh, (x, y, z) => [
    frame.e1x * x + frame.e1y * y + frame.e1z * z,
    frame.e2y * y + frame.e2z * z,
    frame.nx * x + frame.ny * y + frame.nz * z - waterline.h,
  ])
  const box = boundsOf(inWater)
  const wet = box.high[2] > 0 ? sliceBetween(inWater, 'z', box.low[2] - 1, 0)! : inWater
  const draft = -box.low[2]
  const area = sums[AREA]!
  const lcf = sums[AREA_P]! / area
  const tcf = sums[AREA_Q]! / area
  const transverse = sums[AREA_QQ]! - area * tcf * tcf
  const longitudinal = sums[AREA_PP]! - area * lcf * lcf
  const line = cutLines(inWater, [0, 0, 1], 0)
  const ends = waterlineEnds(line, box)
  const sections = sectionAreas(wet, 61)
  const best = sections.reduce((b, s) => (s.area > b.area ? s : b))
  const length = ends.fore - ends.aft
  return {
    volume,
    lcb: sums[VOLUME_P]! / volume,
    tcb: sums[VOLUME_Q]! / volume,
    kb: draft + sums[VOLUME_S]! / volume,
    waterplaneArea: area,
    lcf,
    transverseMoment: transverse,
    longitudinalMoment: longitudinal,
    bmTransverse: transverse / volume,
    bmLongitudinal: longitudinal / volume,
    wettedSurface: wettedArea(wet),
    waterlineLength: length,
    waterlineBeam: ends.beam,
    draft,
    waterlineAft: ends.aft,
    waterlineFore: ends.fore,
    slenderness: length / Math.cbrt(volume),
    transomArea: transomOf(wet),
    greatestSection: best.area,
    greatestSectionAt: best.x,
    entrance: entranceAngle(line, ends.aft, ends.fore),
  }
}

/**
 * Immersed area of the transom: the wet faces of the after tenth that look aft within 45°, projected across the water. A section
 * would miss it as soon as trim tilts the transom.
 */
function transomOf(wet: Mesh): number {
  const { points: p, triangles: t } = wet
  const { low, high } = boundsOf(wet)
  const limit = low[0] + 0.1 * (high[0] - low[0])
  let sum = 0
  for (let i = 0; i < t.length; i += 3) {
    const a = 3 * t[i]!
    const b = 3 * t[i + 1]!
    const c = 3 * t[i + 2]!
    if (p[a]! > limit || p[b]! > limit || p[c]! > limit) continue
    const ux = p[b]! - p[a]!
    const uy = p[b + 1]! - p[a + 1]!
    const uz = p[b + 2]! - p[a + 2]!
    const wx = p[c]! - p[a]!
    const wy = p[c + 1]! - p[a + 1]!
    const wz = p[c + 2]! - p[a + 2]!
    const nx = (uy * wz - uz * wy) / 2
    const ny = (uz * wx - ux * wz) / 2
    const nz = (ux * wy - uy * wx) / 2
    if (nx < -Math.SQRT1_2 * Math.hypot(nx, ny, nz)) sum -= nx
  }
  return sum
}

/** Area of the skin below the water, without the lid that closes the submerged solid. */
function wettedArea(wet: Mesh): number {
  const { points: p, triangles: t } = wet
  let sum = 0
  for (let i = 0; i < t.length; i += 3) {
    const a = 3 * t[i]!
    const b = 3 * t[i + 1]!
    const c = 3 * t[i + 2]!
    if (p[a + 2] === 0 && p[b + 2] === 0 && p[c + 2] === 0) continue
    const ux = p[b]! - p[a]!
    const uy = p[b + 1]! - p[a + 1]!
    const uz = p[b + 2]! - p[a + 2]!
    const wx = p[c]! - p[a]!
    const wy = p[c + 1]! - p[a + 1]!
    const wz = p[c + 2]! - p[a + 2]!
    sum += Math.hypot(uy * wz - uz * wy, uz * wx - ux * wz, ux * wy - uy * wx) / 2
  }
  return sum
}

/**
 * Immersed section areas at evenly spread places along the wet solid, m². Green's theorem on the pieces in which each face crosses
 * each place, face by face: no loops are built, and a face is looked at only where it reaches.
 */
function sectionAreas(wet: Mesh, count: number): { x: number; area: number }[] {
  const { low, high } = boundsOf(wet)
  const length = high[0] - low[0]
  // just inside the ends: a flat transom then shows its whole area
  const inset = 1e-6 * length
  const first = low[0] + inset
  const step = (length - 2 * inset) / (count - 1)
  const twice = new Float64Array(count)
  const { points: p, triangles: t } = wet
  for (let f = 0; f < t.length; f += 3) {
    const i = 3 * t[f]!
    const j = 3 * t[f + 1]!
    const k = 3 * t[f + 2]!
    const least = Math.min(p[i]!, p[j]!, p[k]!)
    const most = Math.max(p[i]!, p[j]!, p[k]!)
    const to = Math.min(count - 1, Math.floor((most - first) / step))
    for (let n = Math.max(0, Math.ceil((least - first) / step)); n <= to; n++) {
      const x = first + n * step
      const below = (p[i]! < x ? 1 : 0) + (p[j]! < x ? 1 : 0) + (p[k]! < x ? 1 : 0)
      if (below === 0 || below === 3) continue
      // turn the face so that a stands alone on its side of the place
      const lone = below === 1
      const [a, b, c] = p[i]! < x === lone ? [i, j, k] : p[j]! < x === lone ? [j, k, i] : [k, i, j]
      const ab = (x - p[a]!) / (p[b]! - p[a]!)
      const ac = (x - p[a]!) / (p[c]! - p[a]!)
      const y0 = p[a + 1]! + ab * (p[b + 1]! - p[a + 1]!)
      const z0 = p[a + 2]! + ab * (p[b + 2]! - p[a + 2]!)
      const y1 = p[a + 1]! + ac * (p[c + 1]! - p[a + 1]!)
      const z1 = p[a + 2]! + ac * (p[c + 2]! - p[a + 2]!)
      twice[n]! += (lone ? 1 : -1) * (y0 * z1 - y1 * z0)
    }
  }
  return Array.from(twice, (v, n) => ({ x: first + n * step, area: Math.abs(v) / 2 }))
}

function waterlineEnds(
  line: Float64Array,
  box: { low: number[]; high: number[] },
): { aft: number; fore: number; beam: number } {
  if (line.length === 0) return { aft: box.low[0]!, fore: box.high[0]!, beam: box.high[1]! - box.low[1]! }
  let aft = Infinity
  let fore = -Infinity
  let port = -Infinity
  let starboard = Infinity
  for (let i = 0; i < line.length; i += 3) {
    aft = Math.min(aft, line[i]!)
    fore = Math.max(fore, line[i]!)
    port = Math.max(port, line[i + 1]!)
    starboard = Math.min(starboard, line[i + 1]!)
  }
  return { aft, fore, beam: port - starboard }
}

/** Breadth of the waterline at a place along it, m. */
function breadthAt(line: Float64Array, x: number): number {
  let port = -Infinity
  let starboard = Infinity
  for (let i = 0; i < line.length; i += 6) {
    const x0 = line[i]!
    const x1 = line[i + 3]!
    if ((x0 < x && x1 < x) || (x0 > x && x1 > x) || x0 === x1) continue
    const y = line[i + 1]! + ((x - x0) / (x1 - x0)) * (line[i + 4]! - line[i + 1]!)
    port = Math.max(port, y)
    starboard = Math.min(starboard, y)
  }
  return Number.isFinite(port) ? port - starboard : 0
}

/** Half angle of entrance: the chords over the first 3 % and 6 % of the waterline, carried back to the bow. */
function entranceAngle(line: Float64Array, aft: number, fore: number): number {
  const length = fore - aft
  if (line.length === 0 || !(length > 0)) return Math.PI / 2
  const slope = (part: number) => breadthAt(line, fore - part * length) / 2 / (part * length)
  return Math.atan(Math.max(0, 2 * slope(0.03) - slope(0.06)))
}
