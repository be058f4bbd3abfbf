/**
 * Water at one atmosphere, fresh or sea.
 * Density: UNESCO (1981), Background papers and supporting data on the International Equation of State of Seawater 1980,
 * Technical Papers in Marine Science 38 (fresh part: Bigg 1967).
 * Viscosity, fresh: Korson, Drost-Hansen and Millero (1969), Viscosity of water at various temperatures, J. Phys. Chem. 73, 34;
 * salt correction: Millero (1974), Seawater as a multicomponent electrolyte solution, The Sea, vol. 5.
 * The constants as used were read in a stored quotation of the Landolt-Börnstein tables.
 */

/** m/s², standard gravity (3rd CGPM, 1901) */
export const gravity = 9.80665

const freezing = 273.15

/** Density and viscosity of the water a craft runs in. */
export interface Water {
  /** kg/m³ */
  density: number
  /** m²/s */
  kinematicViscosity: number
}

function celsius(T: number): number {
  if (!(T >= 271 && T <= 373.2)) throw new RangeError(`water temperature ${T} K is outside 271 to 373 K`)
  return T - freezing
}

function perMille(salinity: number): number {
  if (!(salinity >= 0 && salinity <= 0.042))
    throw new RangeError(`salinity ${salinity} is outside 0 to 0.042 kg of salt per kg of water`)
  return 1e3 * salinity
}

/** Density of pure water, kg/m³, at T kelvin (273 to 313; usable to 373 with 0.1 % error). Throws RangeError outside 271–373 K. */
export function freshWaterDensity(T: number): number {
  const t = celsius(T)
  return (
    999.842594 +
    t * (6.793952e-2 + t * (-9.09529e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))))
  )
}

/** Density of sea water, kg/m³; T kelvin, salinity in kg of salt per kg of water (0.035 is the ocean). */
export function seaWaterDensity(T: number, salinity: number): number {
  const t = celsius(T)
  const S = perMille(salinity)
  const a = 0.824493 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)))
  const b = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6)
  return freshWaterDensity(T) + a * S + b * S ** 1.5 + 4.8314e-4 * S * S
}

/** Dynamic viscosity of pure water, Pa·s, at T kelvin (281 to 373 K as fitted; 1 % below). */
export function waterViscosity(T: number): number {
  const t = celsius(T)
  return 1.002e-3 * 10 ** ((1.1709 * (20 - t) - 0.001827 * (t - 20) ** 2) / (t + 89.93))
}

/** Dynamic viscosity of sea water, Pa·s; T kelvin, salinity in kg/kg. */
export function seaWaterViscosity(T: number, salinity: number): number {
  const t = celsius(T)
  const density = seaWaterDensity(T, salinity)
  // chlorinity by volume, which the correction is written in
  const Cl = (density * perMille(salinity)) / 1806.55
  return waterViscosity(T) * (1 + (5.185e-5 * t + 1.0675e-4) * Math.sqrt(Cl) + (3.3e-5 * t + 2.591e-3) * Cl)
}

/** Kinematic viscosity, m²/s; T kelvin, salinity in kg/kg (0 = fresh). */
export function kinematicViscosity(T: number, salinity = 0): number {
  return salinity === 0
    ? waterViscosity(T) / freshWaterDensity(T)
    : seaWaterViscosity(T, salinity) / seaWaterDensity(T, salinity)
}

/** Density and kinematic viscosity together; T kelvin, salinity in kg/kg (0 = fresh). */
export function waterAt(T: number, salinity = 0): Water {
  return { density: seaWaterDensity(T, salinity), kinematicViscosity: kinematicViscosity(T, salinity) }
}
