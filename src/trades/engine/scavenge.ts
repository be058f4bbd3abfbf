/**
 * Scavenging. Perfect mixing: elementary. S-curve of single-cycle rigs, SE = 1 - exp(k0 + k1 SR +
 * k2 SR^2): G. P. Blair, Design and Simulation of Two-Stroke Engines (SAE R-161, 1996), ch. 3; coefficients from
 * memory. SR: volume of fresh charge delivered over cylinder volume; SE: volume fraction of fresh charge inside.
 */
export type Scavenging = 'uniflow-like' | 'good loop' | 'mediocre loop' | 'mixing'

export const scavengeCurves: Record<Scavenging, readonly [number, number, number]> = {
  'uniflow-like': [0.033488, -1.3651, -0.21735],
  'good loop': [0.026355, -1.2916, -0.12919],
  'mediocre loop': [0.031655, -1.0587, -0.16814],
  mixing: [0, -1, 0],
}

/** Scavenging efficiency by volume at delivery `sr`, 0 to 1. */
export function scavengeEfficiency(kind: Scavenging, sr: number): number {
  const [k0, k1, k2] = scavengeCurves[kind]
  return Math.max(0, 1 - Math.exp(k0 + sr * (k1 + sr * k2)))
}

/** Volume fraction of fresh charge in what leaves at delivery `sr`: 1 - dSE/dSR, kept within 0 to 1. */
export function leavingFresh(kind: Scavenging, sr: number): number {
  const [k0, k1, k2] = scavengeCurves[kind]
  return Math.min(1, Math.max(0, 1 + (k1 + 2 * k2 * sr) * Math.exp(k0 + sr * (k1 + sr * k2))))
}
