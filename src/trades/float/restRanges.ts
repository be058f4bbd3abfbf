/**
 * Ranges of draft and of openings at rest: every doubt drawn together (ISO/IEC Guide 98-3/Suppl. 1:2008), each draw laid on the water by a
 * surface of attitude over mass and place of the centre, second order, through six loads, and by parabolas of
 * what each measure of the hull does by itself. Two-sided; no doubt at its own bound leaves the range.
 */
import type { Bounded } from '../../base/answers/rangeOf.ts'
import type { Range } from '../../base/answers/solved.ts'
import { type Effect, effectAt, effectThrough, percentile } from '../../base/numerics/effects.ts'
import { spreadPoint } from '../../base/numerics/lowDiscrepancy.ts'
import { type Floater, reloaded } from '../../hull/afloat/load.ts'
import { type Attitude, nudged, sinkDeficit } from '../../hull/afloat/settle.ts'
import { heightAbove, makeFrame } from '../../physics/solid/waterFrame.ts'
import type { AtRest } from './atRest.ts'
import { afloatOn, intactBodies, type LoadCase, placed, together } from './loadCase.ts'
import type { DoubtfulMeasure, DoubtfulWeight, RestDoubts } from './restDoubts.ts'

export interface RestRanges {
  /** m, depth of the hull's lowest point at the transom, as ridden */
  draft: Range
  /** m over the water at rest, the lower of nobody aboard and as ridden, in the order of the openings */
  openings: Range[]
}

/** ends of a range from so many draws lie within a hundredth of their percentile */
const draws = 512

/** Height of the origin over the water, m, and trim, rad, over mass (kg) and centre (m): c0 + c1 m + c2 m² + c3 x + c4 x² + c5 m x of the changes. */
interface Surface {
  mass: number
  x: number
  y: number
  heel: number
  /** m, what an upsetting moment over weight is divided by */
  gm: number
  h: Float64Array
  trim: Float64Array
  /** what each measure of the hull does to height and trim, from -1 at its low bound to 1 at its high */
  hull: { h: Effect; trim: Effect }[]
}

const at = (c: Float64Array, m: number, x: number) =>
  c[0]! + m * (c[1]! + c[2]! * m + c[5]! * x) + x * (c[3]! + c[4]! * x)

/** Through the value at rest, both sides of each change, and both changes together. */
function through(
  f0: number,
  mLess: number,
  mMore: number,
  xLess: number,
  xMore: number,
  both: number,
  dm: number,
  dx: number,
) {
  const c1 = (mMore - mLess) / (2 * dm)
  const c2 = (mMore + mLess - 2 * f0) / (2 * dm * dm)
  const c3 = (xMore - xLess) / (2 * dx)
  const c4 = (xMore + xLess - 2 * f0) / (2 * dx * dx)
  return Float64Array.of(f0, c1, c2, c3, c4, (both + f0 - mMore - xMore) / (dm * dx))
}

function surfaceOf(
  measures: readonly DoubtfulMeasure[],
  rest: AtRest,
  of: LoadCase,
  ridden: boolean,
  dm: number,
  dx: number,
): Surface | undefined {
  const { on } = rest
  const { input } = on
  if (of.sinks || of.over || !Number.isFinite(of.attitude.h)) return undefined
  const rider = ridden ? placed(input, input.rider) : undefined
  const all = together(on.craft.fixed, rider?.mass ?? 0, rider?.feet ?? [0, 0, 0])
  const tried = [
    [0, 0],
    [-dm, 0],
    [dm, 0],
    [0, -dx],
    [0, dx],
    [dm, dx],
  ].map(([m, x]) => {
    const f = reloaded(on.floater, all.mass + m!, [all.centre[0] + x!, all.centre[1], all.centre[2]])
    return resting(f, of.attitude)
  })
  if (tried.some((a) => a === undefined)) return undefined
  const [h, trim] = (['h', 'trim'] as const).map((name) => {
    const [f0, mLess, mMore, xLess, xMore, both] = tried.map((a) => a![name])
    return through(f0!, mLess!, mMore!, xLess!, xMore!, both!, dm, dx)
  })
  const gm = ridden ? of.gmFeet : of.gmRigid
  const rested = tried[0]!
  const hull = measures.map((q) => {
    const ends = [q.low, q.high].flatMap((value): [number, Attitude][] => {
      const a = Math.abs(value - q.value) > 0 && onAnother(rest, q, value, all, of.attitude)
      return a ? [[placeOf(q, value), a]] : []
    })
    const effect = (name: 'h' | 'trim') =>
      ends.length === 0
        ? none
        : effectThrough([
            [placeOf(q, q.value), 0],
            ...ends.map(([x, a]) => [x, a[name] - rested[name]] as const),
          ])
    return { h: effect('h'), trim: effect('trim') }
  })
  const { mass, centre } = all
  return { mass, x: centre[0], y: centre[1], heel: of.attitude.heel, gm, h: h!, trim: trim!, hull }
}

const none: Effect = { c0: 0, c1: 0, c2: 0 }
const placeOf = (q: Bounded, value: number) => (2 * (value - q.low)) / (q.high - q.low) - 1

/** Where a load rests that is little else than the one at `start`; undefined where it sinks or lies elsewhere altogether. */
function resting(f: Floater, start: Attitude): Attitude | undefined {
  if (!(sinkDeficit(f) < 0)) return undefined
  const rested = nudged(f, start)
  return rested.converged ? rested.value : undefined
}

/** The same load on the hull with one measure another; undefined where that makes no hull, or none that floats so. */
function onAnother(
  { on }: AtRest,
  q: DoubtfulMeasure,
  value: number,
  load: ReturnType<typeof together>,
  start: Attitude,
): Attitude | undefined {
  try {
    const input = { ...on.input, hull: q.made(value) }
    const { floater } = afloatOn(input, on.craft, intactBodies(input))
    return resting(reloaded(floater, load.mass, load.centre), start)
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}

/** Doubts in one row, and where each stands in it. */
function rowOf(d: RestDoubts): Bounded[] {
  const three = (w: DoubtfulWeight) => [w.mass, w.x, w.y]
  return [d.left, ...three(d.rider), ...d.weights.flatMap(three), ...d.openings.flat(), ...d.hull]
}

const half = (b: Bounded) => (b.high - b.low) / 2

/** Undefined where the craft does not rest as ridden, or is so near sinking that its doubts reach past it. */
export function restRanges(
  rest: AtRest,
  doubts: RestDoubts,
  openings: readonly { at: readonly number[] }[],
): RestRanges | undefined {
  const { weights, rider } = doubts
  const listed = weights.reduce((m, w) => m + w.mass.value, 0)
  const square = [rider, ...weights].map((w) => half(w.mass) ** 2)
  const moments = [rider, ...weights].map(
    (w) => (w.mass.value * half(w.x)) ** 2 + (half(w.mass) * (w.x.value - rest.ridden.centre[0])) ** 2,
  )
  const whole = listed + rider.mass.value
  const sum = (list: number[]) => list.reduce((a, b) => a + b, 0)
  const dm = Math.max(0.01 * whole, 1.2 * Math.sqrt(sum(square)) + (doubts.left.high - 1) * listed)
  const dx = Math.max(0.005, (1.2 * Math.sqrt(sum(moments))) / whole)
  const loaded = surfaceOf(doubts.hull, rest, rest.ridden, true, dm, dx)
  if (!loaded) return undefined
  const empty = surfaceOf(doubts.hull, rest, rest.nobody, false, dm, dx)
  const row = rowOf(doubts)
  const first = 4
  const own = first + 3 * weights.length
  const measures = row.length - doubts.hull.length
  const v = new Float64Array(row.length)

  /** Draft, and each opening's height, with the doubts at `v`. */
  const laid = (heights: Float64Array): number => {
    const left = v[0]!
    let [m, mx, my] = [0, 0, 0]
    weights.forEach((w, i) => {
      const mass = left * v[first + 3 * i]!
      m += mass - w.mass.value
      mx += mass * v[first + 3 * i + 1]! - w.mass.value * w.x.value
      my += mass * v[first + 3 * i + 2]! - w.mass.value * w.y.value
    })
    heights.fill(Number.POSITIVE_INFINITY)
    let draft = Number.NaN
    for (const s of [empty, loaded]) {
      if (!s) continue
      const r = s === loaded ? rider.mass.value : 0
      const extra = s === loaded ? v[1]! - r : 0
      const mass = s.mass + m + extra
      const x = (s.mass * s.x + mx + (r > 0 ? v[1]! * v[2]! - r * rider.x.value : 0)) / mass
      const y = (s.mass * s.y + my + (r > 0 ? v[1]! * v[3]! - r * rider.y.value : 0)) / mass
      const [dm, dx] = [mass - s.mass, x - s.x]
      let [h, trim] = [at(s.h, dm, dx), at(s.trim, dm, dx)]
      s.hull.forEach((effect, i) => {
        const place = placeOf(doubts.hull[i]!, v[measures + i]!)
        h += effectAt(effect.h, place)
        trim += effectAt(effect.trim, place)
      })
      const heel = s.heel + (s.gm > 0.02 ? (y - s.y) / s.gm : 0)
      const frame = makeFrame(trim, heel)
      if (s === loaded) draft = -heightAbove(frame, h, 0, 0, 0)
      openings.forEach((o, i) => {
        const k = own + 3 * i
        const given = i < doubts.openings.length
        const [px, py, pz] = given ? [v[k]!, v[k + 1]!, v[k + 2]!] : [o.at[0]!, o.at[1]!, o.at[2]!]
        heights[i] = Math.min(heights[i]!, heightAbove(frame, h, px!, py!, pz!))
      })
    }
    return draft
  }

  const doubtful = row.flatMap((b, k) => (b.high > b.low ? [k] : []))
  row.forEach((b, k) => {
    v[k] = b.value
  })
  const heights = new Float64Array(openings.length)
  const drafts = new Float64Array(draws)
  const all = openings.map(() => new Float64Array(draws))
  for (let i = 0; i < draws; i++) {
    const u = spreadPoint(i, doubtful.length, 5)
    doubtful.forEach((k, j) => {
      v[k] = row[k]!.low + u[j]! * (row[k]!.high - row[k]!.low)
    })
    drafts[i] = laid(heights)
    all.forEach((list, k) => {
      list[i] = heights[k]!
    })
  }
  for (const k of doubtful) v[k] = row[k]!.value
  const still = { draft: laid(heights), heights: heights.slice() }
  const range = (list: Float64Array, value: number): Range => {
    list.sort()
    return {
      value,
      low: Math.min(value, percentile(list, 0.025)),
      high: Math.max(value, percentile(list, 0.975)),
    }
  }
  const draft = range(drafts, still.draft)
  const places = all.map((list, k) => range(list, still.heights[k]!))
  const reach = (r: Range, y: number) => {
    r.low = Math.min(r.low, y)
    r.high = Math.max(r.high, y)
  }
  for (const k of doubtful) {
    for (const bound of [row[k]!.low, row[k]!.high]) {
      v[k] = bound
      reach(draft, laid(heights))
      places.forEach((r, i) => {
        reach(r, heights[i]!)
      })
    }
    v[k] = row[k]!.value
  }
  return { draft, openings: places }
}
