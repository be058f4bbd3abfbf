import { type Craft, fileBeside } from '../../craft/index.ts'
import { type DragModel, prepareDrag } from '../../trades/drag/drag.ts'
import { hullFromCraft } from '../../trades/drag/dragFromCraft.ts'
import {
  type EngineForBalance,
  enginesFromCraft,
  type SolvedCurves,
  scaledEngine,
} from '../../trades/engine/enginesFromCraft.ts'
import { jetFromCraft } from '../../trades/jet/jetFromCraft.ts'
import type { JetSpec } from '../../trades/jet/jetTypes.ts'
import { PumpFan } from '../../trades/jet/pumpFan.ts'
import { buildPumpMap, type PumpMap, pumpMapNear } from '../../trades/jet/pumpMap.ts'
import { NotKnown } from '../../trades/trade.ts'
import type { CraftModel, Unit } from './propulsionModel.ts'
import type { Shaft } from './shaft.ts'

/** How one engine's curve is leant. */
export interface EngineLeeway {
  /** factor on its torque */
  torque: number
  /** factor on the rotations of its curve, its redline staying */
  rotation: number
}

/** Constants of the models that a doubt, a calibration or a fault may move. */
export interface Leeway {
  /** constants of the jet model (paths of `jetDoubts`) instead of their standard values */
  jet?: Readonly<Record<string, number>>
  /** factor on every engine's torque */
  engine?: number
  /** by engine of the craft, on top of that */
  engines?: readonly EngineLeeway[]
  /** factor on the drag */
  drag?: number
  /** where in their ranges the drags of dead engines lie: -1 low to 1 high */
  dead?: number
}

/** Everything of a craft that its drag is made from. */
const hullParts = (craft: Craft): readonly unknown[] => [
  craft.hull,
  craft.rider,
  craft.place,
  craft.weights,
  craft.tanks,
  craft.jet.intake.front,
  craft.jet.intake.length,
  craft.jet.intake.width,
  craft.jet.nozzle.height,
  craft.hull.mesh === undefined ? undefined : fileBeside(craft, craft.hull.mesh),
]

const mostHulls = 8

/** Pump maps by what they depend on, so that a change elsewhere costs no new map; the last hulls too. Keep one for a session. */
export class MapStore {
  private readonly maps = new Map<string, PumpMap>()
  private readonly fans = new Map<string, PumpFan>()
  private readonly most: number
  private readonly near: PumpMap | undefined
  private hulls: { parts: readonly unknown[]; drag: DragModel; riderAt: number }[] = []

  /** With `near`, maps are made from that one: for craft that differ from its own by draws of their doubts. */
  constructor(most = 96, near?: PumpMap) {
    this.most = most
    this.near = near
  }

  /** The hull at work, kept as long as nothing of the craft that it is made from is another. */
  hull(craft: Craft): { drag: DragModel; riderAt: number } {
    // tried values leave the rest of a craft shared, so the parts themselves tell whether anything changed
    const parts = hullParts(craft)
    const known = this.hulls.find((h) => h.parts.every((p, i) => p === parts[i]))
    const others = this.hulls.filter((h) => h !== known).slice(0, mostHulls - 1)
    if (known) {
      this.hulls = [known, ...others]
      return known
    }
    const { spec, loading, conditions, float, riderAt } = hullFromCraft(craft)
    const drag = prepareDrag(spec, loading, conditions, float ? { float } : {})
    const made = { parts, drag, riderAt }
    this.hulls = [made, ...others]
    return made
  }

  of(spec: JetSpec): PumpMap {
    const key = keyOf(spec)
    const known = this.maps.get(key)
    if (known) return known
    const made = this.near ? pumpMapNear(spec, this.near) : buildPumpMap(spec)
    // the oldest map goes first
    if (this.maps.size >= this.most) this.maps.delete(this.maps.keys().next().value!)
    this.maps.set(key, made)
    return made
  }

  /** Maps of the same blades at any pitch; made from those of `near`, where that is a fan they hardly differ from. */
  fan(spec: JetSpec, near?: PumpFan): PumpFan {
    // the growth of pitch is rounded, so that the same blade at another pitch is known again
    const growth = Number((spec.rotor.pitchTrailing / spec.rotor.pitchLeading).toPrecision(9))
    const key = keyOf({ ...spec, rotor: { ...spec.rotor, pitchLeading: 1, pitchTrailing: growth } })
    const known = this.fans.get(key)
    if (known) return known
    const made = new PumpFan(spec, near)
    if (this.fans.size >= this.most / 4) this.fans.delete(this.fans.keys().next().value!)
    this.fans.set(key, made)
    return made
  }
}

/** What a pump map depends on; the nozzle counts only where no stator straightens the flow before it. */
function keyOf({ rotor, model, water, system }: JetSpec): string {
  const { density, viscosity } = water
  const nozzle = system.stator ? 0 : system.nozzleDiameter
  return JSON.stringify([rotor, model, density, viscosity, system.stator, nozzle])
}

/** Why a craft cannot be balanced; `path` names the value that is missing. */
export class NotBalanced extends NotKnown {}

/** The craft as propulsion units and a hull. Throws NotBalanced when an engine has no curve. */
export function modelFromCraft(
  craft: Craft,
  maps: MapStore,
  leeway: Leeway = {},
  solved?: SolvedCurves,
): CraftModel {
  const shafts = shaftsOf(craft, leeway, solved)
  const spec = jetFromCraft(craft, leeway.jet ? (q) => leeway.jet![q.path] ?? q.value : undefined)
  const map = maps.of(spec)
  const { drag, riderAt } = maps.hull(craft)
  const units: Unit[] = shafts.map((shaft) => ({ spec, map, shaft }))
  const model: CraftModel = {
    units,
    drag,
    dragShare: (leeway.drag ?? 1) * (craft.fitted?.drag?.value ?? 1),
    thrustShare: craft.fitted?.thrust?.value ?? 1,
  }
  if (!craft.rider.moves) model.riderAt = riderAt
  return model
}

/** Only the shafts, one a jet: what changes when nothing but the engines does. Throws NotBalanced when one has no curve. */
export function shaftsOf(craft: Craft, leeway: Leeway = {}, solved?: SolvedCurves): Shaft[] {
  const engines = enginesFromCraft(craft, solved).map((e, i) => {
    const own = leeway.engines?.[i]
    const torque = (leeway.engine ?? 1) * (own?.torque ?? 1) * (craft.fitted?.engine?.value ?? 1)
    const rotation = own?.rotation ?? 1
    return torque === 1 && rotation === 1 ? e : scaledEngine(e, torque, rotation)
  })
  engines.forEach((e, i) => {
    if (!e.curve) throw new NotBalanced(`engines.${i}`, `${e.name} lacks ${e.missing}`)
  })
  const each = craft.drive.arrangement === 'a jet each'
  const groups = each ? engines.map((e) => [e]) : [engines]
  return groups.map((group) => shaftOf(craft, group, leeway.dead))
}

function shaftOf(craft: Craft, engines: readonly EngineForBalance[], deadLean?: number): Shaft {
  return {
    engines: engines.map((e) => ({
      name: e.name,
      curve: e.curve!,
      displacement: e.displacement,
      running: e.running,
      throttle: 1,
      idle: e.idle,
      ...(e.dead ? { dead: e.dead } : {}),
    })),
    ratio: craft.drive.ratio.value,
    efficiency: craft.drive.efficiency.value,
    oneWayClutch: craft.drive.clutch === 'one-way',
    ...(deadLean === undefined ? {} : { deadLean }),
  }
}
