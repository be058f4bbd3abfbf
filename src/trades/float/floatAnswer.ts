/** Everything the Float page asks, from plain numbers: each load at rest, both stabilities of a rider, openings, swamped, foam. */
import { type Bounded, rangeOf } from '../../base/answers/rangeOf.ts'
import type { Flag, Range } from '../../base/answers/solved.ts'
import type { WeightSum } from '../../hull/aboard/masses.ts'
import { riderCentre, type Stance } from '../../hull/aboard/riderBody.ts'
import type { BuoyantBody } from '../../hull/afloat/load.ts'
import type { Attitude } from '../../hull/afloat/settle.ts'
import { atRest, heldAt, riderAft } from './atRest.ts'
import { type FoamNeed, foamNeeded } from './foamNeeded.ts'
import type { FloatInput } from './input.ts'
import { type LeakCase, leakFromInput } from './leakCase.ts'
import {
  afloatOn,
  alongside,
  type CraftAboard,
  caseOf,
  type LoadCase,
  type LoadName,
  placed,
  together,
} from './loadCase.ts'
import { type OpeningRow, openingsTable } from './openingHeights.ts'
import { positionFlags } from './positions.ts'
import { type RestRanges, restRanges } from './restRanges.ts'
import { type SlackLoss, slackLoss } from './slackLoss.ts'
import { type FoamVolume, foamVolumes, heldBoxes, sealedSpaces, swampedBodies } from './swamped.ts'

export interface FloatAnswer {
  cases: LoadCase[]
  /** the rider's own stance */
  ridden: LoadCase
  weights: WeightSum
  /** draft and openings at rest with what is doubtful; absent where it does not rest, or nothing is said of doubts */
  rest?: RestRanges
  openings: OpeningRow[]
  openingStates: string[]
  foam: FoamVolume[]
  need: FoamNeed
  swampedBodies: BuoyantBody[]
  /** GM of the craft as ridden with what is not known about weights and posture, m */
  gmRigid: Range
  gmFeet: Range
  /** what running liquid takes; absent without tanks */
  slack?: SlackLoss
  /** a hole at the stern, nobody aboard; absent when it sinks dry */
  leak?: LeakCase
  flags: Flag[]
}

/** Answers the whole page. RangeError on weights or rider out of range. */
export function floatAnswer(input: FloatInput): FloatAnswer {
  const flags = [...input.hull.flags, ...positionFlags(input)]
  const { on, nobody, ridden } = atRest(input)
  const { craft } = on
  const stancesShown: Stance[] = ['prone', 'kneeling', 'standing']
  const stood = stancesShown.map((s) =>
    s === input.rider.stance
      ? { ...ridden, name: s as LoadName }
      : caseOf(on, s as LoadName, { ...input.rider, stance: s }),
  )
  const left = swampedBodies(input)
  const under = afloatOn(input, craft, left)
  const swamped = [
    caseOf(under, 'swamped, nobody', undefined),
    caseOf(under, 'swamped, rider alongside', alongside(input)),
    caseOf(under, 'swamped, rider aboard', { ...input.rider, stance: 'prone', y: 0 }),
  ]
  const need = foamFor(input, left, craft)
  const cases = [nobody, ...stood, ridden, ...swamped]
  const both = ranges(input, craft.whole, ridden)
  const slack = slackLoss(input, ridden)
  const rest = input.doubts && restRanges(atRest(input), input.doubts, input.openings)
  const leak = nobody.sinks ? undefined : leakFromInput(input, nobody)
  return {
    cases,
    ridden,
    weights: craft.whole,
    ...openingsIn(input, cases),
    foam: foamVolumes(input.hull, input.foam, input.water, heldBoxes(input)),
    need,
    swampedBodies: left,
    ...both,
    ...(rest ? { rest } : {}),
    ...(slack ? { slack } : {}),
    ...(leak ? { leak } : {}),
    flags,
  }
}

/** The openings in the states a builder would try: at rest, rider right aft, 20° to each side, bow down 5°, swamped. */
function openingsIn(
  input: FloatInput,
  cases: readonly LoadCase[],
): { openings: OpeningRow[]; openingStates: string[] } {
  const states: { name: string; attitude: Attitude }[] = []
  const add = (name: string, attitude: Attitude | undefined) => {
    if (attitude !== undefined && Number.isFinite(attitude.h)) states.push({ name, attitude })
  }
  const find = (name: LoadName) => cases.find((c) => c.name === name)!
  const turn = Math.PI / 9
  add('at rest, no rider', find('nobody').attitude)
  add('as ridden', find('as ridden').attitude)
  add('rider right aft', riderAft(input))
  add('20° to port', heldAt(input, input.rider.x, { heel: turn }))
  add('20° to starboard', heldAt(input, input.rider.x, { heel: -turn }))
  add('bow down 5°', heldAt(input, input.rider.x, { trim: -Math.PI / 36 }))
  add('swamped', find('swamped, nobody').attitude)
  return { openings: openingsTable(input.openings, states), openingStates: states.map((s) => s.name) }
}

/** Foam for the swamped craft with its rider lying on it, out of the water. */
function foamFor(input: FloatInput, left: readonly BuoyantBody[], craft: CraftAboard): FoamNeed {
  const rider = placed(input, { ...input.rider, stance: 'prone', y: 0 })
  const all = together(craft.fixed, rider.mass, rider.at)
  return foamNeeded({
    hull: input.hull,
    bodies: left,
    taken: [...input.foam, ...heldBoxes(input), ...sealedSpaces(input), ...(input.taken ?? [])],
    mass: all.mass,
    centre: all.centre,
    liquids: craft.liquids,
    water: input.water,
    foam: 30,
    soaked: 0.03,
  })
}

/** GM with its likely range: the craft's centre as the weights are given, the rider's by posture. */
function ranges(input: FloatInput, craft: WeightSum, ridden: LoadCase): { gmRigid: Range; gmFeet: Range } {
  const c = riderCentre(input.rider.stance, input.rider.stature)
  const give = craft.giveCentre[2] + 0.02
  const craftHigher = { value: 0, low: -give, high: give }
  const riderHigher = { value: 0, low: c.low - c.height, high: c.high - c.height }
  // what raises a part of the weight lowers GM by that part of it
  const less = ([raised, stands]: readonly number[]) =>
    (raised! * craft.mass + (stands ?? 0) * input.rider.mass) / ridden.mass
  const around = (value: number, doubts: readonly Bounded[]): Range =>
    ridden.sinks ? { value, low: value, high: value } : { ...rangeOf((d) => value - less(d), doubts), value }
  return {
    gmRigid: around(ridden.gmRigid, [craftHigher, riderHigher]),
    gmFeet: around(ridden.gmFeet, [craftHigher]),
  }
}
