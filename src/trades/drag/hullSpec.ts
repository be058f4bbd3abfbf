/**
 * What the resistance model takes in: the hull in a few tape-measure numbers, its loading, and where it runs.
 * Axes: origin at the transom foot on the keel line, x forward, z up; trim positive bow up. SI, radians.
 */
import { gravity } from '../../physics/fluid/water.ts'
import type { Stations } from './dragForm.ts'

export interface HullSpec {
  /** m, transom to stem */
  length: number
  /** m, widest distance between the chines */
  chineBeam: number
  /** m, widest breadth of the deck; the chine beam when left out (upright sides) */
  beam?: number
  /** rad, aft */
  deadrise: number
  /** rad, at half length; the aft value when left out */
  midDeadrise?: number
  /** rad, at the stem; the one amidships when left out */
  noseDeadrise?: number
  /** m, keel to deck at mid-length */
  depth: number
  /** m, rise of the keel at the stem */
  noseRise?: number
  /** m forward of the transom, where the nose rise froms */
  noseRiseFrom?: number
  /** m, rise of the keel at the transom, and the length it takes */
  sternRise?: number
  sternRiseOver?: number
  /** m forward of the transom, widest station */
  widestAt?: number
  /** transom chine beam over the widest */
  tailWidth?: number
  /** exponents p, q of the nose plan (1 − s^p)^(1/q) */
  noseExponents?: readonly [number, number]
  /** sections measured at stations, in place of the lines these numbers give */
  stations?: Stations
  /** m, radius of the bottom's edge; 0 is a sharp chine */
  railRadius?: number
  /** form factor 1 + k on friction at displacement speeds */
  formFactor?: number
  /** roughness allowance added to every friction coefficient */
  roughness?: number
  /** the opening in the bottom that feeds the jet: front edge forward of the transom (m), and its area (m²) */
  intake?: { front: number; area: number }
  fins?: readonly Fin[]
  /** m², flat area that only rubs: a ride plate */
  ridePlateArea?: number
  /** m², projected area of bars and guards standing in the stream, drag coefficient 1 */
  blockedArea?: number
}

/** A fin or strut under water. */
interface Fin {
  /** m², one side */
  area: number
  /** m */
  chord: number
  /** thickness over chord */
  thickness: number
}

/** Jet (or tow) force line: crosses the transom plane at `height` above the keel and rises forward by `angle` (rad) from the keel. */
export interface ThrustLine {
  height: number
  angle: number
}

export interface Loading {
  /** kg, all but the rider */
  mass: number
  /** m, centre of that mass */
  x: number
  z: number
  /** kg, 0 for nobody aboard */
  riderMass: number
  /** m forward of the transom, the range the rider's centre can take */
  riderRange: readonly [number, number]
  /** m, rider's centre above the keel line */
  riderHeight: number
  /** m², drag area of rider and everything above the hull */
  dragArea: number
  /** m above the keel line, where the air drag acts */
  dragHeight: number
  thrustLine: ThrustLine
}

export interface Conditions {
  /** kg/m³ and m²/s */
  density: number
  kinematicViscosity: number
  /** m, of the pond; deep when left out */
  depth?: number
  /** kg/m³ */
  airDensity?: number
  /** m/s, head wind positive */
  wind?: number
}

/** Speed over √(g·length): Froude number on any length, speed m/s. */
export function froude(speed: number, length: number): number {
  return speed / Math.sqrt(gravity * length)
}

/** Froude number on the cube root of the displaced volume (m³), the regime variable: below 1 displacement, above 2.4 planing. */
export function volumetricFroude(speed: number, volume: number): number {
  return froude(speed, Math.cbrt(volume))
}

/** Speed of shallow-water waves, m/s, in water `depth` m deep: near it drag is far above the deep-water value. */
export function criticalSpeed(depth: number): number {
  return Math.sqrt(gravity * depth)
}

/** Smooth step from 0 at `from` to 1 at `to`, with flat ends. */
export function smoothStep(at: number, from: number, to: number): number {
  const t = Math.min(1, Math.max(0, (at - from) / (to - from)))
  return t * t * (3 - 2 * t)
}
