/**
 * Ranges of draft and of openings at rest: every doubt drawn together (ISO/IEC Guide 98-3/Suppl. 1:2008), each draw laid on the water by a
 * surface of attitude over mass and place of the centre, second order, through six loads that are settled in full. Two-sided; no
 * doubt at its own bound leaves the range.
 */
import type { Bounded } from '../../base/answers/rangeOf.ts'
import type { Range } from '../../base/answers/solved.ts'
import { percentile } from '../../base/numerics/effects.ts'
import { spreadPoint } from '../../base/numerics/lowDiscrepancy.ts'
import { reloaded } from '../../hull/afloat/load.ts'
import { settle } from '../../hull/afloat/settle.ts'
import { heightAbove, makeFrame } from '../../physics/solid/waterFrame.ts'
import type { AtRest } from './atRest.ts'
import { type LoadCase, placed, together } from './loadCase.ts'
import type { DoubtfulWeight, RestDoubts } from './restDoubts.ts'

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

function surfaceOf(rest: AtRest, of: LoadCase, ridden: boolean, dm: number, dx: number): Surface | undefined {
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
    const rested = settle(f, of.attitude, { freeHeel: false, leaveEdge: false })
    return rested.converged && rested.deficit < 0 ? rested.value : undefined
  })
  if (tried.some((a) => a === undefined)) return undefined
  const [h, trim] = (['h', 'trim'] as const).map((name) => {
    const [f0, mLess, mMore, xLess, xMore, both] = tried.map((a) => a![name])
    return through(f0!, mLess!, mMore!, xLess!, xMore!, both!, dm, dx)
  })
  const gm = ridden ? of.gmFeet : of.gmRigid
  return {
    mass: all.mass,
    x: all.centre[0],
    y: all.centre[1],
    heel: of.attitude.heel,
    gm,
    h: h!,
    trim: trim!,
  }
}

/** Doubts in one row, and where each stands in it. */
function rowOf(d: RestDoubts): Bounded[] {
  const three = (w: DoubtfulWeight) => [w.mass, w.x, w.y]
  return [
    d.left,
    d.length,
    d.beam,
    d.keel,
    ...three(d.rider),
    ...d.weights.flatMap(three),
    ...d.openings.flat(),
  ]
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
  const dm = Math.max(
    0.01 * whole,
    1.2 * Math.sqrt(sum(square)) +
      (doubts.left.high - 1) * listed +
      0.5 * whole * (half(doubts.length) + half(doubts.beam)),
  )
  const dx = Math.max(
    0.005,
    (1.2 * Math.sqrt(sum(moments))) / whole + rest.ridden.centre[0] * half(doubts.length),
  )
  const loaded = surfaceOf(rest, rest.ridden, true, dm, dx)
  if (!loaded) return undefined
  const empty = surfaceOf(rest, rest.nobody, false, dm, dx)
  const row = rowOf(doubts)
  const first = 7
  const own = first + 3 * weights.length
  const v = new Float64Array(row.length)

  /** Draft, and each opening's height, with the doubts at `v`. */
  const laid = (heights: Float64Array): number => {
    const [left, length, beam, keel] = [v[0]!, v[1]!, v[2]!, v[3]!]
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
      const extra = s === loaded ? v[4]! - r : 0
      const mass = s.mass + m + extra
      const x = (s.mass * s.x + mx + (r > 0 ? v[4]! * v[5]! - r * rider.x.value : 0)) / mass
      const y = (s.mass * s.y + my + (r > 0 ? v[4]! * v[6]! - r * rider.y.value : 0)) / mass
      // a stretched hull under its load is the one as written under less of it
      const dMass = mass / (length * beam) - s.mass
      const dx2 = x / length - s.x
      const heel = s.heel + (s.gm > 0.02 ? (y - s.y) / s.gm : 0)
      const frame = makeFrame(at(s.trim, dMass, dx2), heel)
      const h = at(s.h, dMass, dx2)
      if (s === loaded) draft = -heightAbove(frame, h, 0, 0, 0) + keel
      openings.forEach((o, i) => {
        const k = own + 3 * i
        const given = i < doubts.openings.length
        const [px, py, pz] = given ? [v[k]!, v[k + 1]!, v[k + 2]!] : [o.at[0]!, o.at[1]!, o.at[2]!]
        heights[i] = Math.min(heights[i]!, heightAbove(frame, h, px! / length, py!, pz!) - keel)
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
