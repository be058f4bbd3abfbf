/**
 * Where a thread strips. Shear areas at the worst fit of 6g in 6H: FED-STD-H28/2B and ASME B1.1 appendix B, from memory;
 * the length at which the bolt breaks first: Machinery's Handbook, 'Calculating Thread Tensile-Stress Area'. Pull-out of a heat-set insert as half of the
 * cylinder round it in shear: common practice, no source.
 */
import { type Bolt, stressArea } from './metricBolts.ts'

const root3 = Math.sqrt(3)

/** Shear area of the bolt's thread over a length of engagement, m². */
export function boltThreadArea(b: Bolt, engaged: number): number {
  return ((Math.PI * engaged * b.D1Max) / b.pitch) * (b.pitch / 2 + (b.d2Min - b.D1Max) / root3)
}

/** Shear area of the nut's thread over a length of engagement, m². */
export function nutThreadArea(b: Bolt, engaged: number): number {
  return ((Math.PI * engaged * b.dMin) / b.pitch) * (b.pitch / 2 + (b.dMin - b.D2Max) / root3)
}

/** Pull that strips the thread in a material of shear strength `shear` (Pa), N. */
export const stripsAt = (b: Bolt, engaged: number, shear: number): number => nutThreadArea(b, engaged) * shear

/** Length of engagement at which the bolt breaks before a thread of shear strength `shear` strips, m; `breaks` the bolt's strength, Pa. */
export function lengthThatHolds(b: Bolt, breaks: number, shear: number): number {
  return (stressArea(b) * breaks) / (nutThreadArea(b, 1) * shear)
}

/** Pull-out of a heat-set or pressed insert, N: outside diameter and length m, shear strength Pa. */
export const insertHolds = (across: number, length: number, shear: number): number =>
  0.5 * Math.PI * across * length * shear
