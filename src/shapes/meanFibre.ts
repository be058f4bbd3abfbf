/**
 * Which diameter a pattern is drawn for. Rolled thin sheet keeps the length of its middle: DIN 6935 and Machinery's Handbook, sheet
 * bending (both from memory). Edges are sheared square to the sheet, so at the end of a cone of half-angle α the corners lie t cos α/2
 * inside and outside the middle.
 */
import { extremes, mustLie } from './shapeFault.ts'

export type Measured = 'inside' | 'outside' | 'mean'

/** Mean diameter, m, of an end measured inside, outside or in the middle of sheet of a thickness (m) on a half-angle (rad). */
export function meanDiameter(
  diameter: number,
  measured: Measured,
  thickness: number,
  halfAngle: number,
): number {
  const wall = thickness * Math.cos(halfAngle)
  return measured === 'inside' ? diameter + wall : measured === 'outside' ? diameter - wall : diameter
}

/** Mean radii of both ends of a cone, m, whose half-angle follows from themselves; ends and height in m. ShapeFault for a wall thicker than the pipe. */
export function meanEnds(
  start: number,
  end: number,
  height: number,
  measured: Measured,
  thickness: number,
): { start: number; end: number } {
  mustLie('height', height, extremes.least, extremes.most)
  const angle = Math.atan2(Math.abs(start - end), 2 * height)
  const radius = (d: number) => meanDiameter(d, measured, thickness, angle) / 2
  // both ends grow by as much, so the angle does not change: no iteration is needed
  return { start: radius(start), end: radius(end) }
}
