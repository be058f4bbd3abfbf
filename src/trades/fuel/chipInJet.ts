/**
 * What a chip in a jet does: the mixture, how much of full throttle is left, and the speed that is still reached.
 * Mixture: the fuel falls with the open area, so the air ratio grows by 1/(1 − b). Torque over the air ratio: a parabola through what
 * C. F. Taylor, The Internal-Combustion Engine (1968), vol. 2, and J. B. Heywood (1988), ch. 15, show of petrol engines, from memory:
 * most torque near 0.87, 0.97 of it at 1, 0.79 at 1.2. Leanest that a two-stroke fires on at full throttle: 1.15 to 1.3, from memory.
 * Thrust: a pump's flow goes with its rotation, and a jet pushes by its flow times what it leaves faster than it came in; with the rotation
 * at r of what it was, T' = r(rT − (1 − r) ṁ V). Derived for this project; what the intake takes of its own is left out.
 */
import { type ChipForm, chipBlocks, chokeFactor } from './jetFlow.ts'

/** kg of air for a kg of petrol that burns it all: EN 228 petrol, from memory */
export const stoichiometric = 14.7
/** air ratio of most torque, and the leanest that fires at full throttle with its likely ends */
export const richest = 0.87
export const leanLimit = { value: 1.2, low: 1.15, high: 1.3 }

/** Torque over the best torque of the same air, at an air ratio (0.6 to 1.4); 0 beyond. */
export function torqueAtMixture(lambda: number): number {
  const off = lambda - richest
  return Math.max(0, 1 - (off > 0 ? 1.9 : 1.2) * off * off)
}

/** How engines, jet and hull meet at full throttle: parallel lists, SI; entries that are no numbers are left out. */
export interface SpeedCurve {
  /** over the craft's speed, m/s: N, and kg/s of water through the jet */
  speed: readonly number[]
  thrust: readonly number[]
  drag: readonly number[]
  water: readonly number[]
  /** over the engines' rotation, rev/s, N·m at their shaft: what they give, and what the impeller asks tied up and at top speed */
  rotation: readonly number[]
  engine: readonly number[]
  tiedUp: readonly number[]
  atTop: readonly number[]
}

/**
 * Rotation at which engines with a share of their torque settle over the one they settle at with all of it, at a speed from nought (0)
 * to the top (1): where what they give first falls below what the impeller asks, coming up from slow, so that engines with a valley in
 * their curve fall a long way. 0 where they never give enough, 1 where the lists say nothing.
 */
export function settledShare(curve: SpeedCurve, fast: number, share: number): number {
  const { rotation, engine, tiedUp, atTop } = curve
  const asks = (i: number) => tiedUp[i]! + (atTop.length > 0 ? fast * (atTop[i]! - tiedUp[i]!) : 0)
  const at = (part: number): number => {
    let before = Number.NaN
    let last = Number.NaN
    for (let i = 0; i < rotation.length; i++) {
      const over = part * engine[i]! - asks(i)
      if (!Number.isFinite(over)) continue
      if (over <= 0) return before > 0 ? last + ((rotation[i]! - last) * before) / (before - over) : 0
      before = over
      last = rotation[i]!
    }
    return Number.NaN
  }
  const [now, whole] = [at(share), at(1)]
  return Number.isFinite(now) && whole > 0 ? Math.min(1, now / whole) : 1
}

/**
 * The most speed (m/s) that a share of the engines' torque reaches from rest: where the thrust that is left first meets the drag,
 * straight between the points of the table. NaN where the table has too little in it, or where the thrust is still ahead at its end.
 */
export function speedAtShare(curve: SpeedCurve, share: number): number {
  const { speed, thrust, drag, water } = curve
  const fastest = speed.at(-1) ?? 1
  let at = Number.NaN
  let ahead = Number.NaN
  for (let i = 0; i < speed.length; i++) {
    const turn = settledShare(curve, speed[i]! / fastest, share)
    const over = turn * (turn * thrust[i]! - (1 - turn) * water[i]! * speed[i]!) - drag[i]!
    if (!Number.isFinite(over)) continue
    if (over <= 0) {
      if (!(ahead > 0)) return over === 0 || Number.isNaN(at) ? speed[i]! : at
      return at + ((speed[i]! - at) * ahead) / (ahead - over)
    }
    at = speed[i]!
    ahead = over
  }
  return Number.NaN
}

export interface ChipCase {
  /** the chip's width over the jet's bore, 0 to 1 */
  k: number
  form: ChipForm
  /** which engine's jet it is in, by place in `engines` */
  engine: number
  /** every running engine fed from the same tank: its name and its air ratio without a chip */
  engines: readonly { name: string; lambda: number }[]
  /** air ratio that no longer fires at full throttle */
  leanest?: number
  /** the craft's thrust and drag; without them no speed is told */
  curve?: SpeedCurve
}

export interface ChipEffect {
  /** share of the jet's area shut */
  blocked: number
  /** air ratio of that engine with its throttle full open, and the same as air to fuel by mass */
  lambda: number
  airFuel: number
  /** it still fires with its throttle full open */
  fullThrottle: boolean
  /** share of its full air above which it dies, 0 to 1 */
  mostAir: number
  /** best torque of that engine over its torque without the chip, the throttle where it goes best */
  torque: number
  /** torque of all engines of the shaft together over what it was */
  together: number
  /** times the depression that brings the mixture back: what a choke has to do */
  choke: number
  /** m/s with all engines on one shaft; absent without a curve */
  topSpeed?: number
  /** m/s without the chip, from the same curve */
  topSpeedBefore?: number
  /** engines whose carburettors swarf from the same tank reaches: all of them */
  reaches: string[]
}

/** What a chip in one jet does. RangeError with the field's name where the case names no engine or no width. */
export function chipInJet(given: ChipCase): ChipEffect {
  const { k, form, engine, engines, curve, leanest = leanLimit.value } = given
  const own = engines[engine]
  if (!own) throw new RangeError(`engine: ${engine}, expected 0 to ${engines.length - 1}`)
  const blocked = chipBlocks(k, form)
  const open = 1 - blocked
  const lambda = open > 0 ? own.lambda / open : Number.POSITIVE_INFINITY
  const mostAir = Math.min(1, (leanest * open) / own.lambda)
  const torque = bestTorque(own.lambda, open, mostAir) / torqueAtMixture(own.lambda)
  const together = engines.reduce((sum, _, i) => sum + (i === engine ? torque : 1), 0) / engines.length
  return {
    blocked,
    lambda,
    airFuel: lambda * stoichiometric,
    fullThrottle: lambda <= leanest,
    mostAir,
    torque,
    together,
    choke: chokeFactor(blocked),
    ...(curve ? { topSpeed: speedAtShare(curve, together), topSpeedBefore: speedAtShare(curve, 1) } : {}),
    reaches: engines.map((e) => e.name),
  }
}

/** Most torque with the fuel held to `open` of full and the air let in from nothing to `mostAir` of full; against the best of full air. */
function bestTorque(lambda: number, open: number, mostAir: number): number {
  if (!(open > 0)) return 0
  let best = 0
  // the torque is smooth and has one top over the air: steps of a thousandth are finer than the curve is known
  for (let i = 1; i <= 1000; i++) {
    const air = (mostAir * i) / 1000
    best = Math.max(best, air * torqueAtMixture((lambda * air) / open))
  }
  return best
}
