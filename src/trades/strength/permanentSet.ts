/**
 * When a sheet keeps a dish: not at first yield of its clamped edge, which only shifts load inwards, but once hinges go round the foot.
 *
 * Collapse of a plate under a load on a small disc, by a circular fan of yield lines: P = 2π (m + m′) / (1 − 2 r₀/3R), with m = σ t²/4 the
 * plastic moment in the field, m′ that at the fan's rim, r₀ the disc and R the fan (K. W. Johansen, Yield-Line Theory, 1962; M. A. Save
 * and C. E. Massonnet, Plastic Analysis and Design of Plates, Shells and Disks, 1972; from memory). A dish of depth w hangs in its
 * plane as well: P(w)/P = 1 + (w/t)²/3 while w is within the thickness t, and w/t + t/3w beyond it: rigid-plastic square plates of moderate
 * deflection (N. Jones, Structural Impact, 1989, ch. 3; from memory). Only what holds its edge can hang: edges that slip get half.
 */

export interface SetSheet {
  /** short side of the field between supports, m */
  span: number
  /** thickness, m */
  t: number
  /** stress at which hinges turn, Pa */
  stress: number
  /** moment the rim carries over that of the field: 1 for sheet that goes on over its supports, less for a row of rivets */
  fixity: number
  /** true when the edges cannot pull in */
  held: boolean
}

/** Load, N, on a patch of an area (m²) at which the sheet keeps a dish of depth `dish` (m). Rises with t and stress, never falls as the span closes. */
export function setLoad(sheet: SetSheet, area: number, dish: number): number {
  const { span, t, stress, fixity, held } = sheet
  const fan = span / 2
  // a foot as wide as the field stands on the supports: the fan is then all foot
  const disc = Math.min(Math.sqrt(area / Math.PI), fan)
  const moment = (stress * t * t) / 4
  const collapse = (2 * Math.PI * moment * (1 + fixity)) / (1 - (2 * disc) / (3 * fan))
  return collapse * (1 + (held ? 1 : 0.5) * hanging(dish / t))
}

/** What hanging adds to bending, as a part of it, at a dish of w thicknesses. */
function hanging(w: number): number {
  return w <= 1 ? (w * w) / 3 : w + 1 / (3 * w) - 1
}
