/**
 * Petrol vapour in a bay: how little makes it flammable, how it leaves, and published ventilation to compare with.
 * Lower flammable limit 1.4 % by volume, vapour of 68 g/mol (Fire Engineering 1988, Gasoline in brief; 2.5 to 4 times as heavy as air);
 * ideal gas. Natural ventilation: 33 CFR 183.630, A = 5 ln(V/5) in² with V in cubic feet, no opening below 3 in², exhaust in the lower
 * third. Changes of air of a small space: 46 CFR 182.460, one in two minutes.
 */
import type { Solved } from '../../base/answers/solved.ts'
import { airDensity } from '../../physics/fluid/atmosphere.ts'
import { type AirFan, type AirOpening, solveAirFlow } from './bayFlow.ts'

const gasConstant = 8.314462618
/** kg/mol of vapour, volume part at the lower limit, kg/m³ of liquid */
export const vapourMass = 0.068
export const flammable = 0.014
const liquid = 745
const airMass = 0.028965
const cubicFoot = 0.3048 ** 3
const squareInch = 0.0254 ** 2

/** Petrol that brings a closed space of V m³ to the lower flammable limit: kg of vapour and m³ of liquid; T in K, p in Pa. */
export function petrolToFlammable(V: number, T: number, pressure = 101325): { mass: number; liquid: number } {
  if (!(V > 0)) throw new RangeError(`volume: ${V} m³, expected above 0`)
  if (!(T > 200)) throw new RangeError(`temperature: ${T} K, expected above 200`)
  const mass = (flammable * pressure * V * vapourMass) / (gasConstant * T)
  return { mass, liquid: mass / liquid }
}

/** Clear area of each of two openings, m², for V m³: 33 CFR 183.630, never below 3 in². */
export function ventilationArea(V: number): number {
  if (!(V > 0)) throw new RangeError(`volume: ${V} m³, expected above 0`)
  return squareInch * Math.max(3, 5 * Math.log(Math.max(1e-9, V / cubicFoot / 5)))
}

/** Volume, m³, for which the same rule asks an opening of `area` m² (3 in² and up). */
export function ventilatedVolume(area: number): number {
  const inches = area / squareInch
  if (!(inches >= 3 - 1e-9)) throw new RangeError(`area: ${area} m², expected at least ${3 * squareInch} m²`)
  return 5 * cubicFoot * Math.exp(inches / 5)
}

/** part of the flammable limit that a bay is aired down to, and up from where it starts */
const aired = 0.25
const filled = 1

/**
 * Seconds to air a bay of V m³ from the flammable limit to a quarter of it, by the weight of the vapour and by fans; Infinity where it
 * does not leave within an hour. All vapour is taken as mixed with the bay's air. residual in parts of the limit.
 */
export function airingTime(
  V: number,
  openings: readonly AirOpening[],
  fans: readonly AirFan[],
  T: number,
  pressure = 101325,
): Solved {
  const outside = airDensity(pressure, T)
  const most = 3600
  // logarithmic steps of the vapour's part, the flow held over each
  const steps = 40
  const ratio = (aired / filled) ** (1 / steps)
  let time = 0
  let converged = true
  for (let i = 0; i < steps; i++) {
    const part = flammable * filled * ratio ** (i + 0.5)
    const inside = outside * (1 + part * (vapourMass / airMass - 1))
    const flow = solveAirFlow({ openings, fans, burnt: 0, outside, inside })
    if (!flow.converged) converged = false
    const perSecond = flow.value.exchanged / outside / V
    time += -Math.log(ratio) / Math.max(1e-12, perSecond)
    if (time > most) return { value: Infinity, converged, iterations: i + 1, residual: part / flammable }
  }
  return { value: time, converged, iterations: steps, residual: 0 }
}
