import type { CheckRow } from '../src/base/answers/check.ts'
import { bladeLoad, discFactor } from '../src/trades/jet/bladeStrength.ts'
import {
  carterM,
  incidenceSlope,
  referenceDeviation10,
  referenceIncidence10,
  thicknessOnDeviation,
  thicknessOnIncidence,
} from '../src/trades/jet/cascade.ts'
import { cordierDiameter } from '../src/trades/jet/fallback.ts'
import { pumpSetting, solveJet } from '../src/trades/jet/jet.ts'
import { referenceJet } from '../src/trades/jet/jetReference.ts'
import type { JetSpec } from '../src/trades/jet/jetTypes.ts'
import { latticeLift, turningShare } from '../src/trades/jet/lattice.ts'
import { printMaterials } from '../src/trades/jet/printed.ts'
import { pumpAt } from '../src/trades/jet/pump.ts'
import { momentumThickness } from '../src/trades/jet/skin.ts'
import { type Entry, type Row, rowOf, rows } from './row.ts'

const degree = Math.PI / 180
const sp8052 = 'NASA SP-8052, Liquid Rocket Engine Turbopump Inducers (1971)'

function bladeRows(): Row[] {
  const gam = 70 * degree
  const dense = 2 / (Math.PI * 3 * Math.cos(gam))
  const cordier = (w: number, d: number): Entry => [
    `cordier-${w}`,
    `specific diameter at ω_s ${w}`,
    '',
    d,
    cordierDiameter(w),
  ]
  const wake = (d: number, theta: number): Entry => [
    `wake-${d}`,
    `wake thickness at D_eq ${d}`,
    '',
    theta,
    momentumThickness(d),
  ]
  return [
    ...rows('exact', 'unstaggered plates, K = 2/(πσ) tanh(πσ/2), turning 1 - exp(-πσ); Weinig (1935)', 1e-4, [
      ['lattice-k-05', 'lift factor, unstaggered, σ 0.5', '', 0.83498, latticeLift(0.5, 0)],
      ['lattice-k-1', 'lift factor, unstaggered, σ 1', '', 0.58388, latticeLift(1, 0)],
      ['lattice-k-2', 'lift factor, unstaggered, σ 2', '', 0.31712, latticeLift(2, 0)],
      ['lattice-e-05', 'turning, unstaggered, σ 0.5', '', 0.7921, turningShare(0.5, 0)],
      ['lattice-e-1', 'turning, unstaggered, σ 1', '', 0.9568, turningShare(1, 0)],
      ['lattice-e-2', 'turning, unstaggered, σ 2', '', 0.9981, turningShare(2, 0)],
    ]),
    ...rows('exact', 'flow leaves along dense plates: K = 2/(πσ cos γ)', 1e-2, [
      ['lattice-dense', 'lift factor, 70° stagger, σ 3', '', dense, latticeLift(3, gam)],
    ]),
    ...rows('published', 'Carter’s rule as in NASA SP-36 (1965)', 1e-12, [
      ['carter-0', 'Carter m at 0°', '', 0.23, carterM(0.5, 0)],
      ['carter-40', 'Carter m at 40°', '', 0.31, carterM(0.5, 40)],
      ['carter-50', 'Carter m at 50°', '', 0.33, carterM(0.5, 50)],
      ['carter-60', 'Carter m at 60°', '', 0.35, carterM(0.5, 60)],
    ]),
    ...rows('published', 'R. H. Aungier, Axial-Flow Compressors (2003), ch. 6, fits of NASA SP-36', 1e-2, [
      ['aungier-i-50', 'reference incidence, σ 1, 50°', '°', 3.81, referenceIncidence10(50, 1)],
      ['aungier-i-60', 'reference incidence, σ 1, 60°', '°', 4.5, referenceIncidence10(60, 1)],
      ['aungier-i-70', 'reference incidence, σ 1, 70°', '°', 5.09, referenceIncidence10(70, 1)],
      ['aungier-n-50', 'incidence slope, σ 1, 50°', '', -0.177, incidenceSlope(50, 1)],
      ['aungier-n-60', 'incidence slope, σ 1, 60°', '', -0.247, incidenceSlope(60, 1)],
      ['aungier-n-70', 'incidence slope, σ 1, 70°', '', -0.333, incidenceSlope(70, 1)],
      ['aungier-kit', 'thickness factor on incidence at 0.08', '', 0.896, thicknessOnIncidence(0.08)],
      ['aungier-kdelta', 'thickness factor on deviation at 0.08', '', 0.74, thicknessOnDeviation(0.08)],
    ]),
    ...rows('memory', 'R. H. Aungier, Axial-Flow Compressors (2003), ch. 6', 2e-2, [
      ['aungier-d-50', 'reference deviation, σ 1, 50°', '°', 1.24, referenceDeviation10(50, 1)],
      ['aungier-d-60', 'reference deviation, σ 1, 60°', '°', 1.82, referenceDeviation10(60, 1)],
    ]),
    ...rows('published', 'S. Lieblein, J. Basic Eng. 81 (1959), θ/c = 0.004/(1 - 1.17 ln D_eq)', 1e-3, [
      wake(1.5, 0.00761),
      wake(1.8, 0.01281),
      wake(2, 0.02116),
    ]),
    ...rows('published', 'O. Cordier (1953), points as repeated in later texts', 1e-2, [
      cordier(2, 1.89),
      cordier(3, 1.57),
      cordier(4, 1.4),
      cordier(5, 1.26),
    ]),
  ]
}

/** screw of blade angle `beta` at the tip and tip solidity 2.5 at flow coefficient `phi`; head coefficient behind the rotor */
function inducer(phi: number, beta: number, hubRatio: number, roughness = 1e-6) {
  const D = 0.2
  const blades = 3
  const pitch = Math.PI * D * Math.tan(beta * degree)
  const wrap = ((2.5 * 2 * Math.PI) / blades) * Math.cos(beta * degree)
  const spec: JetSpec = referenceJet()
  Object.assign(spec.rotor, {
    tipDiameter: D,
    hubDiameter: hubRatio * D,
    blades,
    pitchLeading: pitch,
    pitchTrailing: pitch,
    wrap,
    trailingEdge: 0.5e-3,
    gap: 0.5e-3,
    roughness,
  })
  const n = 80
  const set = pumpSetting(spec)
  const tip = Math.PI * D * n
  const p = pumpAt(set, n, phi * tip * set.blades.areaIn)
  const behind = p.head + p.losses.stator
  return { p, psi: behind / tip ** 2, eta: behind / p.work, swirlFree: p.head / tip ** 2 }
}

function rotorRows(): Row[] {
  const thor = inducer(0.116, 14.15, 0.31).p
  const marked = thor.tipStalled || thor.stalledShare > 0.4 || !thor.converged ? 1 : 0
  const smooth = inducer(0.109, 9.75, 0.2, 0.05e-6)
  const rough = inducer(0.109, 9.75, 0.2, 4.06e-6)
  const root = bladeLoad(referenceJet().rotor, 15000 / (200 * Math.PI), 165, 998.2, 0.008).stress
  const tested = `${sp8052}, tested inducers; strip model with solidity 2.5`
  return [
    ...rows('published', tested, 0.25, [
      ['psi-j2', 'head coefficient, φ 0.109, β 9.75°', '', 0.11, inducer(0.109, 9.75, 0.2).psi],
    ]),
    ...rows('published', tested, 0.3, [
      ['psi-x8', 'head coefficient, φ 0.106, β 9.8°', '', 0.1, inducer(0.106, 9.8, 0.23).psi],
    ]),
    ...rows('published', `${sp8052}: tested ψ 0.075, far below attached flow`, 1e-12, [
      ['thor-flag', 'stalled inducer (φ 0.116, β 14.15°) marked low confidence, 1 = yes', '', 1, marked],
    ]),
    ...rows('published', `${sp8052}: 5.9 % (chordwise marks) to 7.2 % (spanwise)`, 0.6, [
      ['rough-penalty', 'efficiency lost by Ra 160 µin against 2 µin', '', 0.065, smooth.eta - rough.eta],
    ]),
    ...rows('memory', 'rotating disc, σ = (3 + ν)/8 ρu² solid, (3 + ν)/4 ρu² small bore, ν 0.3', 2e-2, [
      ['disc-solid', 'hoop factor of a solid disc', '', 0.41, discFactor(0, 0.3)],
      ['disc-bored', 'hoop factor with a small bore', '', 0.83, discFactor(0.01, 0.3)],
    ]),
    ...rows('published', 'Processes 13 (2025) 2733, tensile strength of prints along the layers', 0.15, [
      ['print-pla', 'PLA', 'Pa', 53e6, printMaterials['PLA']!.strength],
      ['print-abs', 'ABS', 'Pa', 40e6, printMaterials['ABS']!.strength],
      ['print-petg', 'PETG', 'Pa', 50e6, printMaterials['PETG']!.strength],
    ]),
    ...rows('published', '3D Printing and Additive Manufacturing (2020), doi 10.1089/3dp.2020.0109', 0.05, [
      [
        'print-layers',
        'PLA across the layers over along, 22.8 of 43.7 MPa',
        '',
        22.8 / 43.7,
        printMaterials['PLA']!.across,
      ],
    ]),
    ...rows('derived', 'cantilever strip, by hand', 0.05, [
      ['blade-stress', 'root bending, 15 kW at 6000 rpm, 120/50, 8 mm root', 'Pa', 14.5e6, root],
    ]),
  ]
}

function regression(): Row[] {
  const own = 'earlier trial of the same equations; guards against change, proves nothing'
  const at = (rpm: number, V = 0) => solveJet(referenceJet(), rpm / 60, V)
  const still = at(6000)
  const pull = (rpm: number, N: number): Entry => [`ref-F-${rpm}`, `pull at ${rpm} rpm`, 'N', N, at(rpm).F]
  const torque = (rpm: number, T: number): Entry => [
    `ref-T-${rpm}`,
    `torque at ${rpm} rpm`,
    'N·m',
    T,
    at(rpm).T,
  ]
  const way = (V: number, N: number, T: number): Entry[] => [
    [`ref-F-at-${V}`, `thrust at 6000 rpm and ${V} m/s`, 'N', N, at(6000, V).F],
    [`ref-T-at-${V}`, `torque at 6000 rpm and ${V} m/s`, 'N·m', T, at(6000, V).T],
  ]
  const curve = (phi: number, psi: number, T: number): Entry[] => {
    const set = pumpSetting(referenceJet())
    const tip = Math.PI * 0.12 * 100
    const Q = phi * tip * set.blades.areaIn
    const p = pumpAt(set, 100, Q)
    const shaft = (998.2 * Q * p.work) / (200 * Math.PI * 0.98)
    return [
      [`curve-psi-${phi}`, `head coefficient at φ ${phi}`, '', psi, p.head / tip ** 2],
      [`curve-T-${phi}`, `torque at φ ${phi}`, 'N·m', T, shaft],
    ]
  }
  const base = at(5000)
  const moved = (
    id: string,
    what: string,
    T: number,
    F: number,
    change: (spec: JetSpec) => void,
  ): Entry[] => {
    const spec = referenceJet()
    change(spec)
    const p = solveJet(spec, 5000 / 60, 0)
    return [
      [`step-T-${id}`, `torque, ${what}, fixed rotation`, '%', T, 100 * (p.T / base.T - 1)],
      [`step-F-${id}`, `pull, ${what}, fixed rotation`, '%', F, 100 * (p.F / base.F - 1)],
    ]
  }
  const free = referenceJet()
  free.system.nozzleHeight = 0
  free.water.atmosphere = 1e7
  const scaled = solveJet(free, 150, 0).T / solveJet(free, 50, 0).T / 9
  return [
    ...rows('regression', own, 0.03, [
      ['ref-flow', 'flow, 6000 rpm tied up', 'm³/s', 0.0595, still.Q],
      ['ref-head', 'head, 6000 rpm tied up', 'J/kg', 169, still.gH],
      ['ref-eta', 'efficiency, 6000 rpm tied up', '', 0.774, still.eta],
      ['ref-nss', 'suction specific speed', '', 4.99, still.Nss],
      ['ref-ka', 'blade cavitation number', '', 0.104, still.Ka],
      pull(5000, 739),
      pull(6000, 1059),
      pull(6500, 1217),
      pull(7000, 1377),
      pull(7500, 1538),
      torque(5000, 14.3),
      torque(6000, 20.5),
      torque(7000, 26.5),
      torque(7500, 29.2),
      ...way(5, 807, 20.4),
      ...way(10, 584, 19.4),
      ...curve(0.114, 0.179, 24.1),
      ...curve(0.142, 0.154, 23.2),
      ...curve(0.17, 0.117, 20.5),
      ...curve(0.199, 0.072, 15.5),
    ]),
    ...rows('regression', `${own}; stalled, where treatments differ`, 0.12, [
      ...way(15, 376, 17.7),
      ...curve(0.085, 0.198, 22.5),
    ]),
    ...rows('regression', own, 0.06, [
      ...moved('pitch', 'pitch 1 % more', 1.6, 1.1, (s) => {
        s.rotor.pitchLeading *= 1.01
        s.rotor.pitchTrailing *= 1.01
      }),
      ...moved('diameter', 'diameter 1 % more', 5, 3.3, (s) => {
        s.rotor.tipDiameter *= 1.01
      }),
      ...moved('two', 'two blades for three', -10, -6, (s) => {
        s.rotor.blades = 2
      }),
      ...moved('edge', 'trailing edge 0.5 mm thicker', -2.4, -2, (s) => {
        s.rotor.trailingEdge += 5e-4
      }),
      ...moved('rough', 'roughness 24 µm for 12', 1, -1.8, (s) => {
        s.rotor.roughness = 24e-6
      }),
    ]),
    ...rows('derived', 'affinity laws; roughness makes friction independent of rotation', 2e-3, [
      ['affinity-torque', 'torque over n², 9000 against 3000 rpm, wetted', '', 1, scaled],
    ]),
  ]
}

/** Blade rows against published values, the strip model against tested inducers and against itself. */
export function jetRotorChecks(): CheckRow[] {
  return [...bladeRows(), ...rotorRows(), ...regression()].map(rowOf('jet'))
}
