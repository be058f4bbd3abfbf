/**
 * A well-mixed volume: first law for an open system (J. B. Heywood, Internal Combustion Engine Fundamentals, 1988, ch. 14), and
 * the steady nozzle between two volumes (R. S. Benson, The Thermodynamics and Gas Dynamics of IC Engines, vol. 1, 1982).
 */
import { nozzleFlow } from '../../physics/gas/gasLaws.ts'
import { mixEnergy, mixR, mixTemperature } from './caloric.ts'

/** Mass kg, internal energy J, fresh mass kg; pressure Pa, temperature K. */
export interface Vessel {
  m: number
  u: number
  fresh: number
  p: number
  t: number
}

export function createVessel(p: number, t: number, y: number, volume: number): Vessel {
  const m = (p * volume) / (mixR(y) * t)
  return { m, u: m * mixEnergy(t, y), fresh: m * y, p, t }
}

/**
 * Adds mass, fresh mass and heat (enthalpy in, less heat out, J) while the volume changes. The work uses the mean
 * pressure of the step, found by repeated substitution; it is returned as the energy that really went missing, so
 * that books close. J.
 */
export function advanceVessel(
  v: Vessel,
  dm: number,
  dFresh: number,
  dh: number,
  volume: number,
  volumeNext: number,
): number {
  const m = v.m + dm
  const fresh = Math.min(m, Math.max(0, v.fresh + dFresh))
  const y = fresh / m
  const r = mixR(y)
  const dv = volumeNext - volume
  let p = v.p
  let t = v.t
  let u = v.u
  for (let k = 0; k < 4; k++) {
    u = v.u + dh - 0.5 * (v.p + p) * dv
    t = mixTemperature(u / m, y, t)
    p = (m * r * t) / volumeNext
  }
  const work = v.u + dh - u
  v.m = m
  v.fresh = fresh
  v.u = u
  v.t = t
  v.p = p
  return work
}

/** Mass flow of a nozzle of effective area m2 from pressure p to pressure back, kg/s; gas of the giving side. */
export function nozzle(area: number, p: number, t: number, r: number, gamma: number, back: number): number {
  return ((area * p) / Math.sqrt(r * t)) * nozzleFlow(back / p, gamma)
}
