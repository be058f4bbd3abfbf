/**
 * Exact solution of the Riemann problem of a perfect gas.
 * E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3rd ed. (2009), ch. 4: pressure
 * function eqs 4.6-4.9, densities 4.53, 4.57, sampling sec. 4.5.
 */
import type { Solved } from '../../base/answers/solved.ts'
import { brent } from '../../base/numerics/roots.ts'

/** Density kg/m3, velocity m/s, pressure Pa (or any consistent units). */
export interface GasState {
  rho: number
  u: number
  p: number
}

/** The star region: pressure, velocity, and the density on either side of the contact. */
export interface StarRegion {
  p: number
  u: number
  rhoLeft: number
  rhoRight: number
}

const sound = (s: GasState, gamma: number): number => Math.sqrt((gamma * s.p) / s.rho)

function waveFunction(p: number, k: GasState, gamma: number): number {
  if (p > k.p) {
    const a = 2 / ((gamma + 1) * k.rho)
    const b = ((gamma - 1) / (gamma + 1)) * k.p
    return (p - k.p) * Math.sqrt(a / (p + b))
  }
  return ((2 * sound(k, gamma)) / (gamma - 1)) * ((p / k.p) ** ((gamma - 1) / (2 * gamma)) - 1)
}

function starDensity(p: number, k: GasState, gamma: number): number {
  const r = p / k.p
  const q = (gamma - 1) / (gamma + 1)
  return p > k.p ? (k.rho * (r + q)) / (q * r + 1) : k.rho * r ** (1 / gamma)
}

/** Star region between two states; not converged when the two draw apart into a vacuum. residual in m/s. */
export function solveRiemann(left: GasState, right: GasState, gamma: number): Solved<StarRegion> {
  const f = (p: number): number =>
    waveFunction(p, left, gamma) + waveFunction(p, right, gamma) + right.u - left.u
  const most = Math.max(left.p, right.p)
  let high = most
  while (f(high) < 0 && high < 1e12 * most) high *= 4
  const low = 1e-14 * Math.min(left.p, right.p)
  const root = brent(f, low, high, { tolerance: 1e-15 * high, maxIterations: 400 })
  const p = root.value
  const u = 0.5 * (left.u + right.u) + 0.5 * (waveFunction(p, right, gamma) - waveFunction(p, left, gamma))
  return {
    ...root,
    value: { p, u, rhoLeft: starDensity(p, left, gamma), rhoRight: starDensity(p, right, gamma) },
  }
}

/** State on the ray x/t = ray of the solution `star` between the two states. */
export function sampleRiemann(
  left: GasState,
  right: GasState,
  star: StarRegion,
  gamma: number,
  ray: number,
): GasState {
  if (ray > star.u) {
    // mirror: the right side is a left side looked at from behind
    const m = sampleRiemann(
      { ...right, u: -right.u },
      { ...left, u: -left.u },
      { p: star.p, u: -star.u, rhoLeft: star.rhoRight, rhoRight: star.rhoLeft },
      gamma,
      -ray,
    )
    return { ...m, u: -m.u }
  }
  const a = sound(left, gamma)
  if (star.p > left.p) {
    const shock =
      left.u - a * Math.sqrt(((gamma + 1) / (2 * gamma)) * (star.p / left.p) + (gamma - 1) / (2 * gamma))
    return ray < shock ? left : { rho: star.rhoLeft, u: star.u, p: star.p }
  }
  if (ray < left.u - a) return left
  const aStar = Math.sqrt((gamma * star.p) / star.rhoLeft)
  if (ray > star.u - aStar) return { rho: star.rhoLeft, u: star.u, p: star.p }
  // inside the fan
  const c = 2 / (gamma + 1) + ((gamma - 1) / ((gamma + 1) * a)) * (left.u - ray)
  return {
    rho: left.rho * c ** (2 / (gamma - 1)),
    u: (2 / (gamma + 1)) * (a + ((gamma - 1) / 2) * left.u + ray),
    p: left.p * c ** ((2 * gamma) / (gamma - 1)),
  }
}
