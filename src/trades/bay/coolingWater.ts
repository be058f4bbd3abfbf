/**
 * Cooling water tapped from the jet before its nozzle.
 * Pressure there: Bernoulli between the duct before the nozzle and the jet, ½ρ(V_j² − V_d²). Hose: laminar 64/Re, else Blasius
 * 0.316 Re^-1/4 (H. Blasius, 1913); entries, fittings and exit as loss factors of the hose's own velocity head, the narrowest place with
 * 1.5 of its own (Miller 1978, from memory). Outlet temperature from the heat it takes up.
 */
import type { Solved } from '../../base/answers/solved.ts'
import { brent } from '../../base/numerics/roots.ts'

const gravity = 9.80665
/** J/(kg K) */
export const waterHeat = 4186

export interface WaterWay {
  /** m: bore of the hose, of the narrowest place, length */
  bore: number
  narrowest: number
  length: number
  /** m, its outlet over the water outside */
  outlet: number
}

/** Pa before the nozzle, over the water outside, with Q m³/s through areas in m². */
export function tapPressure(density: number, Q: number, nozzle: number, before: number): number {
  return 0.5 * density * Q * Q * Math.max(0, 1 / nozzle ** 2 - 1 / before ** 2)
}

/** Pa that a flow of q m³/s costs in the way. */
function wayLoss(way: WaterWay, q: number, density: number, viscosity: number): number {
  const area = (Math.PI / 4) * way.bore ** 2
  const v = q / area
  const Re = (density * v * way.bore) / viscosity
  const friction = Re < 2300 ? 64 / Math.max(1e-9, Re) : 0.316 * Re ** -0.25
  // the steps between laminar and turbulent stay: the root finder bears them
  const head = 0.5 * density * v * v
  const narrow = Math.min(way.narrowest, way.bore)
  return head * ((friction * way.length) / way.bore + 2.5 + 1.5 * (way.bore / narrow) ** 4)
}

/** m³/s through the way at tap pressure p Pa; nought where the pressure does not lift it out. residual in Pa. */
export function waterThrough(way: WaterWay, p: number, density: number, viscosity: number): Solved {
  const drive = p - density * gravity * Math.max(0, way.outlet)
  if (!(drive > 0)) return { value: 0, converged: true, iterations: 0, residual: 0 }
  const most = (Math.PI / 4) * way.bore ** 2 * Math.sqrt((2 * drive) / density)
  return brent((q) => wayLoss(way, q, density, viscosity) - drive, 1e-12, most, { tolerance: 1e-12 })
}

/** Outlet temperature, K, of q m³/s that takes up `heat` W; boiling where there is no flow. */
export function waterOut(T: number, heat: number, q: number, density: number): number {
  return q > 0 ? Math.min(373.15, T + heat / (density * q * waterHeat)) : 373.15
}

/** Narrowest place, m, that lets q m³/s through at pressure p; not converged where the hose itself is too small. */
export function narrowestFor(
  way: WaterWay,
  q: number,
  p: number,
  density: number,
  viscosity: number,
): Solved {
  const drive = p - density * gravity * Math.max(0, way.outlet)
  return brent(
    (narrowest) => wayLoss({ ...way, narrowest }, q, density, viscosity) - drive,
    0.05 * way.bore,
    way.bore,
    { tolerance: 1e-7 },
  )
}
