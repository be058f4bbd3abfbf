/** One load of the craft, settled: who is aboard, where the weight acts, how it lies and how stiffly. */

import type { Rider } from '../../hull/aboard/aboard.ts'
import { type WeightSum, weightSum } from '../../hull/aboard/masses.ts'
import { riderCentre } from '../../hull/aboard/riderBody.ts'
import {
  type BuoyantBody,
  type Floater,
  type FloatingLoad,
  floaterOf,
  reloaded,
  type SlackLiquid,
} from '../../hull/afloat/load.ts'
import {
  type Attitude,
  longitudinalMetacentricHeight,
  metacentricHeight,
  type Resting,
  settle,
  staysUpright,
} from '../../hull/afloat/settle.ts'
import { deckHeight } from '../../hull/lines/hullBody.ts'
import type { Vec3 } from '../../physics/solid/mesh.ts'
import { heightAbove, makeFrame } from '../../physics/solid/waterFrame.ts'
import { aboardOf, type FloatInput, slackOf } from './input.ts'
import { rollPeriod, rollRadius } from './tests.ts'

export type LoadName =
  | 'nobody'
  | 'prone'
  | 'kneeling'
  | 'standing'
  | 'as ridden'
  | 'swamped, nobody'
  | 'swamped, rider alongside'
  | 'swamped, rider aboard'

/** One load, settled. */
export interface LoadCase {
  name: LoadName
  /** kg all told, and centre, m */
  mass: number
  centre: [number, number, number]
  /** kg missing when it sinks; below 0 is reserve */
  deficit: number
  sinks: boolean
  /** it does not stay: goes past 60° */
  over: boolean
  attitude: Attitude
  /** depth of the hull's lowest point at transom and stem, m */
  draftAft: number
  draftFore: number
  /** lowest deck edge above water, m */
  freeboard: number
  /** metacentric heights, m: upright, rider stiff; upright, rider balancing on his feet; NaN when it sinks */
  gmRigid: number
  gmFeet: number
  gmLength: number
  /** s */
  rollPeriod: number
}

/** The craft without its rider: what is fixed, what runs, and both together with the liquid lying still. */
export interface CraftAboard {
  fixed: WeightSum
  liquids: SlackLiquid[]
  whole: WeightSum
}

export function craftOf(input: FloatInput): CraftAboard {
  const fixed = weightSum(input.weights)
  const liquids = slackOf(input)
  return { fixed, liquids, whole: liquids.length === 0 ? fixed : weightSum(aboardOf(input)) }
}

interface Placed {
  mass: number
  at: Vec3
  /** where the weight acts when the rider balances */
  feet: Vec3
  balances: boolean
}

export function placed(input: FloatInput, rider: Rider, deeper = 0): Placed {
  const deck = deckHeight(input.hull.mesh, rider.x, rider.y) ?? input.hull.depth
  const c = riderCentre(rider.stance, rider.stature)
  return {
    mass: rider.mass,
    at: [rider.x, rider.y, deck + c.height + deeper],
    feet: [rider.x, rider.y, deck],
    balances: c.balances,
  }
}

/** A swimmer holding the gunwale: a tenth of the weight, out of the water, hangs on the deck edge (judgement, no source). */
export function alongside(input: FloatInput): Placed {
  const edge = input.hull.edge.reduce((a, b) =>
    Math.abs(b[0] - input.rider.x) < Math.abs(a[0] - input.rider.x) ? b : a,
  )
  return { mass: 0.1 * input.rider.mass, at: edge, feet: edge, balances: false }
}

export function together(
  craft: WeightSum,
  mass: number,
  at: Vec3,
): { mass: number; centre: [number, number, number] } {
  const m = craft.mass + mass
  return {
    mass: m,
    centre: [0, 1, 2].map((k) => (craft.mass * craft.centre[k]! + mass * at[k]!) / m) as [
      number,
      number,
      number,
    ],
  }
}

/** A load for the solver: fixed weights, and a rider (or none) whose weight acts at `at`; liquids run. */
export function loadOf(
  input: FloatInput,
  craft: CraftAboard,
  bodies: readonly BuoyantBody[],
  mass = 0,
  at: Vec3 = [0, 0, 0],
): FloatingLoad {
  const all = together(craft.fixed, mass, at)
  return { bodies, mass: all.mass, centre: all.centre, density: input.water, liquids: craft.liquids }
}

/** Bodies with scratch and what the craft weighs: made once, each load settled from it. */
export interface Afloat {
  input: FloatInput
  craft: CraftAboard
  floater: Floater
}

export function afloatOn(input: FloatInput, craft: CraftAboard, bodies: readonly BuoyantBody[]): Afloat {
  return { input, craft, floater: floaterOf(loadOf(input, craft, bodies)) }
}

/** The whole hull, dry inside. */
export const intactBodies = (input: FloatInput): BuoyantBody[] => [
  { name: 'hull', mesh: input.hull.mesh, share: 1 },
]

/** One load settled: upright first, with the weight where it is and where a rider's feet are, then left to itself. */
export function caseOf(on: Afloat, name: LoadName, who: Rider | Placed | undefined): LoadCase {
  const { input, craft } = on
  const rider = who === undefined ? undefined : 'at' in who ? who : placed(input, who)
  const whole = together(craft.whole, rider?.mass ?? 0, rider?.at ?? [0, 0, 0])
  const loaded = (at: Vec3 | undefined) => {
    const all = together(craft.fixed, rider?.mass ?? 0, at ?? [0, 0, 0])
    return reloaded(on.floater, all.mass, all.centre)
  }
  const upright = (at: Vec3 | undefined) =>
    settle(loaded(at), undefined, { freeHeel: false, leaveEdge: false })
  const stiff = upright(rider?.at)
  const free = rider && rider.feet !== rider.at ? upright(rider.feet) : stiff
  const gm = (r: Resting) => (r.converged ? metacentricHeight(r.state) : Number.NaN)
  // a rider who would fall over stiff keeps his balance if he can: his weight then acts where he touches the deck
  const onFeet = rider !== undefined && (rider.balances || gm(stiff) < 0)
  const up = onFeet ? free : stiff
  const rest = staysUpright(up)
    ? up
    : settle(loaded(onFeet ? rider.feet : rider?.at), undefined, { giveUp: 1.2 })
  const attitude = rest.value
  const over = rest.converged && Math.max(Math.abs(attitude.heel), Math.abs(attitude.trim)) > Math.PI / 3
  const frame = makeFrame(attitude.trim, attitude.heel)
  const under = (p: Vec3) => -heightAbove(frame, attitude.h, ...p)
  const edges = input.hull.edge.flatMap((p) => [-under(p), -under([p[0], -p[1], p[2]])])
  return {
    name,
    ...whole,
    deficit: rest.deficit,
    sinks: rest.deficit >= 0,
    over: over || (rest.deficit < 0 && !rest.converged),
    attitude,
    draftAft: under([0, 0, 0]),
    draftFore: under([input.hull.length, 0, 0]),
    freeboard: Math.min(...edges),
    gmRigid: gm(stiff),
    gmFeet: gm(free),
    gmLength: stiff.converged ? longitudinalMetacentricHeight(stiff.state) : Number.NaN,
    rollPeriod: rollPeriod(
      rollRadius(rollInertia(input, craft.whole, rider, whole.centre), whole.mass),
      gm(stiff),
    ),
  }
}

/** Roll inertia, kg m²: the list's own, but no less than a usual roll radius of 0.35 beams gives, for lists without sizes. */
function rollInertia(input: FloatInput, craft: WeightSum, rider: Placed | undefined, centre: Vec3): number {
  const own = Math.max(craft.inertia[0], craft.mass * (0.35 * input.hull.beam) ** 2)
  return (
    own +
    craft.mass * (craft.centre[2] - centre[2]) ** 2 +
    (rider ? rider.mass * (rider.at[2] - centre[2]) ** 2 : 0)
  )
}
