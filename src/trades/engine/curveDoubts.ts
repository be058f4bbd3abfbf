/**
 * What a simulated curve is in doubt by, beyond the trust that the craft file puts into it: its own inputs (ports, pipe, mixture), the
 * method's peak speed, and coarse cells. Effects of the inputs: this project's own runs of two engines with one input moved at a time
 * (docs/checks.md says how the method itself compares); added as squares, the inputs taken as independent.
 */
import type { Craft, Quantity } from '../../craft/index.ts'
import type { CurveDoubts } from './curve.ts'
import { uncalibrated } from './health.ts'
import type { CurveResult } from './simulate.ts'
import { type TwoStrokeEngine, twoStrokeFromCraft } from './twoStrokeFromCraft.ts'

/** What one input's half range moves: parts of torque and of the peak's speed for each unit of it. */
interface Effect {
  says: string
  /** half range, in the unit that the effects are for */
  half: number
  torque: number
  speed: number
}

const degree = Math.PI / 180
const half = (q: Quantity): number => 0.5 * (q.high - q.low)
const part = (q: Quantity): number => half(q) / Math.abs(q.value)

/** half range of the tuned length, as a part of it: the parts of the pipe measured one by one */
function lengthPart(engine: TwoStrokeEngine): number {
  const { duct, pipe } = engine.exhaust!
  const lengths = [duct.length, ...pipe.map((p) => p.length)]
  const all = lengths.reduce((sum, q) => sum + q.value, 0)
  return Math.hypot(...lengths.map(half)) / all
}

function effectsOf(engine: TwoStrokeEngine): Effect[] {
  const { exhaust, transfers } = engine.ports
  const { combustion, crankcase, mixture, carburettor } = engine
  const ratio = combustion.volume ?? combustion.compressionRatio ?? combustion.trappedCompressionRatio
  return [
    { says: 'when the exhaust opens', half: half(exhaust.opens) / degree, torque: 0.015, speed: 0.009 },
    { says: 'when the transfers open', half: half(transfers.opens) / degree, torque: 0.002, speed: 0.003 },
    { says: 'the width of the exhaust port', half: part(exhaust.width), torque: 0.5, speed: 0.2 },
    { says: 'how freely the exhaust port flows', half: half(exhaust.discharge), torque: 0.6, speed: 0.15 },
    { says: 'the compression', half: part(ratio), torque: 0.3, speed: 0.1 },
    { says: 'the crankcase', half: half(crankcase.compressionRatio), torque: 0.45, speed: 0.1 },
    { says: 'the mixture', half: part(mixture.lambda), torque: 0.45, speed: 0.17 },
    { says: 'the carburettor', half: part(carburettor.bore), torque: 0.2, speed: 0.03 },
    { says: 'the lengths of the pipe', half: lengthPart(engine), torque: 0.4, speed: 1 },
    // one kind better or worse: nobody measures it
    { says: 'how well the charge clears the cylinder', half: 1, torque: 0.04, speed: 0.015 },
  ]
}

/** what cells three times as long do to a curve, parts: comparison on two engines */
const coarseCells = { torque: 0.025, speed: 0.01 }

/** reasons worth saying: those that make up a good part of the doubt */
const worthSaying = 0.2

/** Doubts of the simulated curve of engine `index`; empty reasons for one that is no simulated two-stroke. */
export function curveDoubts(craft: Craft, index: number, curve: CurveResult, coarse = false): CurveDoubts {
  const engine = craft.engines[index]
  if (engine?.kind !== 'two-stroke' || !engine.exhaust || !twoStrokeFromCraft(craft, index).spec)
    return { torque: 0, speed: 0, reasons: [] }
  const effects = effectsOf(engine)
  const sum = (of: (e: Effect) => number, more: number) =>
    Math.hypot(more, ...effects.map((e) => e.half * of(e)))
  const torque = sum((e) => e.torque, coarse ? coarseCells.torque : 0)
  const speed = sum((e) => e.speed, Math.hypot(uncalibrated.rpm, coarse ? coarseCells.speed : 0))
  const share = (e: Effect) => Math.max((e.half * e.torque) / torque, (e.half * e.speed) / speed)
  const unsettled = curve.points.filter((p) => !p.converged).map((p) => p.rpm)
  return {
    torque,
    speed,
    reasons: [
      'where the simulation puts the peak of an engine that was not calibrated',
      ...effects
        .filter((e) => share(e) ** 2 > worthSaying)
        .sort((a, b) => share(b) - share(a))
        .map((e) => e.says),
      ...(coarse ? ['coarse cells and few speeds'] : []),
      ...(unsettled.length > 0 ? [`speeds that did not settle: ${unsettled.join(', ')} rpm`] : []),
    ],
  }
}
