/**
 * Foam still needed for a swamped craft, and where: enough lift for the load, placed along so that it floats level and
 * outboard and high so that it stays upright; then tried by settling the craft with it.
 * Source: statics; "keep foam high, near the sides" follows the US Coast Guard Boatbuilder's Handbook, flotation part.
 */
import { linearAt, linspace } from '../../numerics/interpolate.ts'
import { bisect } from '../../numerics/roots.ts'
import { addBelow, clipBody, SUMS, VOLUME } from '../../solid/below.ts'
import { solidProperties } from '../../solid/integrals.ts'
import { type Mesh, mirroredY, type Vec3 } from '../../solid/mesh.ts'
import { heightsAt } from '../../solid/section.ts'
import { sliceBetween, sliceBox } from '../../solid/slice.ts'
import { makeFrame } from '../../solid/waterFrame.ts'
import type { Hull } from '../shape/hull.ts'
import { foamLift } from './flotation.ts'
import { type BuoyantBody, floaterOf, type SlackLiquid } from './load.ts'
import { metacentricHeight, type Resting, settle } from './settle.ts'
import { type FoamBlock, wholeLift } from './swamped.ts'
import { stilled } from './tanks.ts'
import { weightSum } from './weights.ts'

export interface FoamNeedInput {
  hull: Hull
  bodies: readonly BuoyantBody[]
  /** foam already there (its bodies are among `bodies`): not counted again where new foam would overlap it */
  present?: readonly FoamBlock[]
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

export interface FoamNeed {
  /** kg of lift missing; 0 or below when there is enough */
  deficit: number
  /** m³ of foam to add for the lift alone */
  volume: number
  /** kg lifted by a cubic metre of it */
  lift: number
  /** m forward of the transom: the middle of the added foam that would level the craft, held within the hull */
  along: number
  /** a block on each side as drawn up; empty when nothing is needed or the hull has no room */
  blocks: FoamBlock[]
  /** m³ the blocks hold inside the hull: more than `volume` where it takes more to stay upright */
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
  const tryOut = (at: number, made?: SideBlocks): FoamNeed => {
    const fitted = made?.fitted ?? 0
    const extra = fitted * input.foam
    const centre = withAdded(input.mass, input.centre, extra, [at, 0, 0.6 * hull.depth])
    const f = floaterOf({
      bodies: [...input.bodies, ...(made?.bodies ?? [])],
      mass: input.mass + extra,
      centre,
      liquids,
      density: water,
    })
    // most tries fail by standing on end or rolling over: that shows with the heel held, before any roll is followed
    const quick = { giveUp: 0.22, compass: false, tolerance: 1e-7, maxIterations: 16 }
    const held = settle(f, undefined, { ...quick, freeHeel: false })
    const worth = held.converged && metacentricHeight(held.state) > 0.02
    const rest = worth ? settle(f, held.value, quick) : { ...held, converged: false }
    const gm = rest.converged ? metacentricHeight(rest.state) : Number.NaN
    const level = Math.abs(rest.value.heel) < Math.PI / 18 && Math.abs(rest.value.trim) < Math.PI / 18
    const upright = rest.converged && level && gm > 0.02
    return { ...base, along: at, blocks: made?.blocks ?? [], fitted, rest, gm, upright }
  }
  const asIs = tryOut(along)
  if (asIs.upright && deficit <= 0) return asIs
  // lift alone is not enough if it then rolls over or stands on end: more of it, other shapes, other places, until it lies level
  const places = [...(deficit > 0 ? [along] : []), ...[0.3, 0.5, 0.7].map((part) => part * hull.length)]
  const strips = shapes.flatMap((shape) => stripOf(hull, along, shape, input.present ?? []) ?? [])
  let best: FoamNeed | undefined
  const step = (0.1 * mass) / lift
  for (const more of [0, 0.5, 1, 2, 3.5, 5, 7]) {
    for (const strip of strips)
      for (const at of places) {
        const made = sideBlocks(strip, Math.max(volume + more * step, 0.1 * step), at, hull.length, input)
        if (made === undefined) continue
        const got = tryOut(at, made)
        if (got.upright && (!best?.upright || got.gm > best.gm)) best = got
        best ??= got
      }
    if (best?.upright) break
  }
  return best ?? asIs
}

/** how much of each half breadth from the side inwards, and of the depth from the deck down */
const shapes: readonly (readonly [number, number])[] = [
  [0.35, 0.5],
  [0.5, 0.67],
  [0.5, 1],
  [1, 1],
]

/** The port strip of a shape over the hull's whole length, what of it is foam already, and its free volume up to each x. */
interface Strip {
  limits: [number, number, number, number]
  mesh: Mesh
  taken: Mesh[]
  x: number[]
  free: number[]
}

function stripOf(
  hull: Hull,
  along: number,
  [width, depth]: readonly [number, number],
  present: readonly FoamBlock[],
): Strip | undefined {
  const half = hull.beam / 2
  const top = heightsAt(hull.mesh, along, 0.3 * hull.beam).at(-1) ?? hull.depth
  const limits: Strip['limits'] = [half * (1 - width), half + 1e-3, top - depth * hull.depth, top]
  const mesh = sliceBox(hull.mesh, [-1, limits[0], limits[2]], [hull.length + 1, limits[1], limits[3]])
  if (mesh === undefined) return undefined
  const taken = present.flatMap((b) => sliceBox(mesh, b.low, b.high) ?? [])
  const x = Array.from(linspace(0, hull.length, 49))
  const all = volumesAft(mesh, x)
  const gone = taken.map((m) => volumesAft(m, x))
  const free = x.map((_, i) => all[i]! - gone.reduce((v, g) => v + g[i]!, 0))
  return { limits, mesh, taken, x, free }
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
  blocks: FoamBlock[]
  bodies: BuoyantBody[]
  fitted: number
}

function withAdded(m: number, c: Vec3, extra: number, at: Vec3): [number, number, number] {
  return [0, 1, 2].map((k) => (m * c[k]! + extra * at[k]!) / (m + extra)) as [number, number, number]
}

/** A block under the deck along each side, as long as the volume asks; undefined when the hull has no room for it. */
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
  const found = bisect((l) => held(l) - volume, 0, 2 * length, { tolerance: 1e-4 })
  if (!found.converged) return undefined
  const [x0, x1] = ends(found.value)
  const [y0, y1, z0, z1] = strip.limits
  const common = { density: foam.foam, soaked: foam.soaked }
  const share = 1 - foam.soaked
  const bodies: BuoyantBody[] = []
  const add = (mesh: Mesh | undefined, turn: 1 | -1) => {
    if (mesh === undefined) return
    bodies.push({ name: 'foam, port', mesh, share: turn * share })
    bodies.push({ name: 'foam, starboard', mesh: mirroredY(mesh), share: turn * share })
  }
  add(sliceBetween(strip.mesh, 'x', x0, x1), 1)
  for (const m of strip.taken) add(sliceBetween(m, 'x', x0, x1), -1)
  return {
    bodies,
    blocks: [
      { name: 'foam, port', low: [x0, y0, z0], high: [x1, y1, z1], ...common },
      { name: 'foam, starboard', low: [x0, -y1, z0], high: [x1, -y0, z1], ...common },
    ],
    fitted: bodies.reduce((v, b) => v + Math.sign(b.share) * volumeOf(b.mesh), 0),
  }
}
