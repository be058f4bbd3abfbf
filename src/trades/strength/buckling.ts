/**
 * Thin sheet that pops, wrinkles or goes wavy.
 * Sources: panel buckling σ = K π²E/12(1−ν²)·(t/b)² (S. Timoshenko and J. Gere, Theory of Elastic Stability, 2nd ed. 1961, § 9.2);
 * equal compression both ways halves K for a square panel, whence the temperature step of oil-canning; sheet between rivets
 * (E. F. Bruhn, Analysis and Design of Flight Vehicle Structures, C7, from memory); weld shrinkage, shop practice, no source.
 */
import { aluminium } from './alloys.ts'

/** Stress at which a panel of short side b, thickness t buckles under compression one way, Pa; K = 4 for supported edges, 7 for clamped. */
export function panelBuckling(
  t: number,
  b: number,
  K = 4,
  modulus = aluminium.modulus,
  poisson = aluminium.poisson,
): number {
  return ((K * Math.PI ** 2 * modulus) / (12 * (1 - poisson * poisson))) * (t / b) ** 2
}

/** Temperature step at which a square panel held at its edges pops, K: 2π²/12(1+ν)α·(t/b)². */
export function oilCanStep(
  t: number,
  b: number,
  poisson = aluminium.poisson,
  expansion = aluminium.expansion,
): number {
  return ((2 * Math.PI ** 2) / (12 * (1 + poisson) * expansion)) * (t / b) ** 2
}

/** The same for a rectangle a × b: (a² + b²)/a²b² in place of 2/b². */
export function oilCanStepRectangle(
  t: number,
  a: number,
  b: number,
  poisson = aluminium.poisson,
  expansion = aluminium.expansion,
): number {
  return ((Math.PI ** 2 * t * t) / (12 * (1 + poisson) * expansion)) * (1 / (a * a) + 1 / (b * b))
}

/** Camber that keeps a panel from popping, m, at least a hundredth of the short side (common practice, no source). */
export const camberFor = (b: number): number => b / 100

/** Greatest rivet pitch, m, at which the sheet between rivets bears a compression (Pa): t √(0.9 C E/σ); C 4 round head, 1 countersunk. */
export function rivetPitchInCompression(
  t: number,
  stress: number,
  countersunk = false,
  modulus = aluminium.modulus,
): number {
  return t * Math.sqrt((0.9 * (countersunk ? 1 : 4) * modulus) / stress)
}

/** Shrinkage across a butt weld, m: 0.1 to 0.2 of weld area over thickness. Low, likely, high. Shop practice, no source. */
export function weldShrinkage(weldArea: number, t: number): { low: number; value: number; high: number } {
  return { low: (0.1 * weldArea) / t, value: (0.15 * weldArea) / t, high: (0.2 * weldArea) / t }
}

/** What keeps thin welded sheet flat (shop practice, no source). */
export const flatWelding: readonly string[] = [
  'stitch 25 mm on, 75 mm off, skipping about',
  'weld both sides of the middle in turn, working from the middle out',
  'back-step each run',
  'clamp to a copper or aluminium bar while it cools',
  'roll or crease a little camber into the panel first',
  'rivet and seal instead of welding below 2 mm',
]
