/**
 * Roots of one equation in one unknown.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), ch. 4 (zero finder);
 * bisection and scanning are elementary.
 */
import type { Solved } from '../answers/solved.ts'

export interface RootOptions {
  /** absolute tolerance on the unknown */
  tolerance?: number
  maxIterations?: number
}

/**
 * Root of `f` in [low, high] by Brent's method. The ends must bracket: f(low) and f(high) of opposite
 * sign or one of them zero; otherwise, or when f gives NaN, `converged` is false.
 * residual = |f(value)|.
 */
export function brent(
  f: (x: number) => number,
  low: number,
  high: number,
  options: RootOptions = {},
): Solved {
  const tolerance = options.tolerance ?? 1e-12 * Math.max(Math.abs(low), Math.abs(high), 1e-300)
  const most = options.maxIterations ?? 100
  let a = low
  let b = high
  let fa = f(a)
  let fb = f(b)
  if (!(fa * fb <= 0)) return { value: Number.NaN, converged: false, iterations: 0, residual: Number.NaN }
  let c = a
  let fc = fa
  let step = b - a
  let before = step
  for (let i = 1; i <= most; i++) {
    // keep b the best guess so far and c on the other side of the root
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b
      b = c
      c = a
      fa = fb
      fb = fc
      fc = fa
    }
    const near = 2 * Number.EPSILON * Math.abs(b) + 0.5 * tolerance
    const half = 0.5 * (c - b)
    if (Math.abs(half) <= near || fb === 0)
      return { value: b, converged: true, iterations: i, residual: Math.abs(fb) }
    if (Math.abs(before) < near || Math.abs(fa) <= Math.abs(fb)) {
      step = half
      before = half
    } else {
      // secant where only two points are known, inverse quadratic where three are
      const s = fb / fa
      let p: number
      let q: number
      if (a === c) {
        p = 2 * half * s
        q = 1 - s
      } else {
        const r = fb / fc
        const t = fa / fc
        p = s * (2 * half * t * (t - r) - (b - a) * (r - 1))
        q = (t - 1) * (r - 1) * (s - 1)
      }
      if (p > 0) q = -q
      else p = -p
      if (2 * p < Math.min(3 * half * q - Math.abs(near * q), Math.abs(before * q))) {
        before = step
        step = p / q
      } else {
        step = half
        before = half
      }
    }
    a = b
    fa = fb
    b += Math.abs(step) > near ? step : half > 0 ? near : -near
    fb = f(b)
    if (Number.isNaN(fb)) return { value: Number.NaN, converged: false, iterations: i, residual: Number.NaN }
    if (fb > 0 === fc > 0) {
      c = a
      fc = fa
      step = b - a
      before = step
    }
  }
  return { value: b, converged: false, iterations: most, residual: Math.abs(fb) }
}

/** Root of `f` in [low, high] by halving; same contract as `brent`, for functions with kinks or steps. */
export function bisect(
  f: (x: number) => number,
  low: number,
  high: number,
  options: RootOptions = {},
): Solved {
  const tolerance = options.tolerance ?? 1e-12 * Math.max(Math.abs(low), Math.abs(high), 1e-300)
  const most = options.maxIterations ?? 200
  let a = low
  let b = high
  const fa = f(a)
  const fb = f(b)
  if (fa === 0) return { value: a, converged: true, iterations: 0, residual: 0 }
  if (fb === 0) return { value: b, converged: true, iterations: 0, residual: 0 }
  if (!(fa * fb < 0)) return { value: Number.NaN, converged: false, iterations: 0, residual: Number.NaN }
  let fm = fa
  let middle = a
  for (let i = 1; i <= most; i++) {
    middle = 0.5 * (a + b)
    fm = f(middle)
    if (Number.isNaN(fm)) break
    if (fm === 0 || Math.abs(b - a) <= tolerance || middle === a || middle === b)
      return { value: middle, converged: true, iterations: i, residual: Math.abs(fm) }
    if (fm > 0 === fa > 0) a = middle
    else b = middle
  }
  return { value: middle, converged: false, iterations: most, residual: Math.abs(fm) }
}

/**
 * Every root of `f` that shows as a sign change between neighbouring points of `grid` (increasing or
 * decreasing), in grid order, each refined by Brent. Points where f is NaN break a bracket.
 */
export function scanRoots(
  f: (x: number) => number,
  grid: ArrayLike<number>,
  options: RootOptions = {},
): Solved[] {
  const roots: Solved[] = []
  let x0 = Number.NaN
  let f0 = Number.NaN
  for (let i = 0; i < grid.length; i++) {
    const x = grid[i]!
    const fx = f(x)
    if (fx === 0) roots.push({ value: x, converged: true, iterations: 0, residual: 0 })
    else if (f0 !== 0 && f0 * fx < 0) roots.push(brent(f, x0, x, options))
    x0 = x
    f0 = fx
  }
  return roots
}
