/**
 * Go and no-go: judges the corners of a printed thread's mesh against the limits of its partner, as a ring or a plug gauge would. The go gauge
 * is the partner at its tightest, the full form; the no-go gauge tells flanks alone (ISO 1502, the principle from memory). Geometry alone.
 */
import type { Thread } from './threadForms.ts'
import { radiusAt, type ThreadSide, type TurnProfile, threadProfile } from './threadProfile.ts'

export interface GaugeOrder {
  thread: Thread
  /** the printed thread's own side */
  side: ThreadSide
  /** right-hand unless said */
  hand?: 'right' | 'left'
  /** only corners between these places along the axis count, m: the full thread between lead-in and runout */
  from: number
  to: number
  /** sides of the mesh round the axis: flat facets of an inside thread stand inward of their corners */
  facets?: number
  /** the partner may be this much tighter than basic on the radius, m (0: the tightest of H and h, A and 2B) */
  tighter?: number
}

/** How far a corner is from the go gauge, and how loose the thread is. */
export interface Gauged {
  /** goes on: no corner reaches into the partner at its tightest */
  goes: boolean
  /** least gap to the go gauge on the radius, m; negative where it jams */
  gap: number
  /** does not go into the no-go gauge: its flanks are not looser than allowed */
  held: boolean
  /** how far the flanks are from basic on the radius, m: the clearance as made */
  loose: number
  corners: number
}

const turn = 2 * Math.PI

/** Phase along one pitch and radius of each corner of the thread's surface; doubles of the same place left out. */
function unrolled(corners: Float64Array, order: GaugeOrder): { u: Float64Array; r: Float64Array } {
  const { thread, from, to, facets, side } = order
  const hand = order.hand === 'left' ? -1 : 1
  const { pitch } = thread
  // a chord between two corners is nearer the axis than they are
  const flat = side === 'internal' && facets ? Math.cos(Math.PI / facets) : 1
  const seen = new Map<number, number>()
  const us: number[] = []
  const rs: number[] = []
  for (let i = 0; i + 2 < corners.length; i += 3) {
    const [x, y, z] = [corners[i]!, corners[i + 1]!, corners[i + 2]!]
    if (z < from || z > to) continue
    const r = Math.hypot(x, y)
    // the outside of a cap and the core of a plug are no thread
    if (r < thread.d1 / 2 - pitch || r > thread.d / 2 + pitch) continue
    const along = z - (hand * pitch * Math.atan2(y, x)) / turn
    const u = along - pitch * Math.floor(along / pitch)
    const key = Math.round((u / pitch) * 8192) * 1e6 + Math.round(r * 1e8) / 10
    if (seen.has(key)) continue
    seen.set(key, 1)
    us.push(u)
    rs.push(r * flat)
  }
  return { u: Float64Array.from(us), r: Float64Array.from(rs) }
}

/** Least gap to a gauge's section with the thread shifted along the axis by `shift`. */
function gapAt(u: Float64Array, r: Float64Array, gauge: TurnProfile, shift: number, sign: number): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < u.length; i++) {
    const gap = sign * (radiusAt(gauge, u[i]! + shift) - r[i]!)
    if (gap < least) least = gap
  }
  return least
}

/** The best shift along the axis: screwing on finds it by itself. Coarse, then halved about the best. */
function bestGap(u: Float64Array, r: Float64Array, gauge: TurnProfile, sign: number): number {
  const { pitch } = gauge
  let [at, best, step] = [0, Number.NEGATIVE_INFINITY, pitch / 32]
  for (let i = 0; i < 32; i++) {
    const gap = gapAt(u, r, gauge, i * step, sign)
    if (gap > best) [best, at] = [gap, i * step]
  }
  while (step > 1e-4 * pitch) {
    step /= 2
    for (const s of [at - step, at + step]) {
      const gap = gapAt(u, r, gauge, s, sign)
      if (gap > best) [best, at] = [gap, s]
    }
  }
  return best
}

/**
 * Judges the corners (x, y, z of each, m, axis z) of a printed thread. `loosest` is the most that its flanks may stand off, on the radius, m.
 * RangeError when no corner lies on the thread.
 */
export function gaugeThread(corners: Float64Array, order: GaugeOrder, loosest: number): Gauged {
  const { u, r } = unrolled(corners, order)
  if (u.length === 0)
    throw new RangeError(`corners: none lies on the thread between ${order.from} and ${order.to} m`)
  const { thread, side, tighter = 0 } = order
  const partner: ThreadSide = side === 'external' ? 'internal' : 'external'
  const sign = side === 'external' ? 1 : -1
  // the partner at basic size: its section with no clearance
  const go = threadProfile(thread, partner, { clearance: -tighter })
  const gap = bestGap(u, r, go, sign)
  const crests = crestHalf(u, r, sign)
  const loose = bestGap(crests.u, crests.r, flanksOnly(go), sign)
  return { goes: gap >= -1e-9, gap, held: loose <= loosest + 1e-9, loose, corners: u.length }
}

/** The corners on the crest's half of the teeth: their edges lie on the flanks, and no root is among them. */
function crestHalf(u: Float64Array, r: Float64Array, sign: number): { u: Float64Array; r: Float64Array } {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const x of r) {
    if (x < low) low = x
    if (x > high) high = x
  }
  const middle = (low + high) / 2
  const kept = (_: number, i: number) => sign * (r[i]! - middle) >= 0
  return { u: u.filter(kept), r: r.filter(kept) }
}

/** The same gauge with its roots drawn out until its flanks meet: crests of the thread touch its flanks alone. */
function flanksOnly(go: TurnProfile): TurnProfile {
  const tan = Math.tan(go.half)
  const quarter = go.pitch / 4
  const flank = 0.249 * go.pitch
  const out = flank / tan
  return {
    ...go,
    z: Float64Array.of(quarter - flank, quarter + flank, 3 * quarter - flank, 3 * quarter + flank),
    r: Float64Array.of(go.mid + out, go.mid - out, go.mid - out, go.mid + out),
  }
}
