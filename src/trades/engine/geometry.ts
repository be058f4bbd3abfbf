/**
 * Crank, rod and piston of a single cylinder. Slider-crank kinematics, gudgeon offset ignored; e.g. J. B. Heywood,
 * Internal Combustion Engine Fundamentals (1988), sec. 2.2. Angles are radians after top dead centre, lengths
 * metres, volumes m3.
 */

export interface Crank {
  bore: number
  stroke: number
  /** between the centres of both eyes */
  rod: number
}

/** Distance of the crown below its top position. Any angle; rod longer than half the stroke. */
export function pistonTravel(c: Crank, angle: number): number {
  const r = 0.5 * c.stroke
  const s = r * Math.sin(angle)
  return r + c.rod - r * Math.cos(angle) - Math.sqrt(c.rod * c.rod - s * s)
}

/** Change of travel with angle, m/rad. */
export function pistonRate(c: Crank, angle: number): number {
  const r = 0.5 * c.stroke
  const sin = Math.sin(angle)
  return r * sin * (1 + (r * Math.cos(angle)) / Math.sqrt(c.rod * c.rod - r * r * sin * sin))
}

/** Angle (0 to pi) at which the crown has travelled `travel`. Throws RangeError outside 0 to the stroke. */
export function angleOfTravel(c: Crank, travel: number): number {
  if (!(travel >= 0 && travel <= c.stroke))
    throw new RangeError(`travel: ${travel} m; must be 0 to the stroke, ${c.stroke} m`)
  const r = 0.5 * c.stroke
  const q = r + c.rod - travel
  const cos = (q * q + r * r - c.rod * c.rod) / (2 * q * r)
  return Math.acos(Math.min(1, Math.max(-1, cos)))
}

export const pistonArea = (bore: number): number => (Math.PI / 4) * bore * bore

/** Swept volume. */
export const sweptVolume = (c: Crank): number => pistonArea(c.bore) * c.stroke

/** Mean piston speed, m/s; rpm in rev/min. */
export const meanPistonSpeed = (stroke: number, rpm: number): number => (stroke * rpm) / 30

/** Clearance volume for a compression ratio over the whole stroke. ratio > 1. */
export const clearanceOfRatio = (c: Crank, ratio: number): number => sweptVolume(c) / (ratio - 1)

/** Clearance volume for a compression ratio from the closing of the exhaust at `opens` after top dead centre. */
export const clearanceOfTrapped = (c: Crank, ratio: number, opens: number): number =>
  (pistonArea(c.bore) * pistonTravel(c, opens)) / (ratio - 1)

/** Crankcase volume with the piston at the bottom, from its compression ratio. */
export const caseVolumeOfRatio = (c: Crank, ratio: number): number => sweptVolume(c) / (ratio - 1)
