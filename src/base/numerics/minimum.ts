/**
 * Minimum of a function of one unknown.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), ch. 5.
 */
import type { Solved } from '../answers/solved.ts'

export interface MinimumOptions {
  /** absolute tolerance on the unknown; not worth much below √ε times its size */
  tolerance?: number
  maxIterations?: number
}

const golden = 0.5 * (3 - Math.sqrt(5))

/**
 * Place of the least value of `f` in [low, high] by golden section with parabolic steps; exact for functions
 * with one dip, a local dip otherwise; an end of the interval when f is monotone. `residual` is the width of what is
 * left of the bracket. NaN from f, or low > high, is not converged.
 */
export function minimumIn(
  f: (x: number) => number,
  low: number,
  high: number,
  options: MinimumOptions = {},
): Solved {
  const tolerance = options.tolerance ?? 1e-8 * Math.max(Math.abs(low), Math.abs(high), 1e-300)
  const most = options.maxIterations ?? 60
  if (!(low <= high)) return { value: Number.NaN, converged: false, iterations: 0, residual: Number.NaN }
  let a = low
  let b = high
  // x is the best place so far, w the second best, v the one before w
  let x = a + golden * (b - a)
  let w = x
  let v = x
  let fx = f(x)
  let fw = fx
  let fv = fx
  let step = 0
  let before = 0
  for (let i = 1; i <= most; i++) {
    const middle = 0.5 * (a + b)
    const near = 1e-10 * Math.abs(x) + tolerance / 3
    if (Number.isNaN(fx)) break
    if (Math.abs(x - middle) <= 2 * near - 0.5 * (b - a)) {
      // a monotone function ends against the bracket: take the very end when it is lower
      const end = x - low < high - x ? low : high
      const fe = Math.abs(end - x) <= 6 * near ? f(end) : Number.POSITIVE_INFINITY
      return { value: fe < fx ? end : x, converged: true, iterations: i, residual: b - a }
    }
    let p = 0
    let q = 0
    let r = 0
    if (Math.abs(before) > near) {
      r = (x - w) * (fx - fv)
      q = (x - v) * (fx - fw)
      p = (x - v) * q - (x - w) * r
      q = 2 * (q - r)
      if (q > 0) p = -p
      else q = -q
      r = before
      before = step
    }
    if (Math.abs(p) < Math.abs(0.5 * q * r) && p > q * (a - x) && p < q * (b - x)) {
      step = p / q
      const u = x + step
      if (u - a < 2 * near || b - u < 2 * near) step = x < middle ? near : -near
    } else {
      before = x < middle ? b - x : a - x
      step = golden * before
    }
    const u = x + (Math.abs(step) >= near ? step : step > 0 ? near : -near)
    const fu = f(u)
    if (fu <= fx) {
      if (u < x) b = x
      else a = x
      v = w
      fv = fw
      w = x
      fw = fx
      x = u
      fx = fu
    } else {
      if (u < x) a = u
      else b = u
      if (fu <= fw || w === x) {
        v = w
        fv = fw
        w = u
        fw = fu
      } else if (fu <= fv || v === x || v === w) {
        v = u
        fv = fu
      }
    }
  }
  return { value: x, converged: false, iterations: most, residual: b - a }
}
