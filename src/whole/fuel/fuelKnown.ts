/** What Float and the balance found out first, as the plain numbers that the fuel has to be judged by. */
import { keptBy } from '../../base/numerics/keep.ts'
import type { Craft } from '../../craft/index.ts'
import { carriedOn } from '../../hull/aboard/aboard.ts'
import { siteOf } from '../../hull/site/site.ts'
import { tankInBay } from '../../trades/bay/bayFromCraft.ts'
import { atRest, riderAft } from '../../trades/float/atRest.ts'
import { floatFromCraft, floatParts } from '../../trades/float/floatFromCraft.ts'
import type { Attitudes, FuelSetting, RunAttitudes } from '../../trades/fuel/fuelSetting.ts'
import { bayAirOf } from '../bayAir.ts'
import type { Balance } from '../push/balanceTypes.ts'
import type { Known } from '../trades.ts'

/** The fuel's setting; the same object as long as balance, hull and what is on board stay the same things. */
export const fuelKnown: (known: Known) => FuelSetting = keptBy(
  8,
  ({ craft: c, balance }: Known) => [
    bayAirOf({ craft: c, ...(balance ? { balance } : {}) }),
    balance,
    ...floatParts(c),
  ],
  ({ craft, balance }): FuelSetting => ({
    attitudes: {
      ...trimsOf(craft),
      ...(balance ? { run: runOf(craft, balance) } : {}),
    },
    ...(balance ? { shaft: shaftOf(craft, balance) } : {}),
    ...fuelWarmth(craft, balance),
  }),
)

/** part of the way from the air outside to that of the bay that fuel gets in its lines, from a tank that stands elsewhere: judgement */
const inLines = 0.5

/** How warm the fuel gets, where the bay says. */
function fuelWarmth(craft: Craft, balance: Balance | undefined): Pick<FuelSetting, 'temperature'> {
  const bay = bayAirOf({ craft, ...(balance ? { balance } : {}) })
  if (!bay.known) return {}
  const air = craft.place.airTemperature
  const share = tankInBay(craft) === undefined ? inLines : 1
  const warmed = (from: number, to: number) => from + share * (to - from)
  return {
    temperature: {
      value: warmed(air.value, bay.value),
      low: warmed(air.low, bay.low),
      high: warmed(air.high, bay.high),
    },
  }
}

const level = { rest: 0, aft: 0 }

/** Trims in still water, rad; level where it does not float or its measures make no hull, which Float tells. */
function trimsOf(craft: Craft): Pick<Attitudes, 'rest' | 'aft' | 'afloat'> {
  try {
    const { input } = floatFromCraft(craft)
    const { trim: rest, h } = atRest(input).ridden.attitude
    if (!Number.isFinite(rest) || !Number.isFinite(h)) return level
    // planing hulls turn about a place a little aft of their middle
    const x = 0.45 * input.hull.length
    const z = (h - x * Math.sin(rest)) / Math.cos(rest)
    return { rest, aft: riderAft(input)?.trim ?? rest, afloat: { x, z } }
  } catch (error) {
    if (error instanceof RangeError) return level
    throw error
  }
}

/** Trim and acceleration while it runs up, and what slows it when the throttle is shut. */
function runOf(craft: Craft, balance: Balance): RunAttitudes {
  const { curve, run, hump, top } = balance
  const trimAt = (speed: number): number => {
    let best = 0
    let near = Number.POSITIVE_INFINITY
    for (let i = 0; i < curve.speed.length; i++) {
      const off = Math.abs(curve.speed[i]! - speed)
      if (off < near && Number.isFinite(curve.trim[i]!)) {
        near = off
        best = curve.trim[i]!
      }
    }
    return best
  }
  const carried = carriedOn(craft)
  const mass = carried.whole.mass + carried.rider.mass
  const fastest = top?.speed ?? Math.max(...run.speed)
  const drag = curve.drag[nearest(curve.speed, fastest)] ?? 0
  return {
    start: gain(run.time, run.speed, 0),
    hump: { trim: trimAt(hump.speed), forward: gain(run.time, run.speed, hump.speed) },
    top: trimAt(fastest),
    braking: Number.isFinite(drag) ? drag / mass : 0,
  }
}

const nearest = (list: readonly number[], x: number): number =>
  list.reduce((best, v, i) => (Math.abs(v - x) < Math.abs(list[best]! - x) ? i : best), 0)

/** m/s² as the run passes a speed; 0 where it never gets there. */
function gain(time: readonly number[], speed: readonly number[], at: number): number {
  const i = speed.findIndex((v, k) => k > 0 && v >= at)
  if (i < 1) return 0
  return Math.max(0, (speed[i]! - speed[i - 1]!) / (time[i]! - time[i - 1]!))
}

/** Power of each engine, W at its crank: the most there is of it, and flat out. */
function shaftOf(craft: Craft, balance: Balance): NonNullable<FuelSetting['shaft']> {
  const running = craft.engines.filter((e) => e.running).length
  const engines = craft.drive.arrangement === 'one shaft' ? Math.max(1, running) : 1
  const { curve, top, tiedUp, matching } = balance
  const powers = curve.rpm.map((rpm, i) => (2 * Math.PI * (rpm / 60) * curve.engineTorque[i]!) / engines)
  const flat = top ?? tiedUp
  return {
    most: Math.max(0, ...powers.filter(Number.isFinite)),
    flatOut: (2 * Math.PI * flat.rotation * flat.engineTorque) / engines,
    rotation: flat.rotation,
    together: engines,
    curve: {
      speed: curve.speed,
      thrust: curve.thrust,
      drag: curve.drag,
      water: curve.flow.map((q) => q * siteOf(craft).water.density),
      rotation: matching.rotation,
      engine: matching.engineTorque,
      tiedUp: matching.impellerTiedUp,
      atTop: matching.impellerAtTop,
    },
  }
}
