/**
 * Air through the openings of a bay: buoyancy, wind and fans against the flow that engines draw, solved for the one pressure at which
 * as much air comes in as goes out.
 * Orifice flow with the pressure over each opening's height, integrated exactly (e.g. ASHRAE Handbook of Fundamentals, chapter on
 * ventilation and infiltration, stack pressure and flow through large openings; D. W. Etheridge and M. Sandberg, Building Ventilation,
 * 1996). A fan's line from free flow to shut-off is taken as straight: common practice, no source.
 */
import type { Solved } from '../../base/answers/solved.ts'
import { brent } from '../../base/numerics/roots.ts'

const gravity = 9.80665

export interface AirOpening {
  /** m² */
  area: number
  /** m, its middle above the bay's floor, and from its lower edge to its upper */
  height: number
  tall: number
  /** discharge coefficient */
  discharge: number
  /** Pa of wind on it, over still air */
  wind: number
}

export interface AirFan {
  /** m³/s with nothing against it; Pa against which it moves nothing */
  free: number
  shut: number
  blows: 'out' | 'in'
  /** m above the floor */
  height: number
}

export interface AirPaths {
  openings: readonly AirOpening[]
  fans: readonly AirFan[]
  /** kg/s that engines burn out of the bay */
  burnt: number
  /** kg/m³ of the air outside and in the bay */
  outside: number
  inside: number
}

export interface AirFlow {
  /** Pa of the bay over the air outside, at the floor */
  pressure: number
  /** kg/s in and out of each opening; a tall one may have both */
  through: readonly { in: number; out: number }[]
  /** kg/s of each fan */
  fans: readonly number[]
  /** kg/s that come in from outside altogether */
  exchanged: number
}

/** ∫ √x dx over the part of [a, b] above nought, given its ends in any order, as a mean over the whole of it. */
function meanRoot(a: number, b: number): number {
  const [low, high] = a < b ? [a, b] : [b, a]
  if (high <= 0) return 0
  // a span narrow against its middle: the difference of two powers would cancel
  if (high - low < 1e-6 * high) return Math.sqrt(0.5 * (Math.max(0, low) + high))
  const from = Math.max(0, low)
  return ((2 / 3) * (high ** 1.5 - from ** 1.5)) / (high - low)
}

/** Flow in and out of one opening, kg/s, at bay pressure P at the floor. */
function throughOpening(o: AirOpening, { outside, inside }: AirPaths, P: number) {
  const slope = (outside - inside) * gravity
  const low = P + slope * (o.height - 0.5 * o.tall) - o.wind
  const high = P + slope * (o.height + 0.5 * o.tall) - o.wind
  const scale = o.discharge * o.area
  return {
    out: scale * Math.sqrt(2 * inside) * meanRoot(low, high),
    in: scale * Math.sqrt(2 * outside) * meanRoot(-low, -high),
  }
}

/** kg/s a fan moves; it lets nothing back. */
function throughFan(f: AirFan, { outside, inside }: AirPaths, P: number): number {
  const over = P + (outside - inside) * gravity * f.height
  const share = f.blows === 'out' ? 1 + over / f.shut : 1 - over / f.shut
  return f.free * (f.blows === 'out' ? inside : outside) * Math.max(0, share)
}

/** kg/s out less kg/s in; rises with P */
function surplus(paths: AirPaths, P: number): number {
  let sum = paths.burnt
  for (const o of paths.openings) {
    const flow = throughOpening(o, paths, P)
    sum += flow.out - flow.in
  }
  for (const f of paths.fans) sum += (f.blows === 'out' ? 1 : -1) * throughFan(f, paths, P)
  return sum
}

/**
 * Flow at the pressure where all balances. Not converged where air is drawn and there is no opening for it. residual in kg/s.
 */
export function solveAirFlow(paths: AirPaths, start = 0): Solved<AirFlow> {
  const f = (P: number) => surplus(paths, P)
  let [low, high] = [start - 0.5, start + 0.5]
  // the surplus rises with P: widen until it changes sign
  for (let step = 1; step < 2e5 && f(low) > 0; step *= 4) low -= step
  for (let step = 1; step < 2e5 && f(high) < 0; step *= 4) high += step
  const found = brent(f, low, high, { tolerance: 1e-7 * Math.max(1, Math.abs(low), Math.abs(high)) })
  const P = found.value
  const through = paths.openings.map((o) => throughOpening(o, paths, P))
  const fans = paths.fans.map((one) => throughFan(one, paths, P))
  const exchanged =
    through.reduce((sum, one) => sum + one.in, 0) +
    fans.reduce((sum, flow, i) => sum + (paths.fans[i]?.blows === 'in' ? flow : 0), 0)
  return { ...found, value: { pressure: P, through, fans, exchanged } }
}
