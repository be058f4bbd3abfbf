/**
 * Tests a builder does at the pond: inclining with a known weight, timing a roll, a hole's flow.
 * Sources: inclining and roll period, E. V. Lewis (ed.), Principles of Naval Architecture vol. I (1988) ch. II and vol. III ch. VIII;
 * hole flow Q = C A √(2 g z) with C about 0.6 for a sharp hole (Torricelli; any hydraulics handbook).
 */
import { gravity } from '../../physics/fluid/water.ts'

/** Metacentric height from a weight w (kg) moved y (m) across a craft of mass m (kg) and the heel it gives (rad): w y/(m tan φ). */
export function inclinedGm(weight: number, shift: number, mass: number, heel: number): number {
  return (weight * shift) / (mass * Math.tan(heel))
}

/** Roll period, s: 2π k/√(g GM), k the roll radius (m) with the water's share in it. NaN when GM is not above 0. */
export function rollPeriod(radius: number, gm: number): number {
  return gm > 0 ? (2 * Math.PI * radius) / Math.sqrt(gravity * gm) : Number.NaN
}

/** Metacentric height from a timed roll, m. */
export function gmFromRoll(radius: number, period: number): number {
  return (2 * Math.PI * radius) ** 2 / (gravity * period * period)
}

/** Roll radius, m, from the dry roll inertia (kg m²) and mass (kg) with `added` (0.2 to 0.3) for the water carried along. */
export function rollRadius(inertia: number, mass: number, added = 0.25): number {
  return Math.sqrt((inertia * (1 + added)) / mass)
}

/** Flow through a hole of area a (m²) under a head (m), m³/s; 0 when the head is not above 0. */
export function holeFlow(area: number, head: number, coefficient = 0.6): number {
  return head > 0 ? coefficient * area * Math.sqrt(2 * gravity * head) : 0
}
