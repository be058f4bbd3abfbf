/**
 * Steady temperature of the air in a bay: what warms it against the air that passes through and the walls, solved together with the
 * flow that its own warmth drives.
 *   Σ q = m c_p (T − T_out) + film (T − T_s) + G_w (T − T_water);   film (T − T_s) + q_rad = G_a (T_s − T_sol)
 * Sol-air temperature of a surface in the sun: ASHRAE Handbook of Fundamentals, T_out + α I/h. Lid and sides are one lump of metal and
 * foam; the floor lies on the water and is as cold as that.
 */
import type { Solved } from '../../base/answers/solved.ts'
import { brent } from '../../base/numerics/roots.ts'
import { airDensity } from '../../physics/fluid/atmosphere.ts'
import { type AirFan, type AirFlow, type AirOpening, solveAirFlow } from './bayFlow.ts'

/** J/(kg K), dry air near 300 K */
export const airHeat = 1006

/** Heat given to the bay by one thing at `from` K: `air` W by the air and `walls` W by radiation with the bay at `at` K. */
export interface BaySource {
  air: number
  walls: number
  /** K of what drives it (gas, hot metal); Infinity for a heat that comes whatever the bay does */
  from: number
  at: number
  /** comes only as a lump of metal warms */
  slow: boolean
}

export interface BayModel {
  /** K and Pa outside */
  outside: number
  pressure: number
  openings: readonly AirOpening[]
  fans: readonly AirFan[]
  /** kg/s burnt out of the bay */
  burnt: number
  sources: readonly BaySource[]
  /** W/K from the bay's air to its walls */
  film: number
  /** W/K from the walls to the air outside with the temperature they see there, and from the bay's air through its floor to the water */
  toAir: { conductance: number; T: number }
  toWater: { conductance: number; T: number }
  /** J/K of the walls and what stands in the bay */
  capacity: number
}

export interface BayState {
  /** K of the air and the walls */
  air: number
  walls: number
  flow: AirFlow
  /** W: given to air and walls, carried off by air, through the lid and sides, and through the floor; the first less the rest is nought */
  given: number
  carried: number
  outside: number
  water: number
}

const share = (s: BaySource, T: number) =>
  Number.isFinite(s.from) ? Math.max(0, (s.from - T) / (s.from - s.at)) : 1

/** W to the air and to the walls with the bay's air at T. */
export function givenAt(m: Pick<BayModel, 'sources'>, T: number): { air: number; walls: number } {
  let air = 0
  let walls = 0
  for (const s of m.sources) {
    const k = share(s, T)
    air += k * s.air
    walls += k * s.walls
  }
  return { air, walls }
}

/** Walls in balance with air at T. */
function wallsAt(m: BayModel, T: number, radiated: number): number {
  const { toAir, film } = m
  return (film * T + toAir.conductance * toAir.T + radiated) / (film + toAir.conductance)
}

export function flowAt(m: BayModel, T: number, start?: number): Solved<AirFlow> {
  return solveAirFlow(
    {
      openings: m.openings,
      fans: m.fans,
      burnt: m.burnt,
      outside: airDensity(m.pressure, m.outside),
      inside: airDensity(m.pressure, T),
    },
    start,
  )
}

/** W that passing air and the floor take from the bay's air at T */
const lostBy = (m: BayModel, flow: AirFlow, T: number): number =>
  flow.exchanged * airHeat * (T - m.outside) + m.toWater.conductance * (T - m.toWater.T)

/** K: far beyond what any bay comes to */
const hottest = 3000

/** Steady state; residual in W. Not converged where air is drawn through no opening. */
export function steadyBay(m: BayModel): Solved<BayState> {
  let pressure = 0
  let sound = true
  const over = (T: number): number => {
    const flow = flowAt(m, T, pressure)
    if (!flow.converged) sound = false
    pressure = flow.converged ? flow.value.pressure : 0
    const { air, walls } = givenAt(m, T)
    return air - lostBy(m, flow.value, T) - m.film * (T - wallsAt(m, T, walls))
  }
  const coldest = Math.min(m.outside, m.toWater.T, m.toAir.T) - 1
  const found = brent(over, coldest, hottest, { tolerance: 1e-5 })
  return { ...found, converged: found.converged && sound, value: stateAt(m, found.value) }
}

/** The state with the air at T: steady where T is the steady temperature. */
function stateAt(m: BayModel, T: number): BayState {
  const { air, walls } = givenAt(m, T)
  const Ts = wallsAt(m, T, walls)
  const flow = flowAt(m, T).value
  return {
    air: T,
    walls: Ts,
    flow,
    given: air + walls,
    carried: flow.exchanged * airHeat * (T - m.outside),
    outside: m.toAir.conductance * (Ts - m.toAir.T),
    water: m.toWater.conductance * (T - m.toWater.T),
  }
}

/** Air temperature with the walls held at Ts: the air follows within seconds. residual in W. */
export function airBeside(m: BayModel, Ts: number, given: (T: number) => number, start: number): Solved {
  let pressure = 0
  const over = (T: number): number => {
    const flow = flowAt(m, T, pressure)
    pressure = flow.converged ? flow.value.pressure : 0
    return given(T) - lostBy(m, flow.value, T) - m.film * (T - Ts)
  }
  // a few kelvin round where it was, else everywhere
  const near = brent(over, start - 6, start + 6, { tolerance: 1e-3 })
  return near.converged
    ? near
    : brent(over, Math.min(m.outside, m.toWater.T, Ts) - 1, hottest, { tolerance: 1e-3 })
}
