import type { Range } from '../../base/answers/solved.ts'
import { keptBy } from '../../base/numerics/keep.ts'
import type { Craft } from '../../craft/index.ts'
import { siteOf } from '../../hull/site/site.ts'
import { dryPressure, powerInAir } from './airPower.ts'
import {
  curveFromMotor,
  curveFromPeak,
  curveFromTable,
  scaleCurve,
  stretchCurve,
  type TorqueCurve,
} from './curve.ts'

export type CraftEngine = Craft['engines'][number]

import { type DeadDrag, deadDragByLaw, deadDragByPressure, squareStroke } from './deadDrag.ts'

/** An engine of the craft file as the balance needs it, SI. */
export interface EngineForBalance {
  name: string
  /** absent when the file does not hold enough to draw a curve; `missing` says what */
  curve?: TorqueCurve
  missing?: string
  displacement: number
  running: boolean
  /** what it takes from the shaft that drags it when it is dead; absent for a motor */
  dead?: DeadDrag
  /** rev/s below which it dies; nought for a motor */
  idle: number
  /** fraction by which the whole curve may be off */
  trust: number
  /** craft path of the trust */
  trustPath: string
}

/** A curve worked out elsewhere (a simulation), by engine index. */
export type SolvedCurves = ReadonlyMap<number, TorqueCurve>

/** Every engine of the craft. A two-stroke without a measured curve takes the one from `solved`. */
export const enginesFromCraft = (craft: Craft, solved?: SolvedCurves): readonly EngineForBalance[] =>
  // draws of what is no engine's share them
  known({ craft, solved })

const known = keptBy(
  4,
  ({ craft, solved }: { craft: Craft; solved: SolvedCurves | undefined }) => [
    craft.engines,
    craft.place,
    solved,
  ],
  ({ craft, solved }): readonly EngineForBalance[] => read(craft, solved),
)

function read(craft: Craft, solved?: SolvedCurves): EngineForBalance[] {
  return craft.engines.map((engine, i) => {
    const built = curveOf(engine, solved?.get(i))
    const air = airShareOf(craft, i)
    if ('curve' in built && air !== 1) built.curve = scaleCurve(built.curve, air)
    return {
      name: engine.name ?? `engine ${i + 1}`,
      displacement: 'displacement' in engine ? engine.displacement.value : sweptOf(engine),
      running: engine.running,
      idle: 'idle' in engine ? engine.idle.value : 0,
      trust: engine.curveTrust.value,
      trustPath: `engines.${i}.curve trust`,
      ...built,
      ...deadOf(engine, solved?.get(i)?.dead),
    }
  })
}

/**
 * Factor on the torque of engine `index` by the air of the place: 1 for a motor, for a curve measured here, and for a simulated one,
 * which breathed that air already.
 */
export function airShareOf(craft: Craft, index: number): number {
  const engine = craft.engines[index]
  if (!engine || engine.kind === 'electric' || engine.measuredIn === 'here') return 1
  if (engine.kind === 'two-stroke' && engine.curve === undefined) return 1
  const { pressure, temperature } = siteOf(craft).air
  return powerInAir(dryPressure(pressure, temperature), temperature)
}

/** Its own pressure where the file gives one, else by simulation where that was done, else by friction and pumping laws. */
function deadOf(engine: CraftEngine, motored: DeadDrag | undefined): { dead?: DeadDrag } {
  if (engine.kind === 'electric') return {}
  const displacement = engine.kind === 'two-stroke' ? sweptOf(engine) : engine.displacement.value
  if (engine.deadDrag) return { dead: deadDragByPressure(displacement, engine.deadDrag) }
  if (motored) return { dead: motored }
  if (engine.kind === 'two-stroke') {
    const friction: Range = engine.friction
    return { dead: deadDragByLaw(displacement, engine.stroke.value, friction) }
  }
  return { dead: deadDragByLaw(displacement, squareStroke(displacement / engine.cylinders.value)) }
}

function sweptOf(engine: CraftEngine): number {
  if (engine.kind !== 'two-stroke') return 0
  return (Math.PI / 4) * engine.bore.value ** 2 * engine.stroke.value * engine.cylinders.value
}

function curveOf(engine: CraftEngine, solved?: TorqueCurve): { curve: TorqueCurve } | { missing: string } {
  const redline = engine.redline?.value
  const table = (points: readonly { at: { value: number }; torque: { value: number } }[]) =>
    curveFromTable(
      points.map((p) => ({ rotation: p.at.value, torque: p.torque.value })),
      redline,
    )
  switch (engine.kind) {
    case 'curve':
      return { curve: table(engine.curve) }
    case 'peak':
      return { curve: curveFromPeak(engine.power.value, engine.powerAt.value, engine.temper, redline) }
    case 'electric': {
      const k = engine.torquePerCurrent?.value
      const current = engine.mostCurrent?.value
      const voltage = engine.voltage?.value
      if (k !== undefined && current !== undefined && voltage !== undefined)
        return {
          curve: curveFromMotor({
            torquePerCurrent: k,
            maxCurrent: current,
            voltage,
            resistance: engine.resistance.value,
          }),
        }
      const most = engine.mostTorque?.value
      const free = engine.freeSpeed?.value
      if (most !== undefined && free !== undefined) return { curve: straightLine(most, free) }
      return { missing: 'torque per current, most current and voltage, or most torque and free speed' }
    }
    case 'two-stroke':
      if (engine.curve !== undefined) return { curve: table(engine.curve) }
      return solved
        ? { curve: solved }
        : { missing: 'a torque curve: it has to be worked out from ports and pipe first' }
  }
}

/** A motor known by its standstill torque and free speed: torque falls in a straight line. */
function straightLine(most: number, free: number): TorqueCurve {
  const points = Array.from({ length: 20 }, (_, i) => {
    const n = (free * (i + 1)) / 20
    return { rotation: n, torque: most * (1 - n / free) }
  })
  return curveFromTable(points, free, most)
}

/** The same engine with its whole curve moved by a factor on the torque and one on the rotation. */
export function scaledEngine(engine: EngineForBalance, share: number, rotation = 1): EngineForBalance {
  if (!engine.curve) return engine
  const scaled = scaleCurve(engine.curve, share)
  return { ...engine, curve: rotation === 1 ? scaled : stretchCurve(scaled, rotation) }
}
