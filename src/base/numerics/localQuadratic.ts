/**
 * Value and slopes of noisy, unevenly spaced data by a weighted parabola through the neighbours.
 * Source: W. S. Cleveland, "Robust locally weighted regression and smoothing scatterplots", J. Am. Stat. Assoc. 74 (1979) 829–836
 * (tricube weights); on even spacing it plays the part of a Savitzky–Golay filter.
 */

export interface LocalFit {
  value: number
  slope: number
  /** second derivative */
  curvature: number
  /** points with weight */
  points: number
}

/**
 * Parabola fitted about `at` to the points within `reach` of it (x in any order, same length as y). NaN throughout when fewer than
 * three distinct points are within reach.
 */
export function localQuadratic(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  at: number,
  reach: number,
): LocalFit {
  // normal equations in t = (x − at)/reach
  const m = [0, 0, 0, 0, 0]
  const b = [0, 0, 0]
  let points = 0
  for (let i = 0; i < x.length; i++) {
    const t = (x[i]! - at) / reach
    const far = Math.abs(t)
    if (!(far < 1)) continue
    const w = (1 - far ** 3) ** 3
    points++
    let power = w
    for (let k = 0; k < 5; k++) {
      m[k]! += power
      if (k < 3) b[k]! += power * y[i]!
      power *= t
    }
  }
  const none = { value: Number.NaN, slope: Number.NaN, curvature: Number.NaN, points }
  if (points < 3) return none
  const [m0, m1, m2, m3, m4] = m as [number, number, number, number, number]
  const c00 = m2 * m4 - m3 * m3
  const c01 = m2 * m3 - m1 * m4
  const c02 = m1 * m3 - m2 * m2
  const det = m0 * c00 + m1 * c01 + m2 * c02
  if (!(Math.abs(det) > 1e-12 * m0 * m0 * m0)) return none
  const [b0, b1, b2] = b as [number, number, number]
  const value = (c00 * b0 + c01 * b1 + c02 * b2) / det
  const slope = (c01 * b0 + (m0 * m4 - m2 * m2) * b1 + (m1 * m2 - m0 * m3) * b2) / det
  const bend = (c02 * b0 + (m1 * m2 - m0 * m3) * b1 + (m0 * m2 - m1 * m1) * b2) / det
  return { value, slope: slope / reach, curvature: (2 * bend) / (reach * reach), points }
}
