/**
 * How hot foam or a deck gets beside a hot pipe, bare, shielded or wrapped.
 * Sources: radiation between a long cylinder and a small face, view factor r/s straight under it (any heat-transfer text, e.g.
 * J. R. Howell, A Catalog of Radiation Heat Transfer Configuration Factors, B-32 in the limit of a small face); Stefan-Boltzmann constant
 * CODATA 2018; film coefficients in still air, usual handbook range.
 */

import type { Solved } from '../../base/answers/solved.ts'
import { brent } from '../../base/numerics/roots.ts'

const stefanBoltzmann = 5.670374419e-8

export interface HotSpot {
  /** outside radius of the pipe, and its axis above the face, m */
  radius: number
  distance: number
  /** K */
  pipe: number
  air: number
  /** emissivity of the pipe: 0.8 oxidised steel, 0.3 bright stainless */
  emissivity: number
  /** W/(m²K) by air, still about 8, blown 20 to 30 */
  film: number
  /** W/(m·K) and m: heat that runs on into the foam to a cool side */
  conductivity: number
  depth: number
  /** K of the cool side */
  cool: number
}

export interface Shield {
  /** emissivity of each face: 0.1 bright, 0.3 dull */
  emissivity: number
  /** W/(m²K) of the air on each side */
  film: number
}

/** View factor of a pipe of radius r from a small face s from its axis and x to the side; at most 1. */
function pipeViewFactor(radius: number, distance: number, aside = 0): number {
  return Math.min(1, (radius * distance) / (distance * distance + aside * aside))
}

/** Net radiation from the pipe on a face at T (K), W/m². */
export function pipeFlux(spot: HotSpot, face: number): number {
  return (
    pipeViewFactor(spot.radius, spot.distance) *
    spot.emissivity *
    stefanBoltzmann *
    (spot.pipe ** 4 - face ** 4)
  )
}

function awayFromFoam(spot: HotSpot, face: number): number {
  return (
    spot.film * (face - spot.air) +
    (spot.conductivity * (face - spot.cool)) / spot.depth +
    radiated(face, spot.air)
  )
}

/** the face's own radiation to the rest of the bay, as air-warm surroundings, emissivity 0.9 */
const radiated = (face: number, air: number): number => 0.9 * stefanBoltzmann * (face ** 4 - air ** 4)

/** Steady temperature of the bare foam face, K. */
export function foamFace(spot: HotSpot): Solved {
  return brent(
    (T) => pipeFlux(spot, T) - awayFromFoam(spot, T),
    Math.min(spot.air, spot.cool, spot.pipe) - 1,
    Math.max(spot.air, spot.pipe, spot.cool) + 1,
  )
}

/** Steady temperatures of the foam face and the shield, K: a plate with air on both sides between pipe and foam. */
export function shieldedFoamFace(spot: HotSpot, shield: Shield): Solved<{ foam: number; shield: number }> {
  const view = pipeViewFactor(spot.radius, spot.distance)
  const between = stefanBoltzmann / (1 / shield.emissivity + 1 / 0.9 - 1)
  // pipe and shield exchange as two grey faces
  const toShield = (view * stefanBoltzmann) / (1 / spot.emissivity + 1 / shield.emissivity - 1)
  const low = Math.min(spot.air, spot.cool, spot.pipe) - 1
  const high = Math.max(spot.air, spot.pipe, spot.cool) + 1
  const foamAt = (Ts: number) =>
    brent(
      (T) =>
        between * (Ts ** 4 - T ** 4) -
        spot.film * (T - spot.air) -
        (spot.conductivity * (T - spot.cool)) / spot.depth,
      low,
      high,
    )
  const found = brent(
    (Ts) => {
      const foam = foamAt(Ts).value
      return (
        toShield * (spot.pipe ** 4 - Ts ** 4) -
        between * (Ts ** 4 - foam ** 4) -
        2 * shield.film * (Ts - spot.air)
      )
    },
    low,
    high,
  )
  const foam = foamAt(found.value)
  return {
    value: { foam: foam.value, shield: found.value },
    converged: found.converged && foam.converged,
    iterations: found.iterations,
    residual: found.residual,
  }
}

/** Least distance of a bare pipe's axis from foam that must stay at or below `limit` (K), m; not converged when even 3 m is too near. */
export function distanceFor(spot: Omit<HotSpot, 'distance'>, limit: number): Solved {
  const at = (s: number) => foamFace({ ...spot, distance: s }).value - limit
  return brent(at, spot.radius * 1.001, 3, { tolerance: 1e-6 })
}

/** Simple distance for a face that may rise by `rise` K with all losses in one coefficient (W/(m²K)), m; against surroundings at `room` (K). */
export function distanceBySum(
  radius: number,
  pipe: number,
  emissivity: number,
  room: number,
  rise: number,
  coefficient: number,
): number {
  return (radius * blackFlux(pipe, room, emissivity)) / (coefficient * rise)
}

/** Flux from a surface to surroundings, W/m². */
export function blackFlux(hot: number, room: number, emissivity: number): number {
  return emissivity * stefanBoltzmann * (hot ** 4 - room ** 4)
}

/** Heat through a wrap on a pipe, W per m² of the pipe's own surface: λ ΔT/(r ln(ro/r)). */
export function wrapFlux(conductivity: number, radius: number, outside: number, step: number): number {
  return (conductivity * step) / (radius * Math.log(outside / radius))
}

/** Outside temperature of a wrapped pipe in air, K: conduction through the wrap against film and radiation at its outside. */
export function wrapSurface(
  pipe: number,
  air: number,
  radius: number,
  outside: number,
  conductivity: number,
  film: number,
  emissivity = 0.9,
): Solved {
  return brent(
    (T) =>
      (conductivity * (pipe - T)) / (outside * Math.log(outside / radius)) -
      film * (T - air) -
      emissivity * stefanBoltzmann * (T ** 4 - air ** 4),
    Math.min(air, pipe) - 1,
    Math.max(air, pipe) + 1,
  )
}
