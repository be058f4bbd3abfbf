/** What stays while pipes are tried on one engine: the craft around it, its room, the speeds that count. */
import type { Craft } from '../../craft/index.ts'
import type { TwoStrokeSpec } from '../../trades/engine/engineSpec.ts'
import type { EngineState } from '../../trades/engine/state.ts'
import { type TwoStrokeReading, twoStrokeFromCraft } from '../../trades/engine/twoStrokeFromCraft.ts'
import type { Room } from '../../trades/exhaust/exhaustTypes.ts'
import type { Pipe } from '../../trades/exhaust/proportions.ts'
import { jetPoint } from '../../trades/jet/pumpMap.ts'
import { MapStore, modelFromCraft } from '../push/craftModel.ts'
import { operatingTable } from '../push/operatingTable.ts'
import type { CraftModel } from '../push/propulsionModel.ts'
import { shaftPowerPeak } from '../push/shaft.ts'
import { answerEngines, type EngineStore } from './engineAnswers.ts'

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

export type TwoStrokeEngine = Extract<Craft['engines'][number], { kind: 'two-stroke' }>

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
  // only the load and the aim are read off these curves; the pipes themselves are simulated finely enough each time
  const answers = answerEngines(
    { ...craft, engines },
    { coarse: true, ...(order.store ? { store: order.store } : {}) },
  )!
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
