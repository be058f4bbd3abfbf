/**
 * Loss coefficients of grate, duct, bend and shaft.
 * Grate: O. Kirschmer, "Untersuchungen über den Gefällsverlust an Rechen" (Mitt. Hydraul. Inst. TH München 1, 1926), ζ = β (s/b)^(4/3) sin δ,
 * β 2.42 square bars, 1.79 round; from memory. Pipe friction: S. E. Haaland, J. Fluids Eng. 105 (1983) 89, from memory.
 * Shaft blockage 1.1 x/(1-x)² and the bend values are engineering defaults.
 */
import { sandPerRa } from './skin.ts'

export interface Grate {
  /** bar thickness and clear gap, m */
  bar: number
  gap: number
  shape: 'round' | 'square'
  /** bars to the flow, rad */
  angle: number
}

/** Loss coefficient of a clean grate on the velocity ahead of it. */
export function grateLoss(grate: Grate): number {
  const beta = grate.shape === 'square' ? 2.42 : 1.79
  return beta * (grate.bar / grate.gap) ** (4 / 3) * Math.sin(grate.angle)
}

/** Share of the opening that the bars block, 0-1. */
export function grateBlockage(grate: Grate): number {
  return grate.bar / (grate.bar + grate.gap)
}

/** Darcy friction factor of a turbulent pipe, Re above 4000 (held below). `roughness` sand roughness over diameter. */
function pipeFriction(reynolds: number, roughness: number): number {
  const x = (roughness / 3.7) ** 1.11 + 6.9 / Math.max(reynolds, 4000)
  return (-1.8 * Math.log10(x)) ** -2
}

export interface Duct {
  length: number
  diameter: number
  /** Ra of the wall, m */
  roughness: number
  shaftDiameter: number
  /** ramp of the roof of the intake, rad */
  ramp: number
  lipRadius: number
}

/** Loss coefficient of the duct on its own velocity: wall friction, bend and shaft. `speed` m/s, kinematic viscosity m²/s. */
export function ductLoss(
  duct: Duct,
  speed: number,
  kinematic: number,
): { wall: number; bend: number; shaft: number } {
  const f = pipeFriction((speed * duct.diameter) / kinematic, (sandPerRa * duct.roughness) / duct.diameter)
  const wall = (f * duct.length) / duct.diameter
  // 0.05 at a 20° ramp to 0.15 at 30°, half as much again with a lip sharper than a tenth of the bore
  const degrees = (duct.ramp * 180) / Math.PI
  const sharp = Math.max(0, 1 - duct.lipRadius / (0.1 * duct.diameter))
  const bend = Math.min(0.4, Math.max(0.03, 0.05 + 0.01 * (degrees - 20))) * (1 + 0.5 * sharp)
  // the shaft crosses the duct at a slant: it shades about half its length's strip of the section
  const shaded = Math.min(0.5, (0.5 * duct.shaftDiameter) / (0.25 * Math.PI * duct.diameter))
  return { wall, bend, shaft: (1.1 * shaded) / (1 - shaded) ** 2 }
}
