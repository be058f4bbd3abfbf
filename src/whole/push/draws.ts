/**
 * Draws of everything doubtful: the craft's values uniform within their own bounds, and the constants of the models within
 * theirs (ISO/IEC Guide 98-3/Suppl. 1:2008: propagation of distributions by sampling; a rectangular distribution where only
 * bounds are known, 6.4.2). The same index and seed always give the same draw, so two craft can be compared on the same draws.
 */

import { spreadPoint } from '../../base/numerics/lowDiscrepancy.ts'
import { type Craft, camel, type Quantity, quantitiesOf, whatIf } from '../../craft/index.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import { jetDoubts } from '../../trades/jet/jetFromCraft.ts'
import type { Driver } from './balanceTypes.ts'
import type { EngineLeeway, Leeway } from './craftModel.ts'

/** Doubt of the drag regressions on small boards outside the hump: half width, a fraction. */
export const dragDoubt = 0.15

/** Doubt of where a simulated curve has its peaks: half width in rotation, a fraction (own comparisons, 4 to 6 %). */
export const simulatedSpeedDoubt = 0.05

/** What a doubt moves: a value of the craft file, a constant of the jet model, one engine's curve, or the drag. */
type Moves = 'craft' | 'jet' | 'engine torque' | 'engine speed' | 'drag'

/** One doubtful input with its bounds, SI (factors where a model constant is one). */
export interface Doubt {
  /** craft path, or a path of its own for what is no value of the file */
  path: string
  /** a builder's words, or the path where the field's own label does */
  says: string
  source: Driver['source']
  moves: Moves
  low: number
  high: number
  /** the value that stands when nothing is drawn */
  value: number
  /** which engine, for its curve */
  engine?: number
}

export interface Draws {
  doubts: readonly Doubt[]
  /** draw `i` (0 to 2^20 - 1): where each doubt lies between its bounds, in [0, 1) */
  draw: (i: number) => Float64Array
}

const sections = /^(jet|engines|drive|hull|rider|weights|place)\./

/** Values of an engine that end in its torque curve: they count in the simulation, not in the balance. */
export const insideEngine =
  /^engines\.\d+\.(idle|rod|ports|inlet|carburettor|combustion|crankcase|ignition|mixture|friction|exhaust|snorkel)\b/

const known = new WeakMap<Craft, { solved: SolvedCurves | undefined; doubts: readonly Doubt[] }>()

/** Every doubt the balance of this craft depends on, in the order of the file, the models' own last. */
export function doubtsOf(craft: Craft, solved?: SolvedCurves): readonly Doubt[] {
  const kept = known.get(craft)
  if (kept && kept.solved === solved) return kept.doubts
  const doubts = listed(craft, solved)
  known.set(craft, { solved, doubts })
  return doubts
}

function listed(craft: Craft, solved?: SolvedCurves): Doubt[] {
  const doubts: Doubt[] = []
  for (const q of quantitiesOf(craft)) {
    if (!sections.test(q.path) || !(q.high > q.low) || insideEngine.test(q.path)) continue
    // the rider's place is a control: the balance puts it where the drag is least
    if (q.path === 'rider.position' && craft.rider.moves) continue
    const { path, source, low, high, value } = q
    doubts.push({ path, says: path, source, moves: 'craft', low, high, value })
  }
  craft.engines.forEach((e, engine) => {
    const name = e.name ?? `engine ${engine + 1}`
    const trust = e.curveTrust.value
    if (trust > 0)
      doubts.push({
        path: `engines.${engine}.curve trust`,
        says: `the torque curve of ${name}`,
        source: e.curveTrust.source,
        moves: 'engine torque',
        ...about(trust),
        engine,
      })
    if (e.kind === 'two-stroke' && e.curve === undefined && solved?.has(engine))
      doubts.push({
        path: `engines.${engine}.curve speed`,
        says: `where the simulated curve of ${name} peaks`,
        source: 'model',
        moves: 'engine speed',
        ...about(solved.get(engine)?.doubts?.speed ?? simulatedSpeedDoubt),
        engine,
      })
    const inputs = solved?.get(engine)?.doubts?.torque
    if (inputs && e.kind === 'two-stroke' && e.curve === undefined)
      doubts.push({
        path: `engines.${engine}.curve inputs`,
        says: `ports, pipe and mixture of ${name}`,
        source: 'model',
        moves: 'engine torque',
        ...about(inputs),
        engine,
      })
  })
  for (const q of Object.values(jetDoubts))
    doubts.push({
      path: q.path,
      says: q.why ?? q.path,
      source: 'model',
      moves: 'jet',
      low: q.low,
      high: q.high,
      value: q.value,
    })
  doubts.push({
    path: 'model.drag',
    says: 'the drag of the hull',
    source: 'model',
    moves: 'drag',
    ...about(dragDoubt),
  })
  return doubts
}

const about = (half: number) => ({ low: 1 - half, high: 1 + half, value: 1 })

/** The doubts of a craft and its draws. Another `seed` (any whole number) gives other draws of the same kind. */
export function drawsOf(craft: Craft, solved?: SolvedCurves, seed = 1): Draws {
  const doubts = doubtsOf(craft, solved)
  return { doubts, draw: (i) => spreadPoint(i, doubts.length, seed) }
}

/** A craft with values put in, and what the models are leant by. */
export interface Leant {
  craft: Craft
  leeway: Leeway
}

/** The quantity at a path of the craft, undefined where it has none. */
export function quantityAt(craft: Craft, path: string): Quantity | undefined {
  let at: unknown = craft
  for (const step of path.split('.')) at = (at as Record<string, unknown> | undefined)?.[camel(step)]
  return at as Quantity | undefined
}

/**
 * The craft and the leeway of one draw: `u` says where each of `doubts` lies between its bounds, 0 to 1, NaN for
 * left at its value. `craft` may be one with values changed: a doubt then lies round the changed value with its own width.
 * A doubt that the changed craft does not have any more is passed over.
 */
export function leantBy(craft: Craft, doubts: readonly Doubt[], u: ArrayLike<number>): Leant {
  const values: Record<string, number> = {}
  const jet: Record<string, number> = {}
  const engines: EngineLeeway[] = craft.engines.map(() => ({ torque: 1, rotation: 1 }))
  const leeway: Leeway = { jet, engines }
  doubts.forEach((doubt, k) => {
    const part = u[k]!
    if (Number.isNaN(part)) return
    const between = (low: number, high: number) => low + part * (high - low)
    const drawn = between(doubt.low, doubt.high)
    const engine = doubt.engine === undefined ? undefined : engines[doubt.engine]
    switch (doubt.moves) {
      case 'craft': {
        const q = quantityAt(craft, doubt.path)
        if (q) values[doubt.path] = between(q.low, q.high)
        return
      }
      case 'jet':
        jet[doubt.path] = drawn
        return
      case 'engine torque':
        // the trust put into a curve, and what its own inputs are off by, multiply
        if (engine) engine.torque *= drawn
        return
      case 'engine speed':
        if (engine) engine.rotation = drawn
        return
      case 'drag':
        leeway.drag = drawn
    }
  })
  return { craft: whatIf(craft, values), leeway }
}
