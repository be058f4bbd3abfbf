/**
 * The models of a craft fitted to the readings of trusted runs. Three factors: engines over what the impeller takes of them (steady runs
 * know only their ratio: a weak engine and a hungry impeller turn alike), thrust at an impeller speed, and drag. Their priors are what
 * the balance itself doubts, carried over to the factors by the sensitivities of its answers, so that a fit cannot move what is not in doubt.
 */
import type { Range } from '../../base/answers/solved.ts'
import type { Craft } from '../../craft/index.ts'
import { scaleCurve } from '../../trades/engine/curve.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import type { Balance } from '../push/balanceTypes.ts'
import { MapStore, modelFromCraft } from '../push/craftModel.ts'
import type { CraftModel } from '../push/propulsionModel.ts'
import { type DragTable, dragTableOf, quickSums } from '../push/quickSums.ts'
import { type Fit, fitWithPriors, mostMoved } from './fit.ts'

/** What a reading is of. */
export type ReadingOf = 'rotation' | 'pull' | 'topSpeed'

/** One reading of a trusted run, SI: rev/s, N or m/s. */
export interface TrustedReading {
  of: ReadingOf
  value: number
  /** date or name of the run, for sentences */
  run: string
}

/** One standard deviation of a reading, a part: by ear, by scale, best five seconds of a track (method sheet of this project, own trials). */
export const readingScatter: Readonly<Record<ReadingOf, number>> = {
  rotation: 0.015,
  pull: 0.06,
  topSpeed: 0.05,
}

export const factorNames = ['engine', 'thrust', 'drag'] as const
export type FactorName = (typeof factorNames)[number]

export interface FittedFactor {
  name: FactorName
  /** factor as fitted, 1 for no change; ends are nineteen in twenty */
  factor: Range
  /** standard deviation in the logarithm, before and after */
  prior: number
  posterior: number
  /** the readings say something of it: less than nine tenths of its doubt are left */
  measured: boolean
}

export interface Calibration {
  factors: readonly FittedFactor[]
  readings: readonly (TrustedReading & { model: number; fitted: number })[]
  /** part of the doubt of each answer that is left */
  left: Readonly<Record<ReadingOf, number>>
  /** why it cannot be used; the reading that looks wrong, by its place in `readings`, where one does */
  refused?: { reading?: number; past: readonly FactorName[] }
}

/** least prior of a factor: a model is never known to less */
const leastPrior: Readonly<Record<FactorName, number>> = { engine: 0.02, thrust: 0.03, drag: 0.06 }
/** a reading further from what the fit makes of it than so many standard deviations does not belong to this craft */
const tooFar = 3
/** share of its doubt from which a factor counts as measured (method sheet) */
const measuredBelow = 0.9
/** steps for sensitivities, in the logarithm */
const h = 0.03

/** Answers of the model with its factors moved: ln of rotation, pull and top speed; NaN where it does not run. */
type Answer = (ln: readonly number[]) => Record<ReadingOf, number>

function answersOf(craft: Craft, maps: MapStore, solved?: SolvedCurves): Answer {
  const model = modelFromCraft(craft, maps, {}, solved)
  const table = dragTableOf(model)
  return ([engine = 0, thrust = 0, drag = 0]) => {
    const sums = quickSums(movedModel(model, engine, thrust), movedDrag(table, drag))
    return { rotation: Math.log(sums.rotation), pull: Math.log(sums.pull), topSpeed: Math.log(sums.topSpeed) }
  }
}

function movedModel(model: CraftModel, engine: number, thrust: number): CraftModel {
  const units = model.units.map((u) => ({
    ...u,
    shaft: {
      ...u.shaft,
      engines: u.shaft.engines.map((e) => ({ ...e, curve: scaleCurve(e.curve, Math.exp(engine)) })),
    },
  }))
  return { ...model, units, thrustShare: model.thrustShare * Math.exp(thrust) }
}

function movedDrag(table: DragTable, ln: number): DragTable {
  const k = Math.exp(ln)
  const { drag } = table
  return { ...table, drag: { ...drag, y: drag.y.map((d) => d * k), slope: drag.slope.map((d) => d * k) } }
}

/** One standard deviation of each answer in the logarithm, as the balance doubts it. */
function doubtsOfAnswers(b: Balance): Record<ReadingOf, number> {
  const of = ({ low, high }: Range, usual: number) => {
    const sd = Math.log(high / low) / (2 * 1.96)
    return Number.isFinite(sd) && sd > 0 ? sd : usual
  }
  return { rotation: of(b.tiedUpRotation, 0.06), pull: of(b.pull, 0.13), topSpeed: of(b.topSpeed, 0.12) }
}

/** Priors of the factors, in the logarithm: what the answers' doubts leave them, one after the other. */
function priorsOf(answer: Answer, doubt: Record<ReadingOf, number>): number[] {
  const slope = (k: number) => {
    const move = (d: number) => answer(factorNames.map((_, i) => (i === k ? d : 0)))
    const [a, b] = [move(-h), move(h)]
    const of = (name: ReadingOf) => (b[name] - a[name]) / (2 * h)
    return { rotation: of('rotation'), pull: of('pull'), topSpeed: of('topSpeed') }
  }
  const [engine, thrust, drag] = factorNames.map((_, k) => slope(k))
  const sure = (x: number, least: number, most: number) =>
    Number.isFinite(x) ? Math.min(most, Math.max(least, x)) : most
  const rest = (all: number, part: number) => Math.sqrt(Math.max(0, all * all - part * part))
  const e = sure(doubt.rotation / Math.abs(engine!.rotation), leastPrior.engine, 0.3)
  const t = sure(rest(doubt.pull, Math.abs(engine!.pull) * e), leastPrior.thrust, 0.25)
  const spent = Math.hypot(Math.abs(engine!.topSpeed) * e, Math.abs(thrust!.topSpeed) * t)
  const d = sure(rest(doubt.topSpeed, spent) / Math.abs(drag!.topSpeed), leastPrior.drag, 0.3)
  return [e, t, d]
}

export interface CalibrateSetting {
  maps?: MapStore
  solved?: SolvedCurves
}

/**
 * Fits a craft to readings. `craft` as filed, without a fit of its own; `balance` its balance with ranges. Throws NotBalanced when an
 * engine has no curve, RangeError without a reading or for one that is not above nought.
 */
export function calibrate(
  craft: Craft,
  balance: Balance,
  readings: readonly TrustedReading[],
  { maps = new MapStore(), solved }: CalibrateSetting = {},
): Calibration {
  if (readings.length === 0) throw new RangeError('readings: none; a fit needs one at least')
  for (const { of, value } of readings)
    if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${of}: ${value}; a number above 0`)
  const answer = answersOf(craft, maps, solved)
  const doubt = doubtsOfAnswers(balance)
  const priors = priorsOf(answer, doubt)
  const fitTo = (some: readonly TrustedReading[]) =>
    fitWithPriors(
      factorNames.length,
      (z) => {
        const there = answer(priors.map((p, k) => p * z[k]!))
        return some.map((r) => there[r.of])
      },
      some.map((r) => ({ ln: Math.log(r.value), sd: readingScatter[r.of] })),
      { mostIterations: 25, tolerance: 1e-5 },
    )
  const fit = fitTo(readings)
  const found = fit.value
  const past = pastBounds(found)
  const far = found.residuals.some((r) => Math.abs(r) > tooFar)
  const still = answer([0, 0, 0])
  const fitted = answer(priors.map((p, k) => p * found.z[k]!))
  const refused = past.length > 0 || far || !fit.converged
  return {
    factors: factorNames.map((name, k) => factorOf(name, found, priors[k]!, k)),
    readings: readings.map((r) => ({ ...r, model: Math.exp(still[r.of]), fitted: Math.exp(fitted[r.of]) })),
    left: leftOf(answer, priors, found, doubt),
    ...(refused ? { refused: { past, ...wrongOne(readings, found, fitTo) } } : {}),
  }
}

const pastBounds = ({ z }: Fit): FactorName[] =>
  factorNames.filter((_, k) => Math.abs(z[k]!) > mostMoved - 1e-3)

function factorOf(name: FactorName, fit: Fit, prior: number, k: number): FittedFactor {
  const ln = prior * fit.z[k]!
  const sd = prior * fit.sd[k]!
  return {
    name,
    factor: { value: Math.exp(ln), low: Math.exp(ln - 1.96 * sd), high: Math.exp(ln + 1.96 * sd) },
    prior,
    posterior: sd,
    measured: fit.sd[k]! < measuredBelow,
  }
}

/** The reading without which the rest fit best; none where the rest do not fit either. */
function wrongOne(
  readings: readonly TrustedReading[],
  all: Fit,
  fitTo: (some: readonly TrustedReading[]) => { value: Fit },
): { reading?: number } {
  if (readings.length === 1) return { reading: 0 }
  const strain = (fit: Fit) =>
    Math.max(
      ...[...fit.z].map((z) => Math.abs(z) / mostMoved),
      ...[...fit.residuals].map((r) => Math.abs(r) / tooFar),
    )
  const without = readings.map((_, i) => strain(fitTo(readings.filter((_, j) => j !== i)).value))
  const least = without.indexOf(Math.min(...without))
  return without[least]! < Math.min(0.999, strain(all)) ? { reading: least } : {}
}

/** How much of each answer's doubt the fit leaves: the spread of the answers over the posterior beside that over the priors. */
function leftOf(
  answer: Answer,
  priors: readonly number[],
  fit: Fit,
  doubt: Record<ReadingOf, number>,
): Record<ReadingOf, number> {
  const at = priors.map((p, k) => p * fit.z[k]!)
  const n = priors.length
  const slopes = priors.map((p, k) => {
    const move = (d: number) => answer(at.map((v, i) => (i === k ? v + d : v)))
    const [a, b] = [move(-h), move(h)]
    return (name: ReadingOf) => (p * (b[name] - a[name])) / (2 * h)
  })
  const left = (name: ReadingOf) => {
    let after = 0
    let before = 0
    for (let i = 0; i < n; i++) {
      before += slopes[i]!(name) ** 2
      for (let j = 0; j < n; j++) after += slopes[i]!(name) * slopes[j]!(name) * fit.covariance[i * n + j]!
    }
    const part = Math.sqrt(Math.max(0, after) / Math.max(before, doubt[name] ** 2, 1e-12))
    return Number.isFinite(part) ? Math.min(1, part) : 1
  }
  return { rotation: left('rotation'), pull: left('pull'), topSpeed: left('topSpeed') }
}
