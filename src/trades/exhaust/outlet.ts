/**
 * The outlet at the waterline: what a flap costs, what a hot pipe draws in when it cools, where it may spill.
 * Sources: hydrostatics p = ρgh; ideal gas at constant pressure for the suction after shut-down. Heights and
 * slopes to compare with: ABYC P-1 and inboard practice as summarised in the boating press (injection elbow
 * 12 in above the waterline, fall of half an inch a foot); margins of this craft size are this project's own.
 */

import { brent } from '../../base/numerics/roots.ts'
import { saturationPressure } from '../../physics/fluid/vapour.ts'

export const gravity = 9.80665

export interface Flap {
  /** m², of the flap over the hole */
  area: number
  /** m, hinge to the centroid of the hole */
  arm: number
  /** N·m, of weight and of the rubber's own stiffness about the hinge */
  weightMoment: number
  elasticMoment: number
}

/** Pressure over the air, Pa, that opens a flap whose hole is `depth` m under water (0 when above). */
export function flapOpening(flap: Flap, depth: number, density = 999): number {
  return (
    density * gravity * Math.max(0, depth) + (flap.weightMoment + flap.elasticMoment) / (flap.area * flap.arm)
  )
}

/** Share of a pipe's volume that fills with water as its gas cools from `hot` to `cold` (K) with the outlet under. */
export function drawnIn(hot: number, cold: number): number {
  return Math.max(0, 1 - cold / hot)
}

/** Height, m, that cooling gas in a closed pipe could lift water to. */
export function suctionLift(hot: number, cold: number, pressure = 101325, density = 999): number {
  return (pressure * drawnIn(hot, cold)) / (density * gravity)
}

/** Heights to compare with, m. */
export const heights = {
  /** highest inner point above still water */
  spill: { want: 0.3 },
  /** fall from the highest point to the outlet, rad */
  fall: { want: (2 * Math.PI) / 180 },
}

/** How the highest point inside (m above the water), from where water runs to the engine, stands. */
export function judgeSpill(spill: number): 'good' | 'watch' | 'stop' {
  return spill <= 0 ? 'stop' : spill < heights.spill.want ? 'watch' : 'good'
}

/** gas of the pipe: J/(kg K), kg/mol; water: J/kg at 298 K, J/(kg K) of steam and of water, kg/mol, K of what goes in */
const gas = { cp: (1.32 / 0.32) * 295, molar: 8.314 / 295 }
const water = { latent: 2.442e6, steam: 1900, liquid: 4186, molar: 0.018015, from: 288 }

/**
 * Temperature, K, of exhaust gas (kg/s at T) after `injected` kg/s of water has evaporated into it as far as it can: to the
 * vapour that saturates it. Energy balance; saturation pressure as in fluid/vapour.ts.
 */
export function quenched(flow: number, T: number, injected: number, pressure = 101325): number {
  if (!(flow > 0) || !(injected >= 0))
    throw new RangeError(`gas ${flow} kg/s, water ${injected} kg/s: not below 0`)
  if (injected === 0) return T
  const left = (t: number): number => {
    const steam = Math.min(injected, saturating(flow, t, pressure))
    const taken = steam * (water.latent + water.steam * (t - 298) + water.liquid * (298 - water.from))
    return flow * gas.cp * (T - t) - taken - (injected - steam) * water.liquid * (t - water.from)
  }
  const solved = brent(left, water.from, T, { tolerance: 1e-6 })
  return solved.value
}

/** kg/s of vapour that saturates the gas at t; without limit from the boiling point on. */
function saturating(flow: number, t: number, pressure: number): number {
  const p = saturationPressure(Math.min(t, 647))
  if (p >= pressure) return Number.POSITIVE_INFINITY
  return (((flow / gas.molar) * p) / (pressure - p)) * water.molar
}
