/**
 * Gauss–Legendre quadrature.
 * Source: M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), 25.4.29; nodes by Newton
 * on the three-term recurrence, started from Tricomi's estimate.
 */

/** Nodes on [−1, 1], rising, and their weights (sum 2). */
export interface Rule {
  readonly node: Float64Array
  readonly weight: Float64Array
}

const rules = new Map<number, Rule>()

/** The n-point rule, exact for polynomials up to degree 2n − 1; n from 1 to 500. Rules are kept once made. */
export function gaussLegendre(n: number): Rule {
  if (!(Number.isInteger(n) && n >= 1 && n <= 500))
    throw new RangeError(`gaussLegendre: ${n} points is outside 1 to 500`)
  const known = rules.get(n)
  if (known) return known
  const node = new Float64Array(n)
  const weight = new Float64Array(n)
  for (let i = 0; i < (n + 1) >> 1; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5))
    let slope = 1
    for (let round = 0; round < 50; round++) {
      let p = 1
      let before = 0
      for (let k = 1; k <= n; k++) {
        const next = ((2 * k - 1) * x * p - (k - 1) * before) / k
        before = p
        p = next
      }
      slope = (n * (x * p - before)) / (x * x - 1)
      const step = p / slope
      x -= step
      if (Math.abs(step) < 1e-15) break
    }
    if (2 * i + 1 === n) x = 0
    node[i] = -x
    node[n - 1 - i] = x
    weight[i] = weight[n - 1 - i] = 2 / ((1 - x * x) * slope * slope)
  }
  const rule = { node, weight }
  rules.set(n, rule)
  return rule
}

/** ∫ f over [low, high] with n Gauss–Legendre points. */
export function integrate(f: (x: number) => number, low: number, high: number, n = 20): number {
  const { node, weight } = gaussLegendre(n)
  const half = 0.5 * (high - low)
  const middle = 0.5 * (high + low)
  let sum = 0
  for (let i = 0; i < n; i++) sum += weight[i]! * f(middle + half * node[i]!)
  return half * sum
}
