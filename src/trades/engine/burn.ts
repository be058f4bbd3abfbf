/**
 * Combustion, heat loss, friction. Burn curve: I. I. Wiebe (1956), after Heywood (1988) sec. 9.2. Heat transfer: W. J. D.
 * Annand, Proc. IMechE 177 (1963) 973. Dilution and friction forms: G. P. Blair, Design and Simulation of
 * Two-Stroke Engines (1996), from memory. Heat released against air ratio: derived from frozen equilibrium products.
 */
import { conductivityOf, viscosityOf } from '../../physics/gas/mixture.ts'

/** Burnt fraction at y = (angle - start)/duration; a = 5 and m = 1.3 are usual. */
export function wiebe(y: number, a: number, m: number): number {
  if (y <= 0) return 0
  if (y >= 1) return 1
  return 1 - Math.exp(-a * y ** (m + 1))
}

const releaseAt = [0.6, 0.75, 0.8, 0.85, 0.87, 0.9, 0.95, 1]
const release = [0.5, 0.67, 0.735, 0.801, 0.826, 0.867, 0.933, 1]

/** Part of the fuel's heat that is freed at air ratio lambda (0.6 and up), linear between computed points. */
export function releaseFactor(lambda: number): number {
  if (lambda >= 1) return 1
  let k = 0
  while (k < releaseAt.length - 2 && lambda > releaseAt[k + 1]!) k++
  const f = (lambda - releaseAt[k]!) / (releaseAt[k + 1]! - releaseAt[k]!)
  return release[k]! + f * (release[k + 1]! - release[k]!)
}

/** Part of the charge's heat freed when the cylinder holds the fraction se of fresh charge (Blair, 0.4 to 0.9). */
export function dilutionFactor(se: number): number {
  const s = Math.min(Math.max(se, 0.4), 0.9)
  return Math.max(0.2, -12.558 + s * (70.108 + s * (-135.67 + s * (114.77 - s * 35.542))))
}

/**
 * Heat from gas to cylinder wall by convection and radiation, W/m2. p Pa, t gas K, r J/(kg K), cp J/(kg K), wall K.
 * `a` of Annand: 0.26 to 0.8.
 */
export function annandFlux(
  a: number,
  bore: number,
  pistonSpeed: number,
  p: number,
  t: number,
  r: number,
  wall: number,
): number {
  const mu = viscosityOf(t)
  const re = ((p / (r * t)) * pistonSpeed * bore) / mu
  const h = ((a * conductivityOf(t)) / bore) * re ** 0.7
  return h * (t - wall) + 4.25e-9 * (t ** 4 - wall ** 4)
}

/** Annand's convective coefficient alone, W/(m2 K). */
export function annandCoefficient(
  a: number,
  bore: number,
  pistonSpeed: number,
  rho: number,
  t: number,
): number {
  const re = (rho * pistonSpeed * bore) / viscosityOf(t)
  return ((a * conductivityOf(t)) / bore) * re ** 0.7
}

/** Friction mean effective pressure, Pa: c1 + c2 stroke rpm (Blair's form; c2 150 utility to 250 racing). */
export const frictionPressure = (c1: number, c2: number, stroke: number, rpm: number): number =>
  c1 + c2 * stroke * rpm
