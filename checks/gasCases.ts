/** Small flows with known answers, run through the duct kernel for checks/gasChecks.ts and the tests of src/gas. */

import { at, createDucts, type DuctShape, type Ducts, field, setCell } from '../src/physics/gas/arena.ts'
import {
  closedEnd,
  createCrossing,
  crossed,
  joinEnds,
  openEnd,
  passEnd,
  portEnd,
} from '../src/physics/gas/boundaries.ts'
import { predictEnds, refreshWallRates, stableStep, sweep, wrapGhosts } from '../src/physics/gas/duct.ts'
import { machOfArea, pressureRatio } from '../src/physics/gas/gasLaws.ts'
import { type GasState, sampleRiemann, solveRiemann } from '../src/physics/gas/riemann.ts'

const out = createCrossing()

/** straight inviscid tube of n cells and the given length and section */
export function straight(n: number, length: number, area = 1): DuctShape {
  const faceArea = new Float64Array(n + 1).fill(area)
  return { dx: length / n, faceArea, cellArea: new Float64Array(n).fill(area), viscous: false }
}

/** state of cell c of duct d */
export function cellState(g: Ducts, d: number, c: number): GasState & { t: number; y: number } {
  const b = at(g.first[d]! + c)
  const rho = g.cell[b + field.RHO]!
  const p = g.cell[b + field.P]!
  return { rho, u: g.cell[b + field.U]!, p, t: p / (rho * g.gasConstant), y: g.cell[b + field.Y]! }
}

/** mean error of density against the exact solution of Sod's tube at t = 0.2, courant 0.8 */
export function sodError(n: number): number {
  const g = createDucts([straight(n, 1)], 1.4, 1)
  const left = { rho: 1, u: 0, p: 1 }
  const right = { rho: 0.125, u: 0, p: 0.1 }
  for (let c = 0; c < n; c++) {
    const s = (c + 0.5) / n < 0.5 ? left : right
    setCell(g, g.first[0]! + c, s.rho, s.u, s.p, 0)
  }
  let time = 0
  while (time < 0.2 - 1e-12) {
    const dt = Math.min(stableStep(g, 0.8), 0.2 - time)
    predictEnds(g, dt)
    passEnd(g, 0, 0, out)
    passEnd(g, 0, 1, out)
    sweep(g, dt)
    time += dt
  }
  const star = solveRiemann(left, right, 1.4).value
  let error = 0
  for (let c = 0; c < n; c++)
    error +=
      Math.abs(
        cellState(g, 0, c).rho - sampleRiemann(left, right, star, 1.4, ((c + 0.5) / n - 0.5) / 0.2).rho,
      ) / n
  return error
}

/** mean error of density of a smooth wave carried once round a ring */
export function smoothError(n: number): number {
  const g = createDucts([straight(n, 1)], 1.4, 1)
  const mean = (c: number): number =>
    1 +
    ((0.2 * n) / (2 * Math.PI)) * (Math.cos((2 * Math.PI * c) / n) - Math.cos((2 * Math.PI * (c + 1)) / n))
  for (let c = 0; c < n; c++) setCell(g, g.first[0]! + c, mean(c), 1, 1, 0)
  let time = 0
  while (time < 1 - 1e-12) {
    const dt = Math.min(stableStep(g, 0.8), 1 - time)
    predictEnds(g, dt)
    wrapGhosts(g, 0, dt)
    ringFlux(g)
    sweep(g, dt)
    time += dt
  }
  let error = 0
  for (let c = 0; c < n; c++) error += Math.abs(cellState(g, 0, c).rho - mean(c)) / n
  return error
}

/** both edges of duct 0 set to the flux between its two ends: u > 0 and one pressure here, so upwind is exact */
function ringFlux(g: Ducts): void {
  const [rho, u, p] = [g.end[4]!, g.end[5]!, g.end[6]!]
  const flux = [rho * u, rho * u * u + p, u * ((g.gamma / (g.gamma - 1)) * p + 0.5 * rho * u * u), 0]
  for (let k = 0; k < 4; k++) g.edge[k] = g.edge[4 + k] = flux[k]!
}

/** a shape from bores at the faces, inviscid */
function coned(bores: readonly number[], dx: number): DuctShape {
  const faceArea = bores.map((d) => (Math.PI / 4) * d * d)
  const cellArea = faceArea.slice(1).map((a, i) => (a + faceArea[i]! + Math.sqrt(a * faceArea[i]!)) / 3)
  return { dx, faceArea, cellArea, viscous: false }
}

/** 40 to 110 to 22 mm cones */
export function bellyShape(n = 60): DuctShape {
  const bores = Array.from({ length: n + 1 }, (_, i) => {
    const s = i / n
    return s < 0.5 ? 0.04 + 0.14 * s : 0.11 - 0.176 * (s - 0.5)
  })
  return coned(bores, 0.01)
}

/** fastest gas after resting in a closed belly with a temperature gradient, m/s */
export function restSpeed(steps: number): number {
  const n = 60
  const g = createDucts([bellyShape(n)], 1.32, 295)
  for (let c = 0; c < n; c++)
    setCell(g, g.first[0]! + c, 101325 / (295 * (900 - (500 * c) / n)), 0, 101325, 0)
  for (let k = 0; k < steps; k++) {
    predictEnds(g, 1e-5)
    closedEnd(g, 0, 0, out)
    closedEnd(g, 0, 1, out)
    sweep(g, 1e-5)
  }
  let most = 0
  for (let c = 0; c < n; c++) most = Math.max(most, Math.abs(cellState(g, 0, c).u))
  return most
}

/** quasi-steady nozzle A = 1 + 2 (x - 1/2)^2: mean pressure error over p0, mass flow and exit Mach number */
export function nozzleRun(n: number): { error: number; mdot: number; exit: number } {
  const area = (x: number): number => 1 + 2 * (x - 0.5) ** 2
  const integral = (x: number): number => x + (2 / 3) * (x - 0.5) ** 3
  const faceArea = Array.from({ length: n + 1 }, (_, i) => area(i / n))
  const cellArea = Array.from({ length: n }, (_, i) => n * (integral((i + 1) / n) - integral(i / n)))
  const g = createDucts([{ dx: 1 / n, faceArea, cellArea, viscous: false }], 1.4, 287)
  for (let c = 0; c < n; c++) setCell(g, g.first[0]! + c, 1e5 / (287 * 300), 80, 0.97e5, 0)
  let guess0 = 0.97e5
  let mdot = 0
  for (let k = 0; k < 120 * n; k++) {
    const dt = stableStep(g, 0.8)
    predictEnds(g, dt)
    openEnd(g, 0, 0, 1e5, 300, 0, guess0, out)
    guess0 = out[crossed.p]!
    mdot = out[crossed.mass]!
    openEnd(g, 0, 1, 0.95e5, 300, 0, 0.95e5, out)
    sweep(g, dt)
  }
  // exact: isentropic, exit at 0.95 p0
  const mExit = Math.sqrt((2 / 0.4) * (0.95 ** (-0.4 / 1.4) - 1))
  const star = area(1) / ((1 / mExit) * ((2 / 2.4) * (1 + 0.2 * mExit * mExit)) ** 3)
  let error = 0
  for (let c = 0; c < n; c++) {
    const m = machOfArea(Math.max(1, area((c + 0.5) / n) / star), 1.4, 'subsonic')
    error += Math.abs(cellState(g, 0, c).p / 1e5 - pressureRatio(m, 1.4)) / n
  }
  return { error, mdot, exit: mExit }
}

/** friction only: Mach number and pressure ratio between two cells of a steady rough tube, and leaving over entering T0 */
export function fannoRun(): { m1: number; m2: number; pRatio: number; friction: number; leaving: number } {
  const n = 100
  const g = createDucts(
    [{ ...straight(n, 1, (Math.PI / 4) * 0.04 ** 2), viscous: true, heatFactor: 0, roughFriction: 0.03 }],
    1.4,
    287,
  )
  const [p0, t0] = [1.4e5, 300]
  for (let c = 0; c < n; c++) setCell(g, g.first[0]! + c, 1.2e5 / (287 * 300), 100, 1.2e5, 0)
  let guess = 1.3e5
  let leaving = 0
  for (let k = 0; k < 6000; k++) {
    if (k % 4 === 0) refreshWallRates(g, 0)
    const dt = stableStep(g, 0.8)
    predictEnds(g, dt)
    openEnd(g, 0, 0, p0, t0, 0, guess, out)
    guess = out[crossed.p]!
    openEnd(g, 0, 1, 0.95e5, 300, 0, 1e5, out)
    leaving = out[crossed.t0]!
    sweep(g, dt)
  }
  const mach = (c: number): number => {
    const s = cellState(g, 0, c)
    return s.u / Math.sqrt(1.4 * 287 * s.t)
  }
  const [a, b] = [10, 90]
  return {
    m1: mach(a),
    m2: mach(b),
    pRatio: cellState(g, 0, b).p / cellState(g, 0, a).p,
    friction: (4 * 0.03 * ((b - a) / n)) / 0.04,
    leaving: leaving / t0,
  }
}

/** reflected and transmitted height of a small pulse at a step of section from 1 to `ratio`, over its height before */
export function stepReflection(ratio: number): { reflected: number; transmitted: number } {
  const n = 300
  const g = createDucts([straight(n, 3, 1e-3), straight(n, 3, 1e-3 * ratio)], 1.4, 287)
  const [p0, t] = [1e5, 300]
  const a = Math.sqrt(1.4 * 287 * t)
  const peak = 100
  for (let c = 0; c < n; c++) {
    const x = 3 * ((c + 0.5) / n)
    const dp = peak * Math.exp(-(((x - 1.5) / 0.15) ** 2))
    const r = p0 / (287 * t)
    setCell(g, g.first[0]! + c, r + dp / (a * a), dp / (r * a), p0 + dp, 0)
    setCell(g, g.first[1]! + c, r, 0, p0, 0)
  }
  let time = 0
  let guess = p0
  while (time < 2.5 / a) {
    const dt = stableStep(g, 0.8)
    predictEnds(g, dt)
    passEnd(g, 0, 0, out)
    passEnd(g, 1, 1, out)
    joinEnds(g, 0, 1, 1, 0, guess, out)
    guess = out[crossed.p]!
    sweep(g, dt)
    time += dt
  }
  const extreme = (d: number): number => {
    let most = 0
    for (let c = 0; c < n; c++) {
      const dp = cellState(g, d, c).p - p0
      if (Math.abs(dp) > Math.abs(most)) most = dp
    }
    return most
  }
  return { reflected: extreme(0) / peak, transmitted: extreme(1) / peak }
}

/** closed-open pipe of length l (end correction included): frequency and what is left of the amplitude after ten periods */
export function pipeTone(l: number, n: number): { frequency: number; left: number } {
  const g = createDucts([straight(n, l, 1e-3)], 1.4, 287.05)
  const t = 293.15
  const p0 = 101325
  const rho = p0 / (287.05 * t)
  const a = Math.sqrt(1.4 * 287.05 * t)
  for (let c = 0; c < n; c++) {
    const dp = 10 * Math.cos((Math.PI * (c + 0.5)) / (2 * n))
    setCell(g, g.first[0]! + c, rho + dp / (a * a), 0, p0 + dp, 0)
  }
  const period = (4 * l) / a
  let time = 0
  let before = 0
  let guess = p0
  const crossings: number[] = []
  // the quarter-wave's own amplitude, and its rate of change through zero
  const mode = (): number => {
    let sum = 0
    for (let c = 0; c < n; c++)
      sum += ((cellState(g, 0, c).p - p0) * Math.cos((Math.PI * (c + 0.5)) / (2 * n)) * 2) / n
    return sum
  }
  const first = mode()
  let previous = first
  let most = 0
  while (time < 10.3 * period) {
    const dt = stableStep(g, 0.8)
    predictEnds(g, dt)
    closedEnd(g, 0, 0, out)
    openEnd(g, 0, 1, p0, t, 0, guess, out)
    guess = out[crossed.p]!
    sweep(g, dt)
    before = time
    time += dt
    const now = mode()
    if (previous * now < 0) crossings.push(before + (dt * previous) / (previous - now))
    if (time > 9.6 * period) most = Math.max(most, now)
    previous = now
  }
  const m = crossings.length - 1
  return { frequency: m / (2 * (crossings[m]! - crossings[0]!)), left: most / first }
}

/** boundary state of a port or open end met by a uniform pipe state; positive velocity is away from the boundary */
export function portState(
  cyl: { p: number; t: number },
  throat: number,
  area: number,
  pipe: { p: number; t: number; u: number },
): { p: number; u: number; t: number; mdot: number } {
  const g = createDucts([straight(4, 0.04, area)], 1.32, 295)
  for (let c = 0; c < 4; c++) setCell(g, g.first[0]! + c, pipe.p / (295 * pipe.t), pipe.u, pipe.p, 0)
  predictEnds(g, 0)
  portEnd(g, 0, 0, throat, cyl.p, cyl.t, 1.32, 295, 0, pipe.p, out)
  return { p: out[crossed.p]!, u: out[crossed.w]!, t: out[crossed.t]!, mdot: out[crossed.mass]! }
}

/** the same at an open right-hand end; velocity positive outwards */
export function openState(
  pipe: { p: number; t: number; u: number },
  air: { p: number; t: number },
): { p: number; u: number; t: number } {
  const g = createDucts([straight(4, 0.04, 1e-3)], 1.32, 295)
  for (let c = 0; c < 4; c++) setCell(g, g.first[0]! + c, pipe.p / (295 * pipe.t), pipe.u, pipe.p, 0)
  predictEnds(g, 0)
  openEnd(g, 0, 1, air.p, air.t, 0, pipe.p, out)
  return { p: out[crossed.p]!, u: -out[crossed.w]!, t: out[crossed.t]! }
}
