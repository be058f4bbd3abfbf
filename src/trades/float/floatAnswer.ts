/** Everything the Float page asks, from plain numbers: each load at rest, both stabilities of a rider, openings, swamped, foam. */
import { type Bounded, rangeOf } from '../../base/answers/rangeOf.ts'
import type { Flag, Range } from '../../base/answers/solved.ts'
import type { WeightSum } from '../../hull/aboard/masses.ts'
import { riderCentre, type Stance } from '../../hull/aboard/riderBody.ts'
import { type BuoyantBody, floaterOf, wholeMass } from '../../hull/afloat/load.ts'
import { type Attitude, settle } from '../../hull/afloat/settle.ts'
import { type FoamNeed, foamNeeded } from './foamNeeded.ts'
import type { FloatInput } from './input.ts'
import {
  alongside,
  type CraftAboard,
  caseOf,
  craftOf,
  type LoadCase,
  type LoadName,
  loadOf,
  placed,
  together,
} from './loadCase.ts'
import { heightOver, type OpeningRow, openingsTable } from './openingHeights.ts'
import { positionFlags } from './positions.ts'
import { type FoamVolume, foamVolumes, heldBoxes, sealedSpaces, swampedBodies } from './swamped.ts'

export interface FloatAnswer {
  cases: LoadCase[]
  /** the rider's own stance */
  ridden: LoadCase
  weights: WeightSum
  openings: OpeningRow[]
  openingStates: string[]
  foam: FoamVolume[]
  need: FoamNeed
  swampedBodies: BuoyantBody[]
  /** GM of the craft as ridden with what is not known about weights and posture, m */
  gmRigid: Range
  gmFeet: Range
  flags: Flag[]
}

/** Answers the whole page. RangeError on weights or rider out of range. */
export function floatAnswer(input: FloatInput): FloatAnswer {
  const flags = [...input.hull.flags, ...positionFlags(input)]
  const craft = craftOf(input)
  const intact: BuoyantBody[] = [{ name: 'hull', mesh: input.hull.mesh, share: 1 }]
  const nobody = caseOf(input, 'nobody', intact, craft, undefined)
  const stancesShown: Stance[] = ['prone', 'kneeling', 'standing']
  const stood = stancesShown.map((s) =>
    caseOf(input, s as LoadName, intact, craft, { ...input.rider, stance: s }),
  )
  const ridden = caseOf(input, 'as ridden', intact, craft, input.rider)
  const left = swampedBodies(input)
  const swamped = [
    caseOf(input, 'swamped, nobody', left, craft, undefined),
    caseOf(input, 'swamped, rider alongside', left, craft, alongside(input)),
    caseOf(input, 'swamped, rider aboard', left, craft, { ...input.rider, stance: 'prone', y: 0 }),
  ]
  const need = foamFor(input, left, craft)
  const cases = [nobody, ...stood, ridden, ...swamped]
  const both = ranges(input, craft.whole, ridden)
  return {
    cases,
    ridden,
    weights: craft.whole,
    ...openingsIn(input, craft, cases),
    foam: foamVolumes(input.hull, input.foam, input.water, heldBoxes(input)),
    need,
    swampedBodies: left,
    ...both,
    flags,
  }
}

/**
 * Height of each opening above the water at rest, m, negative when under: the lower of nobody aboard and as ridden.
 * Infinity where neither floats. The same figures as in `floatAnswer`, without the rest of the page.
 */
export function openingsAtRest(input: FloatInput): number[] {
  const craft = craftOf(input)
  const intact: BuoyantBody[] = [{ name: 'hull', mesh: input.hull.mesh, share: 1 }]
  const afloat = [
    caseOf(input, 'nobody', intact, craft, undefined),
    caseOf(input, 'as ridden', intact, craft, input.rider),
  ].filter((c) => Number.isFinite(c.attitude.h))
  return input.openings.map((o) => Math.min(...afloat.map((c) => heightOver(c.attitude, o.at))))
}

/** The one load of `floatAnswer` that the file itself describes, by itself. */
export function asRidden(input: FloatInput): LoadCase {
  return caseOf(
    input,
    'as ridden',
    [{ name: 'hull', mesh: input.hull.mesh, share: 1 }],
    craftOf(input),
    input.rider,
  )
}

/** The openings in the states a builder would try: at rest, rider right aft, 20° to each side, bow down 5°, swamped. */
function openingsIn(
  input: FloatInput,
  craft: CraftAboard,
  cases: readonly LoadCase[],
): { openings: OpeningRow[]; openingStates: string[] } {
  const states: { name: string; attitude: Attitude }[] = []
  const add = (name: string, attitude: Attitude | undefined) => {
    if (attitude !== undefined && Number.isFinite(attitude.h)) states.push({ name, attitude })
  }
  const find = (name: LoadName) => cases.find((c) => c.name === name)!
  const body: BuoyantBody = { name: 'hull', mesh: input.hull.mesh, share: 1 }
  const held = (x: number, hold: { heel?: number; trim?: number }): Attitude | undefined => {
    const p = placed(input, { ...input.rider, x, y: 0 })
    const f = floaterOf(loadOf(input, craft, [body], p.mass, p.feet))
    if (!(wholeMass(f) < f.mostLift)) return undefined
    const start = { ...find('as ridden').attitude, heel: hold.heel ?? 0 }
    if (!Number.isFinite(start.h)) return undefined
    if (hold.trim !== undefined) start.trim = hold.trim
    const rest = settle(f, start, { freeHeel: false, freeTrim: hold.trim === undefined })
    return rest.converged ? rest.value : undefined
  }
  const turn = Math.PI / 9
  add('at rest, no rider', find('nobody').attitude)
  add('as ridden', find('as ridden').attitude)
  add('rider right aft', held(0.12 * input.hull.length, {}))
  add('20° to port', held(input.rider.x, { heel: turn }))
  add('20° to starboard', held(input.rider.x, { heel: -turn }))
  add('bow down 5°', held(input.rider.x, { trim: -Math.PI / 36 }))
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
