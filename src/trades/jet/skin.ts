/**
 * Skin friction and blade-section loss.
 * Friction: H. Schlichting, Boundary-Layer Theory (7th ed. 1979), eq. 21.16a (smooth plate) and 21.37 (rough plate).
 * Equivalent sand roughness: Adams, Grant and Watson, "A Simple Algorithm to Relate Measured Surface Roughness to
 * Equivalent Sand-grain Roughness" (Int. J. Mech. Eng. Mechatronics, 2012): k_s = 5.86 Ra.
 * Blade sections: S. Lieblein, "Loss and Stall Analysis of Compressor Cascades" (J. Basic Eng. 81, 1959), eq. 8 and the
 * fit of wake momentum thickness θ/c = 0.004/(1 - 1.17 ln D_eq).
 */

/** Sand roughness over Ra. */
export const sandPerRa = 5.86

/** Friction coefficient of a smooth plate, turbulent, Re from 1e5 to 1e9. */
export function smoothFriction(reynolds: number): number {
  return 0.455 / Math.log10(Math.max(reynolds, 1e4)) ** 2.58
}

/** Friction coefficient of a fully rough plate; `chordOverSand` length over sand roughness, 10 to 1e7. */
function roughFriction(chordOverSand: number): number {
  return (1.89 + 1.62 * Math.log10(Math.max(chordOverSand, 10))) ** -2.5
}

/**
 * Friction of a plate of length `length` (m), flow `speed` (m/s), kinematic viscosity (m²/s), Ra (m).
 * The larger of smooth and rough, with the corner between them rounded: walls do not turn rough at a stroke.
 */
export function plateFriction(length: number, speed: number, kinematic: number, roughness: number): number {
  const smooth = smoothFriction((speed * length) / kinematic)
  if (!(roughness > 0)) return smooth
  const rough = roughFriction(length / (sandPerRa * roughness))
  const most = Math.max(smooth, rough)
  const ratio = (Math.min(smooth, rough) / most) ** 8
  return most * Math.sqrt(Math.sqrt(Math.sqrt(1 + ratio)))
}

/** The fit's pole is at exp(1/1.17) = 2.3507; past 2.0 the tangent goes on instead. */
const tangentFrom = 2

/** Momentum thickness over chord at the trailing edge, smooth blade at Re 2.5e5. `deq` from 1 up. */
export function momentumThickness(deq: number): number {
  const at = Math.min(deq, tangentFrom)
  const bracket = 1 - 1.17 * Math.log(Math.max(at, 0.5))
  const value = 0.004 / bracket
  if (deq <= tangentFrom) return value
  const slope = (0.004 * 1.17) / (tangentFrom * bracket * bracket)
  return value + slope * (deq - tangentFrom)
}

/**
 * Equivalent diffusion ratio. `w1`, `w2` relative speeds; `axial` at inlet; `turned` w_u1 - w_u2; `incidence` rad.
 * 0.007 belongs to circular-arc blades (Lieblein 1959).
 */
export function equivalentDiffusion(
  w1: number,
  w2: number,
  axial: number,
  turned: number,
  solidity: number,
  incidence: number,
): number {
  const degrees = incidence > 0 ? (incidence * 180) / Math.PI : 0
  return (w1 / w2) * (1.12 + (0.61 * axial * turned) / (solidity * w1 * w1) + 0.007 * degrees ** 1.43)
}
