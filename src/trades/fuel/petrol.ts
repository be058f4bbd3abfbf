/**
 * Petrol and its mixture with oil.
 * Expansion: API Manual of Petroleum Measurement Standards 11.1 (1980), table 54B, from memory: α = 346.4228/ρ² + 0.4388/ρ at 15 °C,
 * VCF = exp(−αΔT(1 + 0.8αΔT)). Vapour pressure: Clausius and Clapeyron from the Reid value at 37.8 °C with 30 kJ/mol, from memory.
 * Viscosity: 0.5 to 0.6 mPa·s at 20 °C, with oil in it 0.6 to 0.75, from memory; it falls by about 1 % a kelvin.
 */

/** J/(mol·K) */
const gasConstant = 8.314462618
/** K, 100 °F, at which the Reid value is read */
const reidTemperature = 310.93
/** J/mol, heat of vaporisation of petrol's light ends */
const vaporisation = 30_000

/** Vapour pressure, Pa absolute, of petrol of a Reid vapour pressure (Pa) at a temperature (K, 250 to 340). */
export function petrolVapour(reid: number, temperature: number): number {
  return reid * Math.exp((-vaporisation / gasConstant) * (1 / temperature - 1 / reidTemperature))
}

/** Temperature, K, at which petrol of a Reid vapour pressure (Pa) boils under a pressure (Pa absolute, above 0). */
export function boilsAt(reid: number, pressure: number): number {
  if (!(pressure > 0)) throw new RangeError(`pressure: ${pressure} Pa absolute, expected above 0`)
  return 1 / (1 / reidTemperature - (gasConstant * Math.log(pressure / reid)) / vaporisation)
}

/** Expansion of petrol of a density at 15 °C (kg/m³), 1/K. */
export function petrolExpansion(density: number): number {
  return 346.4228 / density ** 2 + 0.4388 / density
}

/** Volume at 15 °C over the volume at a temperature `step` K warmer; below 1 when warmer. */
export function volumeCorrection(density: number, step: number): number {
  const a = petrolExpansion(density) * step
  return Math.exp(-a * (1 + 0.8 * a))
}

/** Dynamic viscosity, Pa·s, of petrol with a share of oil in it (oil over petrol, 0 to 0.15) at a temperature (K). */
export function mixtureViscosity(oil: number, temperature: number): number {
  return (0.55e-3 + 3.3e-3 * oil) * Math.exp(-0.01 * (temperature - 293.15))
}

/** Oil, m³, for a volume of petrol (m³) at so many parts of petrol to one of oil. RangeError on a ratio of nought or less. */
export function oilFor(petrol: number, parts: number): number {
  if (!(parts > 0)) throw new RangeError(`parts: ${parts}, expected above 0`)
  return petrol / parts
}
