/**
 * Foam still needed for a swamped craft, and where: enough lift for the load, placed along so that it floats level and
 * outboard and high so that it stays upright; then tried by settling the craft with it.
 * Source: statics; "keep foam high, near the sides" follows the US Coast Guard Boatbuilder's Handbook, flotation part.
 */
import { solidProperties } from '../../solid/integrals.ts'
import type { Vec3 } from '../../solid/mesh.ts'
import { heightsAt } from '../../solid/section.ts'
import { sliceBox } from '../../solid/slice.ts'
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
  /** m³ of foam to add in all */
  volume: number
  /** kg lifted by a cubic metre of it */
  lift: number
  /** m forward of the transom: the middle of the added foam that would level the craft, held within the hull */
  along: number
  /** a block on each side as drawn up; empty when nothing is needed or the hull has no room */
  blocks: FoamBlock[]
  /** m³ the blocks hold inside the hull */
  fitted: number
  /** the craft settled with the blocks, and its metacentric height */
  rest: Resting
  gm: number
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
  const made =
    volume > 0 ? sideBlocks(hull, volume, along, input.foam, input.soaked) : { blocks: [], fitted: 0 }
  const added: BuoyantBody[] = made.blocks.flatMap((b) => {
    const mesh = sliceBox(hull.mesh, b.low, b.high)
    return mesh === undefined ? [] : [{ name: b.name, mesh, share: 1 - b.soaked }]
  })
  const extra = made.fitted * input.foam
  const centre = withAdded(mass, input.centre, extra, [along, 0, 0.6 * hull.depth])
  const rest = settle(
    floaterOf({ bodies: [...input.bodies, ...added], mass: mass + extra, centre, density: water }),
  )
  return {
    deficit,
    volume,
    lift,
    along,
    ...made,
    rest,
    gm: rest.converged ? metacentricHeight(rest.state) : Number.NaN,
  }
}

function withAdded(m: number, c: Vec3, extra: number, at: Vec3): [number, number, number] {
  return [0, 1, 2].map((k) => (m * c[k]! + extra * at[k]!) / (m + extra)) as [number, number, number]
}

/** A block under the deck along each side, as long as the volume asks. */
function sideBlocks(
  hull: Hull,
  volume: number,
  along: number,
  density: number,
  soaked: number,
): { blocks: FoamBlock[]; fitted: number } {
  const half = hull.beam / 2
  const top = heightsAt(hull.mesh, along, 0.3 * hull.beam).at(-1) ?? hull.depth
  // a quarter of the beam wide a side and the upper two thirds deep to begin with; deeper and wider when the length runs out
  for (const [width, depth] of [
    [0.5, 0.67],
    [0.75, 0.9],
    [1, 1],
  ] as const) {
    const bounds = (length: number): [Vec3, Vec3] => [
      [Math.max(0, along - length / 2), half * (1 - width), top - depth * hull.depth],
      [Math.min(hull.length, along + length / 2), half + 1e-3, top],
    ]
    const held = (length: number) => {
      const mesh = sliceBox(hull.mesh, ...bounds(length))
      return mesh === undefined ? 0 : 2 * solidProperties(mesh).volume
    }
    if (held(2 * hull.length) < volume && width < 1) continue
    let low = 1e-3
    let high = 2 * hull.length
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2
      if (held(middle) < volume) low = middle
      else high = middle
    }
    const [a, b] = bounds(high)
    const port: FoamBlock = { name: 'foam, port', low: a, high: b, density, soaked }
    const starboard: FoamBlock = {
      ...port,
      name: 'foam, starboard',
      low: [a[0], -b[1], a[2]],
      high: [b[0], -a[1], b[2]],
    }
    return { blocks: [port, starboard], fitted: held(high) }
  }
  return { blocks: [], fitted: 0 }
}
