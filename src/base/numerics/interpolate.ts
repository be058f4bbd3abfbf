/**
 * Shape-preserving interpolation.
 * Source: F. N. Fritsch and J. Butland, "A method for constructing local monotone piecewise cubic
 * interpolants", SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; three-point end slopes limited as in
 * C. Moler, Numerical Computing with MATLAB (2004) §3.4.
 */

/** A piecewise cubic: knots, values and slopes at the knots. */
export interface Cubic {
  readonly x: Float64Array
  readonly y: Float64Array
  readonly slope: Float64Array
}

function endSlope(h0: number, h1: number, d0: number, d1: number): number {
  const s = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1)
  if (s * d0 <= 0) return 0
  if (d0 * d1 <= 0 && Math.abs(s) > 3 * Math.abs(d0)) return 3 * d0
  return s
}

/**
 * Monotone piecewise cubic through the points: it never overshoots the data between two knots.
 * x must increase strictly and hold at least two points; RangeError otherwise.
 */
export function pchip(x: ArrayLike<number>, y: ArrayLike<number>): Cubic {
  const n = x.length
  if (n < 2 || y.length !== n)
    throw new RangeError(`pchip needs two or more points, x and y alike: got ${n} and ${y.length}`)
  const cubic = { x: new Float64Array(x), y: new Float64Array(y), slope: new Float64Array(n) }
  slopesInto(cubic)
  return cubic
}

/** Takes the slopes of a cubic anew, in place, after its values were changed. RangeError where x does not increase. */
export function slopesInto({ x, y, slope }: Cubic): void {
  const n = x.length
  for (let i = 1; i < n; i++)
    if (!(x[i]! > x[i - 1]!))
      throw new RangeError(`pchip needs increasing x: ${x[i - 1]} then ${x[i]} at ${i}`)
  let h0 = x[1]! - x[0]!
  let d0 = (y[1]! - y[0]!) / h0
  if (n === 2) {
    slope.fill(d0)
    return
  }
  const h1 = x[2]! - x[1]!
  slope[0] = endSlope(h0, h1, d0, (y[2]! - y[1]!) / h1)
  for (let i = 1; i < n - 1; i++) {
    const h = x[i + 1]! - x[i]!
    const d = (y[i + 1]! - y[i]!) / h
    if (d0 * d <= 0) slope[i] = 0
    else {
      // weighted harmonic mean keeps the curve inside the data
      const w0 = 2 * h + h0
      const w1 = h + 2 * h0
      slope[i] = (w0 + w1) / (w0 / d0 + w1 / d)
    }
    if (i === n - 2) slope[n - 1] = endSlope(h, h0, d, d0)
    h0 = h
    d0 = d
  }
}

/** Index i of the interval [x[i], x[i+1]] that holds `at`; the first or last one outside the knots. */
export function intervalOf(x: ArrayLike<number>, at: number): number {
  let low = 0
  let high = x.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (x[middle]! <= at) low = middle
    else high = middle
  }
  return low
}

/** Value of the cubic at `at`; held at the end values outside the knots. NaN in, NaN out. */
export function cubicAt(c: Cubic, at: number): number {
  const last = c.x.length - 1
  if (at <= c.x[0]!) return c.y[0]!
  if (at >= c.x[last]!) return c.y[last]!
  const i = intervalOf(c.x, at)
  const h = c.x[i + 1]! - c.x[i]!
  const t = (at - c.x[i]!) / h
  const u = 1 - t
  return (
    u * u * (1 + 2 * t) * c.y[i]! +
    t * t * (3 - 2 * t) * c.y[i + 1]! +
    h * t * u * (u * c.slope[i]! - t * c.slope[i + 1]!)
  )
}

/** Straight-line interpolation in a table with increasing x; held at the ends. */
export function linearAt(x: ArrayLike<number>, y: ArrayLike<number>, at: number): number {
  const last = x.length - 1
  if (at <= x[0]!) return y[0]!
  if (at >= x[last]!) return y[last]!
  const i = intervalOf(x, at)
  const t = (at - x[i]!) / (x[i + 1]! - x[i]!)
  return y[i]! + t * (y[i + 1]! - y[i]!)
}

/** `count` evenly spaced numbers from `from` to `to`, both included. */
export function linspace(from: number, to: number, count: number): Float64Array {
  const out = new Float64Array(count)
  for (let i = 0; i < count; i++) out[i] = count === 1 ? from : from + ((to - from) * i) / (count - 1)
  return out
}
