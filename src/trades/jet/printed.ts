/**
 * Printed blades under load: how near bending at the root comes to what the print bears for long.
 * Goodman's line with the alternating part a quarter of the mean (NASA SP-8052: 20 to 30 % of the steady load in inducers);
 * tensile strengths as commonly published for prints along the layers (Processes 13 (2025) 2733 gives PLA 53, PETG 50, ABS 40 MPa);
 * wet factors, fatigue 0.15 at 10⁶ cycles and creep 0.40 of the strength: from memory and engineering defaults.
 */

export interface PrintMaterial {
  /** tensile strength along the layers, dry, Pa */
  strength: number
  /** share left when soaked */
  wet: number
  /** strength across the layers over along */
  across: number
  /** what to know before using it under water */
  note?: string
}

export const printMaterials: Readonly<Record<string, PrintMaterial>> = {
  PLA: { strength: 50e6, wet: 1, across: 0.5, note: 'PLA creeps and softens at 55 °C: bench trials only' },
  PETG: { strength: 47e6, wet: 0.95, across: 0.6 },
  ABS: { strength: 37e6, wet: 1, across: 0.6 },
  ASA: { strength: 37e6, wet: 1, across: 0.6 },
  PC: { strength: 63e6, wet: 1, across: 0.6 },
  PA12: { strength: 44e6, wet: 0.85, across: 0.5 },
  'PA12-CF': { strength: 70e6, wet: 0.85, across: 0.5 },
  'PA6-CF': {
    strength: 100e6,
    wet: 0.55,
    across: 0.42,
    note: 'PA6 swells 1 to 3 % in water and will close a normal tip gap',
  },
}

const fatigueShare = 0.15
const creepShare = 0.4
const alternating = 0.25
/** index to stay below: one over a safety factor of 1.3 */
export const indexAllowed = 1 / 1.3

/** Goodman index of a root at mean bending stress `stress` (Pa): 1 is the line. Layers along the span. */
export function fatigueIndex(material: PrintMaterial, stress: number): number {
  const strength = material.strength * material.wet
  return (alternating * stress) / (fatigueShare * strength) + stress / (creepShare * strength)
}

/** Root thickness that brings a root of thickness `now` and index `index` to the index allowed, m; bending goes as 1/t². */
export function rootNeeded(now: number, index: number): number {
  return now * Math.sqrt(index / indexAllowed)
}
