/**
 * What a pipe is worth on a craft: the engine simulated with it, then the jet's load and the thrust over the speeds that
 * count. Penalties keep a search from hot and stifled pipes and inside the room; their weights are this project's own.
 */
import { whatIf } from '../../craft/index.ts'
import { curveFromTable, type TorqueCurve, torqueAt } from '../../trades/engine/curve.ts'
import { twoStrokeFromCraft } from '../../trades/engine/twoStrokeFromCraft.ts'
import type { PipeAnswer, PipeCurve } from '../../trades/exhaust/exhaustTypes.ts'
import { beyondRoom } from '../../trades/exhaust/pipeShape.ts'
import type { Pipe } from '../../trades/exhaust/proportions.ts'
import { idleOf, propel } from '../push/propulsionModel.ts'
import { coarse, fine, type Trial, type TwoStrokeEngine } from './trial.ts'
import { curveWith, specWith } from './trialCurve.ts'

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

/** Answers requests in their order, on the trial at hand or in other threads that set one up for themselves. */
export type TryMany = (requests: readonly TrialRequest[], trial: Trial) => Promise<Judged[]>

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
