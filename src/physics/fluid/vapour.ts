/**
 * Saturation pressure of water.
 * W. Wagner et al., "The IAPWS Industrial Formulation 1997 for the Thermodynamic Properties of Water and Steam" (IAPWS-IF97),
 * eq. 30, coefficients Table 34, verification Table 35.
 */

const n = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7,
  0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const

/** Saturation pressure, Pa absolute, at T kelvin (273.15 to 647.096). Throws RangeError outside. */
export function saturationPressure(T: number): number {
  if (!(T >= 273.15 && T <= 647.096))
    throw new RangeError(
      `temperature ${T} K is outside 273.15 to 647.096 K for the saturation pressure of water`,
    )
  const s = T + n[8] / (T - n[9])
  const a = s * s + n[0] * s + n[1]
  const b = n[2] * s * s + n[3] * s + n[4]
  const c = n[5] * s * s + n[6] * s + n[7]
  return 1e6 * ((2 * c) / (-b + Math.sqrt(b * b - 4 * a * c))) ** 4
}

/**
 * Vapour pressure over sea water, Pa; salinity in kg of salt per kg of water.
 * Lowering exp(-0.000544 S), S in g/kg: R. Weiss and B. Price, "Nitrous oxide solubility in water and seawater", Marine Chemistry 8 (1980), eq. 10
 *, from memory.
 */
export function seaVapourPressure(T: number, salinity: number): number {
  return saturationPressure(T) * Math.exp(-0.000544 * 1e3 * salinity)
}
