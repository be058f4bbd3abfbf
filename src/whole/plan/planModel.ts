/**
 * What each suspect would have us hear and read in each trial: the coupled model of engines, impeller and hull solved with the suspect
 * in it. A load factor f is engines weaker by 1/f (the shaft settles where their torque over f meets the impeller's).
 */
import type { Craft } from '../../craft/index.ts'
import { scaleCurve, stretchCurve } from '../../trades/engine/curve.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import { type MapStore, modelFromCraft } from '../push/craftModel.ts'
import { type CraftModel, idleOf, propel } from '../push/propulsionModel.ts'
import { type DragTable, dragTableOf, quickSums } from '../push/quickSums.ts'
import type { ShaftEngine } from '../push/shaft.ts'
import type { Span, Suspect } from './suspects.ts'

/** How a trial is run: which engines, how far open, choked, cut or under way. */
export interface Trial {
  id: string
  /** running engines, by their place in the file */
  engines: readonly number[]
  throttle: number
  choked?: true
  /** the ignition is cut: how fast the shaft runs down is what is heard */
  cut?: true
  /** the craft goes; else it is tied to a post */
  underWay?: true
}

/** What a trial gives; NaN where it is not read, or where nothing runs. */
export interface Outcome {
  /** engine rotation of each shaft, rev/s */
  rotation: readonly number[]
  /** N, tied up */
  pull: number
  /** m/s, under way */
  speed: number
  /** an engine that should fire does not, on a shaft that turns: half orders are heard */
  uneven: boolean
  /** how fast the shaft runs down after a cut, beside the craft as filed */
  fall: number
}

export interface PlanModel {
  craft: Craft
  model: CraftModel
  drag: DragTable
}

/** The craft's own model. Throws NotBalanced when an engine has no curve. */
export function planModel(craft: Craft, maps: MapStore, solved?: SolvedCurves): PlanModel {
  const model = modelFromCraft(craft, maps, {}, solved)
  return { craft, model, drag: dragTableOf(model) }
}

const at = (span: Span | undefined, part: number): number => (span ? span[0] + part * (span[1] - span[0]) : 1)

/** torque left of an engine with the choke half shut, nothing else being wrong with it (judgement) */
const usualChoked = 0.88

/** What a trial gives with a suspect in the model, `part` of the way from slight to severe (0 to 1). */
export function outcomeOf(of: PlanModel, trial: Trial, suspect: Suspect, part: number): Outcome {
  const { model, drag } = of
  const { change } = suspect
  const on = trial.throttle > (change.above ?? 0)
  const load = on ? at(change.load, part) : 1
  const thrust = on ? at(change.thrust, part) : 1
  const slip = on && change.slip ? at(change.slip, part) : 0
  const reached = (place: number) => suspect.engine === undefined || suspect.engine === place
  const fires = (place: number) => trial.engines.includes(place) && !(reached(place) && change.dead)
  const torqueOf = (place: number) => {
    if (!reached(place)) return trial.choked ? usualChoked : 1
    if (!trial.choked) return at(change.torque, part)
    return change.choked ? at(change.choked, part) : usualChoked * at(change.torque, part)
  }
  const engineIn = (e: ShaftEngine, place: number): ShaftEngine => {
    const factor = torqueOf(place) / load
    const stretch = reached(place) ? at(change.rotation, part) : 1
    const stretched = stretch === 1 ? e.curve : stretchCurve(e.curve, stretch)
    return {
      ...e,
      running: e.running && fires(place),
      throttle: trial.throttle,
      curve: factor === 1 ? stretched : scaleCurve(stretched, factor),
    }
  }
  let place = 0
  const units = model.units.map((u) => {
    const { shaft } = u
    const engines = shaft.engines.map((e) => engineIn(e, place++))
    // what slips turns slower and passes its torque on
    return {
      ...u,
      shaft: {
        ...shaft,
        ratio: shaft.ratio / (1 - slip),
        efficiency: shaft.efficiency * (1 - slip),
        engines,
      },
    }
  })
  const changed: CraftModel = { ...model, units }
  const speed = trial.underWay ? speedOf(changed, drag, at(change.drag, part) / thrust) : 0
  const found = propel(changed, Number.isFinite(speed) ? speed : 0, units.map(idleOf))
  const rotation = found.states.map((s, u) => s.rotation * units[u]!.shaft.ratio)
  // the pull before a cut has been read already
  if (trial.cut) return { rotation: [], pull: Number.NaN, speed: Number.NaN, uneven: false, fall: load }
  return {
    rotation,
    pull: trial.underWay || !found.steady ? Number.NaN : thrust * found.thrust,
    speed: trial.underWay ? speed : Number.NaN,
    uneven: unevenIn(units, rotation, trial),
    fall: Number.NaN,
  }
}

function speedOf(model: CraftModel, table: DragTable, share: number): number {
  const { drag } = table
  const scaled = { ...drag, y: drag.y.map((d) => d * share), slope: drag.slope.map((d) => d * share) }
  return quickSums(model, { ...table, drag: scaled }).topSpeed
}

function unevenIn(units: CraftModel['units'], rotation: readonly number[], trial: Trial): boolean {
  let place = 0
  let uneven = false
  units.forEach(({ shaft }, u) => {
    for (const e of shaft.engines) {
      if (
        trial.engines.includes(place++) &&
        !e.running &&
        !shaft.oneWayClutch &&
        Number.isFinite(rotation[u])
      )
        uneven = true
    }
  })
  return uneven
}
