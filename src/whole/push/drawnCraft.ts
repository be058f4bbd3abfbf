/**
 * A craft as something that thousands of draws of its doubts can be solved for: each doubt's effect on the parts of the balance
 * (surfaces.ts) is a parabola through its bounds; a draw sums them, and engines and impeller, thrust and drag are brought
 * together anew for it. Against the whole balance: docs/ranges.md.
 */

import { type Effect, effectThrough } from '../../base/numerics/effects.ts'
import type { Craft } from '../../craft/index.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import { MapStore, modelFromCraft } from './craftModel.ts'
import { type Doubt, leantBy } from './draws.ts'
import type { Table } from './operatingTable.ts'
import type { CraftModel } from './propulsionModel.ts'
import {
  bent,
  engineSurface,
  type Grid,
  gridOf,
  hullSurface,
  jetSurface,
  rotationCount,
  speedCount,
} from './surfaces.ts'

/** Effects of one doubt on one part, node by node: c0 + c1 x + c2 x², x from -1 at its low bound to 1 at its high one. */
interface PartEffect {
  /** which doubt */
  index: number
  c0: Float64Array
  c1: Float64Array
  c2: Float64Array
}

/** What two strong doubts of the jet do together beyond each by itself: c (xa - a) (xb - b), a and b where they stand. */
interface PairEffect {
  a: number
  b: number
  placeA: number
  placeB: number
  torque: Float64Array
  thrust: Float64Array
}

/** An engine's doubts that are known in closed form: factors on its torque and its rotations. */
export interface EngineFactor {
  index: number
  engine: number
  on: 'torque' | 'rotation' | 'power at'
  low: number
  high: number
}

/** Everything that a draw is solved from. */
export interface DrawnCraft {
  grid: Grid
  model: CraftModel
  doubts: readonly Doubt[]
  /** bent torque and thrust of the jet, bent drag with the mass, torque of each engine: at the craft's own values */
  torque: Float64Array
  thrust: Float64Array
  hull: Float64Array
  engines: readonly Float64Array[]
  scales: { torque: number; thrust: number; drag: number }
  /** effects on them */
  onTorque: readonly PartEffect[]
  onThrust: readonly PartEffect[]
  onHull: readonly PartEffect[]
  onEngine: readonly (readonly PartEffect[])[]
  pairs: readonly PairEffect[]
  factors: readonly EngineFactor[]
  /** indexes of doubts with a closed form of their own; -1 where the craft has none */
  ratio: number
  efficiency: number
  drag: number
  /** indexes of all doubts that move anything */
  moving: readonly number[]
}

const placeOf = (d: Doubt) => Math.min(1, Math.max(-1, (2 * (d.value - d.low)) / (d.high - d.low) - 1))

/** The parts of a craft as it stands, bent; `hull` where that is known already. */
export function partsOf(model: CraftModel, grid: Grid, scales: DrawnCraft['scales'], hull?: Float64Array) {
  const jet = jetSurface(model, grid)
  return {
    torque: jet.torque.map((y) => bent(y, scales.torque)),
    thrust: jet.thrust.map((y) => bent(y, scales.thrust)),
    hull: hull ?? bentHull(hullSurface(model, grid), scales.drag),
    engines: engineSurface(model, grid),
  }
}

const bentHull = (hull: Float64Array, scale: number) =>
  hull.map((y, i) => (i < speedCount ? bent(y, scale) : y))

/** Takes the effects of every doubt of a solved craft. */
export function drawnCraft(
  craft: Craft,
  model: CraftModel,
  table: Table,
  doubts: readonly Doubt[],
  solved?: SolvedCurves,
): DrawnCraft {
  const grid = gridOf(model, table)
  const maps = new MapStore(2, model.units[0]!.map)
  const base = modelFromCraft(craft, maps, {}, solved)
  const jet = jetSurface(base, grid)
  const plainHull = hullSurface(base, grid)
  // a tenth of what counts as usual: above it effects multiply
  const scales = {
    torque: 0.1 * Math.max(...jet.torque.slice(0, rotationCount).map(Math.abs), 1e-9),
    thrust: 0.1 * Math.max(...jet.thrust.slice(0, rotationCount).map(Math.abs), 1e-9),
    drag: 0.1 * Math.max(...plainHull.slice(0, speedCount).map(Math.abs), 1),
  }
  const parts = partsOf(base, grid, scales)
  const made: DrawnCraft = {
    grid,
    model,
    doubts,
    ...parts,
    scales,
    onTorque: [],
    onThrust: [],
    onHull: [],
    onEngine: parts.engines.map(() => []),
    pairs: [],
    factors: [],
    ratio: doubts.findIndex((d) => d.path === 'drive.ratio'),
    efficiency: doubts.findIndex((d) => d.path === 'drive.efficiency'),
    drag: doubts.findIndex((d) => d.moves === 'drag'),
    moving: [],
  }
  const effects = takeEffects(craft, base, made, maps, solved)
  const pairs = takePairs(craft, { ...made, ...effects }, maps, solved)
  return { ...made, ...effects, pairs }
}

/** doubts of the jet that are looked at two by two */
const paired = 5

function takePairs(
  craft: Craft,
  made: DrawnCraft,
  maps: MapStore,
  solved: SolvedCurves | undefined,
): PairEffect[] {
  const { doubts, grid, scales } = made
  // tied up at about the middle of the rotations looked at
  const node = Math.floor((2 * rotationCount) / 3)
  const strong = made.onTorque
    .map((torque) => {
      const place = placeOf(doubts[torque.index]!)
      const x = place > 0 ? -1 : 1
      const thrust = made.onThrust.find((t) => t.index === torque.index)
      return { torque, thrust, place, x, size: Math.abs(valueAt(torque, node, x)) }
    })
    .sort((p, q) => q.size - p.size)
    .slice(0, paired)
  const pairs: PairEffect[] = []
  const u = new Float64Array(doubts.length).fill(Number.NaN)
  strong.forEach((p, i) => {
    for (const q of strong.slice(0, i)) {
      u[p.torque.index] = (p.x + 1) / 2
      u[q.torque.index] = (q.x + 1) / 2
      const model = tryModel(craft, doubts, u, maps, solved)
      u.fill(Number.NaN)
      if (!model) continue
      const jet = jetSurface(model, grid)
      const over = (p.x - p.place) * (q.x - q.place)
      const rest = (got: Float64Array, still: Float64Array, scale: number, e?: PartEffect, f?: PartEffect) =>
        got.map(
          (y, k) =>
            (bent(y, scale) - still[k]! - (e ? valueAt(e, k, p.x) : 0) - (f ? valueAt(f, k, q.x) : 0)) / over,
        )
      pairs.push({
        a: p.torque.index,
        b: q.torque.index,
        placeA: p.place,
        placeB: q.place,
        torque: rest(jet.torque, made.torque, scales.torque, p.torque, q.torque),
        thrust: rest(jet.thrust, made.thrust, scales.thrust, p.thrust, q.thrust),
      })
    }
  })
  return pairs
}

const valueAt = (e: PartEffect, node: number, x: number): number =>
  e.c0[node]! + x * (e.c1[node]! + x * e.c2[node]!)

interface Taken {
  onTorque: PartEffect[]
  onThrust: PartEffect[]
  onHull: PartEffect[]
  onEngine: PartEffect[][]
  factors: EngineFactor[]
  moving: number[]
}

function takeEffects(
  craft: Craft,
  base: CraftModel,
  made: DrawnCraft,
  maps: MapStore,
  solved?: SolvedCurves,
): Taken {
  const { grid, doubts, scales } = made
  const taken: Taken = {
    onTorque: [],
    onThrust: [],
    onHull: [],
    onEngine: made.engines.map(() => []),
    factors: [],
    moving: [],
  }
  const specOf = (m: CraftModel) => JSON.stringify(m.units[0]!.spec)
  const spec = specOf(base)
  const u = new Float64Array(doubts.length).fill(Number.NaN)
  doubts.forEach((doubt, index) => {
    if (index === made.ratio || index === made.efficiency || index === made.drag) {
      taken.moving.push(index)
      return
    }
    const factor = factorOf(craft, doubt, index)
    if (factor) {
      taken.factors.push(factor)
      taken.moving.push(index)
      return
    }
    const place = placeOf(doubt)
    const ends = place < -0.8 ? [1, 0] : place > 0.8 ? [-1, 0] : [1, -1]
    const at: {
      x: number
      torque?: Float64Array
      thrust?: Float64Array
      hull?: Float64Array
      engines?: Float64Array[]
    }[] = []
    for (const x of ends) {
      u[index] = (x + 1) / 2
      const model = tryModel(craft, doubts, u, maps, solved)
      u[index] = Number.NaN
      // an input moved past what the geometry allows says nothing about the range
      if (!model) continue
      const here: (typeof at)[number] = { x }
      if (specOf(model) !== spec) {
        const jet = jetSurface(model, grid)
        here.torque = jet.torque.map((y) => bent(y, scales.torque))
        here.thrust = jet.thrust.map((y) => bent(y, scales.thrust))
      }
      if (model.drag !== base.drag) here.hull = bentHull(hullSurface(model, grid), scales.drag)
      if (doubt.path.startsWith('engines.')) here.engines = engineSurface(model, grid)
      at.push(here)
      // what moves this little goes in a straight line
      if (changes(here, made) < weak) break
    }
    const moved = [
      addPart(taken.onTorque, index, place, made.torque, at, (p) => p.torque),
      addPart(taken.onThrust, index, place, made.thrust, at, (p) => p.thrust),
      addPart(taken.onHull, index, place, made.hull, at, (p) => p.hull),
      ...made.engines.map((still, engine) =>
        addPart(taken.onEngine[engine]!, index, place, still, at, (p) => p.engines?.[engine]),
      ),
    ]
    if (moved.some((m) => m)) taken.moving.push(index)
  })
  return taken
}

/** bent numbers that move less than this are taken to move in proportion: about a hundredth of the value */
const weak = 0.012

const change = (a: Float64Array | undefined, b: Float64Array): number => {
  let most = 0
  a?.forEach((y, i) => {
    most = Math.max(most, Math.abs(y - b[i]!) / Math.max(1, Math.abs(b[i]!) - 2))
  })
  return most
}

const differ = (a: Float64Array, b: Float64Array) => change(a, b) > 1e-6

function changes(
  here: { torque?: Float64Array; thrust?: Float64Array; hull?: Float64Array; engines?: Float64Array[] },
  made: DrawnCraft,
): number {
  return Math.max(
    change(here.torque, made.torque),
    change(here.thrust, made.thrust),
    change(here.hull, made.hull),
    ...made.engines.map((e, i) => change(here.engines?.[i], e)),
  )
}

/** Adds the effect through the points where the part is another; true when there was one. */
function addPart<P extends { x: number }>(
  to: PartEffect[],
  index: number,
  place: number,
  still: Float64Array,
  at: readonly P[],
  part: (p: P) => Float64Array | undefined,
): boolean {
  const known = at.flatMap((p) => {
    const y = part(p)
    return y?.every(Number.isFinite) ? [[p.x, y] as const] : []
  })
  if (!known.some(([, y]) => differ(y, still))) return false
  const nodes = Array.from(still, (y0, i) =>
    effectThrough([[place, 0], ...known.map(([x, y]) => [x, y[i]! - y0] as const)]),
  )
  const of = (pick: (e: Effect) => number) => Float64Array.from(nodes, pick)
  to.push({ index, c0: of((e) => e.c0), c1: of((e) => e.c1), c2: of((e) => e.c2) })
  return true
}

function tryModel(
  craft: Craft,
  doubts: readonly Doubt[],
  u: ArrayLike<number>,
  maps: MapStore,
  solved: SolvedCurves | undefined,
): CraftModel | undefined {
  try {
    const leant = leantBy(craft, doubts, u)
    return modelFromCraft(leant.craft, maps, leant.leeway, solved)
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}

/** A doubt of an engine that is a factor. Engines of all units in turn come in the order of the file. */
function factorOf(craft: Craft, doubt: Doubt, index: number): EngineFactor | undefined {
  const parts = /^engines\.(\d+)\.(power|power at)$/.exec(doubt.path)
  const engine = doubt.engine ?? (parts ? Number(parts[1]) : -1)
  if (!craft.engines[engine]?.running) return undefined
  if (doubt.moves === 'engine torque')
    return { index, engine, on: 'torque', low: doubt.low, high: doubt.high }
  if (doubt.moves === 'engine speed')
    return { index, engine, on: 'rotation', low: doubt.low, high: doubt.high }
  if (!parts || craft.engines[engine].kind !== 'peak') return undefined
  const { low, high, value } = doubt
  return {
    index,
    engine,
    on: parts[2] === 'power' ? 'torque' : 'power at',
    low: low / value,
    high: high / value,
  }
}

/** Adds up the effects of a draw on a part, into `out`. */
export function addEffects(
  out: Float64Array,
  still: Float64Array,
  effects: readonly PartEffect[],
  u: ArrayLike<number>,
): void {
  out.set(still)
  const count = out.length
  for (const { index, c0, c1, c2 } of effects) {
    const part = u[index]!
    if (Number.isNaN(part)) continue
    const x = 2 * part - 1
    for (let i = 0; i < count; i++) out[i] = out[i]! + c0[i]! + x * (c1[i]! + x * c2[i]!)
  }
}

/** Adds what the strong doubts of the jet do two by two. */
export function addPairs(
  torque: Float64Array,
  thrust: Float64Array,
  pairs: readonly PairEffect[],
  u: ArrayLike<number>,
): void {
  for (const p of pairs) {
    const weight = (2 * u[p.a]! - 1 - p.placeA) * (2 * u[p.b]! - 1 - p.placeB)
    if (Number.isNaN(weight)) continue
    for (let i = 0; i < torque.length; i++) {
      torque[i] = torque[i]! + weight * p.torque[i]!
      thrust[i] = thrust[i]! + weight * p.thrust[i]!
    }
  }
}
