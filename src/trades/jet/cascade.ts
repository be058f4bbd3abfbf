/**
 * Classical rules for a blade row of ordinary camber, as a second opinion beside the lattice of lattice.ts.
 * A. D. S. Carter, deviation δ = m θ/√σ (R&M 2804, 1950); m after NASA SP-36 (1965) for arcs and R. H. Aungier, Axial-Flow
 * Compressors (2003), ch. 6, fits of the SP-36 charts for the 65-series: reference incidence and deviation. Degrees inside.
 */

/** Carter's m: 0.23 (2a/c)² + β/500; `crest` place of the greatest camber a/c, angle in degrees. */
export function carterM(crest: number, degrees: number): number {
  return 0.23 * (2 * crest) ** 2 + degrees / 500
}

/** Deviation by Carter's rule, degrees; camber in degrees. Not for screws without camber nor solidity below 0.5. */
export function carterDeviation(crest: number, degrees: number, camber: number, solidity: number): number {
  return (carterM(crest, degrees) * camber) / Math.sqrt(solidity)
}

/** Reference incidence of an uncambered 10 % thick blade, degrees; inlet angle in degrees, solidity 0.4-2. */
export function referenceIncidence10(beta1: number, solidity: number): number {
  const p = 0.914 + solidity ** 3 / 160
  return beta1 ** p / (5 + 46 * Math.exp(-2.3 * solidity)) - 0.1 * solidity ** 3 * Math.exp((beta1 - 70) / 4)
}

/** Change of reference incidence per degree of camber. */
export function incidenceSlope(beta1: number, solidity: number): number {
  return 0.025 * solidity - 0.06 - (beta1 / 90) ** (1 + 1.2 * solidity) / (1.5 + 0.43 * solidity)
}

/** Factors on incidence and deviation for thickness over chord `t`; 1 at 0.1. */
export function thicknessOnIncidence(t: number): number {
  return (10 * t) ** (0.28 / (0.1 + t ** 0.3))
}
export function thicknessOnDeviation(t: number): number {
  return 6.25 * t + 37.5 * t * t
}

/** Deviation of an uncambered 10 % thick blade, degrees. */
export function referenceDeviation10(beta1: number, solidity: number): number {
  return (
    0.01 * solidity * beta1 +
    (0.74 * solidity ** 1.9 + 3 * solidity) * (beta1 / 90) ** (1.67 + 1.09 * solidity)
  )
}
