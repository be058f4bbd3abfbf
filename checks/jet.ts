import type { CheckRow } from '../src/answers/check.ts'
import { atmosphericPressure } from '../src/fluid/atmosphere.ts'
import { saturationPressure } from '../src/fluid/vapour.ts'
import { freshWaterDensity, waterViscosity } from '../src/fluid/water.ts'
import {
  carterM,
  incidenceSlope,
  referenceDeviation10,
  referenceIncidence10,
  thicknessOnDeviation,
  thicknessOnIncidence,
} from '../src/jet/cascade.ts'
import {
  bestFlowCoefficient,
  bestSuctionSpeed,
  inducerGapHead,
  inducerGapSuction,
  suctionSpeedOf,
  tipSpeedCeiling,
} from '../src/jet/cavitation.ts'
import { cordierDiameter } from '../src/jet/fallback.ts'
import {
  affinity,
  bestVelocityRatio,
  bollardBound,
  equivalentPitch,
  eulerWork,
  flowFromPull,
  idealEfficiency,
  jetEfficiency,
  metricPerSpecificSpeed,
  outletSwirl,
  specificSpeed,
  suctionSpeedFromThoma,
  usPerSpecificSpeed,
} from '../src/jet/ideal.ts'
import { latticeLift, turningShare } from '../src/jet/lattice.ts'
import { momentumThickness } from '../src/jet/skin.ts'
import { boundaryLayer, captureDepth, momentumWake } from '../src/jet/system.ts'
import { submergenceNeeded } from '../src/jet/ventilation.ts'
import { type Row, row } from './row.ts'

const degree = Math.PI / 180

const if97 = 'IAPWS-IF97 (Wagner et al. 1997), Table 35, from memory, recomputed'
const sp8052 = 'NASA SP-8052, Liquid Rocket Engine Turbopump Inducers (1971)'
const aungier = 'R. H. Aungier, Axial-Flow Compressors (2003), ch. 6, fits of the NASA SP-36 charts'

function water(): Row[] {
  const table = 'CRC Handbook of Chemistry and Physics, vapour pressure of water'
  const vapour: [number, number][] = [
    [10, 1228.1],
    [15, 1705.6],
    [20, 2338.8],
    [25, 3169],
    [30, 4245.5],
  ]
  const density: [number, number][] = [
    [10, 999.7],
    [20, 998.2],
    [30, 995.7],
  ]
  return [
    row(
      'if97-300',
      'saturation pressure at 300 K',
      'Pa',
      3536.58941,
      saturationPressure(300),
      1e-7,
      'memory',
      if97,
    ),
    row(
      'if97-500',
      'saturation pressure at 500 K',
      'Pa',
      2638897.76,
      saturationPressure(500),
      1e-7,
      'memory',
      if97,
    ),
    row(
      'if97-600',
      'saturation pressure at 600 K',
      'Pa',
      12344314.6,
      saturationPressure(600),
      1e-7,
      'memory',
      if97,
    ),
    ...vapour.map(([t, p]) =>
      row(
        `vapour-${t}`,
        `vapour pressure at ${t} °C`,
        'Pa',
        p,
        saturationPressure(273.15 + t),
        1e-3,
        'published',
        table,
      ),
    ),
    ...density.map(([t, rho]) =>
      row(
        `density-${t}`,
        `density of fresh water at ${t} °C`,
        'kg/m³',
        rho,
        freshWaterDensity(273.15 + t),
        1e-4,
        'published',
        'CRC Handbook of Chemistry and Physics, properties of water',
      ),
    ),
    row(
      'viscosity-20',
      'viscosity of water at 20 °C',
      'Pa·s',
      1.002e-3,
      waterViscosity(293.15),
      5e-3,
      'published',
      'CRC Handbook of Chemistry and Physics, properties of water',
    ),
    row(
      'isa-1000',
      'pressure at 1000 m',
      'Pa',
      89874.6,
      atmosphericPressure(1000),
      1e-4,
      'memory',
      'ISO 2533:1975, Standard Atmosphere, Table 5',
    ),
  ]
}

function groups(): Row[] {
  const double = affinity(2)
  return [
    row(
      'us-specific-speed',
      'rpm √gpm / ft^¾ for a dimensionless specific speed of 1',
      '',
      2733,
      usPerSpecificSpeed,
      1e-3,
      'published',
      'universal against US specific speed as in course texts on turbopumps (NASA SP-8109); unit arithmetic',
    ),
    row(
      'metric-to-us',
      'US over metric (rpm, m³/s, m) specific speed',
      '',
      51.6,
      usPerSpecificSpeed / metricPerSpecificSpeed,
      1e-3,
      'published',
      'Hydraulic Institute, Engineering Data Library, pump principles',
    ),
    row('affinity-flow', 'flow when rotation doubles', '', 2, double.flow, 1e-12, 'exact', 'affinity laws'),
    row('affinity-head', 'head when rotation doubles', '', 4, double.head, 1e-12, 'exact', 'affinity laws'),
    row(
      'affinity-power',
      'power when rotation doubles',
      '',
      8,
      double.power,
      1e-12,
      'exact',
      'affinity laws',
    ),
    row(
      'research-pump-ns',
      'specific speed: 900 rpm, 0.21 m³/s, 8.04 m',
      '',
      1.63,
      specificSpeed(15, 0.21, 9.81 * 8.04),
      3e-3,
      'memory',
      'axial waterjet research pump, J. Turbomachinery (2012), data from memory; arithmetic only',
    ),
    row(
      'thoma-suction',
      'suction specific speed implied by σ = 0.103 (N_s/1000)^(4/3), US units',
      '',
      5500,
      suctionSpeedFromThoma(0.103 * 8 ** (4 / 3), 8000),
      1e-2,
      'published',
      'civil hydraulics text, critical Thoma number of propeller pumps, eqs 13.10-13.13; converted',
    ),
    row(
      'equivalent-pitch',
      'torque-equivalent pitch of 85/115 mm',
      'm',
      0.1132,
      equivalentPitch(0.085, 0.115),
      1e-9,
      'derived',
      'fit to the strip model, weights 0.06 and 0.94',
    ),
  ]
}

function euler(): Row[] {
  const gorla = 'R. S. R. Gorla and A. A. Khan, Turbomachinery: Design and Theory (2003), ch. 2, example 1'
  const swirl = outletSwirl(12, 1.5, 28 * degree)
  const work = eulerWork(12, swirl)
  const flow = 1000 * (3.8 / 60)
  const fluids =
    'jet-boat example of an introductory fluid mechanics text (jet 20 m/s absolute, 0.18 m², 30 km/h)'
  const V = 30 / 3.6
  const jet = 20 + V
  return [
    row('euler-head', 'head of the example pump', 'm', 11.23, work / 9.81, 2e-3, 'published', gorla),
    row('euler-power', 'power of the example pump', 'W', 6980, flow * work, 2e-3, 'published', gorla),
    row(
      'euler-torque',
      'torque of the example pump',
      'N·m',
      348.8,
      (flow * work) / 20,
      2e-3,
      'published',
      gorla,
    ),
    row('jet-boat-thrust', 'thrust', 'N', 102e3, 1000 * 0.18 * jet * (jet - V), 1e-3, 'published', fluids),
    row(
      'jet-boat-flow',
      'flow back from that thrust',
      'm³/s',
      5.1,
      flowFromPull(102e3, 0.18, 1000, V),
      1e-3,
      'published',
      fluids,
    ),
    row(
      'jet-boat-efficiency',
      'efficiency with a side intake',
      '',
      0.415,
      jetEfficiency(jet / V, { nozzleLoss: 0, ramLoss: 1 }),
      1e-3,
      'published',
      fluids,
    ),
  ]
}

function suction(): Row[] {
  const us = usPerSpecificSpeed
  const at = (phi: number, nu: number) => us * bestSuctionSpeed(phi, nu)
  const phi = bestFlowCoefficient(0.05)
  return [
    row(
      'brumfield-constant',
      'constant of N_ss = C √φ τ^-¾, US units',
      '',
      8147,
      us * Math.sqrt(Math.PI) * 2 ** 0.75,
      1e-3,
      'published',
      `${sp8052}, eq. 4`,
    ),
    row(
      'brumfield-optimum',
      'constant of the optimum, US units',
      '',
      5055,
      us * suctionSpeedOf(bestFlowCoefficient(0.03), 0.03, 0) * 1.03 ** 0.25 * Math.sqrt(0.03),
      1e-3,
      'published',
      `${sp8052}, eq. 7`,
    ),
    row(
      'best-phi',
      'best flow coefficient at K 0.05',
      '',
      0.1543,
      phi,
      2e-3,
      'published',
      `${sp8052}, eq. 6`,
    ),
    row(
      'best-suction',
      'suction specific speed there, US',
      '',
      22330,
      us * suctionSpeedOf(phi, 0.05, 0),
      2e-3,
      'derived',
      sp8052,
    ),
    row(
      'suction-head-ratio',
      'NPSH over c²/2g at the optimum, K 0.05: 3/(1 - 2φ²)',
      '',
      3 / (1 - 2 * phi * phi),
      (0.05 + 0.05 * phi * phi + phi * phi) / phi ** 2,
      1e-9,
      'derived',
      'from eqs 2-6 of SP-8052: τ = K + Kφ² + φ² with K = 2φ²/(1 - 2φ²)',
    ),
    row(
      'inducer-thor-table',
      'N_ss predicted, φ 0.116, hub 0.31',
      '',
      28700,
      at(0.116, 0.31),
      5e-3,
      'published',
      `${sp8052}, Table I`,
    ),
    row(
      'inducer-thor',
      'N_ss tested, φ 0.116, hub 0.31',
      '',
      28500,
      at(0.116, 0.31),
      3e-2,
      'published',
      `${sp8052}, Table I`,
    ),
    row(
      'inducer-j2',
      'N_ss tested, φ 0.109, hub 0.20',
      '',
      34300,
      at(0.109, 0.2),
      0.1,
      'published',
      `${sp8052}, Table I`,
    ),
    row(
      'inducer-x8',
      'N_ss tested, φ 0.106, hub 0.23',
      '',
      31200,
      at(0.106, 0.23),
      5e-2,
      'published',
      `${sp8052}, Table I`,
    ),
    row(
      'plate-limit',
      'tan²(β/2) at 15°',
      '',
      0.01733,
      Math.tan(7.5 * degree) ** 2,
      5e-3,
      'published',
      `${sp8052}, §2.1.5`,
    ),
    row(
      'gap-head-5',
      'head left with τ/h 0.005',
      '',
      0.929,
      inducerGapHead(0.005),
      2e-3,
      'published',
      `${sp8052}, eq. 54`,
    ),
    row(
      'gap-head-20',
      'head left with τ/h 0.02',
      '',
      0.859,
      inducerGapHead(0.02),
      2e-3,
      'published',
      `${sp8052}, eq. 54`,
    ),
    row(
      'gap-suction-5',
      'N_ss left with τ/h 0.005, k 0.65',
      '',
      0.954,
      inducerGapSuction(0.005, 0.65),
      2e-3,
      'published',
      `${sp8052}, eq. 55`,
    ),
    row(
      'gap-suction-20',
      'N_ss left with τ/h 0.02, k 0.50',
      '',
      0.929,
      inducerGapSuction(0.02, 0.5),
      2e-3,
      'published',
      `${sp8052}, eq. 55`,
    ),
    row(
      'tip-ceiling',
      'tip speed for K 0.05, φ 0.15, 97 J/kg',
      'm/s',
      52,
      tipSpeedCeiling(97, 0.05, 0.15),
      0.05,
      'derived',
      'K_a solved for U, by hand',
    ),
  ]
}

function lattice(): Row[] {
  const exact = 'F. Weinig (1935): unstaggered plates, K = 2/(πσ) tanh(πσ/2), turning 1 - exp(-πσ)'
  const s3 = 3
  const gam = 70 * degree
  return [
    row(
      'lattice-k-05',
      'lift factor, unstaggered, σ 0.5',
      '',
      0.83498,
      latticeLift(0.5, 0),
      1e-5,
      'exact',
      exact,
    ),
    row('lattice-k-1', 'lift factor, unstaggered, σ 1', '', 0.58388, latticeLift(1, 0), 1e-5, 'exact', exact),
    row('lattice-k-2', 'lift factor, unstaggered, σ 2', '', 0.31712, latticeLift(2, 0), 2e-5, 'exact', exact),
    row(
      'lattice-e-05',
      'turning, unstaggered, σ 0.5',
      '',
      0.7921,
      turningShare(0.5, 0),
      1e-4,
      'exact',
      exact,
    ),
    row('lattice-e-1', 'turning, unstaggered, σ 1', '', 0.9568, turningShare(1, 0), 1e-4, 'exact', exact),
    row('lattice-e-2', 'turning, unstaggered, σ 2', '', 0.9981, turningShare(2, 0), 1e-4, 'exact', exact),
    row(
      'lattice-dense',
      'lift factor of a dense lattice, 70° stagger, σ 3',
      '',
      2 / (Math.PI * s3 * Math.cos(gam)),
      latticeLift(s3, gam),
      1e-2,
      'exact',
      'flow leaves along dense plates: K = 2/(πσ cos γ)',
    ),
    row(
      'carter-0',
      'Carter m at 0°',
      '',
      0.23,
      carterM(0.5, 0),
      1e-12,
      'published',
      'NASA SP-36; Carter’s rule',
    ),
    row(
      'carter-40',
      'Carter m at 40°',
      '',
      0.31,
      carterM(0.5, 40),
      1e-12,
      'published',
      'NASA SP-36; Carter’s rule',
    ),
    row(
      'carter-60',
      'Carter m at 60°',
      '',
      0.35,
      carterM(0.5, 60),
      1e-12,
      'published',
      'NASA SP-36; Carter’s rule',
    ),
    row(
      'aungier-i-50',
      'reference incidence, σ 1, 50°',
      '°',
      3.81,
      referenceIncidence10(50, 1),
      1e-2,
      'published',
      aungier,
    ),
    row(
      'aungier-i-60',
      'reference incidence, σ 1, 60°',
      '°',
      4.5,
      referenceIncidence10(60, 1),
      1e-2,
      'published',
      aungier,
    ),
    row(
      'aungier-i-70',
      'reference incidence, σ 1, 70°',
      '°',
      5.09,
      referenceIncidence10(70, 1),
      1e-2,
      'published',
      aungier,
    ),
    row(
      'aungier-n-50',
      'incidence slope, σ 1, 50°',
      '',
      -0.177,
      incidenceSlope(50, 1),
      1e-2,
      'published',
      aungier,
    ),
    row(
      'aungier-n-60',
      'incidence slope, σ 1, 60°',
      '',
      -0.247,
      incidenceSlope(60, 1),
      1e-2,
      'published',
      aungier,
    ),
    row(
      'aungier-n-70',
      'incidence slope, σ 1, 70°',
      '',
      -0.333,
      incidenceSlope(70, 1),
      1e-2,
      'published',
      aungier,
    ),
    row(
      'aungier-kit',
      'thickness factor on incidence at 0.08',
      '',
      0.896,
      thicknessOnIncidence(0.08),
      5e-3,
      'published',
      aungier,
    ),
    row(
      'aungier-kdelta',
      'thickness factor on deviation at 0.08',
      '',
      0.74,
      thicknessOnDeviation(0.08),
      5e-3,
      'published',
      aungier,
    ),
    row(
      'aungier-d-50',
      'reference deviation, σ 1, 50°',
      '°',
      1.24,
      referenceDeviation10(50, 1),
      2e-2,
      'memory',
      aungier,
    ),
    row(
      'aungier-d-60',
      'reference deviation, σ 1, 60°',
      '°',
      1.82,
      referenceDeviation10(60, 1),
      2e-2,
      'memory',
      aungier,
    ),
    ...(
      [
        [1.5, 0.00761],
        [1.8, 0.01281],
        [2, 0.02116],
      ] as const
    ).map(([d, theta]) =>
      row(
        `wake-${d}`,
        `wake momentum thickness at D_eq ${d}`,
        '',
        theta,
        momentumThickness(d),
        1e-3,
        'published',
        'S. Lieblein, J. Basic Eng. 81 (1959), θ/c = 0.004/(1 - 1.17 ln D_eq)',
      ),
    ),
    ...(
      [
        [2, 1.89],
        [3, 1.57],
        [4, 1.4],
        [5, 1.26],
      ] as const
    ).map(([w, d]) =>
      row(
        `cordier-${w}`,
        `specific diameter at ω_s ${w}`,
        '',
        d,
        cordierDiameter(w),
        1e-2,
        'published',
        'O. Cordier (1953), points as repeated in later texts',
      ),
    ),
  ]
}

function system(): Row[] {
  const best: [string, number, number, number, number, number, number][] = [
    ['z1 0.2, zn 0.02', 0.2, 0.02, 0, 8, 1.4644, 0.6695],
    ['z1 0.1, zn 0.02', 0.1, 0.02, 0, 8, 1.343, 0.73],
    ['z1 0.3, zn 0.03', 0.3, 0.03, 0, 8, 1.566, 0.62],
    ['z1 0.2, zn 0.02, nozzle 0.3 m up at 8 m/s', 0.2, 0.02, 0.3, 8, 1.553, 0.631],
  ]
  const area = (Math.PI / 4) * 0.065 ** 2
  const depth = captureDepth(0.072, 10, 0.156, boundaryLayer(10, 1.5, 1.004e-6))
  const sub = submergenceNeeded(0.036, 0.07)
  const hi = 'ANSI/HI 9.8, Pump Intake Design, S = D (1 + 2.3 Fr)'
  const profile =
    '0.37 x Re^-0.2 and the 1/7-power profile integrated over the capture depth (Schlichting), by hand'
  return [
    ...best.flatMap(([name, ramLoss, nozzleLoss, nozzleHeight, V, k, eta]) => {
      const b = bestVelocityRatio({ ramLoss, nozzleLoss, nozzleHeight, V })
      const source = 'derived from the momentum and energy balance, confirmed by search'
      return [
        row(`kopt ${name}`, `best velocity ratio, ${name}`, '', k, b.k, 1e-3, 'derived', source),
        row(`eopt ${name}`, `efficiency there, ${name}`, '', eta, b.efficiency, 1e-3, 'derived', source),
      ]
    }),
    ...(
      [
        [1.5, 0.8],
        [2, 2 / 3],
        [3, 0.5],
      ] as const
    ).map(([k, e]) =>
      row(
        `ideal-${k}`,
        `ideal efficiency at velocity ratio ${k}`,
        '',
        e,
        idealEfficiency(k),
        1e-12,
        'exact',
        'ITTC 7.5-02-05-03: 2/(1 + NVR)',
      ),
    ),
    ...(
      [
        [5, 692],
        [10, 1098],
        [15, 1439],
        [30, 2285],
      ] as const
    ).map(([kw, f]) =>
      row(
        `bollard-${kw}`,
        `most pull of ${kw} kW through 65 mm`,
        'N',
        f,
        bollardBound(kw * 1e3, area, 998.2),
        1e-3,
        'derived',
        'F = (4ρAP²)^(1/3), by hand',
      ),
    ),
    row('hi-froude', 'inlet Froude number, 0.036 m², 0.07 m³/s', '', 1.34, sub.froude, 5e-3, 'published', hi),
    row('hi-depth', 'water needed over that inlet', 'm', 0.875, sub.needed, 5e-3, 'published', hi),
    row(
      'wake-layer',
      'boundary layer, 10 m/s, 1.5 m',
      'm',
      0.0204,
      boundaryLayer(10, 1.5, 1.004e-6),
      2e-2,
      'derived',
      profile,
    ),
    row(
      'wake-depth',
      'capture depth, 0.072 m³/s, 0.156 m wide',
      'm',
      0.0487,
      depth,
      2e-2,
      'derived',
      profile,
    ),
    row('wake-w', 'momentum wake there', '', 0.043, momentumWake(depth, 0.0204), 2e-2, 'derived', profile),
  ]
}

/** Comparisons of the jet with published values. */
export function jetChecks(): CheckRow[] {
  return [...water(), ...groups(), ...euler(), ...suction(), ...lattice(), ...system()].map((r) => ({
    ...r,
    group: 'jet',
  }))
}
