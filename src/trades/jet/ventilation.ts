/**
 * Air drawn down to the intake when the craft is held still: with a swirl over it, and without.
 * ANSI/HI 9.8, Rotodynamic Pumps for Pump Intake Design: least submergence S = D (1 + 2.3 Fr), Fr = v/√(gD) of the inlet. It is made
 * for sumps, whose walls set the water turning under an open surface right over the mouth; under a hull there is no surface for a
 * vortex to stand on, so there it is the depth past which not even a swirl matters, not what is needed.
 * Without swirl the surface dips where speed outweighs gravity, (Q²/g)^⅕: 0.69 of it for a sink beside or below (A. Craya, La Houille
 * Blanche, 1949; B. T. Lubin and G. S. Springer, J. Fluid Mech. 29, 1967), 1.17 for an opening in a floor (C. Smoglie and
 * J. Reimann, Int. J. Multiphase Flow 12, 1986); from memory.
 */
import { gravity } from '../../physics/fluid/water.ts'

export interface Submergence {
  /** diameter of the circle of the opening's area, m */
  diameter: number
  froude: number
  /** water needed between surface and opening, m */
  needed: number
}

/** Water needed over an opening of area `area` (m²) that takes `Q` (m³/s). */
export function submergenceNeeded(area: number, Q: number): Submergence {
  const diameter = Math.sqrt((4 * area) / Math.PI)
  const froude = Q / area / Math.sqrt(gravity * diameter)
  return { diameter, froude, needed: diameter * (1 + 2.3 * froude) }
}

/** depth over (Q²/g)^⅕ at which the surface over a sink dips down to it */
const dipFactor = 1.17

/**
 * Distance from a still surface at which an opening that takes `Q` (m³/s) begins to pull air through a dip in it, m. A point
 * sink asks for 0.69 (Q²/g)^⅕ from the side, an opening in a floor for 1.17 of it; the larger is taken.
 */
export function dipDepth(Q: number): number {
  return dipFactor * (Math.max(Q, 0) ** 2 / gravity) ** 0.2
}

/** Flow that pulls air through a dip from `distance` (m) away, m³/s; 0 at the surface. */
export function flowBeforeDip(distance: number): number {
  return Math.sqrt(gravity) * (Math.max(distance, 0) / dipFactor) ** 2.5
}
