/**
 * Torque curves of the two-strokes that the craft file knows only by ports and pipe, worked out by simulation so that
 * the balance can use them, with what the findings of the trade Breath need besides.
 */
import type { Craft } from '../../craft/index.ts'
import type { TorqueCurve } from '../../trades/engine/curve.ts'
import { curveDoubts } from '../../trades/engine/curveDoubts.ts'
import type { DeadDrag } from '../../trades/engine/deadDrag.ts'
import type { TwoStrokeSpec } from '../../trades/engine/engineSpec.ts'
import {
  deadDragOfMotored,
  type MotoredPoint,
  motoredSpeeds,
  simulateMotored,
} from '../../trades/engine/motored.ts'
import { type CurveResult, simulateCurve } from '../../trades/engine/simulate.ts'
import { speedsToRun } from '../../trades/engine/speeds.ts'
import { peaksOf, torqueFromSimulation } from '../../trades/engine/torqueFromSimulation.ts'
import { simulateCycleTrace } from '../../trades/engine/trace.ts'
import { type TwoStrokeReading, twoStrokeFromCraft } from '../../trades/engine/twoStrokeFromCraft.ts'

/** One simulated engine as plain data, so that it can be kept in a file or sent from a worker. */
export interface SimulatedEngine {
  curve: CurveResult
  /** rev/min of the cycle below: the speed of most power */
  at: number
  /** kg/s out of the outlet, one sample a degree of crank; empty when that cycle did not settle */
  outFlow: number[]
  /** the same engine dead and dragged, where a craft asked for that */
  motored?: MotoredPoint[]
}

/** Every simulated engine by its index in the craft, and the curves the balance takes. */
export interface EngineAnswers {
  readings: ReadonlyMap<number, TwoStrokeReading>
  simulated: ReadonlyMap<number, SimulatedEngine>
  solved: ReadonlyMap<number, TorqueCurve>
  /** those of them that were worked out coarsely: few speeds, long cells */
  coarse: ReadonlySet<number>
}

/** Simulated engines by what they depend on; a face may keep them in memory or in files. */
export interface EngineStore {
  get(key: string): SimulatedEngine | undefined
  set(key: string, engine: SimulatedEngine): void
}

export interface EngineWork {
  store?: EngineStore
  /** true takes a coarse curve, in a tenth of the time, where no fine one is kept */
  coarse?: boolean
  progress?: (part: number, says: string) => void
  cancelled?: () => boolean
}

/** Raise when a change of the simulation changes its numbers, so that kept answers are not mistaken for new ones. */
export const simulationVersion = 3

/** m: cells of the curve that the balance uses, and of a first coarse one (torque within 3 %, its peak within 1 % in speed) */
const cells = { fine: 0.01, coarse: 0.04 }

/** Everything a simulated engine depends on, as text. */
export function engineKey(spec: TwoStrokeSpec, rpms: readonly number[], coarse = false): string {
  return JSON.stringify([simulationVersion, coarse ? cells.coarse : cells.fine, rpms, spec])
}

/** Runs one engine. Undefined when called off. */
export function simulateEngine(
  spec: TwoStrokeSpec,
  rpms: readonly number[],
  work: Omit<EngineWork, 'store'> = {},
): SimulatedEngine | undefined {
  const dx = work.coarse ? cells.coarse : cells.fine
  const curve = simulateCurve(spec, rpms, {
    dx,
    loose: work.coarse === true,
    ...(work.progress ? { progress: (part, says) => work.progress!(0.9 * part, says) } : {}),
    ...(work.cancelled ? { cancelled: work.cancelled } : {}),
  })
  if (curve.cancelled) return undefined
  const peaks = peaksOf(curve)
  if (!peaks) return { curve, at: Number.NaN, outFlow: [] }
  const at = peaks.power.rpm
  const trace = simulateCycleTrace(spec, at, { dx, loose: work.coarse === true })
  return { curve, at, outFlow: trace.result.converged ? Array.from(trace.outFlow) : [] }
}

/** Two-strokes whose torque has to be worked out: no measured curve, an exhaust, no fault. */
function wanting(craft: Craft, index: number, reading: TwoStrokeReading): boolean {
  const engine = craft.engines[index]
  return engine?.kind === 'two-stroke' && !engine.curve && !!reading.spec && reading.faults.length === 0
}

/** An engine of this craft that dies, or is off already, is dragged round by another. */
function mayBeDragged(craft: Craft): boolean {
  return (
    craft.engines.length > 1 && craft.drive.arrangement === 'one shaft' && craft.drive.clutch !== 'one-way'
  )
}

/** What the engine takes when it is dead; simulated once and kept with it. */
function deadOf(
  craft: Craft,
  index: number,
  { spec, cylinders }: TwoStrokeReading,
  found: SimulatedEngine,
  keep: (found: SimulatedEngine) => void,
): DeadDrag | undefined {
  const engine = craft.engines[index]
  if (engine?.kind !== 'two-stroke' || !spec) return undefined
  let { motored } = found
  if (!motored) {
    const redline = engine.redline?.value
    motored = simulateMotored(spec, motoredSpeeds(spec, redline === undefined ? undefined : 60 * redline))
    keep({ ...found, motored })
  }
  return deadDragOfMotored(spec, motored, cylinders, engine.friction)
}

/** Simulates what the craft needs; engines alike are run once. Undefined when called off. */
export function answerEngines(craft: Craft, work: EngineWork = {}): EngineAnswers | undefined {
  const readings = new Map<number, TwoStrokeReading>()
  const simulated = new Map<number, SimulatedEngine>()
  const solved = new Map<number, TorqueCurve>()
  const coarse = new Set<number>()
  const store = work.store ?? mapStore()
  craft.engines.forEach((e, i) => {
    if (e.kind === 'two-stroke') readings.set(i, twoStrokeFromCraft(craft, i))
  })
  const dragged = mayBeDragged(craft)
  const todo = [...readings].filter(([i, r]) => wanting(craft, i, r))
  for (const [done, [i, reading]] of todo.entries()) {
    const spec = reading.spec!
    const { redline } = reading.span
    const fine = speedsToRun(spec, reading.span)
    const fineKey = engineKey(spec, fine)
    const kept = store.get(fineKey)
    const rough = work.coarse === true && kept === undefined
    const rpms = rough ? speedsToRun(spec, reading.span, true) : fine
    const key = rough ? engineKey(spec, rpms, true) : fineKey
    const name = craft.engines[i]!.name ?? `engine ${i + 1}`
    const found =
      kept ??
      store.get(key) ??
      simulateEngine(spec, rpms, {
        ...work,
        coarse: rough,
        progress: (part, says) => work.progress?.((done + part) / todo.length, `${name}: ${says}`),
      })
    if (!found) return undefined
    store.set(key, found)
    simulated.set(i, found)
    if (rough) coarse.add(i)
    const torque = torqueFromSimulation(found.curve, reading.cylinders, redline)
    if (!torque) continue
    const dead = dragged ? deadOf(craft, i, reading, found, (m) => store.set(key, m)) : undefined
    const doubts = curveDoubts(craft, i, found.curve, rough)
    solved.set(i, { ...torque, doubts, ...(dead ? { dead } : {}) })
  }
  return { readings, simulated, solved, coarse }
}

/** Keeps the last few in memory. */
export function mapStore(most = 24): EngineStore {
  const kept = new Map<string, SimulatedEngine>()
  return {
    get: (key) => kept.get(key),
    set(key, engine) {
      kept.delete(key)
      if (kept.size >= most) kept.delete(kept.keys().next().value!)
      kept.set(key, engine)
    },
  }
}

/** A store that also tells what went through it, for threads. */
export function remembering(
  store: EngineStore,
): EngineStore & { all(): [key: string, engine: SimulatedEngine][] } {
  const seen = new Map<string, SimulatedEngine>()
  const note = (key: string, engine: SimulatedEngine | undefined) => {
    if (engine) seen.set(key, engine)
    return engine
  }
  return {
    get: (key) => note(key, store.get(key)),
    set: (key, engine) => {
      note(key, engine)
      store.set(key, engine)
    },
    all: () => [...seen],
  }
}
