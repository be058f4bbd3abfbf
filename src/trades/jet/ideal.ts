/**
 * Limits and conversions that need no rotor.
 * Momentum theory of the jet; ideal efficiency 2/(1 + NVR) as in ITTC Recommended Procedures 7.5-02-05-03; the bound at rest and
 * the best velocity ratio with losses are derived from it. Specific speeds: definitions of the Hydraulic Institute and of ISO 17769-1.
 */
import { gravity } from '../../physics/fluid/water.ts'

/**
 * Most thrust a jet of area `area` (m²) can give at rest for shaft power `power` (W): (4 ρ A P²)^(1/3), N.
 * All power in the jet's kinetic energy: F = ρ A v², P = ρ A v³/2.
 */
export function bollardBound(power: number, area: number, density: number): number {
  return Math.cbrt(4 * density * area * power * power)
}

/** Ideal efficiency of a jet at velocity ratio k = V_j/V > 0: 2/(1 + k). */
export function idealEfficiency(k: number): number {
  return 2 / (1 + k)
}

/** Losses of the system as the velocity-ratio formulas take them. */
export interface RatioLosses {
  nozzleLoss: number
  ramLoss: number
  /** height of the nozzle above water, m, and boat speed, m/s */
  nozzleHeight?: number
  V?: number
}

function lift(losses: RatioLosses): number {
  const h = losses.nozzleHeight ?? 0
  if (h === 0) return 0
  const V = losses.V ?? Number.NaN
  return (2 * gravity * h) / (V * V)
}

/** Jet-system efficiency at velocity ratio k, without wake: thrust power over the power put into the water. */
export function jetEfficiency(k: number, losses: RatioLosses): number {
  const a = 1 + losses.nozzleLoss
  const b = 1 - losses.ramLoss - lift(losses)
  return (2 * (k - 1)) / (a * k * k - b)
}

/** Velocity ratio with the best jet efficiency, and that efficiency. */
export function bestVelocityRatio(losses: RatioLosses): { k: number; efficiency: number } {
  const a = 1 + losses.nozzleLoss
  const b = 1 - losses.ramLoss - lift(losses)
  const k = 1 + Math.sqrt(1 - b / a)
  return { k, efficiency: 1 / (a * k) }
}

/** Flow (m³/s) of a jet of area `area` that pulls `force` (N) at boat speed V with wake fraction w. */
export function flowFromPull(force: number, area: number, density: number, V = 0, w = 0): number {
  const u = (1 - w) * V
  return 0.5 * area * (u + Math.sqrt(u * u + (4 * force) / (density * area)))
}

/** Specific speed ω√Q/(gH)^¾, dimensionless; n rev/s, Q m³/s, gH J/kg. */
export function specificSpeed(n: number, Q: number, gH: number): number {
  return (2 * Math.PI * n * Math.sqrt(Q)) / gH ** 0.75
}

const usFlow = (231 * 0.0254 ** 3) / 60
/** rpm √(US gal/min) / ft^¾ for a dimensionless specific speed of 1 */
export const usPerSpecificSpeed = ((60 / (2 * Math.PI)) * (gravity * 0.3048) ** 0.75) / Math.sqrt(usFlow)
/** rpm √(m³/s) / m^¾ for a dimensionless specific speed of 1 */
export const metricPerSpecificSpeed = (60 / (2 * Math.PI)) * gravity ** 0.75

/** Torque-equivalent constant pitch of a blade whose pitch grows from `leading` to `trailing`, m. Fitted to the strip model, ±1 %. */
export function equivalentPitch(leading: number, trailing: number): number {
  return 0.06 * leading + 0.94 * trailing
}

/** Pitch of a blade at angle `beta` (rad from the plane of rotation) at radius r (m). */
export function pitchAt(r: number, beta: number): number {
  return 2 * Math.PI * r * Math.tan(beta)
}

/** Blade angle from the plane of rotation, rad, of pitch P at radius r. */
export function angleAt(r: number, pitch: number): number {
  return Math.atan2(pitch, 2 * Math.PI * r)
}

/** Euler's work, J/kg: u₂c_u2 - u₁c_u1. */
export function eulerWork(u2: number, cu2: number, u1 = 0, cu1 = 0): number {
  return u2 * cu2 - u1 * cu1
}

/** Swirl behind a row whose flow leaves at `beta` from the direction of rotation, m/s. */
export function outletSwirl(u: number, axial: number, beta: number): number {
  return u - axial / Math.tan(beta)
}

/** Suction specific speed that goes with Thoma's number σ = NPSH/H at a specific speed, in the same unit system. */
export function suctionSpeedFromThoma(sigma: number, specific: number): number {
  return specific / sigma ** 0.75
}

/** Flow, head and power factors when rotation changes by `n` and size by `d` times, efficiency unchanged. */
export function affinity(n: number, d = 1): { flow: number; head: number; power: number; torque: number } {
  return { flow: n * d ** 3, head: (n * d) ** 2, power: n ** 3 * d ** 5, torque: n * n * d ** 5 }
}
