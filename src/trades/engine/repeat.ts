/** Whether cycles repeat: each one, every other one ("alternating"), or not quite, within a narrow band. */

/** What is compared of a cycle: work J, trapped mass kg, mass in and out kg. */
export interface Beat {
  work: number
  trapped: number
  massIn: number
  massOut: number
}

export interface Repetition {
  /** how many of the last cycles make up the answer; 0 when they do not repeat yet */
  cycles: 0 | 1 | 2 | 8
  /** size of what still changes, as a part */
  residual: number
  /** difference of the two cycles of a pair, or spread of the eight, as a part of the mean */
  apart: number
}

const tolerance = 0.002
const massTolerance = 0.005
/** cycles before every-other-one, and before a narrow wander, may be accepted */
const pairAfter = 12
const wanderAfter = 24
const wanderMost = 0.01

const change = (a: Beat, b: Beat): number =>
  Math.max(Math.abs(a.work / b.work - 1), Math.abs(a.trapped / b.trapped - 1))

/** mass in against mass out over several cycles, as a part */
function imbalance(list: readonly Beat[]): number {
  const into = list.reduce((s, b) => s + b.massIn, 0)
  const out = list.reduce((s, b) => s + b.massOut, 0)
  return Math.abs(into - out) / into
}

function spread(list: readonly Beat[]): number {
  const of = (values: number[]): number =>
    (Math.max(...values) - Math.min(...values)) / Math.abs(values.reduce((a, b) => a + b, 0) / values.length)
  return Math.max(of(list.map((b) => b.work)), of(list.map((b) => b.trapped)))
}

/**
 * Judges the last cycles (up to eight are looked at) after `count` in all. One cycle answers when the last three agree
 * within 0.2 % and its mass balances within 0.5 %; a pair when every other one does and neighbours do not, after twelve;
 * eight when they stay within 1 %, after twenty-four. `looseness` widens the first of these, for a first coarse look.
 */
export function repeats(history: readonly Beat[], count: number, looseness = 1): Repetition {
  if (history.length < 3) return { cycles: 0, residual: 1, apart: 0 }
  const [b, c, d] = history.slice(-3) as [Beat, Beat, Beat]
  const residual = Math.max(change(c, d), change(b, c))
  if (residual < looseness * tolerance && imbalance([d]) < looseness * massTolerance)
    return { cycles: 1, residual, apart: 0 }
  const a = history[history.length - 4]
  const apart = change(c, d)
  if (a && count >= pairAfter && apart > 2 * tolerance && imbalance([c, d]) < massTolerance) {
    const pair = Math.max(change(b, d), change(a, c))
    if (pair < tolerance) return { cycles: 2, residual: pair, apart }
  }
  const eight = history.slice(-8)
  const wander = spread(eight)
  if (eight.length === 8 && count >= wanderAfter && wander < wanderMost && imbalance(eight) < massTolerance)
    return { cycles: 8, residual: wander, apart: wander }
  return { cycles: 0, residual, apart }
}
