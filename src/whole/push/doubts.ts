/**
 * Ranges of the answers: all doubtful inputs drawn together, the balance struck anew for each draw, and percentiles 2.5, 50 and
 * 97.5 of what comes out (ISO/IEC Guide 98-3/Suppl. 1:2008, propagation of distributions). An input's share of the variance
 * is what a parabola in it alone explains of the draws: a regression on Legendre parts, which for inputs drawn independently
 * gives first-order indices (I. M. Sobol', Math. Comput. Simulation 55 (2001) 271). Coverage by fresh draws: docs/ranges.md.
 */
import type { Range } from '../../base/answers/solved.ts'
import { percentile } from '../../base/numerics/effects.ts'
import { spreadPoint } from '../../base/numerics/lowDiscrepancy.ts'
import type { Craft } from '../../craft/index.ts'
import type { SolvedCurves } from '../../trades/engine/enginesFromCraft.ts'
import type { Driver, Shares } from './balanceTypes.ts'
import { type MapStore, modelFromCraft } from './craftModel.ts'
import { type DrawnCraft, drawnCraft, partsBeside } from './drawnCraft.ts'
import { type Doubt, doubtsOf, leantBy } from './draws.ts'
import type { Table } from './operatingTable.ts'
import { probe } from './probe.ts'
import type { CraftModel } from './propulsionModel.ts'
import { type AnswerName, type Answers, answerNames, benchOf, type Places, solveDrawn } from './solveDrawn.ts'

/** Draws that a range is read from: its ends then lie within about half a hundredth of their percentile. */
const rangeDraws = 1024
/** draws of a first range, while the good one is worked out */
const quickDraws = 128
/** a bound nearer to the end of the range than this share of its width is tried by the whole balance */
const closeToEnd = 0.04

/** The solved craft that ranges are wanted for. */
export interface Settled {
  craft: Craft
  model: CraftModel
  table: Table
  /** m/s at which the pitch is judged */
  judgedAt: number
  /** the whole balance's own answers, which put right what the coarser one makes a little otherwise */
  exact: Answers
  maps: MapStore
  solved?: SolvedCurves | undefined
}

/** A settled craft made ready to be drawn. */
export interface Drawable {
  drawn: DrawnCraft
  places: Places
  /** answers of draw `i`, or with each doubt where `u` puts it (NaN: at its value) */
  answersOf: (u: ArrayLike<number>) => Answers
  drawAt: (i: number) => Float64Array
}

export interface Ranges {
  answers: Record<AnswerName, Range>
  drivers: Driver[]
  /** share of each answer's variance that the drivers explain by themselves */
  explained: Shares
}

/** Takes the effects of all doubts. What cannot run at all cannot be drawn: undefined. */
export function drawable(at: Settled): Drawable | undefined {
  if (!Number.isFinite(at.exact.rotation)) return undefined
  const doubts = doubtsOf(at.craft, at.solved)
  const drawn = drawnCraft(at.craft, at.model, at.table, doubts, at.solved)
  const places: Places = {
    judgedAt: at.judgedAt,
    hump: humpOf(at.table, drawn),
  }
  const points: Float64Array[] = []
  return {
    drawn,
    places,
    answersOf: mended(drawn, places, at.exact),
    // ranges and every change are asked for at the same draws
    drawAt: (i) => {
      points[i] ??= spreadPoint(i, doubts.length, 1)
      return points[i]
    },
  }
}

/** Draws of a craft put right by what the whole balance makes of it where every doubt is left at its value. */
function mended(
  drawn: DrawnCraft,
  places: Places,
  exact: Partial<Answers>,
  sumsOnly = false,
): (u: ArrayLike<number>) => Answers {
  const bench = benchOf(drawn)
  const left = new Float64Array(drawn.doubts.length).fill(Number.NaN)
  const still = solveDrawn(drawn, places, left, bench, sumsOnly)
  const part = (name: AnswerName) => {
    const p = (exact[name] ?? Number.NaN) / still[name]
    return Number.isFinite(p) && p > 0 ? p : 1
  }
  const by = answerNames.map((name) => [name, part(name)] as const)
  return (u) => {
    const a = solveDrawn(drawn, places, u, bench, sumsOnly)
    for (const [name, p] of by) a[name] *= p
    return a
  }
}

/**
 * The same doubts on a craft with a change made: `model` is that craft, `exact` what the whole balance says of it. Effects are
 * those of the craft they were taken at. Rotation, pull and top speed alone. Undefined when the changed craft cannot run.
 */
export function redrawn(
  { drawn, places }: Drawable,
  model: CraftModel,
  exact: Pick<Answers, 'rotation' | 'pull' | 'topSpeed'>,
): ((u: ArrayLike<number>) => Answers) | undefined {
  if (!Number.isFinite(exact.rotation)) return undefined
  const other: DrawnCraft = { ...drawn, model, ...partsBeside(drawn, model) }
  return mended(other, places, exact, true)
}

/** Ends of the hump as the table found it, m/s. */
function humpOf(table: Table, { grid }: DrawnCraft): readonly [number, number] {
  const rows = table.rows.filter((r) => r.drag.regime === 'hump')
  const at = table.rows[table.humpRow]!.speed
  const end = grid.speeds[grid.speeds.length - 1]!
  return rows.length === 0
    ? [at, at]
    : [Math.min(end, rows[0]!.speed), Math.min(end, rows[rows.length - 1]!.speed)]
}

/** Ranges of the answers and the inputs they come from, largest first; `quick` takes fewer draws. */
export function rangesOf(at: Settled, able: Drawable, quick = false): Ranges {
  const { answersOf, drawAt } = able
  const count = quick ? quickDraws : rangeDraws
  const points = Array.from({ length: count }, (_, i) => drawAt(i))
  const all = points.map(answersOf)
  const answers = Object.fromEntries(
    answerNames.map((name) => [
      name,
      rangeOver(
        all.map((a) => a[name]),
        at.exact[name],
      ),
    ]),
  ) as Record<AnswerName, Range>
  const movers = moversOf(able, points, all)
  reachBounds(at, movers, answers, quick)
  const shares = (name: 'rotation' | 'pull' | 'topSpeed') =>
    Math.min(
      1,
      movers.reduce((sum, m) => sum + m.driver.share[name], 0),
    )
  const weight = ({ share }: Driver) => share.rotation + share.pull + share.topSpeed
  return {
    answers,
    drivers: movers
      .map((m) => m.driver)
      .filter((d) => weight(d) > 1e-4)
      .sort((a, b) => weight(b) - weight(a)),
    explained: { rotation: shares('rotation'), pull: shares('pull'), topSpeed: shares('topSpeed') },
  }
}

function rangeOver(all: readonly number[], exact: number): Range {
  if (!Number.isFinite(exact)) return { value: exact, low: Number.NaN, high: Number.NaN }
  const sorted = Float64Array.from(all.filter((y) => !Number.isNaN(y))).sort()
  return {
    value: percentile(sorted, 0.5),
    low: percentile(sorted, 0.025),
    high: percentile(sorted, 0.975),
  }
}

interface Mover {
  doubt: Doubt
  index: number
  driver: Driver
  /** answers with this input alone at its low and its high bound */
  ends: readonly [Answers, Answers]
}

/** Every input that moves something: its own moves, and its share of the draws' variance. */
function moversOf(
  { drawn, answersOf }: Drawable,
  points: readonly Float64Array[],
  all: readonly Answers[],
): Mover[] {
  const u = new Float64Array(drawn.doubts.length).fill(Number.NaN)
  const still = answersOf(u)
  const share = (name: AnswerName) =>
    sharesOf(
      points,
      all.map((a) => a[name]),
    )
  const shares = { rotation: share('rotation'), pull: share('pull'), topSpeed: share('topSpeed') }
  return drawn.moving.map((index) => {
    const doubt = drawn.doubts[index]!
    const [low, high] = [0, 1].map((end) => {
      u[index] = end
      return answersOf(u)
    }) as [Answers, Answers]
    u[index] = Number.NaN
    const half = (name: AnswerName) => {
      const most = Math.max(Math.abs(low[name] - still[name]), Math.abs(high[name] - still[name]))
      return Number.isFinite(most) ? most : 0
    }
    const { path, says, source } = doubt
    const driver: Driver = {
      path,
      says,
      source,
      rotation: half('rotation'),
      pull: half('pull'),
      topSpeed: half('topSpeed'),
      share: {
        rotation: shares.rotation(index),
        pull: shares.pull(index),
        topSpeed: shares.topSpeed(index),
      },
    }
    return { doubt, index, driver, ends: [low, high] }
  })
}

/** The share of the variance of `y` that input `index` explains by a parabola of its own, chance taken off. */
function sharesOf(points: readonly Float64Array[], y: readonly number[]): (index: number) => number {
  const known = y.flatMap((v, i) => (Number.isFinite(v) ? [i] : []))
  const n = known.length
  const mean = known.reduce((sum, i) => sum + y[i]! / n, 0)
  const variance = known.reduce((sum, i) => sum + (y[i]! - mean) ** 2 / n, 0)
  if (!(variance > 1e-18 * mean * mean) || n < 16) return () => 0
  return (index) => {
    let a = 0
    let b = 0
    for (const i of known) {
      const x = 2 * points[i]![index]! - 1
      a += (x * (y[i]! - mean)) / n
      b += (0.5 * (3 * x * x - 1) * (y[i]! - mean)) / n
    }
    // two numbers fitted to noise would explain 2/n of it
    return Math.max(0, (3 * a * a + 5 * b * b) / variance - 2 / n)
  }
}

/**
 * A single input at its own bound never lies outside the range: it is widened where one does. Bounds near its ends are tried
 * by the whole balance, the rest by the one that draws are solved with.
 */
function reachBounds(
  at: Settled,
  movers: readonly Mover[],
  answers: Record<AnswerName, Range>,
  quick: boolean,
): void {
  const wholly = ['rotation', 'pull', 'torque', 'topSpeed'] as const
  for (const { ends, index } of movers)
    ends.forEach((end, k) => {
      let tried = end
      const near = wholly.some((name) => {
        const { low, high } = answers[name]
        const close = closeToEnd * (high - low)
        return end[name] < low + close || end[name] > high - close
      })
      if (near && !quick) tried = { ...end, ...wholeAt(at, index, k) }
      for (const name of answerNames) {
        const range = answers[name]
        const y = tried[name]
        if (!Number.isFinite(y) || !Number.isFinite(range.low)) continue
        answers[name] = { ...range, low: Math.min(range.low, y), high: Math.max(range.high, y) }
      }
    })
}

/** The whole balance with one input at a bound. */
function wholeAt(at: Settled, index: number, end: number): Partial<Answers> {
  const doubts = doubtsOf(at.craft, at.solved)
  const u = new Float64Array(doubts.length).fill(Number.NaN)
  u[index] = end
  try {
    const { craft, leeway } = leantBy(at.craft, doubts, u)
    const { rotation, pull, torque, topSpeed } = probe(modelFromCraft(craft, at.maps, leeway, at.solved))
    return { rotation, pull, torque, topSpeed }
  } catch (error) {
    if (error instanceof RangeError) return {}
    throw error
  }
}
