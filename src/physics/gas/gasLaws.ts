/**
 * Steady one-dimensional flow of a perfect gas: isentropic, normal shock, friction (Fanno), heat (Rayleigh),
 * nozzle flow. Equations: Ames Research Staff, Equations, Tables, and Charts for Compressible Flow, NACA Report
 * 1135 (1953); A. H. Shapiro, The Dynamics and Thermodynamics of Compressible Fluid Flow, vol. 1 (1953), ch. 6, 7.
 * m is the Mach number, gamma the ratio of specific heats (above 1).
 */
import { brent } from '../../base/numerics/roots.ts'

/** Static over stagnation temperature. */
export const temperatureRatio = (m: number, gamma: number): number => 1 / (1 + ((gamma - 1) / 2) * m * m)

/** Static over stagnation pressure. */
export const pressureRatio = (m: number, gamma: number): number =>
  temperatureRatio(m, gamma) ** (gamma / (gamma - 1))

/** Static over stagnation density. */
export const densityRatio = (m: number, gamma: number): number =>
  temperatureRatio(m, gamma) ** (1 / (gamma - 1))

/** Area over the area at Mach 1. m > 0. */
export const areaRatio = (m: number, gamma: number): number =>
  (1 / m) * ((2 / (gamma + 1)) * (1 + ((gamma - 1) / 2) * m * m)) ** ((gamma + 1) / (2 * (gamma - 1)))

/** Mach number of an area ratio of 1 or more, on the subsonic or the supersonic branch (up to Mach 50). */
export function machOfArea(ratio: number, gamma: number, branch: 'subsonic' | 'supersonic'): number {
  if (!(ratio >= 1)) throw new RangeError(`ratio: ${ratio}; must be 1 or more`)
  if (ratio === 1) return 1
  const f = (m: number): number => areaRatio(m, gamma) - ratio
  return branch === 'subsonic' ? brent(f, 1e-9, 1).value : brent(f, 1, 50).value
}

/** Across a normal shock from Mach m >= 1: Mach behind, then ratios behind over before. */
export function normalShock(
  m: number,
  gamma: number,
): { mach: number; p: number; rho: number; t: number; p0: number } {
  if (!(m >= 1)) throw new RangeError(`m: ${m}; a shock needs Mach 1 or more`)
  const m2 = m * m
  const mach = Math.sqrt((1 + ((gamma - 1) / 2) * m2) / (gamma * m2 - (gamma - 1) / 2))
  const p = 1 + ((2 * gamma) / (gamma + 1)) * (m2 - 1)
  const rho = ((gamma + 1) * m2) / ((gamma - 1) * m2 + 2)
  return { mach, p, rho, t: p / rho, p0: (p * pressureRatio(m, gamma)) / pressureRatio(mach, gamma) }
}

/** Friction length to Mach 1 in a tube of constant bore, 4 f L / D (f: Fanning). */
export function fannoLength(m: number, gamma: number): number {
  const m2 = m * m
  const g = gamma + 1
  return (1 - m2) / (gamma * m2) + (g / (2 * gamma)) * Math.log((g * m2) / (2 + (gamma - 1) * m2))
}

/** Pressure over the pressure at Mach 1 on the same friction line. */
export const fannoPressure = (m: number, gamma: number): number =>
  (1 / m) * Math.sqrt((gamma + 1) / (2 + (gamma - 1) * m * m))

/** Mach number after a friction length 4 f L / D from subsonic Mach m1. Throws when the flow would choke first. */
export function fannoAfter(m1: number, friction: number, gamma: number): number {
  const left = fannoLength(m1, gamma) - friction
  if (left < 0) throw new RangeError(`friction: ${friction}; the flow chokes at ${fannoLength(m1, gamma)}`)
  return brent((m) => fannoLength(m, gamma) - left, m1, 1).value
}

/** Stagnation temperature over that at Mach 1 in a heated tube of constant bore. */
export function rayleighT0(m: number, gamma: number): number {
  const m2 = m * m
  return ((gamma + 1) * m2 * (2 + (gamma - 1) * m2)) / (1 + gamma * m2) ** 2
}

/** Pressure ratio (down over up) at and below which a nozzle is choked. */
export const criticalRatio = (gamma: number): number => (2 / (gamma + 1)) ** (gamma / (gamma - 1))

/**
 * Dimensionless nozzle flow: m' = area * p0 / sqrt(R T0) * nozzleFlow(p/p0, gamma). 0 from a ratio of 1 up,
 * constant from the critical ratio down.
 */
export function nozzleFlow(ratio: number, gamma: number): number {
  if (ratio >= 1) return 0
  const r = Math.max(ratio, criticalRatio(gamma))
  return Math.sqrt(((2 * gamma) / (gamma - 1)) * (r ** (2 / gamma) - r ** ((gamma + 1) / gamma)))
}

/**
 * A closed vessel blowing down through a choked throat, no heat: pressure and temperature over their first
 * values after time t. k = throat * nozzleFlow(0) * sqrt(R T0) / volume, 1/s. From dm/dt and p V^gamma (derived).
 */
export function chokedBlowdown(k: number, t: number, gamma: number): { p: number; t: number } {
  const base = 1 + ((gamma - 1) / 2) * k * t
  return { p: base ** ((-2 * gamma) / (gamma - 1)), t: base ** -2 }
}
