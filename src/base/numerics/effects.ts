/**
 * What one doubtful input does by itself: a parabola through what was found at its bounds; and percentiles of draws: R. J. Hyndman and Y. Fan, The American Statistician 50 (1996) 361, definition 8.
 */

/** What one input does to an answer: c0 + c1 x + c2 x², x from -1 at its low bound to 1 at its high bound. */
export interface Effect {
  c0: number
  c1: number
  c2: number
}

/** Parabola (or straight line) through two or three points of x and the answer's change; x all different. */
export function effectThrough(points: readonly (readonly [x: number, change: number])[]): Effect {
  const [[xa, ya], [xb, yb], c] = points as [
    readonly [number, number],
    readonly [number, number],
    (readonly [number, number])?,
  ]
  const first = (yb - ya) / (xb - xa)
  if (!c) return { c0: ya - first * xa, c1: first, c2: 0 }
  const second = ((c[1] - yb) / (c[0] - xb) - first) / (c[0] - xa)
  return { c0: ya - first * xa + second * xa * xb, c1: first - second * (xa + xb), c2: second }
}

export const effectAt = (e: Effect, x: number): number => e.c0 + x * (e.c1 + x * e.c2)

/** Value below which the share `part` (0 to 1) of the sorted numbers lies; NaN for none. */
export function percentile(sorted: ArrayLike<number>, part: number): number {
  const n = sorted.length
  if (n === 0) return Number.NaN
  const at = Math.min(n, Math.max(1, (n + 1 / 3) * part + 1 / 3)) - 1
  const i = Math.min(n - 1, Math.floor(at))
  const low = sorted[i]!
  const high = sorted[Math.min(n - 1, i + 1)]!
  // between an endless and an endless number there is no difference to take a part of
  return at === i || low === high ? low : low + (at - i) * (high - low)
}
