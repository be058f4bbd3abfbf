/**
 * What the doubts of the weights do to the drag. The hull knows of the weights list no more than its mass and its centre, and those of a
 * draw are elementary sums; so the hull is asked at a few masses and centres instead of once for each end of every weight's doubts.
 */
import type { Craft } from '../../craft/index.ts'
import { carriedOn } from '../../hull/aboard/aboard.ts'
import { prepareDrag } from '../../trades/drag/drag.ts'
import { hullFromCraft } from '../../trades/drag/dragFromCraft.ts'
import { type Doubt, quantityAt } from './draws.ts'
import type { CraftModel } from './propulsionModel.ts'
import { bentHull, type Grid, hullSurface, speedCount } from './surfaces.ts'

/** A doubt of one weight: what it adds at its high bound to the mass, kg, and its moments, kg·m, in proportion between. */
interface Moves {
  index: number
  mass: number
  x: number
  z: number
  /** where the value lies between the bounds, -1 to 1 */
  place: number
}

/** One direction: what a unit of it does to the bent hull surface, and its square. */
interface Bend {
  c1: Float64Array
  c2: Float64Array
}

export interface LoadEffect {
  moves: readonly Moves[]
  /** kg and m, as it stands */
  mass: number
  x: number
  z: number
  along: Readonly<Record<'mass' | 'x' | 'z', Bend>>
}

const ofWeight = /^weights\.(\d+)\.(mass|at\.0|at\.2)$/

/** True for a doubt that reaches the hull by the sum of the weights alone, or not at all. */
export const isOfLoad = (doubt: Doubt): boolean => doubt.path.startsWith('weights.')

/** The effect of all doubts of weights; undefined where the file lists none. `still` is the bent hull surface as it stands. */
export function loadEffect(
  craft: Craft,
  base: CraftModel,
  grid: Grid,
  doubts: readonly Doubt[],
  still: Float64Array,
  dragScale: number,
): LoadEffect | undefined {
  const carried = carriedOn(craft)
  if (carried.assumed) return undefined
  const { mass, x, z } = carried.whole
  const moves: Moves[] = []
  doubts.forEach((doubt, index) => {
    const [, k, of] = ofWeight.exec(doubt.path) ?? []
    const q = quantityAt(craft, doubt.path)
    const item = carried.items[Number(k)]
    if (of === undefined || !q || !item) return
    const half = (q.high - q.low) / 2
    const place = (2 * (q.value - q.low)) / (q.high - q.low) - 1
    const [ax, , az] = item.at
    if (of === 'mass') moves.push({ index, place, mass: half, x: half * ax, z: half * az })
    else
      moves.push({
        index,
        place,
        mass: 0,
        x: of === 'at.0' ? half * item.mass : 0,
        z: of === 'at.2' ? half * item.mass : 0,
      })
  })
  if (moves.length === 0) return undefined
  // how far draws usually go: two standard deviations of the sum of even spreads
  const spread = (pick: (m: Moves) => number) =>
    2 * Math.sqrt(moves.reduce((s, m) => s + pick(m) ** 2 / 3, 0))
  const steps = {
    mass: Math.min(
      spread((m) => m.mass),
      0.5 * mass,
    ),
    x: spread((m) => m.x - x * m.mass) / mass,
    z: spread((m) => m.z - z * m.mass) / mass,
  }
  const hullAt = (d: { mass?: number; x?: number; z?: number }) => {
    const whole = { mass: mass + (d.mass ?? 0), x: x + (d.x ?? 0), z: z + (d.z ?? 0) }
    const { spec, loading, conditions, float } = hullFromCraft(craft, { ...carried, whole })
    const drag = prepareDrag(spec, loading, conditions, float ? { float } : {})
    return bentHull(hullSurface({ ...base, drag }, grid), dragScale)
  }
  const bend = (name: 'mass' | 'x' | 'z'): Bend => {
    const h = steps[name]
    const [up, down] = h > 1e-9 ? [hullAt({ [name]: h }), hullAt({ [name]: -h })] : [still, still]
    const per = (f: (i: number) => number) =>
      still.map((_, i) => {
        const y = h > 1e-9 ? f(i) : 0
        return Number.isFinite(y) ? y : 0
      })
    return {
      c1: per((i) => (up[i]! - down[i]!) / (2 * h)),
      c2: per((i) => (up[i]! - 2 * still[i]! + down[i]!) / (2 * h * h)),
    }
  }
  return { moves, mass, x, z, along: { mass: bend('mass'), x: bend('x'), z: bend('z') } }
}

/** Adds what the weights of draw `u` do to a bent hull surface; its last number is the mass. */
export function addLoad(out: Float64Array, load: LoadEffect, u: ArrayLike<number>): void {
  let mass = load.mass
  let mx = load.mass * load.x
  let mz = load.mass * load.z
  for (const m of load.moves) {
    const part = u[m.index]!
    if (Number.isNaN(part)) continue
    const by = 2 * part - 1 - m.place
    mass += by * m.mass
    mx += by * m.x
    mz += by * m.z
  }
  const moved = { mass: mass - load.mass, x: mx / mass - load.x, z: mz / mass - load.z }
  for (const name of ['mass', 'x', 'z'] as const) {
    const d = moved[name]
    if (d === 0) continue
    const { c1, c2 } = load.along[name]
    for (let i = 0; i < speedCount; i++) out[i] = out[i]! + d * (c1[i]! + d * c2[i]!)
  }
  out[speedCount] = out[speedCount]! + moved.mass
}
