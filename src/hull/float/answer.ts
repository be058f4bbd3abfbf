/** Everything the Float page asks, from plain numbers: each load at rest, both stabilities of a rider, openings, swamped, foam. */
import type { Flag, Range } from '../../answers/solved.ts'
import type { Vec3 } from '../../solid/mesh.ts'
import { heightAbove, makeFrame } from '../../solid/waterFrame.ts'
import { deckHeight, type Hull } from '../shape/hull.ts'
import type { Taken } from './boxes.ts'
import { type FoamNeed, foamNeeded } from './foamNeeded.ts'
import {
  type BuoyantBody,
  type Floater,
  type FloatingLoad,
  floaterOf,
  type SlackLiquid,
  wholeMass,
} from './load.ts'
import { heightOver, type Opening, type OpeningRow, openingsTable } from './openings.ts'
import { positionFlags } from './positions.ts'
import { riderCentre, type Stance } from './rider.ts'
import { type RightingCurve, rightingCurve } from './righting.ts'
import { type Attitude, longitudinalMetacentricHeight, metacentricHeight, settle } from './settle.ts'
import {
  type Compartment,
  type FoamBlock,
  type FoamVolume,
  foamVolumes,
  heldBoxes,
  sealedSpaces,
  swampedBodies,
} from './swamped.ts'
import { liquidsOf, liquidWeight, type Tank } from './tanks.ts'
import { rollPeriod, rollRadius } from './tests.ts'
import { type Weight, type WeightSum, weightSum } from './weights.ts'

interface FloatRider {
  /** kg, m */
  mass: number
  stature: number
  stance: Stance
  /** feet, knees or seat: forward of the transom and to port, m */
  x: number
  y: number
}

export interface FloatInput {
  hull: Hull
  /** kg/m³ */
  water: number
  weights: readonly (Weight & { sealed?: boolean })[]
  rider: FloatRider
  openings: readonly Opening[]
  foam: readonly FoamBlock[]
  compartments: readonly Compartment[]
  /** room that machinery and hands need, where no more foam can go */
  taken?: readonly Taken[]
  /** tanks with liquid whose weight is NOT in the weights list */
  tanks?: readonly Tank[]
}

/** The liquids that run, all cells of all tanks. */
export function slackOf(input: Pick<FloatInput, 'tanks'>): SlackLiquid[] {
  return (input.tanks ?? []).flatMap(liquidsOf)
}

/** Everything aboard but the rider as weights: the list, and each tank's liquid as it lies in the level craft. */
export function aboardOf(input: Pick<FloatInput, 'tanks' | 'weights'>): Weight[] {
  return [...input.weights, ...(input.tanks ?? []).flatMap((t) => liquidWeight(t) ?? [])]
}

type LoadName =
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

/** The craft without its rider: what is fixed, what runs, and both together with the liquid lying still. */
interface CraftAboard {
  fixed: WeightSum
  liquids: SlackLiquid[]
  whole: WeightSum
}

function craftOf(input: FloatInput): CraftAboard {
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

function placed(input: FloatInput, rider: FloatRider, deeper = 0): Placed {
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
function alongside(input: FloatInput): Placed {
  const edge = input.hull.edge.reduce((a, b) =>
    Math.abs(b[0] - input.rider.x) < Math.abs(a[0] - input.rider.x) ? b : a,
  )
  return { mass: 0.1 * input.rider.mass, at: edge, feet: edge, balances: false }
}

function together(
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
function loadOf(
  input: FloatInput,
  craft: CraftAboard,
  bodies: readonly BuoyantBody[],
  mass = 0,
  at: Vec3 = [0, 0, 0],
): FloatingLoad {
  const all = together(craft.fixed, mass, at)
  return { bodies, mass: all.mass, centre: all.centre, density: input.water, liquids: craft.liquids }
}

function caseOf(
  input: FloatInput,
  name: LoadName,
  bodies: readonly BuoyantBody[],
  craft: CraftAboard,
  who: FloatRider | Placed | undefined,
): LoadCase {
  const rider = who === undefined ? undefined : 'at' in who ? who : placed(input, who)
  const whole = together(craft.whole, rider?.mass ?? 0, rider?.at ?? [0, 0, 0])
  const loadAt = (at: Vec3 | undefined) => loadOf(input, craft, bodies, rider?.mass, at)
  const gm = (at: Vec3 | undefined) => {
    const up = settle(floaterOf(loadAt(at)), undefined, {
      freeHeel: false,
      leaveEdge: false,
    })
    return up.converged
      ? { t: metacentricHeight(up.state), l: longitudinalMetacentricHeight(up.state) }
      : { t: Number.NaN, l: Number.NaN }
  }
  const stiff = gm(rider?.at)
  const free = rider ? gm(rider.feet) : stiff
  // a rider who would fall over stiff keeps his balance if he can: his weight then acts where he touches the deck
  const acts = rider !== undefined && (rider.balances || stiff.t < 0) ? rider.feet : rider?.at
  const rest = settle(floaterOf(loadAt(acts)), undefined, { giveUp: 1.2 })
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
    gmRigid: stiff.t,
    gmFeet: free.t,
    gmLength: stiff.l,
    rollPeriod: rollPeriod(
      rollRadius(rollInertia(input, craft.whole, rider, whole.centre), whole.mass),
      stiff.t,
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

/**
 * Righting arm over heel, with the rider as the file has it (weight over feet, knees or seat unless prone) or with nobody aboard.
 * Apart from `floatAnswer`, as only its own picture needs it. An empty curve when it sinks.
 */
export function rightingOf(input: FloatInput, aboard: 'rider' | 'stiff rider' | 'nobody'): RightingCurve {
  const f = floaterFor(input, aboard)
  if (!(wholeMass(f) < f.mostLift)) return sunkenCurve()
  return rightingCurve(f, undefined, { edge: input.hull.edge, openings: input.openings })
}

/** Righting arm at one heel (rad), m, the craft finding its own draft and trim; NaN where it sinks or does not settle. */
export function rightingAt(
  input: FloatInput,
  aboard: 'rider' | 'stiff rider' | 'nobody',
  heel: number,
): number {
  const f = floaterFor(input, aboard)
  if (!(wholeMass(f) < f.mostLift)) return Number.NaN
  const start = settle(f, undefined, { freeHeel: false, tolerance: 1e-8 })
  const at = settle(f, { ...start.value, heel }, { freeHeel: false, tolerance: 1e-9 })
  return at.converged ? at.state.g2 / (at.state.mass * Math.cos(at.value.trim)) : Number.NaN
}

function floaterFor(input: FloatInput, aboard: 'rider' | 'stiff rider' | 'nobody'): Floater {
  const who = aboard === 'nobody' ? undefined : placed(input, input.rider)
  const at = who && (who.balances && aboard === 'rider' ? who.feet : who.at)
  const body: BuoyantBody = { name: 'hull', mesh: input.hull.mesh, share: 1 }
  return floaterOf(loadOf(input, craftOf(input), [body], who?.mass, at))
}

function sunkenCurve(): RightingCurve {
  const none = new Float64Array(0)
  const marks = { greatest: { arm: Number.NaN, heel: Number.NaN }, rests: [], areaTo30: Number.NaN }
  return {
    heel: none,
    arm: none,
    trim: none,
    h: none,
    energy: none,
    converged: false,
    gm: Number.NaN,
    ...marks,
  }
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

/** GM with its likely range: weights as given, the rider's centre by posture, the two at once as independent. */
function ranges(input: FloatInput, craft: WeightSum, ridden: LoadCase): { gmRigid: Range; gmFeet: Range } {
  const c = riderCentre(input.rider.stance, input.rider.stature)
  const part = input.rider.mass / ridden.mass
  const craftGive = ((craft.giveCentre[2] + 0.02) * craft.mass) / ridden.mass
  const posture = Math.max(c.high - c.height, c.height - c.low) * part
  const floats = !ridden.sinks
  const around = (value: number, give: number): Range => ({
    value,
    low: floats ? value - give : value,
    high: floats ? value + give : value,
  })
  return {
    gmRigid: around(ridden.gmRigid, Math.hypot(craftGive, posture)),
    gmFeet: around(ridden.gmFeet, craftGive),
  }
}
