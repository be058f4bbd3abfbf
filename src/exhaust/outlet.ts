/**
 * The outlet at the waterline: what a flap costs, what a hot pipe draws in when it cools, where it may spill.
 * Sources: hydrostatics p = ρgh; ideal gas at constant pressure for the suction after shut-down. Heights and
 * slopes to compare with: ABYC P-1 and inboard practice as summarised in the boating press (injection elbow
 * 12 in above the waterline, fall of half an inch a foot); margins of this craft size are this project's own.
 */
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
  /** lower lip of the outlet above still water: under `refuse` it floods, under `warn` it splashes in */
  lip: { warn: 0.1, refuse: 0.05 },
  /** highest inner point above still water */
  spill: { want: 0.3 },
  /** fall from the highest point to the outlet, rad */
  fall: { want: (2 * Math.PI) / 180 },
}

export interface OutletHeights {
  /** m above the water, rider aft, at rest, worst trim: lower lip of the outlet */
  lip: number
  /** m above the water: highest point inside, from where water runs to the engine */
  spill: number
}

export type OutletStanding = 'good' | 'watch' | 'stop'

/** How an outlet stands against the heights. */
export function judgeOutlet(h: OutletHeights): { lip: OutletStanding; spill: OutletStanding } {
  return {
    lip: h.lip < heights.lip.refuse ? 'stop' : h.lip < heights.lip.warn ? 'watch' : 'good',
    spill: h.spill <= 0 ? 'stop' : h.spill < heights.spill.want ? 'watch' : 'good',
  }
}

/** Water evaporated into exhaust gas: temperature after, K, with `water` kg/s into `gas` kg/s at T (K). */
export function quenched(gas: number, T: number, water: number): number {
  // gas cp 1217 J/kgK (γ 1.32, R 295); water from 288 K to steam: 84.6 K·4190 + 2.257e6, steam cp 2000
  const cpGas = (exhaustGamma / (exhaustGamma - 1)) * exhaustR
  const boiling = 373.15
  const latent = 2.257e6 + 4190 * (boiling - 288)
  const heat = gas * cpGas * (T - boiling) - water * latent
  if (heat <= 0) return boiling
  return boiling + heat / (gas * cpGas + water * 2000)
}
const exhaustGamma = 1.32
const exhaustR = 295
