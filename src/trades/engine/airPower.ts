/**
 * Power of a naturally aspirated spark-ignition engine in other air than it was rated in.
 * SAE J1349 (net power, spark ignition): what is indicated goes with dry pressure and with the root of temperature, p/99 kPa times
 * (298 K/T)^½; what friction takes stays, 15 % of what is indicated at the reference. ISO 1585:1992 has the same reference air (99 kPa
 * dry, 298 K) and (p/99)^1.2 (298/T)^0.6 on brake power, which is within 2 % of this to 3500 m (docs/checks.md). Both are meant for
 * corrections of a few per cent; at altitude a carburettor that is not set anew runs rich and loses more.
 */
import { saturationPressure } from '../../physics/fluid/vapour.ts'

/** reference air of ISO 1585 and SAE J1349: dry pressure Pa, temperature K */
export const referenceAir = { dry: 99_000, temperature: 298 }

/** brake over indicated power at the reference, by SAE J1349 */
const mechanicalEfficiency = 0.85

/** share of saturation taken for the air outside: nobody gives it, and it moves power by a hundredth (judgement) */
const humidity = 0.5

/** Pressure of the dry air, Pa, in air of `pressure` Pa and `temperature` K that is half saturated. */
export function dryPressure(pressure: number, temperature: number): number {
  // what freezing air holds is next to nothing, and the vapour formula begins there
  return pressure - humidity * saturationPressure(Math.max(273.15, temperature))
}

/**
 * Factor on brake torque and power from the reference air to `dry` Pa of dry air at `temperature` K. 1 at the reference; never
 * below nought: an engine that indicates less than its friction does not run.
 */
export function powerInAir(dry: number, temperature: number): number {
  const indicated = (dry / referenceAir.dry) * Math.sqrt(referenceAir.temperature / temperature)
  return Math.max(0, (indicated - (1 - mechanicalEfficiency)) / mechanicalEfficiency)
}

/** The same by ISO 1585, on brake power: an outside comparison. */
export const powerInAirIso = (dry: number, temperature: number): number =>
  (dry / referenceAir.dry) ** 1.2 * (referenceAir.temperature / temperature) ** 0.6
