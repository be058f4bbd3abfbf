/**
 * Tuned length of a two-stroke exhaust: the wave goes out and comes back while the port is open.
 * Source: G. P. Blair, Design and Simulation of Two-Stroke Engines (SAE R-161, 1996), the pipe chapter:
 * L_t = 83.3 a θ/N in mm, m/s, degrees and rpm, from the piston face to the start of the stinger, with
 * a = √(1.4·287·T) and a class temperature; the same law in feet and inches in G. Jennings, Two-Stroke
 * Tuner's Handbook (1973), there to the mean reflection point half-way down the baffle cone.
 */

/** What the engine is asked for; sets gas temperature and the width of the pipe. */
export const classes = ['road', 'enduro', 'motocross', 'racing'] as const
export type PipeClass = (typeof classes)[number]

export interface ClassFigures {
  /** brake mean effective pressure the class stands for, Pa */
  bmep: number
  /** mean gas temperature in the pipe, K */
  temperature: number
  /** stinger, header end and belly diameters over the equal-area diameter of the port */
  stinger: number
  header: number
  belly: number
}

/** Blair's classes. The proportions of `road` and the belly and header of `motocross` lie between or beyond his rows. */
export const classFigures: Record<PipeClass, ClassFigures> = {
  road: { bmep: 5e5, temperature: 623.15, stinger: 0.7, header: 1.125, belly: 2.25 },
  enduro: { bmep: 8e5, temperature: 773.15, stinger: 0.7, header: 1.125, belly: 2.25 },
  motocross: { bmep: 9.5e5, temperature: 873.15, stinger: 0.65, header: 1.08, belly: 2.75 },
  racing: { bmep: 11e5, temperature: 923.15, stinger: 0.6, header: 1.05, belly: 3.25 },
}

/** Sound speed, m/s, of a gas at temperature T (K). */
export function soundSpeed(T: number, gamma = 1.4, gasConstant = 287): number {
  return Math.sqrt(gamma * gasConstant * T)
}

/**
 * Tuned length, m: piston face to the start of the stinger. `open` is the angle the exhaust port is open
 * (rad of crank), `rotation` rev/s, `speed` of sound m/s.
 */
export function tunedLength(open: number, rotation: number, speed: number): number {
  return (0.5 * speed * (open / (2 * Math.PI))) / rotation
}

/** Rotation, rev/s, a length is tuned to. */
export function tunedRotation(open: number, length: number, speed: number): number {
  return (0.5 * speed * (open / (2 * Math.PI))) / length
}

/**
 * Part of the handbook length to cut first. A pipe cut with the class temperature comes in low: one cut for 10 000 rpm
 * gave its most power at 9250 and its most torque at 9000 in this project's own simulation, since the gas is cooler than
 * the class temperature on the mean of the cycle. Five to eight parts in a hundred shorter meets the speed wanted.
 */
export const firstCut = 0.935

/** Brake mean effective pressure, Pa, of a two-stroke: power W, swept volume m³, rotation rev/s. */
export function meanPressure(power: number, swept: number, rotation: number): number {
  return power / (swept * rotation)
}
