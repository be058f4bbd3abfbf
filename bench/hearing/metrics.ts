/**
 * How well tracks agree with the truth. Multi-pitch counts follow G. E. Poliner and D. P. W. Ellis,
 * EURASIP J. Adv. Signal Process. 2007:48317, and M. Bay, A. F. Ehmann and J. S. Downie, ISMIR 2009.
 */
export interface OneScore {
  on: number
  within3: number
  within1: number
  /** more than 20 % off or missing */
  gross: number
  octave: number
  off: number
  /** frames shown in engine-off stretches */
  falseOn: number
}

export const noOneScore = (): OneScore => ({
  on: 0,
  within3: 0,
  within1: 0,
  gross: 0,
  octave: 0,
  off: 0,
  falseOn: 0,
})

/** Adds the frames of one clip; rates in Hz on one grid, 0 = off. */
export function scoreOne(truth: ArrayLike<number>, heard: ArrayLike<number>, into: OneScore): void {
  for (let i = 0; i < heard.length; i++) {
    const f = truth[i] ?? 0
    const g = heard[i]!
    if (f <= 0) {
      into.off++
      if (g > 0) into.falseOn++
      continue
    }
    into.on++
    const off = g > 0 ? Math.abs(g / f - 1) : Number.POSITIVE_INFINITY
    if (off < 0.03) into.within3++
    if (off < 0.01) into.within1++
    if (off > 0.2) into.gross++
    if (g > 0 && Math.abs(Math.abs(Math.log2(g / f)) - 1) < 0.05) into.octave++
  }
}

export interface ManyScore {
  truePositive: number
  falsePositive: number
  falseNegative: number
  /** the same with a tolerance of 1 % */
  truePositive1: number
  /** frames of two-engine time with both labels right under the best of the two assignments */
  labelled: number
  labelledRight: number
}

export const noManyScore = (): ManyScore => ({
  truePositive: 0,
  falsePositive: 0,
  falseNegative: 0,
  truePositive1: 0,
  labelled: 0,
  labelledRight: 0,
})

/** speeds nearer than this count as one, part */
const SAME = 0.004

function distinct(rates: number[]): number[] {
  const out: number[] = []
  for (const r of rates) if (r > 0 && !out.some((o) => Math.abs(o / r - 1) < SAME)) out.push(r)
  return out
}

function matches(truth: readonly number[], heard: readonly number[], tolerance: number): number {
  const left = [...truth]
  let n = 0
  for (const h of heard) {
    let best = -1
    for (let j = 0; j < left.length; j++)
      if (
        Math.abs(h / left[j]! - 1) < tolerance &&
        (best < 0 || Math.abs(h - left[j]!) < Math.abs(h - left[best]!))
      )
        best = j
    if (best >= 0) {
      n++
      left.splice(best, 1)
    }
  }
  return n
}

/** Adds the frames of a clip with several engines: accuracy = TP / (TP + FP + FN). */
export function scoreMany(
  truth: readonly ArrayLike<number>[],
  heard: readonly ArrayLike<number>[],
  into: ManyScore,
): void {
  const n = heard[0]?.length ?? 0
  const direct = { right: 0, n: 0 }
  const swapped = { right: 0, n: 0 }
  for (let i = 0; i < n; i++) {
    const t = truth.map((x) => x[i] ?? 0)
    const h = heard.map((x) => x[i]!)
    const ref = distinct(t)
    const est = distinct(h)
    const tp = matches(ref, est, 0.03)
    into.truePositive += tp
    into.truePositive1 += matches(ref, est, 0.01)
    into.falsePositive += est.length - tp
    into.falseNegative += ref.length - tp
    if (ref.length === 2 && h.length === 2) {
      const ok = (a: number, b: number) => b > 0 && Math.abs(a / b - 1) < 0.03
      direct.n++
      if (ok(t[0]!, h[0]!) && ok(t[1]!, h[1]!)) direct.right++
      if (ok(t[0]!, h[1]!) && ok(t[1]!, h[0]!)) swapped.right++
    }
  }
  into.labelled += direct.n
  into.labelledRight += Math.max(direct.right, swapped.right)
}

export const accuracy = (s: ManyScore) =>
  s.truePositive / Math.max(1, s.truePositive + s.falsePositive + s.falseNegative)

export interface EventScore {
  hit: number
  missed: number
  extra: number
}

/** Matches events in time, one to one, within `tolerance` s. */
export function scoreEvents(
  truth: readonly number[],
  heard: readonly number[],
  tolerance: number,
  into: EventScore,
): void {
  const left = [...heard]
  for (const t of truth) {
    let best = -1
    for (let j = 0; j < left.length; j++)
      if (
        Math.abs(left[j]! - t) <= tolerance &&
        (best < 0 || Math.abs(left[j]! - t) < Math.abs(left[best]! - t))
      )
        best = j
    if (best >= 0) {
      into.hit++
      left.splice(best, 1)
    } else into.missed++
  }
  into.extra += left.length
}
