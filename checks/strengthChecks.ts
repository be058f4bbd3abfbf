import type { CheckRow } from '../src/base/answers/check.ts'
import { kelvin } from '../src/base/numerics/kelvin.ts'
import { alloyOf } from '../src/trades/strength/alloys.ts'
import { oilCanStep, panelBuckling } from '../src/trades/strength/buckling.ts'
import { epsResistance, foamOf } from '../src/trades/strength/foams.ts'
import { blackFlux, distanceBySum } from '../src/trades/strength/hotFoam.ts'
import { discOnFoam } from '../src/trades/strength/onFoam.ts'
import { sandwichBeam } from '../src/trades/strength/sandwich.ts'
import { al, clamped, largeDeflection, lastingDish, navier, roark } from './platesChecks.ts'
import { near, type Row, row, rowOf } from './row.ts'

function onFoam(): Row[] {
  const sheet = { ...al, t: 1.5e-3, bed: 22e6 }
  const point = discOnFoam(sheet, 883, 0)
  const disc = discOnFoam(sheet, 883, 0.05)
  const source =
    'derived: influence function of a plate on springs (Timoshenko and Woinowsky-Krieger, § 58), checked by a Hankel integral outside this code'
  return [
    row(
      'C-45a',
      'plate stiffness, 1.5 mm aluminium',
      'N·m',
      22.09,
      point.stiffness,
      5e-3,
      'exact',
      'E t³/12(1 − ν²)',
    ),
    row('C-45b', 'reach (D/k)^¼ on 22 MN/m³', 'm', 0.0317, point.reach, 5e-3, 'exact', '(D/k)^¼'),
    row(
      'C-45c',
      'deflection under a point load of 883 N',
      'mm',
      5.006,
      1e3 * point.deflection,
      5e-3,
      'exact',
      'P/8√(kD), H. Hertz 1884, in Timoshenko and Woinowsky-Krieger, § 58',
    ),
    row(
      'C-45d',
      'deflection under a 50 mm disc',
      'mm',
      3.055,
      1e3 * disc.deflection,
      5e-3,
      'derived',
      source,
    ),
    row('C-45e', 'pressure on the foam', 'kPa', 67.2, disc.pressure / 1e3, 5e-3, 'derived', source),
    row('C-45f', 'stress in the sheet', 'MPa', 89.6, disc.stress / 1e6, 5e-3, 'derived', source),
  ]
}

function kelvinRows(): Row[] {
  const source =
    'Kelvin functions by an independent library; tables: Abramowitz and Stegun, Handbook of Mathematical Functions, table 9.12'
  const a = kelvin(1)
  const b = kelvin(0.79)
  const c = kelvin(1.58)
  const list: [string, number, number][] = [
    ['ker 1', 0.286706, a.ker],
    ['kei 1', -0.494995, a.kei],
    ['ker 0.79', 0.462846, b.ker],
    ['kei 0.79', -0.569958, b.kei],
    ['ker′ 1.58', -0.254364, c.kerSlope],
    ['kei′ 1.58', 0.283885, c.keiSlope],
  ]
  return list.map(([what, expected, got]) =>
    near(`C-46 ${what}`, what, '1', expected, got, 1e-6, 'published', source),
  )
}

function sandwich(): Row[] {
  const s = sandwichBeam(
    { face: 1e-3, core: 0.04, faceModulus: 70e9, coreModulus: 15e6, coreShear: 6e6 },
    0.25,
    0.5,
    900,
  )
  const source =
    'formulas of H. G. Allen, Analysis and Design of Structural Sandwich Panels (1969), worked outside this code'
  return [
    row('C-47a', 'sandwich strip, bending stiffness', 'N·m²', 14732, s.D, 5e-3, 'derived', source),
    row('C-47b', 'shear stiffness', 'N', 63038, s.S, 5e-3, 'derived', source),
    row('C-47c', 'deflection by bending', 'mm', 0.159, 1e3 * s.bending, 5e-3, 'derived', source),
    row('C-47d', 'deflection by shear', 'mm', 1.785, 1e3 * s.shear, 5e-3, 'derived', source),
    row('C-47e', 'stress in the faces', 'MPa', 10.98, s.faceStress / 1e6, 5e-3, 'derived', source),
    row('C-47f', 'shear in the core', 'kPa', 43.9, s.coreStress / 1e3, 5e-3, 'derived', source),
  ]
}

function tables(): Row[] {
  const c578 = 'ASTM C578 table of types, compressive strength'
  const foam = (id: string, kPa: number) =>
    near(
      `C-48 ${id}`,
      `least strength of foam ${id}`,
      'kPa',
      kPa,
      foamOf(id).crush / 1e3,
      0,
      'published',
      c578,
    )
  const eps = epsResistance['EPS22']!
  const welded = (id: string, MPa: number) =>
    near(
      `C-52 ${id}`,
      `as-welded yield, ${id}`,
      'MPa',
      MPa,
      alloyOf(id).weldedYield / 1e6,
      0,
      'published',
      'American Bureau of Shipping, Guide for High Speed Craft, 2-5-A1 table 2',
    )
  return [
    foam('XPS 25', 173),
    foam('XPS 29', 276),
    foam('XPS 35', 414),
    foam('EPS 22', 104),
    ...([50, 115, 135] as const).map((kPa, i) =>
      near(
        `C-48 EPS22 ${[1, 5, 10][i]} %`,
        `EPS22 at ${[1, 5, 10][i]} % strain`,
        'kPa',
        kPa,
        eps[i]!,
        0,
        'published',
        'ASTM D6817 table',
      ),
    ),
    welded('5083-H116', 165),
    welded('6061-T6', 138),
  ]
}

export function thin(): Row[] {
  return [
    row(
      'C-53a',
      'temperature step that pops a held square panel, 1.5 mm, 200 mm',
      'K',
      2.96,
      oilCanStep(1.5e-3, 0.2),
      1e-2,
      'derived',
      '2π²/12(1 + ν)α (t/b)², S. Timoshenko and J. Gere, Theory of Elastic Stability (1961), § 9.2',
    ),
    row(
      'C-53b',
      'buckling stress of the same panel',
      'MPa',
      14.5,
      panelBuckling(1.5e-3, 0.2) / 1e6,
      1e-2,
      'derived',
      '4π²E/12(1 − ν²)(t/b)², the same',
    ),
    row(
      'H-1',
      'radiation from 400 °C to 50 °C, emissivity 0.8',
      'kW/m²',
      8.8,
      blackFlux(673.15, 323.15, 0.8) / 1e3,
      1e-2,
      'derived',
      'Stefan and Boltzmann’s law, worked outside this code',
    ),
    row(
      'H-2',
      'bare distance, r 40 mm, 400 °C, 45 K at 16 W/(m²K)',
      'm',
      0.49,
      distanceBySum(0.04, 673.15, 0.8, 323.15, 45, 16),
      1e-2,
      'derived',
      'r/s view factor against the losses, worked outside this code',
    ),
  ]
}

/** Plates, foam and sheet against printed tables and closed solutions. */
export function strengthChecks(): CheckRow[] {
  return [
    ...navier(),
    ...lastingDish(),
    ...roark(),
    ...clamped(),
    ...largeDeflection(),
    ...onFoam(),
    ...kelvinRows(),
    ...sandwich(),
    ...tables(),
    ...thin(),
  ].map(rowOf('strength'))
}
