/**
 * Foam still needed for a swamped craft, and where: enough lift for the load, placed along so that it floats level and
 * outboard and high so that it stays upright; then tried by settling the craft with it.
 * Source: statics; "keep foam high, near the sides" follows the US Coast Guard Boatbuilder's Handbook, flotation part.
 */
import { linearAt, linspace } from '../../base/numerics/interpolate.ts'
import { bisect } from '../../base/numerics/roots.ts'
import { type Box, freeBlocks, mirroredBox } from '../../hull/aboard/boxes.ts'
import type { FoamBlock } from '../../hull/aboard/foamBlocks.ts'
import { stilled } from '../../hull/aboard/liquids.ts'
import { weightSum } from '../../hull/aboard/masses.ts'
import {
  type BuoyantBody,
  type Floater,
  floaterOf,
  reloaded,
  type SlackLiquid,
  withBodies,
} from '../../hull/afloat/load.ts'
import {
  heldAt,
  metacentricHeight,
  type Resting,
  settle,
  sinkDeficit,
  staysUpright,
} from '../../hull/afloat/settle.ts'
import type { Hull } from '../../hull/lines/hullBody.ts'
import { addBelow, clipBody, SUMS, VOLUME } from '../../physics/solid/below.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import { type Mesh, mirroredY, type Vec3 } from '../../physics/solid/mesh.ts'
import { heightsAt } from '../../physics/solid/section.ts'
import { sliceBetween, sliceBox } from '../../physics/solid/slice.ts'
import { makeFrame } from '../../physics/solid/waterFrame.ts'
import { foamLift } from './flotation.ts'
import { wholeLift } from './swamped.ts'

export interface FoamNeedInput {
  hull: Hull
  bodies: readonly BuoyantBody[]
  /** where no foam can go: foam that is there, sealed spaces, machinery, tanks, the reach under a hatch; kept free on both sides alike */
  taken?: readonly Box[]
  /** everything to be carried but slack liquids, kg, and its centre, m */
  mass: number
  centre: Vec3
  liquids?: readonly SlackLiquid[]
  /** kg/m³ of water and foam, fraction of foam volume that soaks */
  water: number
  foam: number
  soaked: number
  /** lift to keep in hand, as a part of the load; 0.1 when left out */
  reserve?: number
}

/** A block to add, and m³ of it inside the hull. */
export interface NewFoam extends FoamBlock {
  held: number
}

export interface FoamNeed {
  /** kg of lift missing; 0 or below when there is enough */
  deficit: number
  /** m³ of foam to add for the lift alone */
  volume: number
  /** kg lifted by a cubic metre of it */
  lift: number
  /** m forward of the transom: the middle of the added foam that would level the craft, held within the hull */
  along: number
  /** blocks in pairs, port and starboard, that overlap neither each other nor what is taken; empty when nothing is needed or there is no room */
  blocks: NewFoam[]
  /** m³ the blocks hold inside the hull, foam that comes on top of what is there: more than `volume` where it takes more to stay upright */
  fitted: number
  /** the craft settled with the blocks, its metacentric height, and whether it then lies upright and level within 10° */
  rest: Resting
  gm: number
  upright: boolean
}

/** Sizes, places and tries the foam. */
export function foamNeeded(input: FoamNeedInput): FoamNeed {
  const { hull, water } = input
  const liquids = input.liquids ?? []
  const whole = weightSum([{ name: 'fixed', mass: input.mass, at: input.centre }, ...liquids.map(stilled)])
  const mass = whole.mass
  const lift = foamLift(water, input.foam, input.soaked)
  const want = mass * (1 + (input.reserve ?? 0.1))
  const have = wholeLift(input.bodies, water)
  const deficit = want - have
  const volume = Math.max(0, deficit) / lift
  let moment = mass * whole.centre[0]
  for (const b of input.bodies) {
    const p = solidProperties(b.mesh)
    moment -= water * b.share * p.volume * p.centroid[0]
  }
  const level = deficit > 0 ? moment / (mass - Math.min(have, mass * 0.999)) : hull.length / 2
  const along = Math.min(0.85 * hull.length, Math.max(0.15 * hull.length, level))
  const base = { deficit, volume, lift }
  const bare = floaterOf({
    bodies: input.bodies,
    mass: input.mass,
    centre: input.centre,
    liquids,
    density: water,
  })
  const tryOut = (at: number, made?: SideBlocks): FoamNeed => {
    const fitted = made?.fitted ?? 0
    const extra = fitted * input.foam
    const centre = withAdded(input.mass, input.centre, extra, made?.middle ?? input.centre)
    const f = reloaded(made ? withBodies(bare, made.bodies) : bare, input.mass + extra, centre)
    const rest = restOf(f)
    const gm = rest.converged ? metacentricHeight(rest.state) : Number.NaN
    const level = Math.abs(rest.value.heel) < mostLean && Math.abs(rest.value.trim) < mostLean
    const upright = rest.converged && level && gm > leastGm
    return { ...base, along: at, blocks: made?.blocks ?? [], fitted, rest, gm, upright }
  }
  const asIs = tryOut(along)
  if (asIs.upright && deficit <= 0) return asIs
  // lift alone is not enough if it then rolls over or stands on end: more of it, other shapes, other places, until it lies level
  const places = [...(deficit > 0 ? [along] : []), ...[0.3, 0.5, 0.7].map((part) => part * hull.length)]
  const taken = (input.taken ?? []).flatMap((b) => [b, mirroredBox(b)])
  const free = shapes.map((shape) => piecesOf(hull, along, shape, taken))
  let best: FoamNeed | undefined
  const step = (0.1 * mass) / lift
  // of the same litres, few big blocks are tried before many
  for (const more of [0, 0.5, 1, 2, 3.5, 5, 7])
    for (const count of [1, 2, 3, Infinity]) {
      for (const pieces of free)
        for (const at of places) {
          const want = Math.max(volume + more * step, 0.1 * step)
          const made = sideBlocks(stripOf(hull, pieces.slice(0, count)), want, at, hull.length, input)
          if (made === undefined) continue
          const got = tryOut(at, made)
          if (best === undefined || better(got, best)) best = got
        }
      if (best?.upright) return best
    }
  return best ?? asIs
}

/** rad of heel and trim within which a swamped craft counts as level, and m of GM from which as upright: judgement, no source */
const mostLean = Math.PI / 18
const leastGm = 0.02

/**
 * Upright first, then left to itself unless that is where it stays. No rest where the moment still turns the craft the same way at
 * `mostLean` of trim: most tries fail by standing on end, and two looks show it where settling would follow it all the way.
 */
function restOf(f: Floater): Resting {
  const deficit = sinkDeficit(f)
  const level = heldAt(f).value
  const none = (): Resting => ({
    value: { h: level.h, trim: 0, heel: 0 },
    converged: false,
    iterations: 0,
    residual: Number.NaN,
    deficit,
    state: level,
  })
  if (!(deficit < 0)) return none()
  const turn = level.g1
  const way = turn < 0 ? mostLean : -mostLean
  if (turn !== 0 && !(heldAt(f, way, 0, level.h).value.g1 * turn < 0)) return none()
  const quick = { giveUp: 0.22, compass: false, tolerance: 1e-7, maxIterations: 16 }
  const held = settle(f, { h: level.h, trim: 0, heel: 0 }, { ...quick, freeHeel: false })
  if (!(held.converged && metacentricHeight(held.state) > leastGm)) return { ...held, converged: false }
  return staysUpright(held) ? held : settle(f, held.value, quick)
}

/** One that lies upright, of few blocks rather than many, and then the stiffest. */
function better(a: FoamNeed, b: FoamNeed): boolean {
  if (a.upright !== b.upright) return a.upright
  if (!a.upright) return false
  if (a.blocks.length !== b.blocks.length) return a.blocks.length < b.blocks.length
  return a.gm > b.gm
}

/** how much of each half breadth from the side inwards, and of the depth from the deck down */
const shapes: readonly (readonly [number, number])[] = [
  [0.35, 0.5],
  [0.5, 0.67],
  [0.5, 1],
  [1, 1],
]

/** m and m³; a slab of foam thinner or smaller than this is not worth cutting */
const thinnest = 0.04
const smallest = 5e-4

/** A free piece of the port side, and its volume up to each station. */
interface Piece {
  box: Box
  mesh: Mesh
  held: number
  aft: number[]
}

/** Pieces of the port side together; starboard is their mirror image. */
interface Strip {
  x: number[]
  pieces: readonly Piece[]
  free: number[]
}

const stationsOf = (hull: Hull): number[] => Array.from(linspace(0, hull.length, 49))

function stripOf(hull: Hull, pieces: readonly Piece[]): Strip {
  const x = stationsOf(hull)
  return { x, pieces, free: x.map((_, i) => pieces.reduce((v, p) => v + p.aft[i]!, 0)) }
}

/** What is free on the port side within a shape, over the hull's whole length, the biggest piece first. */
function piecesOf(
  hull: Hull,
  along: number,
  [width, depth]: readonly [number, number],
  taken: readonly Box[],
): Piece[] {
  const half = hull.beam / 2
  const top = heightsAt(hull.mesh, along, 0.3 * hull.beam).at(-1) ?? hull.depth
  const whole: Box = {
    low: [0, half * (1 - width), Math.max(0, top - depth * hull.depth)],
    high: [hull.length, half, top],
  }
  const mesh = sliceBox(hull.mesh, whole.low, whole.high)
  if (mesh === undefined) return []
  const x = stationsOf(hull)
  const pieces = freeBlocks(whole, taken, thinnest, smallest).flatMap((box) => {
    const piece = sliceBox(mesh, box.low, box.high)
    const held = volumeOf(piece)
    if (piece === undefined || !(held > smallest)) return []
    return [{ box, mesh: piece, held, aft: volumesAft(piece, x) }]
  })
  return pieces.sort((a, b) => b.held - a.held)
}

/** Volume of a solid aft of each x: what lies "under water" when the water stands across the hull. */
function volumesAft(mesh: Mesh, x: readonly number[]): number[] {
  const body = clipBody(mesh)
  const across = makeFrame(Math.PI / 2, 0)
  const sums = new Float64Array(SUMS)
  return x.map((at) => {
    sums.fill(0)
    addBelow(body, across, at, sums)
    return sums[VOLUME]!
  })
}

const volumeOf = (mesh: Mesh | undefined): number => (mesh === undefined ? 0 : solidProperties(mesh).volume)

interface SideBlocks {
  blocks: NewFoam[]
  bodies: BuoyantBody[]
  fitted: number
  middle: [number, number, number]
}

function withAdded(m: number, c: Vec3, extra: number, at: Vec3): [number, number, number] {
  return [0, 1, 2].map((k) => (m * c[k]! + extra * at[k]!) / (m + extra)) as [number, number, number]
}

/** Blocks along each side in what is free there, as long as the volume asks; undefined when the hull has no room for it. */
function sideBlocks(
  strip: Strip,
  volume: number,
  along: number,
  length: number,
  foam: { foam: number; soaked: number },
): SideBlocks | undefined {
  const ends = (l: number): [number, number] => [Math.max(0, along - l / 2), Math.min(length, along + l / 2)]
  const held = (l: number) => {
    const [a, b] = ends(l)
    return 2 * (linearAt(strip.x, strip.free, b) - linearAt(strip.x, strip.free, a))
  }
  if (!(held(2 * length) > volume)) return undefined
  const found = bisect((l) => held(l) - volume, 0, 2 * length, { tolerance: 1e-4 })
  if (!found.converged) return undefined
  const [x0, x1] = ends(found.value)
  const common = { density: foam.foam, soaked: foam.soaked }
  const share = 1 - foam.soaked
  const made: SideBlocks = { bodies: [], blocks: [], fitted: 0, middle: [0, 0, 0] }
  for (const { box, mesh } of strip.pieces) {
    const [from, to] = [Math.max(x0, box.low[0]), Math.min(x1, box.high[0])]
    if (!(to - from > thinnest)) continue
    const cut = sliceBetween(mesh, 'x', from, to)
    if (cut === undefined) continue
    const { volume: held, centroid } = solidProperties(cut)
    if (!(held > smallest)) continue
    // the two sides' middle lies on the centreline
    made.middle = withAdded(made.fitted, made.middle, 2 * held, [centroid[0], 0, centroid[2]])
    const port: Box = { low: [from, box.low[1], box.low[2]], high: [to, box.high[1], box.high[2]] }
    made.fitted += 2 * held
    made.blocks.push(
      { name: 'foam, port', ...port, ...common, held },
      { name: 'foam, starboard', ...mirroredBox(port), ...common, held },
    )
    made.bodies.push(
      { name: 'foam, port', mesh: cut, share },
      { name: 'foam, starboard', mesh: mirroredY(cut), share },
    )
  }
  return made.blocks.length > 0 ? made : undefined
}
