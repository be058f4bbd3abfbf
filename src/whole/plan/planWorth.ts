/**
 * How often a set of trials names the right suspect: every suspect is let happen, slight to severe, its readings are drawn with their
 * scatter, and the likeliest one is read off by Bayes' rule. Steps inside one run are known better against each other than against the
 * model: what the model may be off by is one common factor each on speeds, pulls and boat speeds.
 */
import { seededRandom } from '../../base/numerics/random.ts'
import type { Outcome } from './planModel.ts'
import type { Suspect } from './suspects.ts'

/** severities looked at */
export const severities = [0, 0.25, 0.5, 0.75, 1] as const

/** One standard deviation of a reading, in its logarithm: engine speed by ear, scale, best five seconds, the fall after a cut (12 % of the slope and 20 % of the inertia). */
export const scatter = { rotation: 0.015, pull: 0.06, speed: 0.05, fall: 0.23, uneven: 0.35 } as const

/** How far off the model may be by common factors, one standard deviation in the logarithm. */
export interface ModelDoubt {
  rotation: number
  pull: number
  speed: number
}

type Reading = keyof typeof scatter
const readings: readonly Reading[] = ['rotation', 'pull', 'speed', 'fall', 'uneven']

/** Outcomes of one trial by suspect and severity. */
export type TrialOutcomes = readonly (readonly Outcome[])[]

interface Axis {
  of: Reading
  /** value by suspect and severity, in the logarithm */
  values: number[][]
}

/** what does not run at all reads as a quarter of what it should: far from everything else */
const stalled = 0.25

function axesOf(outcomes: TrialOutcomes): Axis[] {
  const first = outcomes[0]![0]!
  const axis = (of: Reading, pick: (o: Outcome) => number): Axis[] => {
    const base = pick(first)
    const values = outcomes.map((row) => row.map(pick))
    if (of === 'uneven') return [{ of, values }]
    if (!(base > 0)) return []
    return [{ of, values: values.map((row) => row.map((v) => Math.log(v > 0 ? v / base : stalled))) }]
  }
  return readings.flatMap((of) =>
    of === 'rotation'
      ? first.rotation.flatMap((_, u) => axis(of, (o) => o.rotation[u]!))
      : of === 'uneven'
        ? axis(of, (o) => (o.uneven ? 1 : 0))
        : axis(of, (o) => o[of]),
  )
}

/** Lower triangle L with L Lᵀ = the readings' scatter and the model's common factors together. */
function triangle(axes: readonly Axis[], doubt: ModelDoubt): Float64Array[] {
  const n = axes.length
  const common = (of: Reading) => (of === 'fall' || of === 'uneven' ? 0 : doubt[of])
  const rows = Array.from({ length: n }, () => new Float64Array(n))
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      const same = axes[i]!.of === axes[j]!.of ? common(axes[i]!.of) ** 2 : 0
      let sum = same + (i === j ? scatter[axes[i]!.of] ** 2 : 0)
      for (let k = 0; k < j; k++) sum -= rows[i]![k]! * rows[j]![k]!
      rows[i]![j] = i === j ? Math.sqrt(Math.max(sum, 1e-12)) : sum / rows[j]![j]!
    }
  return rows
}

/** L⁻¹ v: readings of unit scatter, independent of each other. */
function whitened(rows: readonly Float64Array[], v: readonly number[]): Float64Array {
  const out = new Float64Array(v.length)
  for (let i = 0; i < v.length; i++) {
    let sum = v[i]!
    for (let k = 0; k < i; k++) sum -= rows[i]![k]! * out[k]!
    out[i] = sum / rows[i]![i]!
  }
  return out
}

/** A suspect without the engine it reaches: `lean 1` and `lean` are one cause. */
const causeOf = (s: Suspect) => s.id.replace(/ \d+$/, '')

/** Chances, 0 to 1: that the likeliest cause is the true one, and that the engine it reaches is named right too. */
export interface NamedRight {
  cause: number
  engine: number
}

/** How often these trials name the right cause. Without a trial: the largest share. */
export function namedRight(
  suspects: readonly Suspect[],
  trials: readonly TrialOutcomes[],
  doubt: ModelDoubt,
  draws = 8,
): NamedRight {
  const causes = [...new Set(suspects.map(causeOf))]
  const of = suspects.map((s) => causes.indexOf(causeOf(s)))
  const axes = trials.flatMap(axesOf)
  if (axes.length === 0) {
    const shares = causes.map((_, c) => suspects.reduce((sum, s, i) => sum + (of[i] === c ? s.share : 0), 0))
    return { cause: Math.max(0, ...shares), engine: Math.max(0, ...suspects.map((s) => s.share)) }
  }
  const rows = triangle(axes, doubt)
  const points = suspects.map((_, s) =>
    severities.map((_, k) =>
      whitened(
        rows,
        axes.map((a) => a.values[s]![k]!),
      ),
    ),
  )
  const random = seededRandom(7)
  const n = axes.length
  const y = new Float64Array(n)
  const own = new Float64Array(suspects.length)
  const byCause = new Float64Array(causes.length)
  const right: NamedRight = { cause: 0, engine: 0 }
  points.forEach((mine, s) => {
    const weight = suspects[s]!.share / (mine.length * draws)
    for (const point of mine)
      for (let d = 0; d < draws; d++) {
        for (let i = 0; i < n; i++) y[i] = point[i]! + random.normal()
        weigh(points, suspects, y, own)
        byCause.fill(0)
        own.forEach((w, i) => {
          byCause[of[i]!]! += w
        })
        if (largest(byCause) === of[s]) right.cause += weight
        if (largest(own) === s) right.engine += weight
      }
  })
  return right
}

/** Each suspect's weight after readings `y`, into `out`. */
function weigh(
  points: readonly Float64Array[][],
  suspects: readonly Suspect[],
  y: Float64Array,
  out: Float64Array,
): void {
  points.forEach((own, s) => {
    let sum = 0
    for (const point of own) {
      let far = 0
      for (let i = 0; i < y.length; i++) far += (y[i]! - point[i]!) ** 2
      sum += Math.exp(-0.5 * far)
    }
    out[s] = suspects[s]!.share * sum
  })
}

function largest(values: Float64Array): number {
  let best = 0
  for (let i = 1; i < values.length; i++) if (values[i]! > values[best]!) best = i
  return best
}
