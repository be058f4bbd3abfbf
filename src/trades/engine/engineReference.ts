/**
 * RE125: an engine made up for this project, so that two programs can be compared on it. Not a product's data.
 * The table is the outcome of an independent earlier program of the same models, kept as a regression target.
 *
 * Where the two part: below the tuned speed ours delivers 4 % less and traps more (+7.5 % at 6000 rpm, +4.5 % at 8000, +0.7 % at 10 000), so
 * that what stays in the cylinder, and with it mean pressure, agrees to 3 %. Exhaust gas is 5 % hotter (in K) at 6000 and 8000 rpm: mixing the
 * table's own burnt gas with ours' smaller share of fresh charge that runs straight through gives 4 of those 5 %. Cells of 20 and of 10 mm
 * give the same trapping within 0.6 %, so it is no matter of the grid. No measurement tells which program is nearer: nothing was changed.
 */

import type { TwoStrokeSpec } from './engineSpec.ts'
import { clearanceOfTrapped, pistonTravel } from './geometry.ts'

const degree = Math.PI / 180

/** The reference engine with its 10 000 rpm pipe and an open stinger. */
export function referenceEngine(): TwoStrokeSpec {
  const crank = { bore: 0.054, stroke: 0.0545, rod: 0.105 }
  const exhaustOpens = 92 * degree
  const transferOpens = 118 * degree
  return {
    crank,
    exhaust: {
      opens: exhaustOpens,
      width: 0.038,
      height: crank.stroke - pistonTravel(crank, exhaustOpens),
      corner: 0,
      windows: 1,
      discharge: 0.75,
    },
    transfers: {
      opens: transferOpens,
      width: 0.085,
      height: 0.0125,
      corner: 0,
      windows: 4,
      discharge: 0.72,
      narrowing: 1,
      ductLength: 0.065,
      ductArea: 0.085 * 0.0125,
      inertance: false,
      plug: 'cooled',
      scavenging: 'good loop',
    },
    inlet: { kind: 'reed', area: 2.925e-4, crack: 300, full: 6000 },
    carburettor: { bore: 0.028, discharge: 0.85 },
    tract: { length: 0.12, area: 6e-4 },
    clearance: clearanceOfTrapped(crank, 7, exhaustOpens),
    caseRatio: 1.4,
    ignition: 22 * degree,
    burn: { delay: 10 * degree, duration: 50 * degree, a: 5, m: 1.3, completeness: 0.93 },
    mixture: { lambda: 0.87, airFuel: 13.1, heat: 44e6 },
    friction: { c1: 0, c2: 200 },
    walls: { cylinder: 470, annand: 0.338, case: 350, caseLoss: 3 },
    pipe: [
      { length: 0.0868, d0: 0.0333, d1: 0.0353 },
      { length: 0.2388, d0: 0.0353, d1: 0.0492 },
      { length: 0.1589, d0: 0.0492, d1: 0.0719 },
      { length: 0.0799, d0: 0.0719, d1: 0.09 },
      { length: 0.0955, d0: 0.09, d1: 0.09 },
      { length: 0.2084, d0: 0.09, d1: 0.0217 },
      { length: 0.2084, d0: 0.0217, d1: 0.0217 },
    ],
    outside: { h: 60, emissivity: 0.8, t: 298 },
    heatFactor: 0.0583,
    outlet: { kind: 'open' },
    air: { p: 101300, t: 298, mixtureT: 300 },
    gas: { gamma: 1.32, r: 295 },
  }
}

/** rpm, bmep bar, imep bar, pumping bar, delivery ratio, trapping, charging, g/kWh, exhaust °C, peak bar, port low bar */
export const referenceTable: readonly (readonly number[])[] = [
  [6000, 5.62, 6.4, 0.12, 0.699, 0.755, 0.528, 405, 688, 38, 0.8],
  [7000, 5.85, 6.75, 0.13, 0.814, 0.665, 0.541, 453, 626, 38, 0.66],
  [8000, 7.17, 8.26, 0.22, 0.984, 0.666, 0.655, 447, 608, 46, 0.52],
  [8500, 7.45, 8.66, 0.27, 1.002, 0.683, 0.684, 438, 610, 49, 0.47],
  [9000, 8.06, 9.35, 0.31, 0.992, 0.74, 0.734, 401, 670, 51, 0.46],
  [9500, 7.6, 8.96, 0.33, 0.957, 0.73, 0.699, 410, 671, 49, 0.48],
  [10000, 6.81, 8.22, 0.32, 0.911, 0.698, 0.636, 436, 661, 44, 0.71],
  [11000, 6.13, 7.65, 0.32, 0.872, 0.676, 0.59, 463, 650, 41, 0.66],
]
