import type { CheckRow } from '../src/base/answers/check.ts'
import { atmosphericPressure } from '../src/physics/fluid/atmosphere.ts'
import { saturationPressure } from '../src/physics/fluid/vapour.ts'
import { freshWaterDensity, waterViscosity } from '../src/physics/fluid/water.ts'
import {
  bestFlowCoefficient,
  bestSuctionSpeed,
  breakdownNumber,
  inducerGapHead,
  inducerGapSuction,
  suctionSpeedOf,
  tipSpeedCeiling,
} from '../src/trades/jet/cavitation.ts'
import { breakdownEnergy, chokedFlow, plateChoke } from '../src/trades/jet/choke.ts'
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
} from '../src/trades/jet/ideal.ts'
import { boundaryLayer, captureDepth, momentumWake } from '../src/trades/jet/system.ts'
import { dipDepth, submergenceNeeded } from '../src/trades/jet/ventilation.ts'
import { type Entry, type Row, rowOf, rows } from './row.ts'

const degree = Math.PI / 180
const us = usPerSpecificSpeed
const sp8052 = 'NASA SP-8052, Liquid Rocket Engine Turbopump Inducers (1971)'
const byHand = 'derived from momentum and energy, by hand'

function water(): Row[] {
  const handbook = 'CRC Handbook of Chemistry and Physics, properties of water'
  const vapour = (t: number, p: number): Entry => [
    `vapour-${t}`,
    `vapour pressure at ${t} °C`,
    'Pa',
    p,
    saturationPressure(273.15 + t),
  ]
  const density = (t: number, rho: number): Entry => [
    `density-${t}`,
    `density of fresh water at ${t} °C`,
    'kg/m³',
    rho,
    freshWaterDensity(273.15 + t),
  ]
  return [
    ...rows('memory', 'IAPWS-IF97 (Wagner et al. 1997), Table 35, from memory, recomputed', 1e-7, [
      ['if97-300', 'saturation pressure at 300 K', 'Pa', 3536.58941, saturationPressure(300)],
      ['if97-500', 'saturation pressure at 500 K', 'Pa', 2638897.76, saturationPressure(500)],
      ['if97-600', 'saturation pressure at 600 K', 'Pa', 12344314.6, saturationPressure(600)],
    ]),
    ...rows('published', 'CRC Handbook of Chemistry and Physics, vapour pressure of water', 1e-3, [
      vapour(10, 1228.1),
      vapour(15, 1705.6),
      vapour(20, 2338.8),
      vapour(25, 3169),
      vapour(30, 4245.5),
    ]),
    ...rows('published', handbook, 1e-4, [density(10, 999.7), density(20, 998.2), density(30, 995.7)]),
    ...rows('published', handbook, 5e-3, [
      ['viscosity-20', 'viscosity of water at 20 °C', 'Pa·s', 1.002e-3, waterViscosity(293.15)],
    ]),
    ...rows('memory', 'ISO 2533:1975, Standard Atmosphere, Table 5', 1e-4, [
      ['isa-1000', 'pressure at 1000 m', 'Pa', 89874.6, atmosphericPressure(1000)],
    ]),
  ]
}

function numbers(): Row[] {
  const double = affinity(2)
  const implied = suctionSpeedFromThoma(0.103 * 8 ** (4 / 3), 8000)
  return [
    ...rows('published', 'NASA SP-8109, universal against US specific speed; unit arithmetic', 1e-3, [
      ['us-specific-speed', 'US specific speed for 1 without unit', '', 2733, us],
    ]),
    ...rows('published', 'Hydraulic Institute, Engineering Data Library, pump principles', 1e-3, [
      ['metric-to-us', 'US over metric (rpm, m³/s, m)', '', 51.6, us / metricPerSpecificSpeed],
    ]),
    ...rows('exact', 'affinity laws', 1e-12, [
      ['affinity-flow', 'flow when rotation doubles', '', 2, double.flow],
      ['affinity-head', 'head when rotation doubles', '', 4, double.head],
      ['affinity-power', 'power when rotation doubles', '', 8, double.power],
    ]),
    ...rows('memory', 'axial waterjet research pump, J. Turbomachinery (2012); arithmetic only', 3e-3, [
      ['research-pump', '900 rpm, 0.21 m³/s, 8.04 m', '', 1.63, specificSpeed(15, 0.21, 9.81 * 8.04)],
    ]),
    ...rows('published', 'civil hydraulics text, σ_c = 0.103 (N_s/1000)^(4/3), converted', 1e-2, [
      ['thoma-suction', 'suction specific speed it implies, US', '', 5500, implied],
    ]),
    ...rows('derived', 'fit to the strip model, weights 0.06 and 0.94', 1e-9, [
      ['equivalent-pitch', 'pitch equal to 85/115 mm', 'm', 0.1132, equivalentPitch(0.085, 0.115)],
    ]),
  ]
}

function euler(): Row[] {
  const work = eulerWork(12, outletSwirl(12, 1.5, 28 * degree))
  const flow = 1000 * (3.8 / 60)
  const V = 30 / 3.6
  const jet = 20 + V
  const sideIntake = jetEfficiency(jet / V, { nozzleLoss: 0, ramLoss: 1 })
  const gorla = 'R. S. R. Gorla and A. A. Khan, Turbomachinery: Design and Theory (2003), ch. 2, example 1'
  const boat = 'jet-boat example of a fluid mechanics text (jet 20 m/s absolute, 0.18 m², 30 km/h)'
  return [
    ...rows('published', gorla, 2e-3, [
      ['euler-head', 'head of the example pump', 'm', 11.23, work / 9.81],
      ['euler-power', 'power of the example pump', 'W', 6980, flow * work],
      ['euler-torque', 'torque of the example pump', 'N·m', 348.8, (flow * work) / 20],
    ]),
    ...rows('published', boat, 1e-3, [
      ['jet-boat-thrust', 'thrust', 'N', 102e3, 1000 * 0.18 * jet * (jet - V)],
      ['jet-boat-flow', 'flow from that thrust', 'm³/s', 5.1, flowFromPull(102e3, 0.18, 1000, V)],
      ['jet-boat-efficiency', 'efficiency with a side intake', '', 0.415, sideIntake],
    ]),
  ]
}

function suction(): Row[] {
  const phi = bestFlowCoefficient(0.05)
  const constant = us * Math.sqrt(Math.PI) * 2 ** 0.75
  const optimum = us * suctionSpeedOf(bestFlowCoefficient(0.03), 0.03, 0) * 1.03 ** 0.25 * Math.sqrt(0.03)
  const ratio = (0.05 + 0.05 * phi * phi + phi * phi) / phi ** 2
  const table = `${sp8052}, Table I`
  return [
    ...rows('published', `${sp8052}, eqs 4-7`, 2e-3, [
      ['brumfield-constant', 'C of N_ss = C √φ τ^-¾, US', '', 8147, constant],
      ['brumfield-optimum', 'constant of the optimum, US', '', 5055, optimum],
      ['best-phi', 'best flow coefficient at K 0.05', '', 0.1543, phi],
      ['best-suction', 'suction specific speed there, US', '', 22330, us * suctionSpeedOf(phi, 0.05, 0)],
    ]),
    ...rows('derived', 'τ = K + Kφ² + φ² with K = 2φ²/(1 - 2φ²), from SP-8052 eqs 2-6', 1e-9, [
      ['suction-ratio', 'NPSH over c²/2g at the optimum, 3/(1 - 2φ²)', '', 3 / (1 - 2 * phi * phi), ratio],
    ]),
    ...rows('published', `${table}, predicted`, 5e-3, [
      ['thor-predicted', 'N_ss predicted, φ 0.116, ν 0.31', '', 28700, us * bestSuctionSpeed(0.116, 0.31)],
      ['j2-predicted', 'N_ss predicted, φ 0.109, ν 0.20', '', 31560, us * bestSuctionSpeed(0.109, 0.2)],
      ['x8-predicted', 'N_ss predicted, φ 0.106, ν 0.23', '', 32260, us * bestSuctionSpeed(0.106, 0.23)],
    ]),
    ...rows('published', `${table}, tested`, 0.1, [
      ['thor-tested', 'N_ss tested, φ 0.116, ν 0.31', '', 28500, us * bestSuctionSpeed(0.116, 0.31)],
      ['j2-tested', 'N_ss tested, φ 0.109, ν 0.20', '', 34300, us * bestSuctionSpeed(0.109, 0.2)],
      ['x8-tested', 'N_ss tested, φ 0.106, ν 0.23', '', 31200, us * bestSuctionSpeed(0.106, 0.23)],
    ]),
    ...rows('published', `${sp8052}, §2.1.5`, 5e-3, [
      [
        'plate-limit',
        'choking number of flat plates, 15°',
        '',
        0.01733,
        plateChoke(7.5 * degree, 15 * degree),
      ],
    ]),
    ...breakdown(),
    ...rows('published', `${sp8052}, eqs 54-55`, 2e-3, [
      ['gap-head-5', 'head left with τ/h 0.005', '', 0.929, inducerGapHead(0.005)],
      ['gap-head-20', 'head left with τ/h 0.02', '', 0.859, inducerGapHead(0.02)],
      ['gap-suction-5', 'N_ss left with τ/h 0.005, k 0.65', '', 0.954, inducerGapSuction(0.005, 0.65)],
      ['gap-suction-20', 'N_ss left with τ/h 0.02, k 0.50', '', 0.929, inducerGapSuction(0.02, 0.5)],
    ]),
    ...rows('derived', 'K_a solved for the tip speed, by hand', 2e-3, [
      ['ceiling-15', 'tip speed, 97 J/kg, K 0.05, φ 0.15', 'm/s', 51.33, tipSpeedCeiling(97, 0.05, 0.15)],
      ['ceiling-25', 'tip speed, 97 J/kg, K 0.10, φ 0.25', 'm/s', 33.9, tipSpeedCeiling(97, 0.1, 0.25)],
    ]),
  ]
}

/** Suction specific speed (US) at which our breakdown number puts an inducer of sharp edges and tip blade angle `beta`. */
function breakdownSpeed(phi: number, beta: number, hubRatio: number): number {
  const blade = { tipDiameter: 1, pitchLeading: Math.PI * Math.tan(beta * degree), leadingEdgeRadius: 0 }
  return us * suctionSpeedOf(phi, breakdownNumber(blade), hubRatio)
}

function breakdown(): Row[] {
  const blade = 15 * degree
  const plates = (c: number, U: number) => breakdownEnergy(plateChoke(blade - Math.atan(c / U), blade), c, U)
  const energy = plates(4, 40)
  const faster = chokedFlow(() => energy, 4, plates(4, 48), 1)
  return [
    ...rows('published', `${sp8052}, Table I, tested with water`, 0.2, [
      [
        'thor-breakdown',
        'N_ss at breakdown, φ 0.116, β 14.15°',
        '',
        28500,
        breakdownSpeed(0.116, 14.15, 0.31),
      ],
      ['j2-breakdown', 'N_ss at breakdown, φ 0.109, β 9.75°', '', 34300, breakdownSpeed(0.109, 9.75, 0.2)],
      ['x8-breakdown', 'N_ss at breakdown, φ 0.106, β 9.8°', '', 31200, breakdownSpeed(0.106, 9.8, 0.23)],
    ]),
    ...rows(
      'memory',
      'C. E. Brennen, Hydrodynamics of Pumps (1994), ch. 7: σ_c = φ(β - φ), small angles',
      0.03,
      [['plate-energy', 'g·NPSH of choked plates, 15°, 40 and 4 m/s', 'J/kg', (40 * blade * 4) / 2, energy]],
    ),
    ...rows('derived', 'momentum along flat plates (Stripling and Acosta 1962), root found by hand', 2e-3, [
      ['plate-flow', 'axial speed they pass at 48 m/s, pressure kept', 'm/s', 3.34, faster],
    ]),
  ]
}

function system(): Row[] {
  const area = (Math.PI / 4) * 0.065 ** 2
  const best = (name: string, ramLoss: number, nozzleLoss: number, h: number, k: number, eta: number) => {
    const b = bestVelocityRatio({ ramLoss, nozzleLoss, nozzleHeight: h, V: 8 })
    return [
      [`kopt ${name}`, `best velocity ratio, ${name}`, '', k, b.k],
      [`eopt ${name}`, `efficiency there, ${name}`, '', eta, b.efficiency],
    ] as const
  }
  const ideal = (k: number, e: number): Entry => [
    `ideal-${k}`,
    `ideal efficiency at ${k}`,
    '',
    e,
    idealEfficiency(k),
  ]
  const bound = (kW: number, N: number): Entry => [
    `bollard-${kW}`,
    `most pull of ${kW} kW through 65 mm`,
    'N',
    N,
    bollardBound(kW * 1e3, area, 998.2),
  ]
  const layer = boundaryLayer(10, 1.5, 1.004e-6)
  const depth = captureDepth(0.072, 10, 0.156, layer)
  const still = submergenceNeeded(0.036, 0.07)
  return [
    ...rows('derived', `${byHand}; confirmed by search`, 1e-3, [
      ...best('z1 0.2, zn 0.02', 0.2, 0.02, 0, 1.4644, 0.6695),
      ...best('z1 0.1, zn 0.02', 0.1, 0.02, 0, 1.343, 0.73),
      ...best('z1 0.3, zn 0.03', 0.3, 0.03, 0, 1.566, 0.62),
      ...best('z1 0.2, zn 0.02, nozzle 0.3 m up at 8 m/s', 0.2, 0.02, 0.3, 1.553, 0.631),
    ]),
    ...rows('exact', 'ITTC 7.5-02-05-03: 2/(1 + NVR)', 1e-12, [
      ideal(1.5, 0.8),
      ideal(2, 2 / 3),
      ideal(3, 0.5),
    ]),
    ...rows('derived', 'F = (4ρAP²)^(1/3), by hand', 1e-3, [
      bound(5, 692),
      bound(10, 1098),
      bound(15, 1439),
      bound(30, 2285),
    ]),
    ...rows('published', 'ANSI/HI 9.8, Pump Intake Design, S = D (1 + 2.3 Fr)', 5e-3, [
      ['hi-froude', 'inlet Froude number, 0.036 m², 0.07 m³/s', '', 1.34, still.froude],
      ['hi-depth', 'water needed over that inlet', 'm', 0.875, still.needed],
    ]),
    ...rows(
      'memory',
      'C. Smoglie and J. Reimann, Int. J. Multiphase Flow 12 (1986): h = 1.17 (Q²/g)^⅕',
      5e-3,
      [
        [
          'dip-depth',
          'depth from which an opening in a floor draws air, 0.05 m³/s',
          'm',
          0.223,
          dipDepth(0.05),
        ],
      ],
    ),
    ...rows('derived', '0.37 x Re^-0.2 and the 1/7-power profile (Schlichting), integrated by hand', 2e-2, [
      ['wake-layer', 'boundary layer, 10 m/s, 1.5 m', 'm', 0.0204, layer],
      ['wake-depth', 'capture depth, 0.072 m³/s, 0.156 m wide', 'm', 0.0487, depth],
      ['wake-w', 'momentum wake there', '', 0.043, momentumWake(depth, layer)],
    ]),
  ]
}

/** Water, limits, conversions, cavitation and the way the water comes, against published values. */
export function jetChecks(): CheckRow[] {
  return [...water(), ...numbers(), ...euler(), ...suction(), ...system()].map(rowOf('jet'))
}
