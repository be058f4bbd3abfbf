/**
 * What a pipe is worth on a craft: the engine simulated with it, then the jet's load and the thrust over the speeds that
 * count. Penalties keep a search from hot and stifled pipes and inside the room; their weights are this project's own.
 */
import { type Craft, whatIf } from '../craft/index.ts'
import { curveFromTable, type TorqueCurve, torqueAt } from '../engine/curve.ts'
import { type CurveResult, simulateCurve, simulatePoint } from '../engine/simulate.ts'
import type { TwoStrokeSpec } from '../engine/spec.ts'
import { adoptState, createState, type EngineState } from '../engine/state.ts'
import { type TwoStrokeReading, twoStrokeFromCraft } from '../engine/twoStrokeFromCraft.ts'
import { tubeDrop } from '../exhaust/backPressure.ts'
import type { Pipe } from '../exhaust/proportions.ts'
import { beyondRoom } from '../exhaust/shape.ts'
import type { PipeAnswer, PipeCurve, Room } from '../exhaust/types.ts'
import type { Segment } from '../gas/mesh.ts'
import { endCorrection } from '../gas/openPipe.ts'
import { jetPoint } from '../jet/pumpMap.ts'
import { answerEngines, type EngineStore } from './engineAnswers.ts'
import { MapStore, modelFromCraft } from './fromCraft.ts'
import { type CraftModel, idleOf, propel } from './model.ts'
import { shaftPowerPeak } from './shaft.ts'
import { operatingTable } from './table.ts'

export const coarse = 0.02
export const fine = 0.01

interface Base {
  thrust: number
  torque: number
  exhaustT: number
  inside: number
}

/** Everything that stays while pipes are tried on one engine. */
export interface Trial {
  craft: Craft
  index: number
  reading: TwoStrokeReading
  spec: TwoStrokeSpec
  redline: number | undefined
  room: Room
  /** the present pipe */
  now: Pipe
  duct: number
  model: CraftModel
  /** engines that get the pipe: this one and those just like it */
  alike: readonly number[]
  /** m/s whose thrust counts; empty when the pipe is to suit `aim` whatever the jet */
  speeds: readonly number[]
  /** rev/min the pipe is to suit */
  aim: number
  /** rev/min looked at, rising, coarse and fine */
  rpms: readonly number[]
  fineRpms: readonly number[]
  width: number
  /** what the present pipe does, by size of cells, to measure others by; set by the first pipe judged with them */
  base: { coarse?: Base; fine?: Base }
  warm: Map<number, EngineState>
}

type TwoStrokeEngine = Extract<Craft['engines'][number], { kind: 'two-stroke' }>

/** The present pipe of an engine from the flange on. Without a stinger the last tube or cone end counts as one. */
export function presentPipe(engine: TwoStrokeEngine): Pipe {
  const exhaust = engine.exhaust!
  const segments = exhaust.pipe.map((s, i) => ({
    name: s.name ?? `part ${i + 1}`,
    length: s.length.value,
    d0: s.from.value,
    d1: s.to.value,
    bend: s.bend.value,
  }))
  const end = segments[segments.length - 1]!.d1
  const stinger = exhaust.stinger
    ? { bore: exhaust.stinger.bore.value, length: exhaust.stinger.length.value }
    : { bore: end, length: 1e-3 }
  const tuned = exhaust.duct.length.value + segments.reduce((sum, s) => sum + s.length, 0)
  return { segments, stinger, tunedLength: tuned }
}

function roomOf(engine: TwoStrokeEngine, now: Pipe): Room {
  const given = engine.exhaust?.room
  if (given)
    return {
      length: given.length.value,
      diameter: given.diameter.value,
      bend: given.bend.value,
      given: true,
    }
  const length = now.segments.reduce((sum, s) => sum + s.length, 0) + now.stinger.length
  const diameter = Math.max(...now.segments.map((s) => Math.max(s.d0, s.d1)))
  const bend = now.segments.reduce((sum, s) => sum + (s.bend ?? 0), 0)
  return { length: 1.25 * length, diameter: Math.max(1.15 * diameter, 0.07), bend, given: false }
}

export interface TrialOrder {
  index: number
  /** rev/min; the jet's load decides when left out */
  aim?: number
  width?: number
  store?: EngineStore
  maps?: MapStore
}

/** Sets a trial up. RangeError, with the path, where the engine has no pipe to begin with or the craft cannot be solved. */
export function prepareTrial(craft: Craft, order: TrialOrder): Trial {
  const at = `engines.${order.index}`
  const engine = craft.engines[order.index]
  if (engine?.kind !== 'two-stroke')
    throw new RangeError(
      `${at}: it is ${engine?.kind ?? 'absent'}; a pipe is searched for an engine of kind two-stroke`,
    )
  const reading = twoStrokeFromCraft(craft, order.index)
  if (reading.faults.length > 0)
    throw new RangeError(reading.faults.map((f) => `${f.path}: ${f.says}`).join('\n'))
  if (!reading.spec) throw new RangeError(`${at}.exhaust: lacks ${reading.missing ?? 'a pipe'}`)
  // a measured curve would hide what the pipe does: the simulated one is used for now and found alike
  const engines = craft.engines.map((e) => {
    if (e.kind !== 'two-stroke' || !e.curve) return e
    const { curve: _, ...rest } = e
    return rest
  }) as Craft['engines']
  const answers = answerEngines({ ...craft, engines }, order.store ? { store: order.store } : {})!
  const model = modelFromCraft({ ...craft, engines }, order.maps ?? new MapStore(), {}, answers.solved)
  const same = JSON.stringify(reading.spec)
  const alike = [...answers.readings].filter(([, r]) => JSON.stringify(r.spec) === same).map(([i]) => i)
  const now = presentPipe(engine)
  const redline = engine.redline?.value
  const speeds = order.aim === undefined ? speedsThatCount(model) : []
  const aim = order.aim ?? aimOf(model, craft, order.index, speeds)
  const of = (shares: readonly number[]) => shares.map((s) => Math.round(s * aim))
  return {
    craft,
    index: order.index,
    reading,
    spec: reading.spec,
    redline,
    room: roomOf(engine, now),
    now,
    duct: reading.spec.pipe[0]!.length,
    model,
    alike,
    speeds,
    aim,
    rpms: of([0.66, 0.78, 0.86, 0.92, 0.97, 1.02, 1.08]),
    fineRpms: of([0.62, 0.71, 0.79, 0.86, 0.91, 0.95, 0.98, 1.01, 1.05, 1.1]),
    width: order.width ?? 0.3,
    base: {},
    warm: new Map(),
  }
}

/** Five speeds from the hump to the top; without a top, from rest to the hump. */
function speedsThatCount(model: CraftModel): number[] {
  const table = operatingTable(model, { steps: 24 })
  const hump = table.rows[table.humpRow]!.speed
  const top = table.top?.speed
  const [from, to] = top !== undefined && top > 1.2 * hump ? [hump, top] : [0, hump]
  return Array.from({ length: 5 }, (_, i) => from + ((to - from) * i) / 4)
}

/**
 * The engine speed to suit: where the jet, at the middle of the speeds that count, takes the torque that the engine has
 * at its power peak. A pipe that suits the load best has its power peak there.
 */
function aimOf(model: CraftModel, craft: Craft, index: number, speeds: readonly number[]): number {
  const unit = model.units[craft.drive.arrangement === 'a jet each' ? index : 0]!
  const peak = shaftPowerPeak(unit.shaft)
  const torque = peak.power / (2 * Math.PI * peak.rotation)
  const v = speeds[2] ?? 0
  const load = (n: number) =>
    jetPoint(unit.map, unit.spec, n / unit.shaft.ratio, v).T / (unit.shaft.ratio * unit.shaft.efficiency)
  // the load rises about as the square of the speed: a few steps of that law settle it
  let n = peak.rotation
  for (let i = 0; i < 8; i++) {
    const t = load(n)
    if (!(t > 0)) return 60 * peak.rotation
    n *= Math.min(1.3, Math.max(0.75, Math.sqrt(torque / t)))
  }
  const most = Math.min(unit.shaft.engines[0]!.curve.redline, 1.3 * peak.rotation)
  return 60 * Math.min(Math.max(n, 0.7 * peak.rotation), 0.99 * most)
}

/** The spec with another pipe; what lies beyond the stinger stays. */
export function specWith(trial: Trial, pipe: Pipe): TwoStrokeSpec {
  const engine = trial.craft.engines[trial.index] as TwoStrokeEngine
  const exhaust = engine.exhaust!
  const duct = trial.spec.pipe[0]!
  const stinger: Segment = { length: pipe.stinger.length, d0: pipe.stinger.bore, d1: pipe.stinger.bore }
  const segments: Segment[] = [duct, ...pipe.segments.map(({ name: _, ...s }) => s), stinger]
  if (!exhaust.muffler) {
    const outlet = exhaust.outlet
    if (outlet && outlet.length.value > 0)
      segments.push({ length: outlet.length.value, d0: outlet.bore.value, d1: outlet.bore.value })
    const last = segments[segments.length - 1]!
    segments.push({ length: Math.max(1e-4, endCorrection(last.d1 / 2)), d0: last.d1, d1: last.d1 })
  }
  return { ...trial.spec, pipe: segments }
}

/** State of the present engine settled at a speed, to start other pipes from. */
function warmState(trial: Trial, spec: TwoStrokeSpec, dx: number, rpm: number): EngineState {
  let base = trial.warm.get(dx)
  if (!base) {
    base = createState(trial.spec, dx)
    simulatePoint(trial.spec, base, rpm)
    trial.warm.set(dx, base)
  }
  return adoptState(spec, dx, base)
}

/** Simulated curve with a pipe. `spec` may carry further changes. */
export function curveWith(
  trial: Trial,
  pipe: Pipe,
  dx: number,
  rpms: readonly number[],
  spec = specWith(trial, pipe),
): PipeCurve {
  const result = simulateCurve(spec, rpms, {
    dx,
    warmState: warmState(trial, spec, dx, rpms[0]!),
    cycles: 60,
  })
  return pipeCurve(trial, pipe, result, rpms)
}

function pipeCurve(trial: Trial, pipe: Pipe, result: CurveResult, rpms: readonly number[]): PipeCurve {
  const settled = result.points.filter((p) => p.point)
  const inside = (p: (typeof settled)[number]): number => {
    const { airFlow, fuelFlow, exhaustT, behind } = p.point!
    const drop = tubeDrop({
      massFlow: airFlow + fuelFlow,
      temperature: 0.85 * exhaustT,
      pressure: trial.spec.air.p + behind,
      bore: pipe.stinger.bore,
      length: pipe.stinger.length,
      losses: 1.1,
    })
    return behind + drop.drop
  }
  const most = (of: (p: (typeof settled)[number]) => number) =>
    settled.reduce((m, p) => Math.max(m, of(p)), Number.NEGATIVE_INFINITY)
  return {
    rpm: settled.map((p) => p.rpm),
    torque: settled.map((p) => p.point!.torque * trial.reading.cylinders),
    exhaustT: most((p) => p.point!.exhaustT),
    gauge: most((p) => p.point!.behind),
    inside: most(inside),
    unsettled: rpms.length - settled.length,
    dx: result.dx,
  }
}

function torqueCurve(trial: Trial, curve: PipeCurve): TorqueCurve | undefined {
  if (curve.rpm.length < 3) return undefined
  const table = curve.rpm.map((rpm, i) => ({ rotation: rpm / 60, torque: Math.max(0, curve.torque[i]!) }))
  return curveFromTable(table, trial.redline)
}

/** Thrust and engine speed with a torque curve in the place of every engine alike. */
function onCraft(
  trial: Trial,
  curve: TorqueCurve,
): { thrust: number; pull: number; pullAt: number; band: number[] } {
  let k = 0
  const units = trial.model.units.map((u) => ({
    ...u,
    shaft: {
      ...u.shaft,
      engines: u.shaft.engines.map((e) => (trial.alike.includes(k++) ? { ...e, curve } : e)),
    },
  }))
  const model = { ...trial.model, units }
  const lead = units[trial.craft.drive.arrangement === 'a jet each' ? trial.index : 0]!
  const which = units.indexOf(lead)
  let from: number[] = units.map(idleOf)
  const at = (v: number) => {
    const p = propel(model, v, from)
    from = p.states.map((s) => s.rotation)
    return { thrust: p.steady ? p.thrust : 0, rotation: from[which]! * lead.shaft.ratio }
  }
  const tied = at(0)
  const over = trial.speeds.map(at)
  return {
    thrust: over.reduce((sum, o) => sum + o.thrust, 0) / (over.length || 1),
    pull: tied.thrust,
    pullAt: 60 * tied.rotation,
    band: over.map((o) => 60 * o.rotation),
  }
}

/** Mean torque from 0.85 to 1.05 of the speed aimed at, N·m. */
function meanTorque(trial: Trial, curve: TorqueCurve): number {
  let sum = 0
  for (let i = 0; i <= 20; i++) sum += torqueAt(curve, ((0.85 + 0.01 * i) * trial.aim) / 60)
  return sum / 21
}

/** °C 650: red line that small two-strokes are often given; Pa 8000: back pressure that costs some 8 % of torque */
const hottest = 923
const stifled = 8000

/** A pipe with all that it does. The first one judged with each size of cells is what others are measured by: the present. */
export function judgePipe(trial: Trial, name: PipeAnswer['name'], pipe: Pipe, curve: PipeCurve): Judged {
  const made = torqueCurve(trial, curve)
  const cells = curve.dx > 0.75 * coarse ? 'coarse' : 'fine'
  if (!made)
    return {
      name,
      pipe,
      curve,
      thrust: Number.NaN,
      pull: Number.NaN,
      pullAt: Number.NaN,
      peakAt: Number.NaN,
      power: Number.NaN,
      score: Number.NEGATIVE_INFINITY,
      cells,
      band: [],
    }
  const craft = onCraft(trial, made)
  const torque = meanTorque(trial, made)
  trial.base[cells] ??= { thrust: craft.thrust, torque, exhaustT: curve.exhaustT, inside: curve.inside }
  const base = trial.base[cells]
  const w = trial.speeds.length > 0 ? trial.width : 1
  const thrustShare = base.thrust > 0 ? craft.thrust / base.thrust : 0
  const gain = (w < 1 ? (1 - w) * thrustShare : 0) + (w * torque) / base.torque
  const hot = Math.max(0, curve.exhaustT - Math.max(hottest, base.exhaustT))
  const tight = Math.max(0, curve.inside - Math.max(stifled, base.inside))
  const penalty =
    0.004 * hot + (0.3 * tight) / stifled + 5 * beyondRoom(pipe, trial.room) + 0.05 * curve.unsettled
  return {
    name,
    pipe,
    curve,
    thrust: trial.speeds.length > 0 ? craft.thrust : Number.NaN,
    pull: craft.pull,
    pullAt: craft.pullAt,
    peakAt: 60 * made.powerPeak.rotation,
    power: made.powerPeak.power,
    score: gain - penalty,
    cells,
    band: craft.band,
  }
}

/** One pipe to be tried. Plain data, so that a thread can be asked. */
export interface TrialRequest {
  name: PipeAnswer['name']
  pipe: Pipe
  cells: 'coarse' | 'fine'
  /** rad that the exhaust port opens later (earlier when below nought) than now */
  opens?: number
}

/** A pipe judged, with the engine speeds (rev/min) that the jet holds it at over the speeds that count. */
export type Judged = PipeAnswer & { band: number[] }

/** Answers requests in their order, here or in other threads. */
export type TryMany = (requests: readonly TrialRequest[]) => Promise<Judged[]>

/**
 * Simulates and judges one pipe, against the present one with the same cells. Undefined torque (a port moved to where the
 * file contradicts itself) gives NaN throughout.
 */
export function tryPipe(trial: Trial, request: TrialRequest): Judged {
  const [dx, rpms] = request.cells === 'coarse' ? [coarse, trial.rpms] : [fine, trial.fineRpms]
  const { name, pipe, opens } = request
  // everything is measured by the present pipe, whichever thread looks at it
  if (!trial.base[request.cells]) judgePipe(trial, 'now', trial.now, curveWith(trial, trial.now, dx, rpms))
  const spec = specWith(trial, pipe)
  if (opens === undefined) return judgePipe(trial, name, pipe, curveWith(trial, pipe, dx, rpms, spec))
  const engine = trial.craft.engines[trial.index] as TwoStrokeEngine
  const q = engine.ports.exhaust.opens
  const moved = twoStrokeFromCraft(whatIf(trial.craft, { [q.path]: q.value + opens }), trial.index)
  const other = { ...moved.spec!, pipe: [moved.spec!.pipe[0]!, ...spec.pipe.slice(1)] }
  return judgePipe(trial, name, pipe, curveWith(trial, pipe, dx, rpms, other))
}
