import type { CheckRow } from '../src/answers/check.ts'
import { pumpSetting, solveJet } from '../src/jet/jet.ts'
import { pumpAt } from '../src/jet/pump.ts'
import { referenceJet } from '../src/jet/reference.ts'
import { bladeLoad, discFactor } from '../src/jet/strength.ts'
import type { JetSpec } from '../src/jet/types.ts'
import { type Row, row } from './row.ts'

const degree = Math.PI / 180
const sp8052 = 'NASA SP-8052, Liquid Rocket Engine Turbopump Inducers (1971)'

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

function rotors(): Row[] {
  const tested = `${sp8052}, tested inducers against the strip model with solidity 2.5`
  const thor = inducer(0.116, 14.15, 0.31).p
  const smooth = inducer(0.109, 9.75, 0.2, 0.05e-6)
  const rough = inducer(0.109, 9.75, 0.2, 4.06e-6)
  return [
    row(
      'psi-j2',
      'head coefficient, φ 0.109, β 9.75°',
      '',
      0.11,
      inducer(0.109, 9.75, 0.2).psi,
      0.25,
      'published',
      tested,
    ),
    row(
      'psi-x8',
      'head coefficient, φ 0.106, β 9.8°',
      '',
      0.1,
      inducer(0.106, 9.8, 0.23).psi,
      0.3,
      'published',
      tested,
    ),
    row(
      'thor-flag',
      'deeply stalled inducer (φ 0.116, β 14.15°) is marked low confidence: 1 = yes',
      '',
      1,
      thor.tipStalled || thor.stalledShare > 0.4 || !thor.converged ? 1 : 0,
      1e-12,
      'published',
      `${sp8052}: tested ψ 0.075, far below attached flow`,
    ),
    {
      id: 'rough-penalty',
      quantity: 'efficiency lost by Ra 160 µin against 2 µin',
      unit: '',
      expected: 0.065,
      got: smooth.eta - rough.eta,
      within: 0.04,
      origin: 'published',
      source: `${sp8052}: 5.9 % (chordwise marks) to 7.2 % (spanwise)`,
    },
    row(
      'disc-solid',
      'hoop factor of a solid disc, ν 0.3',
      '',
      0.41,
      discFactor(0, 0.3),
      2e-2,
      'memory',
      'rotating disc, σ = (3 + ν)/8 ρu²',
    ),
    row(
      'disc-bored',
      'hoop factor of a disc with a small bore',
      '',
      0.83,
      discFactor(0.01, 0.3),
      2e-2,
      'memory',
      'rotating disc, σ = (3 + ν)/4 ρu²',
    ),
    row(
      'blade-stress',
      'root bending, 15 kW at 6000 rpm, 120/50, 8 mm root',
      'Pa',
      14.5e6,
      bladeLoad(referenceJet().rotor, 15000 / (200 * Math.PI), 165, 998.2, 0.008).stress,
      0.05,
      'derived',
      'cantilever strip, by hand',
    ),
  ]
}

function regression(): Row[] {
  const own =
    'this model when first written, and a separate trial of the same equations in Python; guards against change'
  const at = (rpm: number, V = 0) => solveJet(referenceJet(), rpm / 60, V)
  const still = at(6000)
  const thrust: [number, number][] = [
    [5000, 739],
    [6000, 1059],
    [6500, 1217],
    [7000, 1377],
    [7500, 1538],
    [7750, 1349],
    [8000, 1155],
    [8500, 747],
    [9000, 315],
  ]
  const torque: [number, number][] = [
    [5000, 14.3],
    [6000, 20.5],
    [7000, 26.5],
    [7500, 29.2],
    [8000, 20.4],
    [9000, 8.9],
  ]
  const way: [number, number, number][] = [
    [5, 807, 20.4],
    [10, 584, 19.4],
    [15, 376, 17.7],
  ]
  const free = referenceJet()
  free.system.nozzleHeight = 0
  free.water.atmosphere = 1e7
  return [
    row('ref-flow', 'flow, 6000 rpm tied up', 'm³/s', 0.0595, still.Q, 0.03, 'regression', own),
    row('ref-head', 'head, 6000 rpm tied up', 'J/kg', 169, still.gH, 0.03, 'regression', own),
    row('ref-eta', 'efficiency, 6000 rpm tied up', '', 0.774, still.eta, 0.03, 'regression', own),
    row('ref-nss', 'suction specific speed', '', 4.99, still.Nss, 0.03, 'regression', own),
    row('ref-ka', 'blade cavitation number', '', 0.104, still.Ka, 0.03, 'regression', own),
    ...thrust.map(([rpm, f]) =>
      row(`ref-F-${rpm}`, `pull at ${rpm} rpm`, 'N', f, at(rpm).F, 0.03, 'regression', own),
    ),
    ...torque.map(([rpm, t]) =>
      row(`ref-T-${rpm}`, `torque at ${rpm} rpm`, 'N·m', t, at(rpm).T, 0.06, 'regression', own),
    ),
    ...way.flatMap(([V, f, t]) => [
      row(`ref-F-at-${V}`, `thrust at 6000 rpm and ${V} m/s`, 'N', f, at(6000, V).F, 0.04, 'regression', own),
      row(
        `ref-T-at-${V}`,
        `torque at 6000 rpm and ${V} m/s`,
        'N·m',
        t,
        at(6000, V).T,
        0.03,
        'regression',
        own,
      ),
    ]),
    ...(
      [
        [0.085, 0.198, 22.5, 0.15],
        [0.114, 0.179, 24.1, 0.03],
        [0.142, 0.154, 23.2, 0.03],
        [0.17, 0.117, 20.5, 0.03],
        [0.199, 0.072, 15.5, 0.03],
      ] as const
    ).flatMap(([phi, psi, t, part]) => {
      const set = pumpSetting(referenceJet())
      const tip = Math.PI * 0.12 * 100
      const Q = phi * tip * set.blades.areaIn
      const p = pumpAt(set, 100, Q)
      return [
        row(
          `curve-psi-${phi}`,
          `head coefficient at φ ${phi}`,
          '',
          psi,
          p.head / tip ** 2,
          part,
          'regression',
          own,
        ),
        row(
          `curve-T-${phi}`,
          `torque at φ ${phi}`,
          'N·m',
          t,
          (998.2 * Q * p.work) / (200 * Math.PI * 0.98),
          part,
          'regression',
          own,
        ),
      ]
    }),
    row(
      'affinity-torque',
      'torque over n², 9000 against 3000 rpm, wetted',
      '',
      1,
      solveJet(free, 150, 0).T / solveJet(free, 50, 0).T / 9,
      2e-3,
      'derived',
      'affinity laws; roughness makes friction independent of rotation',
    ),
  ]
}

/** The strip model against tested inducers, and against itself on the reference rotor. */
export function jetRotorChecks(): CheckRow[] {
  return [...rotors(), ...regression()].map((r) => ({ ...r, group: 'jet' }))
}
