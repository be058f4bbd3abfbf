import type { CheckRow } from '../src/base/answers/check.ts'
import {
  areaRatio,
  chokedBlowdown,
  criticalRatio,
  densityRatio,
  fannoAfter,
  fannoLength,
  fannoPressure,
  machOfArea,
  normalShock,
  nozzleFlow,
  pressureRatio,
  rayleighT0,
  temperatureRatio,
} from '../src/physics/gas/gasLaws.ts'
import { burntPetrol, conductivityOf, soundSpeedOf, viscosityOf } from '../src/physics/gas/mixture.ts'
import { type GasState, solveRiemann } from '../src/physics/gas/riemann.ts'
import { boundaryRows, kernelRows } from './gasKernel.ts'
import { type Line, letteredRows } from './row.ts'

const naca = 'NACA Report 1135 (1953), Equations, Tables, and Charts for Compressible Flow'
const toro = 'E. F. Toro, Riemann Solvers and Numerical Methods for Fluid Dynamics, 3rd ed. (2009), table 4.3'
const rows = letteredRows('gas')

function riemannRows(): CheckRow[] {
  const s = (rho: number, u: number, p: number): GasState => ({ rho, u, p })
  const star = (l: GasState, r: GasState) => solveRiemann(l, r, 1.4).value
  const t1 = star(s(1, 0, 1), s(0.125, 0, 0.1))
  const t2 = star(s(1, -2, 0.4), s(1, 2, 0.4))
  const t3 = star(s(1, 0, 1000), s(1, 0, 0.01))
  const t4 = star(s(1, 0, 0.01), s(1, 0, 100))
  const t6 = star(s(1, 0.75, 1), s(0.125, 0, 0.1))
  const four = (name: string, x: typeof t1, e: readonly number[]): Line[] => [
    [`${name}: star pressure`, '1', x.p, e[0]!],
    [`${name}: star velocity`, '1', x.u, e[1]!],
    [`${name}: density left of the contact`, '1', x.rhoLeft, e[2]!],
    [`${name}: density right of the contact`, '1', x.rhoRight, e[3]!],
  ]
  return [
    ...rows('gas-1', four('Riemann test 1', t1, [0.30313, 0.927453, 0.426319, 0.265574]), 'published', toro, {
      within: 1e-5,
    }),
    ...rows('gas-2', four('Riemann test 2', t2, [0.001894, 0, 0.021852, 0.021852]), 'published', toro, {
      within: 1e-5,
    }),
    ...rows('gas-3', four('Riemann test 3', t3, [460.894, 19.5975, 0.575062, 5.99924]), 'published', toro, {
      withinPart: 1e-5,
    }),
    ...rows('gas-4', four('Riemann test 4', t4, [46.095, -6.19633, 5.99242, 0.575113]), 'published', toro, {
      withinPart: 1e-5,
    }),
    ...rows(
      'gas-6',
      four('Riemann test with a moving left side', t6, [0.466294, 1.360906, 0.579867, 0.3397]),
      'derived',
      'derived: the exact relations of Toro (2009), ch. 4, solved independently',
      { within: 1e-5 },
    ),
  ]
}

function relationRows(): CheckRow[] {
  const shock2 = normalShock(2, 1.4)
  const shock15 = normalShock(1.5, 1.4)
  const mach = 'Mach number'
  return [
    ...rows(
      'gas-12',
      [
        ['T/T0 at Mach 0.5', '1', temperatureRatio(0.5, 1.4), 0.952381],
        ['p/p0 at Mach 0.5', '1', pressureRatio(0.5, 1.4), 0.843019],
        ['rho/rho0 at Mach 0.5', '1', densityRatio(0.5, 1.4), 0.88517],
        ['A/A* at Mach 0.5', '1', areaRatio(0.5, 1.4), 1.339844],
        ['T/T0 at Mach 2', '1', temperatureRatio(2, 1.4), 0.555556],
        ['p/p0 at Mach 2', '1', pressureRatio(2, 1.4), 0.127805],
        ['rho/rho0 at Mach 2', '1', densityRatio(2, 1.4), 0.230048],
        ['A/A* at Mach 2', '1', areaRatio(2, 1.4), 1.6875],
        ['A/A* at Mach 0.2', '1', areaRatio(0.2, 1.4), 2.96352],
        ['A/A* at Mach 0.8', '1', areaRatio(0.8, 1.4), 1.03823],
        ['A/A* at Mach 3', '1', areaRatio(3, 1.4), 4.234568],
      ],
      'published',
      naca,
      { within: 1.1e-6 },
    ),
    ...rows(
      'gas-16',
      [
        ['Mach number behind a shock, Mach 2', '1', shock2.mach, 0.57735],
        ['pressure ratio', '1', shock2.p, 4.5],
        ['density ratio', '1', shock2.rho, 2.666667],
        ['temperature ratio', '1', shock2.t, 1.6875],
        ['stagnation pressure ratio', '1', shock2.p0, 0.720874],
        ['Mach number behind a shock, Mach 1.5', '1', shock15.mach, 0.701089],
        ['pressure ratio', '1', shock15.p, 2.458333],
        ['density ratio', '1', shock15.rho, 1.862069],
        ['temperature ratio', '1', shock15.t, 1.320216],
        ['stagnation pressure ratio', '1', shock15.p0, 0.929787],
      ],
      'published',
      naca,
      { within: 1e-6 },
    ),
    ...rows(
      'gas-18',
      [
        ['Fanno 4fL*/D at Mach 0.1', '1', fannoLength(0.1, 1.4), 66.9216],
        ['Fanno 4fL*/D at Mach 0.2', '1', fannoLength(0.2, 1.4), 14.5333],
        ['Fanno 4fL*/D at Mach 0.3', '1', fannoLength(0.3, 1.4), 5.29925],
        ['Fanno 4fL*/D at Mach 0.5', '1', fannoLength(0.5, 1.4), 1.06906],
      ],
      'published',
      'S. Farokhi, Aircraft Propulsion, appendix E (66.922); Shapiro (1953), ch. 6',
      { withinPart: 1e-5 },
    ),
    ...rows(
      'gas-19',
      [
        ['Mach number after 4fL/D = 3 from Mach 0.3', '1', fannoAfter(0.3, 3, 1.4), 0.40051],
        [
          'pressure ratio over the same length',
          '1',
          fannoPressure(fannoAfter(0.3, 3, 1.4), 1.4) / fannoPressure(0.3, 1.4),
          0.743918,
        ],
      ],
      'exact',
      'Shapiro (1953), ch. 6',
      { within: 1e-5 },
    ),
    ...rows(
      'gas-20',
      [
        ['Rayleigh T0/T0* at Mach 0.2', '1', rayleighT0(0.2, 1.4), 0.173554],
        ['Rayleigh T0/T0* at Mach 0.3', '1', rayleighT0(0.3, 1.4), 0.34686],
        ['Rayleigh T0/T0* at Mach 0.5', '1', rayleighT0(0.5, 1.4), 0.691358],
      ],
      'exact',
      'Shapiro (1953), ch. 7',
      { within: 1e-5 },
    ),
    ...rows(
      'gas-22',
      [
        ['critical ratio, gamma 1.4', '1', criticalRatio(1.4), 0.528282],
        ['choked nozzle flow, gamma 1.4', '1', nozzleFlow(0, 1.4), 0.684731],
        ['critical ratio, gamma 1.33', '1', criticalRatio(1.33), 0.540364],
        ['choked nozzle flow, gamma 1.33', '1', nozzleFlow(0, 1.33), 0.672628],
        ['critical ratio, gamma 1.32', '1', criticalRatio(1.32), 0.542139],
        ['choked nozzle flow, gamma 1.32', '1', nozzleFlow(0, 1.32), 0.670852],
        ['critical ratio, gamma 1.30', '1', criticalRatio(1.3), 0.545728],
        ['choked nozzle flow, gamma 1.30', '1', nozzleFlow(0, 1.3), 0.667262],
        ['nozzle flow at 0.8, gamma 1.32', '1', nozzleFlow(0.8, 1.32), 0.556601],
        ['nozzle flow at 0.95, gamma 1.32', '1', nozzleFlow(0.95, 1.32), 0.307129],
        ['nozzle flow at 0.9, gamma 1.4', '1', nozzleFlow(0.9, 1.4), 0.422581],
      ],
      'exact',
      'isentropic nozzle relations, NACA Report 1135 (1953), worked independently',
      { within: 1e-6 },
    ),
    ...rows(
      'gas-26',
      [
        [`subsonic ${mach} at A/A* = 1.5`, '1', machOfArea(1.5, 1.4, 'subsonic'), 0.430262],
        [`supersonic ${mach} at A/A* = 1.5`, '1', machOfArea(1.5, 1.4, 'supersonic'), 1.854124],
        ['p/p0 on the subsonic branch', '1', pressureRatio(machOfArea(1.5, 1.4, 'subsonic'), 1.4), 0.880517],
        [
          'p/p0 on the supersonic branch',
          '1',
          pressureRatio(machOfArea(1.5, 1.4, 'supersonic'), 1.4),
          0.160176,
        ],
      ],
      'exact',
      naca,
      { within: 1e-6 },
    ),
  ]
}

function blowdownRows(): CheckRow[] {
  const k = (1e-4 * nozzleFlow(0, 1.3) * Math.sqrt(299.4 * 1600)) / 1e-4
  const at = (t: number) => chokedBlowdown(k, t, 1.3)
  return rows(
    'gas-27',
    [
      ['pressure 0.2 ms into a choked blowdown', 'Pa', 6e5 * at(2e-4).p, 5.32551e5],
      ['pressure at 0.5 ms', 'Pa', 6e5 * at(5e-4).p, 4.46671e5],
      ['pressure at 1 ms', 'Pa', 6e5 * at(1e-3).p, 3.35772e5],
      ['temperature at 0.2 ms', 'K', 1600 * at(2e-4).t, 1556.57],
      ['temperature at 0.5 ms', 'K', 1600 * at(5e-4).t, 1494.66],
      ['temperature at 1 ms', 'K', 1600 * at(1e-3).t, 1399.4],
    ],
    'derived',
    'derived: dm/dt of a choked throat with p V^gamma constant; an ODE integration agreed',
    { withinPart: 1e-4 },
  )
}

function propertyRows(): CheckRow[] {
  const gas = burntPetrol(0.87)
  return [
    ...rows(
      'gas-53',
      [
        ['speed of sound in burnt gas, air ratio 0.87, 500 K', 'm/s', soundSpeedOf(gas, 500), 450.1],
        ['the same at 700 K', 'm/s', soundSpeedOf(gas, 700), 527.9],
        ['the same at 900 K', 'm/s', soundSpeedOf(gas, 900), 593.8],
        ['the same at 1000 K', 'm/s', soundSpeedOf(gas, 1000), 624.0],
      ],
      'derived',
      'derived: thermochemical tables evaluated independently for the same composition',
      { withinPart: 3e-3 },
    ),
    ...rows(
      'gas-viscosity',
      [['viscosity of exhaust gas at 1500 K', 'Pa s', viscosityOf(1500), 5.295e-5]],
      'memory',
      'G. P. Blair, Design and Simulation of Two-Stroke Engines (1996); from memory',
      { withinPart: 1e-3 },
    ),
    ...rows(
      'gas-conductivity',
      [['conductivity of exhaust gas at 1500 K', 'W/(m K)', conductivityOf(1500), 0.08881]],
      'memory',
      'G. P. Blair, Design and Simulation of Two-Stroke Engines (1996); from memory',
      { withinPart: 1e-3 },
    ),
  ]
}

/** Gas dynamics: exact relations, the duct kernel and its boundaries. */
export function gasChecks(): CheckRow[] {
  return [
    ...riemannRows(),
    ...relationRows(),
    ...blowdownRows(),
    ...kernelRows(),
    ...boundaryRows(),
    ...propertyRows(),
  ]
}
