/**
 * The hull at rest, from a few numbers: strip integration over stations, enough for what the resistance methods need
 * (volume, draft, waterline, transom, entrance). A mesh of the true shape can feed the same `RestForm`.
 * Method: elementary strip integrals; free trim by Newton on volume and moment.
 */
import type { Solved } from '../../base/answers/solved.ts'
import type { RestForm } from '../../hull/afloat/restForm.ts'
import type { HullSpec } from './hullSpec.ts'

/** Stations from transom to stem. */
export interface Stations {
  x: Float64Array
  /** half-breadths at chine and deck edge, and heights of keel, chine and deck edge */
  half: Float64Array
  edge: Float64Array
  keel: Float64Array
  chine: Float64Array
  deck: Float64Array
}

/** strips along the hull */
export const stationCount = 81
const count = stationCount

/** Chine half-breadth, m, at x. */
export function chineHalfBreadth(spec: HullSpec, x: number): number {
  const widest = spec.widestAt ?? 0.45 * spec.length
  const half = spec.chineBeam / 2
  if (x <= widest) {
    const tail = spec.tailWidth ?? 1
    // quadratic with its top at the widest station
    const s = widest > 0 ? 1 - x / widest : 0
    return half * (1 - (1 - tail) * s * s)
  }
  const [p, q] = spec.noseExponents ?? [2.5, 2]
  const s = Math.min(1, (x - widest) / (spec.length - widest))
  return Math.max(1e-3, half * (1 - s ** p) ** (1 / q))
}

/** Keel height, m, at x: nose and stern rise are parabolas. */
export function keelHeight(spec: HullSpec, x: number): number {
  const start = spec.noseRiseFrom ?? 0.65 * spec.length
  const tail = spec.sternRiseOver ?? 0.2 * spec.length
  if (x > start) return (spec.noseRise ?? 0) * ((x - start) / (spec.length - start)) ** 2
  if (x < tail) return (spec.sternRise ?? 0) * ((tail - x) / tail) ** 2
  return 0
}

/** Deadrise, rad, at x: linear from the transom to mid-length and on to the stem. */
export function deadriseAt(spec: HullSpec, x: number): number {
  const middle = spec.midDeadrise ?? spec.deadrise
  const half = 0.5 * spec.length
  if (x <= half) return spec.deadrise + (Math.max(0, x) / half) * (middle - spec.deadrise)
  return middle + Math.min(1, x / half - 1) * ((spec.noseDeadrise ?? middle) - middle)
}

const laidOut = new WeakMap<HullSpec, Stations>()

/** Stations of a hull, laid out once for each spec. */
export function stationsOf(spec: HullSpec): Stations {
  const known = spec.stations ?? laidOut.get(spec)
  if (known) return known
  const made = layOut(spec)
  laidOut.set(spec, made)
  return made
}

function layOut(spec: HullSpec): Stations {
  const make = (f: (x: number) => number) =>
    Float64Array.from({ length: stationCount }, (_, i) => f((spec.length * i) / (stationCount - 1)))
  const chine = (x: number) => keelHeight(spec, x) + chineHalfBreadth(spec, x) * Math.tan(deadriseAt(spec, x))
  const flare = Math.max(1, (spec.beam ?? spec.chineBeam) / spec.chineBeam)
  return {
    x: make((x) => x),
    half: make((x) => chineHalfBreadth(spec, x)),
    edge: make((x) => flare * chineHalfBreadth(spec, x)),
    keel: make((x) => keelHeight(spec, x)),
    chine: make(chine),
    deck: make((x) => Math.max(spec.depth, chine(x) + 1e-3)),
  }
}

/** Half-breadth of station i at height z, m: a V to the chine, then a straight side to the deck edge; 0 below the keel. */
export function halfBreadthAt(s: Stations, i: number, z: number): number {
  const keel = s.keel[i]!
  const chine = s.chine[i]!
  if (z <= keel) return 0
  if (z < chine) return (s.half[i]! * (z - keel)) / (chine - keel)
  const up = Math.min(1, (z - chine) / (s.deck[i]! - chine))
  return s.half[i]! + up * (s.edge[i]! - s.half[i]!)
}

interface Strip {
  area: number
  /** first moment of the area about z = 0 */
  moment: number
  /** half-breadth at the waterline; 0 when the section is dry or the deck is under */
  half: number
  girth: number
}

/** One section filled to height z. */
function fill(s: Stations, i: number, z: number, out: Strip): void {
  const keel = s.keel[i]!
  const chine = s.chine[i]!
  const deck = s.deck[i]!
  const y = s.half[i]!
  out.area = out.moment = out.half = out.girth = 0
  if (z <= keel) return
  const top = Math.min(z, deck)
  const rise = chine - keel
  const inV = Math.min(top, chine) - keel
  const breadth = rise > 1e-9 ? (y * inV) / rise : y
  out.area = breadth * inV
  out.moment = out.area * (keel + (2 / 3) * inV)
  out.girth = 2 * Math.hypot(breadth, inV)
  out.half = breadth
  if (top > chine) {
    const h = top - chine
    const yTop = halfBreadthAt(s, i, top)
    out.area += (y + yTop) * h
    out.moment += (h / 3) * (y * (2 * chine + top) + yTop * (chine + 2 * top))
    out.girth += 2 * Math.hypot(yTop - y, h)
    out.half = yTop
  }
  if (z > deck) out.half = 0
}

/**
 * Floats the hull freely: mass kg and its centre x, z (m), water density kg/m³. Not converged when the hull cannot carry
 * the mass or when no trim within 15° balances; `residual` is the larger of the volume and moment errors, as parts.
 */
export function floatAtRest(
  spec: HullSpec,
  mass: number,
  x: number,
  z: number,
  density: number,
): Solved<RestForm> {
  const s = stationsOf(spec)
  const volume = mass / density
  const strip: Strip = { area: 0, moment: 0, half: 0, girth: 0 }
  const step = spec.length / (count - 1)
  let height = 0.3 * spec.depth
  let slope = 0
  let iterations = 0
  let residual = Number.POSITIVE_INFINITY
  let area = 0
  let centre = 0
  for (; iterations < 80; iterations++) {
    let V = 0
    let Mx = 0
    let Mz = 0
    let A = 0
    let Ax = 0
    let Axx = 0
    for (let i = 0; i < count; i++) {
      const at = s.x[i]!
      fill(s, i, height - slope * at, strip)
      const w = i === 0 || i === count - 1 ? 0.5 * step : step
      V += w * strip.area
      Mx += w * strip.area * at
      Mz += w * strip.moment
      A += w * 2 * strip.half
      Ax += w * 2 * strip.half * at
      Axx += w * 2 * strip.half * at * at
    }
    const lack = V - volume
    const tilt = Mx - V * x + (z * V - Mz) * slope
    area = A
    centre = V > 0 ? Mx / V : 0
    residual = Math.max(Math.abs(lack) / volume, Math.abs(tilt) / (volume * spec.length))
    if (residual < 1e-10) break
    // Newton on (height, slope); a little is added to the diagonal so that a dry or drowned waterplane does not stop it
    const a11 = A + 1e-3 * spec.length * spec.chineBeam
    const a12 = -Ax
    const a21 = Ax - A * x
    const a22 = -(Axx - Ax * x) + (z * V - Mz) - 1e-5 * spec.length ** 3 * spec.chineBeam
    const det = a11 * a22 - a12 * a21
    const limit = (value: number, most: number) => Math.max(-most, Math.min(most, value))
    height += limit((-lack * a22 + tilt * a12) / det, 0.25 * spec.depth)
    slope += limit((-tilt * a11 + lack * a21) / det, 0.05)
    slope = limit(slope, 0.3)
  }
  const value = describe(s, height, slope, volume, centre, area)
  const converged = residual < 1e-8 && Math.abs(slope) < 0.27
  return { value, converged, iterations, residual }
}

/** Everything the resistance methods read off the floating hull. */
function describe(
  s: Stations,
  height: number,
  slope: number,
  volume: number,
  centre: number,
  waterplane: number,
): RestForm {
  const strip: Strip = { area: 0, moment: 0, half: 0, girth: 0 }
  const step = s.x[1]! - s.x[0]!
  const depthAt = (i: number) => height - slope * s.x[i]! - s.keel[i]!
  let beam = 0
  let section = 0
  let transom = 0
  let draft = 0
  let wettedSurface = 0
  let first = Number.NaN
  let last = 0
  for (let i = 0; i < count; i++) {
    fill(s, i, height - slope * s.x[i]!, strip)
    const w = i === 0 || i === count - 1 ? 0.5 * step : step
    wettedSurface += w * strip.girth
    beam = Math.max(beam, 2 * strip.half)
    section = Math.max(section, strip.area)
    if (i === 0) transom = strip.area
    const wet = depthAt(i)
    draft = Math.max(draft, wet)
    if (wet > 0) {
      if (Number.isNaN(first)) first = s.x[i]!
      // where the keel leaves the water between this station and the next
      const next = i + 1 < count ? depthAt(i + 1) : 1
      last = next < 0 ? s.x[i]! + (step * wet) / (wet - next) : s.x[i]!
    }
  }
  const length = Math.max(1e-3, last - (Number.isNaN(first) ? 0 : first))
  // mean angle of the foremost tenth of the waterline: a round nose has no other angle worth the name
  const back = Math.max(0, last - 0.1 * length)
  const k = Math.min(count - 1, Math.round(back / step))
  fill(s, k, height - slope * s.x[k]!, strip)
  return {
    volume,
    length,
    beam: Math.max(beam, 1e-3),
    draft: Math.max(draft, 1e-4),
    entrance: Math.atan2(strip.half, Math.max(1e-3, last - s.x[k]!)),
    transomRatio: section > 0 ? transom / section : 0,
    wettedSurface,
    trim: Math.atan(slope),
    waterAtTransom: height,
    centre,
    waterplane,
    section,
  }
}
