/**
 * Air drawn down to the intake when the craft is held still.
 * ANSI/HI 9.8, Rotodynamic Pumps for Pump Intake Design: least submergence S = D (1 + 2.3 Fr), Fr = v/√(gD) of the inlet.
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

/** Flow at which the water at hand is just enough, m³/s; 0 when it never is. */
export function flowWithoutAir(area: number, depth: number): number {
  const diameter = Math.sqrt((4 * area) / Math.PI)
  return Math.max(0, ((depth / diameter - 1) / 2.3) * Math.sqrt(gravity * diameter) * area)
}
