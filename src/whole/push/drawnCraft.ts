/**
 * A craft as something that thousands of draws of its doubts can be solved for: each doubt's effect on the parts of the balance
 * (surfaces.ts) is a parabola through its bounds; a draw sums them, and engines and impeller, thrust and drag are brought
 * together anew for it. Against the whole balance: docs/ranges.md.
 */

import type { Craft } from '../../craft/index.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import { jetDoubts } from '../../trades/jet/jetFromCraft.ts'
import { MapStore, modelFromCraft } from './craftModel.ts'
import { isOfLoad, type LoadEffect, loadEffect } from './drawnLoad.ts'
import { type Doubt, leantBy } from './draws.ts'
import type { Table } from './operatingTable.ts'
import type { CraftModel } from './propulsionModel.ts'
import {
  bentHull,
  doubtSpeedCount,
  engineSurface,
  type Grid,
  gridOf,
  hullDetail,
  hullSurface,
  jetSurface,
  rotationCount,
  type Scales,
  scalesOf,
  speedCount,
  spreadOver,
} from './surfaces.ts'
import { type VapourTable, vapourTable } from './vapourTable.ts'

/** Effects of one doubt on one part, node by node: d (c1 + d c2), d how far it goes from where it stands, half its width as unit. */
interface PartEffect {
  /** which doubt, and where it stands between its bounds, -1 to 1 */
  index: number
  place: number
  c1: Float64Array
  /** absent where it goes in a straight line */
  c2: Float64Array | undefined
}

/** What two strong doubts of the jet do together beyond each by itself: c (xa - a) (xb - b), a and b where they stand. */
interface PairEffect {
  a: number
  b: number
  placeA: number
  placeB: number
  jet: Float64Array
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
  /** the jet without vapour, bent drag with the mass, torque of each engine: at the craft's own values */
  jet: Float64Array
  hull: Float64Array
  /** what the drag has between the grid's speeds */
  detail: Float64Array
  engines: readonly Float64Array[]
  scales: Scales
  /** what vapour takes; absent where it never chokes the pump */
  vapour: VapourTable | undefined
  /** effects on them; those on the jet at every second speed */
  onJet: readonly PartEffect[]
  onHull: readonly PartEffect[]
  onEngine: readonly (readonly PartEffect[])[]
  load: LoadEffect | undefined
  pairs: readonly PairEffect[]
  factors: readonly EngineFactor[]
  /** indexes of doubts with a closed form of their own; -1 where the craft has none */
  ratio: number
  efficiency: number
  drag: number
  chokeFall: number
  /** indexes of all doubts that move anything */
  moving: readonly number[]
}

const placeOf = (d: Doubt) => Math.min(1, Math.max(-1, (2 * (d.value - d.low)) / (d.high - d.low) - 1))

/** The parts of a craft that differs little from `d`, which is drawn already. */
export function partsBeside(d: DrawnCraft, model: CraftModel): Pick<DrawnCraft, 'jet' | 'hull' | 'engines'> {
  const { grid, scales } = d
  const still = everySecond(d.jet)
  const jet = new Float64Array(d.jet.length)
  spreadOver(
    d.jet,
    jetSurface(model, grid, 2, scales).map((y, i) => y - still[i]!),
    jet,
  )
  return {
    jet,
    hull: model.drag === d.model.drag ? d.hull : bentHull(hullSurface(model, grid), scales.drag),
    engines: engineSurface(model, grid),
  }
}

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
  const plainHull = hullSurface(base, grid)
  const scales = scalesOf(base, grid, plainHull)
  const parts = {
    jet: jetSurface(base, grid, 1, scales),
    hull: bentHull(plainHull, scales.drag),
    engines: engineSurface(base, grid),
  }
  const at = (test: (d: Doubt) => boolean) => doubts.findIndex(test)
  const made: DrawnCraft = {
    grid,
    model,
    doubts,
    ...parts,
    detail: hullDetail(base, grid, parts.hull, scales.drag),
    scales,
    vapour: vapourTable(base, grid, (V) => rotationIn(table, V)),
    onJet: [],
    onHull: [],
    onEngine: parts.engines.map(() => []),
    load: undefined,
    pairs: [],
    factors: [],
    ratio: at((d) => d.path === 'drive.ratio'),
    efficiency: at((d) => d.path === 'drive.efficiency'),
    drag: at((d) => d.moves === 'drag'),
    chokeFall: at((d) => d.path === jetDoubts.chokeFall.path),
    moving: [],
  }
  const effects = takeEffects(craft, base, made, maps, solved)
  const pairs = takePairs(craft, { ...made, ...effects }, maps, solved)
  return { ...made, ...effects, pairs }
}

/** Rotation of the leading impeller at about speed V, rev/s. */
function rotationIn(table: Table, V: number): number {
  const running = table.rows.filter((r) => Number.isFinite(r.propulsion.states[0]!.rotation))
  const near = running.reduce(
    (a, b) => (Math.abs(b.speed - V) < Math.abs(a.speed - V) ? b : a),
    table.rows[0]!,
  )
  return near.propulsion.states[0]!.rotation
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
  const strong = made.onJet
    .map((effect) => {
      const place = placeOf(doubts[effect.index]!)
      const x = place > 0 ? -1 : 1
      return { effect, place, x, size: Math.abs(valueAt(effect, node, x)) }
    })
    .sort((p, q) => q.size - p.size)
    .slice(0, paired)
  const still = everySecond(made.jet)
  const pairs: PairEffect[] = []
  const u = new Float64Array(doubts.length).fill(Number.NaN)
  strong.forEach((p, i) => {
    for (const q of strong.slice(0, i)) {
      u[p.effect.index] = (p.x + 1) / 2
      u[q.effect.index] = (q.x + 1) / 2
      const model = tryModel(craft, doubts, u, maps, solved)
      u.fill(Number.NaN)
      if (!model) continue
      const over = (p.x - p.place) * (q.x - q.place)
      pairs.push({
        a: p.effect.index,
        b: q.effect.index,
        placeA: p.place,
        placeB: q.place,
        jet: jetSurface(model, grid, 2, scales).map(
          (y, k) => (y - still[k]! - valueAt(p.effect, k, p.x) - valueAt(q.effect, k, q.x)) / over,
        ),
      })
    }
  })
  return pairs
}

/** The jet's surface at every second speed. */
const everySecond = (jet: Float64Array): Float64Array =>
  jet.filter((_, at) => (Math.floor(at / rotationCount) % speedCount) % 2 === 0)

const valueAt = ({ place, c1, c2 }: PartEffect, node: number, x: number): number =>
  (x - place) * (c1[node]! + (x - place) * (c2?.[node] ?? 0))

interface Taken {
  onJet: PartEffect[]
  onHull: PartEffect[]
  onEngine: PartEffect[][]
  load: LoadEffect | undefined
  factors: EngineFactor[]
  moving: number[]
}

/** What one end of a doubt makes of the parts; absent where it is known to leave one alone. */
interface Moved {
  x: number
  jet?: Float64Array
  hull?: Float64Array
  engines?: Float64Array[]
}

function takeEffects(
  craft: Craft,
  base: CraftModel,
  made: DrawnCraft,
  maps: MapStore,
  solved?: SolvedCurves,
): Taken {
  const { grid, doubts, scales } = made
  const load = loadEffect(craft, base, grid, doubts, made.hull, scales.drag)
  const taken: Taken = {
    onJet: [],
    onHull: [],
    onEngine: made.engines.map(() => []),
    load,
    factors: [],
    moving: load ? load.moves.map((m) => m.index) : [],
  }
  const specOf = (m: CraftModel) => JSON.stringify(m.units[0]!.spec)
  const spec = specOf(base)
  const still = { jet: everySecond(made.jet), hull: made.hull, engines: made.engines }
  const u = new Float64Array(doubts.length).fill(Number.NaN)
  doubts.forEach((doubt, index) => {
    if (index === made.ratio || index === made.efficiency || index === made.drag) {
      taken.moving.push(index)
      return
    }
    if (index === made.chokeFall) {
      if (made.vapour) taken.moving.push(index)
      return
    }
    if (load && isOfLoad(doubt)) return
    const factor = factorOf(craft, doubt, index)
    if (factor) {
      taken.factors.push(factor)
      taken.moving.push(index)
      return
    }
    const place = placeOf(doubt)
    const ends = place < -0.8 ? [1, 0] : place > 0.8 ? [-1, 0] : [1, -1]
    const at: Moved[] = []
    for (const x of ends) {
      u[index] = (x + 1) / 2
      const model = tryModel(craft, doubts, u, maps, solved)
      u[index] = Number.NaN
      // an input moved past what the geometry allows says nothing about the range
      if (!model) continue
      const here: Moved = { x }
      if (specOf(model) !== spec) here.jet = jetSurface(model, grid, 2, scales)
      if (model.drag !== base.drag) here.hull = bentHull(hullSurface(model, grid), scales.drag)
      if (/^(engines|place)\./.test(doubt.path)) here.engines = engineSurface(model, grid)
      at.push(here)
      // what moves this little goes in a straight line
      if (changes(here, still) < weak) break
    }
    const moved = [
      addPart(taken.onJet, index, place, still.jet, at, (p) => p.jet),
      addPart(taken.onHull, index, place, still.hull, at, (p) => p.hull),
      ...still.engines.map((engine, e) =>
        addPart(taken.onEngine[e]!, index, place, engine, at, (p) => p.engines?.[e]),
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
  here: Moved,
  still: Required<Omit<Moved, 'x' | 'engines'>> & { engines: readonly Float64Array[] },
): number {
  return Math.max(
    change(here.jet, still.jet),
    change(here.hull, still.hull),
    ...still.engines.map((e, i) => change(here.engines?.[i], e)),
  )
}

/** Adds the effect through the points where the part is another; true when there was one. */
function addPart(
  to: PartEffect[],
  index: number,
  place: number,
  still: Float64Array,
  at: readonly Moved[],
  part: (p: Moved) => Float64Array | undefined,
): boolean {
  const known = at.flatMap((p) => {
    const y = part(p)
    return y?.every(Number.isFinite) ? [[p.x, y] as const] : []
  })
  if (!known.some(([, y]) => differ(y, still))) return false
  const [[xa, ya], other] = known as [readonly [number, Float64Array], (readonly [number, Float64Array])?]
  const a = xa - place
  if (!other) {
    to.push({ index, place, c1: ya.map((y, i) => (y - still[i]!) / a), c2: undefined })
    return true
  }
  // parabola through nought where it stands and what was found at both ends
  const [xb, yb] = other
  const b = xb - place
  const c2 = ya.map((y, i) => ((y - still[i]!) / a - (yb[i]! - still[i]!) / b) / (a - b))
  to.push({ index, place, c1: ya.map((y, i) => (y - still[i]!) / a - a * c2[i]!), c2 })
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

/** Adds up the effects of a draw on a part, on top of what stands in `out`. */
export function addEffects(out: Float64Array, effects: readonly PartEffect[], u: ArrayLike<number>): void {
  const count = out.length
  for (const { index, place, c1, c2 } of effects) {
    const d = 2 * u[index]! - 1 - place
    if (Number.isNaN(d)) continue
    if (c2) for (let i = 0; i < count; i++) out[i] = out[i]! + d * (c1[i]! + d * c2[i]!)
    else for (let i = 0; i < count; i++) out[i] = out[i]! + d * c1[i]!
  }
}

/** Adds what the strong doubts of the jet do two by two. */
export function addPairs(out: Float64Array, pairs: readonly PairEffect[], u: ArrayLike<number>): void {
  for (const p of pairs) {
    const weight = (2 * u[p.a]! - 1 - p.placeA) * (2 * u[p.b]! - 1 - p.placeB)
    if (Number.isNaN(weight)) continue
    for (let i = 0; i < out.length; i++) out[i] = out[i]! + weight * p.jet[i]!
  }
}

/** Places of the jet's surface at every second speed. */
export const doubtPlaces = doubtSpeedCount * rotationCount
