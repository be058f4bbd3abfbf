/**
 * Standard atmosphere below the tropopause.
 * ISO 2533:1975, Standard Atmosphere: 288.15 K and 101325 Pa at sea level, 6.5 K per km, R 287.05287 J/(kg K),
 * p = p0 (1 - 2.25577e-5 h)^5.25588.
 */

/** Pressure, Pa, at geopotential altitude (m), -500 to 11000. Throws RangeError outside. */
export function atmosphericPressure(altitude: number): number {
  if (!(altitude >= -500 && altitude <= 11000))
    throw new RangeError(`altitude ${altitude} m is outside -500 to 11000 m of the standard atmosphere`)
  return 101325 * (1 - (0.0065 * altitude) / 288.15) ** (9.80665 / (0.0065 * 287.05287))
}

/** Density of dry air, kg/m³, at pressure (Pa) and temperature (K). */
export function airDensity(pressure: number, T: number): number {
  return pressure / (287.05287 * T)
}
