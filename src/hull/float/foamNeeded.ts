/**
 * Foam still needed for a swamped craft, and where: enough lift for the load, placed along so that it floats level and
 * outboard and high so that it stays upright; then tried by settling the craft with it.
 * Source: statics; "keep foam high, near the sides" follows the US Coast Guard Boatbuilder's Handbook, flotation part.
 */
import { solidProperties } from '../../solid/integrals.ts'
import type { Mesh, Vec3 } from '../../solid/mesh.ts'
import { heightsAt } from '../../solid/section.ts'
import { sliceBetween, sliceBox } from '../../solid/slice.ts'
import type { Hull } from '../shape/hull.ts'
import { foamLift } from './flotation.ts'
import { type BuoyantBody, floaterOf } from './load.ts'
import { metacentricHeight, type Resting, settle } from './settle.ts'
import { type FoamBlock, wholeLift } from './swamped.ts'

export interface FoamNeedInput {
  hull: Hull
  bodies: readonly BuoyantBody[]
  /** everything to be carried, kg, and its centre, m */
  mass: number
  centre: Vec3
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
  const { hull, mass, water } = input
  const lift = foamLift(water, input.foam, input.soaked)
  const want = mass * (1 + (input.reserve ?? 0.1))
  const have = wholeLift(input.bodies, water)
  const deficit = want - have
  const volume = Math.max(0, deficit) / lift
  let moment = mass * input.centre[0]
  for (const b of input.bodies) {
    const p = solidProperties(b.mesh)
    moment -= water * b.share * p.volume * p.centroid[0]
  }
  const level = deficit > 0 ? moment / (mass - Math.min(have, mass * 0.999)) : hull.length / 2
  const along = Math.min(0.85 * hull.length, Math.max(0.15 * hull.length, level))
  const base = { deficit, volume, lift }
  const tryOut = (at: number, blocks: FoamBlock[], fitted: number): FoamNeed => {
    const added: BuoyantBody[] = blocks.flatMap((b) => {
      const mesh = sliceBox(hull.mesh, b.low, b.high)
      return mesh === undefined ? [] : [{ name: b.name, mesh, share: 1 - b.soaked }]
    })
    const extra = fitted * input.foam
    const centre = withAdded(mass, input.centre, extra, [at, 0, 0.6 * hull.depth])
    const rest = settle(
      floaterOf({ bodies: [...input.bodies, ...added], mass: mass + extra, centre, density: water }),
      undefined,
      { giveUp: 0.6, compass: false },
    )
    const gm = rest.converged ? metacentricHeight(rest.state) : Number.NaN
    const level = Math.abs(rest.value.heel) < Math.PI / 18 && Math.abs(rest.value.trim) < Math.PI / 18
    return { ...base, along: at, blocks, fitted, rest, gm, upright: rest.converged && level && gm > 0.02 }
  }
  const asIs = tryOut(along, [], 0)
  if (asIs.upright && deficit <= 0) return asIs
  // lift alone is not enough if it then rolls over or stands on end: more of it, other shapes, other places, until it lies level
  const places = [0, 0.15, 0.3].map((part) => along + part * (hull.length / 2 - along) * 2)
  const strips = shapes.map((shape) => ({ shape, mesh: stripOf(hull, along, shape) }))
  let best: FoamNeed | undefined
  for (const more of [1, 1.15, 1.3, 1.5, 1.75, 2, 2.5, 3]) {
    for (const { shape, mesh } of strips)
      for (const at of places) {
        const made = mesh && sideBlocks(hull, mesh, Math.max(volume, 0.005) * more, at, shape, input)
        if (!made) continue
        const got = tryOut(at, made.blocks, made.fitted)
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
  [0.75, 1],
  [1, 1],
]

/** y and z limits of the port block of a shape, m. */
function stripLimits(
  hull: Hull,
  along: number,
  [width, depth]: readonly [number, number],
): [number, number, number, number] {
  const half = hull.beam / 2
  const top = heightsAt(hull.mesh, along, 0.3 * hull.beam).at(-1) ?? hull.depth
  return [half * (1 - width), half + 1e-3, top - depth * hull.depth, top]
}

/** The port strip of a shape over the hull's whole length. */
function stripOf(hull: Hull, along: number, shape: readonly [number, number]): Mesh | undefined {
  const [y0, y1, z0, z1] = stripLimits(hull, along, shape)
  return sliceBox(hull.mesh, [-1, y0, z0], [hull.length + 1, y1, z1])
}

function withAdded(m: number, c: Vec3, extra: number, at: Vec3): [number, number, number] {
  return [0, 1, 2].map((k) => (m * c[k]! + extra * at[k]!) / (m + extra)) as [number, number, number]
}

/** A block under the deck along each side, as long as the volume asks; undefined when the hull has no room for it. */
function sideBlocks(
  hull: Hull,
  strip: Mesh,
  volume: number,
  along: number,
  shape: readonly [number, number],
  foam: { foam: number; soaked: number },
): { blocks: FoamBlock[]; fitted: number } | undefined {
  const ends = (length: number): [number, number] => [
    Math.max(0, along - length / 2),
    Math.min(hull.length, along + length / 2),
  ]
  const held = (length: number) => {
    const mesh = sliceBetween(strip, 'x', ...ends(length))
    return mesh === undefined ? 0 : 2 * solidProperties(mesh).volume
  }
  let low = 1e-3
  let high = 2 * hull.length
  if (held(high) < volume) return undefined
  for (let i = 0; i < 24; i++) {
    const middle = (low + high) / 2
    if (held(middle) < volume) low = middle
    else high = middle
  }
  const [x0, x1] = ends(high)
  const [y0, y1, z0, z1] = stripLimits(hull, along, shape)
  const common = { density: foam.foam, soaked: foam.soaked }
  return {
    blocks: [
      { name: 'foam, port', low: [x0, y0, z0], high: [x1, y1, z1], ...common },
      { name: 'foam, starboard', low: [x0, -y1, z0], high: [x1, -y0, z1], ...common },
    ],
    fitted: held(high),
  }
}
