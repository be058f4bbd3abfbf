/**
 * Wall temperature of a pipe, quasi-steady: what the gas gives over a cycle leaves by convection and radiation.
 *   <hT> - <h> Tw = ho (Tw - Ta) + emissivity sigma (Tw^4 - Ta^4)
 * Stefan-Boltzmann constant: CODATA 2018. Outer coefficients: common practice, about 20 W/(m2 K) in still air, 60
 * moving, 500 and more for a water jacket. Newton's method.
 */
import { at, type Ducts, field } from './arena.ts'

export interface Outside {
  /** outer heat transfer coefficient, W/(m2 K) */
  h: number
  /** emissivity of the outer face, 0..1 */
  emissivity: number
  /** air or water outside, K */
  t: number
}

export const stefanBoltzmann = 5.670374419e-8

/** Wall temperature, K, for mean coefficient h, W/(m2 K), and mean product hT, W/m2, of the gas inside. */
export function wallTemperature(h: number, ht: number, outside: Outside, start: number): number {
  const es = outside.emissivity * stefanBoltzmann
  let t = start
  for (let k = 0; k < 40; k++) {
    const left = ht - h * t - outside.h * (t - outside.t) - es * (t ** 4 - outside.t ** 4)
    const step = left / (h + outside.h + 4 * es * t ** 3)
    t += step
    if (Math.abs(step) < 1e-9 * t) break
  }
  return t
}

/**
 * Moves every wall of duct d by `relax` of the way to its quasi-steady temperature, from the sums of the cycle just
 * run, which are then cleared. Returns the largest change still due, K.
 */
export function updateWalls(g: Ducts, d: number, outside: Outside, cycleTime: number, relax: number): number {
  const cv = g.gasConstant / (g.gamma - 1)
  let most = 0
  for (let i = g.first[d]!; i <= g.last[d]!; i++) {
    const b = at(i)
    // HEAT = 4 h / (D c_v)
    const toH = (g.cell[b + field.DIAMETER]! * cv) / (4 * cycleTime)
    const h = g.cell[b + field.SUM_H]! * toH
    const ht = g.cell[b + field.SUM_HT]! * toH
    const was = g.cell[b + field.WALL]!
    const due = wallTemperature(h, ht, outside, was) - was
    g.cell[b + field.WALL] = was + relax * due
    g.cell[b + field.SUM_H] = 0
    g.cell[b + field.SUM_HT] = 0
    if (Math.abs(due) > most) most = Math.abs(due)
  }
  return most
}

/** Heat given by the gas to the walls of duct d since its sums were last cleared, J. */
export function heatToWalls(g: Ducts, d: number): number {
  const cv = g.gasConstant / (g.gamma - 1)
  let heat = 0
  for (let i = g.first[d]!; i <= g.last[d]!; i++) {
    const b = at(i)
    const wall = g.cell[b + field.WALL]!
    // HEAT dt (T - Tw) c_v is heat per volume: 4 h (T - Tw) / D
    heat +=
      ((g.cell[b + field.SUM_HT]! - g.cell[b + field.SUM_H]! * wall) * cv * g.dx[d]!) /
      g.cell[b + field.INV_AREA]!
  }
  return heat
}
