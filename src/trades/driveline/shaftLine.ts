/**
 * The impeller's shaft as it runs: where it whirls, what pushes on it and how long the bearing lasts that takes it. The push on an impeller: the
 * pressure that drives the jet on the ring between hub and bore, half of the thrust tied up times ring over nozzle area, and 5 to 30 % more for
 * losses behind it (momentum; own derivation).
 */

import { rangeOf } from '../../base/answers/rangeOf.ts'
import type { Range } from '../../base/answers/solved.ts'
import type { DriveChain, ImpellerMass, Turning } from './driveLinks.ts'
import type { DriveSetting } from './driveSetting.ts'
import { angularLoad, bearingFor, bearingLife, bearingOf, equivalentLoad } from './rollingBearings.ts'
import { whirlSpeed } from './whirl.ts'

export interface ShaftLine {
  shaft: Turning
  /** rev/s at which it whirls, and the fastest the impeller turns */
  whirl: Range
  fastest: number
  /** N on the impeller along the shaft */
  push: Range
  /** of the bearing that takes it, s; absent where none is named */
  life?: Range
  bearingName: string
}

/** seats of a ball bearing in a printed or sheet housing and of a wet bush, N/m; judgement, no source */
const seats = {
  ball: { value: 8e6, low: 3e6, high: 3e7 },
  bush: { value: 3e6, low: 1e6, high: 1e7 },
} as const
/** push over the ideal one */
const losses = { value: 1.15, low: 1.05, high: 1.3 } as const
/** N of side load on the bearing: unbalance and weight of a printed impeller, a few times over */
const sideLoads = { value: 3, low: 1.5, high: 8 } as const

/** Push on the impeller tied up for a thrust of the jet, N. */
export function impellerPush(thrust: number, i: Pick<ImpellerMass, 'bore' | 'hub' | 'nozzle'>): number {
  return (0.5 * thrust * (i.bore ** 2 - i.hub ** 2)) / i.nozzle ** 2
}

/** The shaft behind the last coupling; undefined where the chain has none. */
export function shaftLineOf(chain: DriveChain, ratio: number, setting: DriveSetting): ShaftLine | undefined {
  const shaft = chain.between
    .at(-1)
    ?.filter((p): p is Turning => p.kind === 'shaft')
    .at(-1)
  if (!shaft) return undefined
  const { impeller } = chain
  const fastest = Math.max(...setting.states.map((s) => s.rotation)) / ratio
  const thrust = Math.max(...setting.states.map((s) => s.thrust))
  const ideal = impellerPush(thrust, impeller)
  const push = { value: losses.value * ideal, low: losses.low * ideal, high: losses.high * ideal }
  const bearing = shaft.bearing ? bearingOf(shaft.bearing) : bearingFor(shaft.diameter.value)
  const weight = 9.81 * impeller.mass.value
  const lifeOf = ([axial, times]: readonly number[]): number => {
    const side = weight * times!
    return shaft.thrust === 'angular contact'
      ? // the same size of bearing set for thrust carries about a tenth more
        bearingLife(1.1 * bearing.dynamic, angularLoad(side, axial!), fastest)
      : bearingLife(bearing.dynamic, equivalentLoad(side, axial!, bearing.static), fastest)
  }
  const taken = shaft.thrust === 'ball bearing' || shaft.thrust === 'angular contact'
  return {
    shaft,
    whirl: whirlRange(shaft, impeller),
    fastest,
    push,
    ...(taken ? { life: rangeOf(lifeOf, [push, sideLoads]) } : {}),
    bearingName: bearing.name,
  }
}

/** Where it whirls: two bearings, or the coupling standing in for the one that is not there. */
function whirlRange(s: Turning, impeller: ImpellerMass): Range {
  const cantilever = s.bearings === 0
  return rangeOf(
    ([diameter, overhang, mass, wet, seat]) => {
      const out = cantilever ? s.length.value : Math.min(overhang!, 0.9 * s.length.value)
      // more than two bearings halve the span
      const span = cantilever ? 0 : (s.length.value - out) / Math.max(1, s.bearings - 1)
      const found = whirlSpeed({
        metal: s.metal,
        diameter: diameter!,
        bore: Math.min(s.bore.value, 0.95 * diameter!),
        span,
        overhang: out,
        mass: mass! * wet!,
        seat: seat!,
      })
      return found.converged ? found.value : Number.NaN
    },
    [s.diameter, s.overhang, impeller.mass, impeller.wet, s.bush ? seats.bush : seats.ball],
  )
}
