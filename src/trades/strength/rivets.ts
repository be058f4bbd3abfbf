/**
 * Blind rivets in a deck or a seam.
 * Sources: breaking loads of aluminium open-end blind rivets, IFI-114 grade 10 (from memory, ±15 %: use the maker's sheet); bearing
 * 1.5 Fu d t over a factor 2, edge and pitch distances, FAA AC 43.13-1B and Bruhn (from memory).
 */
export interface Rivet {
  /** m */
  diameter: number
  /** N, breaking */
  shear: number
  tension: number
}

/** thinnest first */
export const blindRivets: readonly Rivet[] = [
  { diameter: 3.2e-3, shear: 530, tension: 670 },
  { diameter: 4.0e-3, shear: 850, tension: 1000 },
  { diameter: 4.8e-3, shear: 1150, tension: 1400 },
]

/** The rivet of a diameter (m), to 0.1 mm; RangeError listing the sizes. */
export function rivetOf(diameter: number): Rivet {
  const found = blindRivets.find((r) => Math.abs(r.diameter - diameter) < 1.01e-4)
  if (found === undefined)
    throw new RangeError(`rivet diameter: ${diameter * 1e3} mm, expected 3.2, 4.0 or 4.8 mm`)
  return found
}

/** Load the sheet bears at one rivet, N: 1.5 Fu d t / 2. */
export function bearingAllowable(ultimate: number, diameter: number, t: number): number {
  return (1.5 * ultimate * diameter * t) / 2
}

/** Load one rivet carries along the sheet, N: the least of its shear (halved) and the sheet's bearing. */
export function rivetAllowable(rivet: Rivet, ultimate: number, t: number): number {
  return Math.min(rivet.shear / 2, bearingAllowable(ultimate, rivet.diameter, t))
}

/** Pitch at which rivets carry a tension in the sheet (N/m), m. */
export function pitchFor(tension: number, rivet: Rivet, ultimate: number, t: number): number {
  return tension > 0 ? rivetAllowable(rivet, ultimate, t) / tension : Infinity
}

/** Pitch, m: strong 3 to 6 diameters; watertight with sealant not above 6; edge distance at least 2. */
export function pitchLimits(diameter: number): { closest: number; widest: number; edge: number } {
  return { closest: 3 * diameter, widest: 6 * diameter, edge: 2 * diameter }
}
