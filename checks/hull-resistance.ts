import type { CheckRow } from '../src/answers/check.ts'
import { ittc57, schoenherr } from '../src/fluid/friction.ts'
import { freshWaterDensity, kinematicViscosity, seaWaterDensity } from '../src/fluid/water.ts'
import { airDrag } from '../src/hull/resistance/air.ts'
import {
  blountFoxMultiplier,
  savitskyHighSpeedLift,
  shufordLift,
} from '../src/hull/resistance/corrections.ts'
import { lambdaWindow, settle } from '../src/hull/resistance/equilibrium.ts'
import { michell, wigley, wigleySurface } from '../src/hull/resistance/michell.ts'
import {
  flatPlateLift,
  lambdaAtTrim,
  type PlaningCase,
  planingState,
  savitsky1964,
} from '../src/hull/resistance/planing.ts'
import { celanoLimit, chartLimit } from '../src/hull/resistance/porpoising.ts'
import {
  type PreplaningForm,
  preparePreplaning,
  preplaningRatio,
  standardRatios,
  transomWettedSurface,
} from '../src/hull/resistance/preplaning.ts'
import { criticalSpeed, froude, volumetricFroude } from '../src/hull/resistance/spec.ts'
import { sprayProjectedArea, whiskerSpray } from '../src/hull/resistance/spray.ts'
import { accelerate } from '../src/hull/run.ts'

const degree = Math.PI / 180
const foot = 0.3048
const poundForce = 4.4482216152605
const slug = 14.59390294 / foot ** 3

type Row = Omit<CheckRow, 'group'>

const savitskyPaper =
  'D. Savitsky (1964), Hydrodynamic design of planing hulls, Marine Technology 1(1), worked example (60 000 lb, b 14 ft, LCG 29 ft, VCG 2 ft, β 10°, ε 4°, f 0.5 ft, 40 kn)'
const codeTwin = 'same equations in an independent second program (Python), double precision'

function water(): Row[] {
  const unesco =
    'UNESCO (1981), Tech. Papers in Marine Science 38, International Equation of State of Seawater 1980'
  const density = (t: number, expected: number): Row => ({
    id: `fresh water density ${t} °C`,
    quantity: 'density of fresh water',
    unit: 'kg/m³',
    expected,
    got: freshWaterDensity(273.15 + t),
    within: 0.005,
    origin: 'published',
    source: 'standard density table of air-free water (Handbook of Chemistry and Physics, Landolt–Börnstein)',
  })
  return [
    density(10, 999.702),
    density(15, 999.102),
    density(20, 998.206),
    density(25, 997.048),
    {
      id: 'fresh water viscosity 15 °C, NPL',
      quantity: 'kinematic viscosity of fresh water',
      unit: 'm²/s',
      expected: 1.13902e-6,
      got: kinematicViscosity(288.15),
      withinPart: 1e-3,
      origin: 'published',
      source: 'National Physical Laboratory, Ship Report 142 (1970)',
    },
    {
      id: 'fresh water viscosity 15 °C, ITTC',
      quantity: 'kinematic viscosity of fresh water',
      unit: 'm²/s',
      expected: 1.1386e-6,
      got: kinematicViscosity(288.15),
      withinPart: 1e-3,
      origin: 'memory',
      source: 'ITTC Recommended Procedure 7.5-02-01-03, Fresh water and seawater properties',
    },
    {
      id: 'fresh water viscosity 20 °C, ITTC',
      quantity: 'kinematic viscosity of fresh water',
      unit: 'm²/s',
      expected: 1.0034e-6,
      got: kinematicViscosity(293.15),
      withinPart: 1e-3,
      origin: 'memory',
      source: 'ITTC Recommended Procedure 7.5-02-01-03',
    },
    {
      id: 'sea water density 15 °C, 35 g/kg',
      quantity: 'density of sea water',
      unit: 'kg/m³',
      expected: 1026.021,
      got: seaWaterDensity(288.15, 0.035),
      withinPart: 1e-4,
      origin: 'memory',
      source: `ITTC Recommended Procedure 7.5-02-01-03; formula ${unesco}`,
    },
    {
      id: 'sea water density 5 °C, 35, EOS-80 test value',
      quantity: 'density of sea water',
      unit: 'kg/m³',
      expected: 1027.67547,
      got: seaWaterDensity(278.15, 0.035),
      within: 2e-5,
      origin: 'memory',
      source: `${unesco}, check value at S 35, t 5 °C, one atmosphere`,
    },
    {
      id: 'sea water viscosity 15 °C',
      quantity: 'kinematic viscosity of sea water',
      unit: 'm²/s',
      expected: 1.1892e-6,
      got: kinematicViscosity(288.15, 0.035),
      withinPart: 8e-3,
      origin: 'memory',
      source:
        'ITTC Recommended Procedure 7.5-02-01-03; the salt correction used here is Millero (1974), which lies 0.6 % lower',
    },
  ]
}

function friction(): Row[] {
  const line = (Re: number, expected: number): Row => ({
    id: `ITTC-57 at Re ${Re.toExponential(0)}`,
    quantity: 'friction coefficient',
    unit: '1',
    expected,
    got: ittc57(Re),
    within: 5e-8,
    origin: 'exact',
    source: 'ITTC (1957) line 0.075/(log10 Re − 2)², evaluated by hand',
  })
  return [
    line(1e6, 4.6875e-3),
    line(1e7, 3e-3),
    line(1e8, 0.075 / 36),
    line(1e9, 0.075 / 49),
    {
      id: 'Schoenherr at Re 3.6e8',
      quantity: 'friction coefficient',
      unit: '1',
      expected: 0.00174,
      got: schoenherr(3.6e8),
      within: 5e-6,
      origin: 'published',
      source: `${savitskyPaper}: CF 0.00174`,
    },
  ]
}

function savitskyExample(): Row[] {
  const input = {
    speed: 67.5 * foot,
    weight: 60000 * poundForce,
    beam: 14 * foot,
    deadrise: 10 * degree,
    centre: 29 * foot,
    centreHeight: 2 * foot,
    thrustAngle: 4 * degree,
    thrustBelow: 0.5 * foot,
    density: 1.94 * slug,
    kinematicViscosity: 1e-5 * foot * foot,
    roughness: 4e-4,
  }
  const old = savitsky1964({ ...input, line: schoenherr })
  const modern = savitsky1964({ ...input, line: ittc57 })
  const lift = input.weight / (0.5 * input.density * (input.speed * input.beam) ** 2)
  const Cv = froude(input.speed, input.beam)
  const flat = flatPlateLift(lift, input.deadrise)
  // row 10 of the printed table: λ 3.85, CF 0.00174, ΔCF 0.0004, ρ 1.99, mean speed by the paper's form
  const at2 = 0.012 * 2 ** 1.1
  const mean = 67.5 * Math.sqrt(1 - at2 / (Math.sqrt(3.85) * Math.cos(2 * degree)))
  const table = (0.5 * 1.99 * mean ** 2 * 3.85 * 14 ** 2 * (0.00174 + 0.0004)) / Math.cos(10 * degree)
  const rows: Row[] = [
    {
      id: 'Savitsky example: speed coefficient',
      quantity: 'speed over √(g b)',
      unit: '1',
      expected: 3.18,
      got: Cv,
      within: 0.005,
      origin: 'published',
      source: savitskyPaper,
    },
    {
      id: 'Savitsky example: friction at 2°',
      quantity: 'frictional drag',
      unit: 'lbf',
      expected: 7340,
      got: table,
      withinPart: 2e-3,
      origin: 'published',
      source: `${savitskyPaper}, table 1 row 10; our mean speed and area on its λ, CF and ρ`,
    },
    {
      id: 'Savitsky example: equilibrium trim',
      quantity: 'trim',
      unit: 'deg',
      expected: 2.3,
      got: old.value.trim / degree,
      within: 0.05,
      origin: 'memory',
      source: savitskyPaper,
    },
    {
      id: 'Savitsky example: trim to three figures',
      quantity: 'trim',
      unit: 'deg',
      expected: 2.263,
      got: old.value.trim / degree,
      within: 0.003,
      origin: 'derived',
      source: codeTwin,
    },
    {
      id: 'Savitsky example: trim with ITTC-57',
      quantity: 'trim',
      unit: 'deg',
      expected: 2.263,
      got: modern.value.trim / degree,
      withinPart: 2e-3,
      origin: 'derived',
      source: codeTwin,
    },
    {
      id: 'Savitsky example: drag with ITTC-57',
      quantity: 'drag',
      unit: 'lbf',
      expected: 8859,
      got: modern.value.drag / poundForce,
      withinPart: 2e-3,
      origin: 'derived',
      source: codeTwin,
    },
    {
      id: 'Savitsky example: lift coefficient',
      quantity: 'lift coefficient, deadrise 10°',
      unit: '1',
      expected: 0.06927,
      got: lift,
      within: 1e-5,
      origin: 'exact',
      source: 'W / (½ ρ V² b²) with ρ 1.94 slug/ft³, by hand',
    },
    {
      id: 'Savitsky example: flat-plate lift',
      quantity: 'lift coefficient, flat plate',
      unit: '1',
      expected: 0.08397,
      got: flat,
      within: 1e-5,
      origin: 'derived',
      source: codeTwin,
    },
  ]
  for (const [trim, lambda] of [
    [2, 3.835],
    [3, 2.578],
    [4, 1.775],
  ] as const)
    rows.push({
      id: `Savitsky example: λ at ${trim}°`,
      quantity: 'mean wetted length over beam',
      unit: '1',
      expected: lambda,
      got: lambdaAtTrim(flat, trim * degree, Cv),
      within: 0.003,
      origin: 'derived',
      source: codeTwin,
    })
  rows.push({
    id: 'Savitsky example: λ at 2°, printed',
    quantity: 'mean wetted length over beam',
    unit: '1',
    expected: 3.85,
    got: lambdaAtTrim(flat, 2 * degree, Cv),
    within: 0.02,
    origin: 'published',
    source: `${savitskyPaper}, table 1; chart reading`,
  })
  return rows
}

/** Invented board, 190 kg all up, flat bottom, standing rider: three-force balance. */
function board(): Row[] {
  const c: PlaningCase = {
    speed: 8,
    weight: 190 * 9.80665,
    beam: 0.7,
    deadrise: 0,
    density: 999.1,
    kinematicViscosity: 1.1386e-6,
    roughness: 4e-4,
    centreHeight: 0.55,
    thrustHeight: 0.05,
    thrustAngle: 0,
    airDrag: airDrag(0.65, 8),
    airHeight: 1.05,
    appendage: 0,
  }
  const s = planingState()
  settle(c, 0.85, lambdaWindow(c, 10), s)
  const row = (id: string, unit: string, expected: number, got: number): Row => ({
    id: `board at 8 m/s: ${id}`,
    quantity: id,
    unit,
    expected,
    got,
    withinPart: 2e-3,
    origin: 'derived',
    source: codeTwin,
  })
  return [
    row('trim', 'deg', 5.836, s.trim / degree),
    row('wetted length over beam', '1', 1.599, s.lambda),
    row('friction', 'N', 83.0, s.friction),
    row('air drag', 'N', 25.48, s.air),
    row('normal force', 'N', 1851, s.normal),
    row('thrust', 'N', 297.8, s.thrust),
    row('drag', 'N', 296.3, s.drag),
  ]
}

function preplaning(): Row[] {
  const rows: Row[] = []
  const standard = [0.0452, 0.0683, 0.084, 0.0905, 0.0966, 0.0993, 0.102, 0.106, 0.1092, 0.1138, 0.1173]
  // L/V^⅓ 5, L/B 4, entrance 20°, transom ratio 0.6
  const form: PreplaningForm = {
    volume: 1,
    length: 5,
    beam: 1.25,
    draft: 0.3,
    entrance: 20 * degree,
    transomRatio: 0.6,
    wettedSurface: 5,
  }
  const ratios = standardRatios(form)
  standard.forEach((expected, i) => {
    rows.push({
      id: `pre-planing standard ratio, Fv ${(1 + i / 10).toFixed(1)}`,
      quantity: 'drag over weight of the 100 000 lb standard',
      unit: '1',
      expected,
      got: ratios[i]!,
      within: 5.1e-5,
      origin: 'regression',
      source: `Mercier and Savitsky (1973), SIT-DL-73-1667, coefficients from memory; ${codeTwin}`,
    })
  })
  const volume = 190 / 999.1
  const small: PreplaningForm = {
    volume,
    length: 2.3,
    beam: 0.7,
    draft: 0.157,
    entrance: 28 * degree,
    transomRatio: 0.8,
    wettedSurface: transomWettedSurface(volume, 2.3, 0.7, 0.157),
  }
  const hull = preparePreplaning(small)
  for (const [Fv, expected] of [
    [1, 119],
    [1.4, 263],
    [2, 275],
  ] as const)
    rows.push({
      id: `pre-planing drag of a 190 kg board, Fv ${Fv.toFixed(1)}`,
      quantity: 'drag',
      unit: 'N',
      expected,
      got: 190 * 9.80665 * preplaningRatio(hull, Fv, 1.1386e-6, 0, schoenherr),
      withinPart: 0.01,
      origin: 'derived',
      source: `size correction with Schoenherr's line; ${codeTwin}`,
    })
  return rows
}

function waves(): Row[] {
  const L = 10
  const surface = wigleySurface(L, 1, 0.625, 150)
  const hull = wigley(L, 1, 0.625, 160, 48)
  const rows: Row[] = [
    {
      id: 'Wigley hull: wetted surface',
      quantity: 'wetted surface over length squared, L/B 10, L/T 16',
      unit: '1',
      expected: 0.14879,
      got: surface / (L * L),
      within: 5e-6,
      origin: 'derived',
      source: 'numerical integral of the exact surface, two programs',
    },
  ]
  const expected = [
    [0.25, 1.0639],
    [0.3, 2.1417],
    [0.35, 1.2479],
    [0.4, 2.7339],
    [0.45, 4.1543],
    [0.5, 4.5172],
    [0.6, 3.9184],
    [0.8, 2.5953],
    [1, 1.8364],
  ] as const
  for (const [Fn, Cw] of expected) {
    const U = Fn * Math.sqrt(9.80665 * L)
    const R = michell(hull, U, 1000)
    rows.push({
      id: `Wigley hull: Michell wave resistance, Fn ${Fn.toFixed(2)}`,
      quantity: 'wave resistance coefficient × 1000',
      unit: '1',
      expected: Cw,
      got: (1e3 * R) / (0.5 * 1000 * U * U * surface),
      within: 0.01,
      origin: 'derived',
      source:
        'Michell (1898) integral by two other programs (closed form in x and z; two-dimensional Gauss rule) that agree to 4e-5',
    })
    if (Fn === 0.5)
      rows.push({
        id: 'Wigley hull: Michell wave resistance over weight, Fn 0.50',
        quantity: 'wave resistance over ρ g V',
        unit: '1',
        expected: 0.030246,
        got: R / (1000 * 9.80665 * (4 / 9) * L * 0.625),
        within: 1e-5,
        origin: 'derived',
        source: 'Michell (1898) integral, the same two programs',
      })
  }
  rows.push({
    id: 'shallow water: wave speed at 0.6 m',
    quantity: 'critical speed',
    unit: 'm/s',
    expected: 2.426,
    got: criticalSpeed(0.6),
    within: 0.002,
    origin: 'exact',
    source: '√(g h), linear long-wave theory (Airy)',
  })
  return rows
}

function smallThings(): Row[] {
  const shuford = (aspect: number, trim: number) =>
    savitskyHighSpeedLift(aspect, trim * degree) / shufordLift(aspect, trim * degree, 0)
  const twin =
    'Savitsky (1964) high-speed lift against Shuford (1958), NACA Report 1355 (from memory), worked by hand'
  // any trim gives the spray angle wanted: tan α = (π/2) tan τ / tan β
  const trim30 = Math.atan((2 / Math.PI) * Math.tan(20 * degree) * Math.tan(30 * degree))
  return [
    {
      id: 'spray area at 45°',
      quantity: 'projected area of whisker spray, b 1 m',
      unit: 'm²',
      expected: 0.25,
      got: sprayProjectedArea(1, 45 * degree),
      within: 1e-4,
      origin: 'published',
      source: 'Savitsky, DeLorme and Datla (2007), Marine Technology 44(1), eq. 6',
    },
    {
      id: 'spray area at 30°, deadrise 20°',
      quantity: 'true area of whisker spray, b 1 m',
      unit: 'm²',
      expected: 0.3072,
      got: whiskerSpray(8, 1, 20 * degree, trim30, 999, 1.1e-6).area,
      within: 1e-4,
      origin: 'published',
      source: 'Savitsky, DeLorme and Datla (2007), eq. 7',
    },
    {
      id: 'air drag upright at 10 m/s',
      quantity: 'air drag, 0.65 m²',
      unit: 'N',
      expected: 39.8,
      got: airDrag(0.65, 10),
      within: 0.1,
      origin: 'exact',
      source: '½ ρ CdA V²; drag area 0.65 m² measured on skiers (Drag area of a cross-country skier, 1988)',
    },
    {
      id: 'Savitsky over Shuford, aspect 1, 4°',
      quantity: 'ratio of lift',
      unit: '1',
      expected: 0.904,
      got: shuford(1, 4),
      within: 0.005,
      origin: 'derived',
      source: twin,
    },
    {
      id: 'Savitsky over Shuford, aspect 0.25, 8°',
      quantity: 'ratio of lift',
      unit: '1',
      expected: 0.868,
      got: shuford(0.25, 8),
      within: 0.005,
      origin: 'derived',
      source: twin,
    },
    ...(
      [
        [1.5, 1.18],
        [2, 1.13],
        [3, 1.01],
      ] as const
    ).map(
      ([Fv, expected]): Row => ({
        id: `Blount–Fox multiplier, Fv ${Fv}`,
        quantity: 'multiplier on planing drag, LCG/b 1.21',
        unit: '1',
        expected,
        got: blountFoxMultiplier(1.21, Fv),
        within: 0.005,
        origin: 'memory',
        source:
          'Blount and Fox (1976), Small-craft power prediction, Marine Technology 13(1); worked by hand',
      }),
    ),
    {
      id: 'speed at volumetric Froude number 1, 190 kg',
      quantity: 'volumetric Froude number at 2.375 m/s',
      unit: '1',
      expected: 1,
      got: volumetricFroude(2.375, 0.19),
      within: 1e-3,
      origin: 'exact',
      source: 'V / √(g V^⅓), by hand',
    },
    {
      id: 'porpoising, deadrise 10°: spread of two fits at x 0.25',
      quantity: 'chart reading less Celano fit',
      unit: 'deg',
      expected: 1.2,
      got: (chartLimit(0.25, 10 * degree) - celanoLimit(0.25, 10 * degree)) / degree,
      within: 0.6,
      origin: 'memory',
      source:
        'Celano (1998) against the chart of Savitsky (1964) after Day and Haag (1952): they differ by 0.6 to 1.8°',
    },
  ]
}

/** Constant 500 N on 180 kg with R = 3.125 V². */
function run(): Row[] {
  const Vm = Math.sqrt(500 / 3.125)
  const r = accelerate(
    { mass: 180, planing: 0.9 * Vm, slow: 1 },
    () => 500,
    (V) => 3.125 * V * V,
    {
      added: [0, 0],
      keep: 0.02,
    },
  )
  const i = r.time.findIndex((t) => t >= r.timeToPlane!)
  const part = (r.timeToPlane! - r.time[i - 1]!) / (r.time[i]! - r.time[i - 1]!)
  const distance = r.distance[i - 1]! + part * (r.distance[i]! - r.distance[i - 1]!)
  const row = (id: string, unit: string, expected: number, got: number): Row => ({
    id: `run up, constant thrust: ${id}`,
    quantity: id,
    unit,
    expected,
    got,
    withinPart: 1e-3,
    origin: 'exact',
    source: 'V = Vm tanh(T t / m Vm), s = (m/k) ln cosh(T t / m Vm)',
  })
  return [
    row('top speed', 'm/s', 12.649, r.topSpeed!),
    row('time to 0.9 of it', 's', 6.704, r.timeToPlane!),
    row('distance to 0.9 of it', 'm', 47.83, distance),
  ]
}

/** Water, friction, drag and run-up against the outside world. */
export function hullResistanceChecks(): CheckRow[] {
  const group = (name: string, rows: Row[]) => rows.map((r): CheckRow => ({ ...r, group: name }))
  return [
    ...group('fluid', [...water(), ...friction()]),
    ...group('hull', [
      ...savitskyExample(),
      ...board(),
      ...preplaning(),
      ...waves(),
      ...smallThings(),
      ...run(),
    ]),
  ]
}
