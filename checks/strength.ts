import type { CheckRow } from '../src/answers/check.ts'
import { kelvin } from '../src/numerics/kelvin.ts'
import { alloyOf } from '../src/strength/alloys.ts'
import { oilCanStep, panelBuckling } from '../src/strength/buckling.ts'
import { clampedPlate } from '../src/strength/clamped.ts'
import { epsResistance, foamOf } from '../src/strength/foams.ts'
import { blackFlux, distanceBySum } from '../src/strength/heat.ts'
import { discOnFoam } from '../src/strength/onFoam.ts'
import { evenLoadOnPlate, patchOnPlate, squareMembrane } from '../src/strength/plate.ts'
import { sandwichBeam } from '../src/strength/sandwich.ts'
import { type Row, row } from './row.ts'

/** modulus at which D is 1 for thickness 1, ν = 0.3 */
const unit = { t: 1, modulus: 12 * (1 - 0.09), poisson: 0.3 }
const al = { modulus: 70e9, poisson: 0.33 }
const timoshenko = 'S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), '

const near = (
  id: string,
  quantity: string,
  unitName: string,
  expected: number,
  got: number,
  within: number,
  origin: CheckRow['origin'],
  source: string,
): Row => ({
  id,
  quantity,
  unit: unitName,
  expected,
  got,
  within,
  origin,
  source,
})

function navier(): Row[] {
  const table: [number, number, number][] = [
    [1, 0.00406, 0.0479],
    [1.5, 0.00772, 0.0812],
    [2, 0.01013, 0.1017],
    [3, 0.01223, 0.1189],
  ]
  const source = `${timoshenko}table 8 (supported edges, even load)`
  return table.flatMap(([ratio, w, M]) => {
    const r = evenLoadOnPlate({ a: ratio, b: 1, ...unit }, 1, { terms: 99 })
    return [
      near(
        `C-36 w ${ratio}`,
        `deflection, sides ${ratio} : 1`,
        'q b⁴/D',
        w,
        r.deflection,
        1e-5,
        'memory',
        source,
      ),
      near(
        `C-36 M ${ratio}`,
        `moment across, sides ${ratio} : 1`,
        'q b²',
        M,
        r.momentY,
        1e-4,
        'memory',
        source,
      ),
    ]
  })
}

function roark(): Row[] {
  const table: [number, number, number][] = [
    [1, 0.0444, 0.2874],
    [1.2, 0.0616, 0.3762],
    [2, 0.111, 0.6102],
    [3, 0.1335, 0.7134],
  ]
  const source = 'Roark’s Formulas for Stress and Strain, 7th ed., table 11.4 case 1a'
  const even = table.flatMap(([ratio, alpha, beta]) => {
    const r = evenLoadOnPlate({ a: ratio, b: 1, t: 1, modulus: 1, poisson: 0.3 }, 1, { terms: 99 })
    return [
      row(
        `C-37 alpha ${ratio}`,
        `deflection factor, sides ${ratio} : 1`,
        '1',
        alpha,
        r.deflection,
        5e-3,
        'published',
        source,
      ),
      row(
        `C-37 beta ${ratio}`,
        `stress factor, sides ${ratio} : 1`,
        '1',
        beta,
        r.bending,
        5e-3,
        'published',
        source,
      ),
    ]
  })
  const patch = (
    [
      [0.2, 1.28],
      [0.4, 0.84],
    ] as const
  ).map(([side, beta]) => {
    const r = patchOnPlate(
      { a: 1, b: 1, t: 1, modulus: 1, poisson: 0.3 },
      { load: 1, u: side, v: side },
      { terms: 199 },
    )
    return row(
      `C-39 ${side}`,
      `stress factor, square, patch ${side} of the side`,
      '1',
      beta,
      r.bending,
      1e-2,
      'published',
      'Roark’s Formulas, 7th ed., table 11.4 case 1c',
    )
  })
  return [...even, ...patch]
}

function clamped(): Row[] {
  const source = `${timoshenko}table 35 (clamped edges, even load); last digit from a Ritz solution of our own at twice the terms`
  const square = clampedPlate({ a: 1, b: 1, ...unit }, { load: 1, u: 1, v: 1 })
  const long = clampedPlate({ a: 2, b: 1, ...unit }, { load: 2, u: 2, v: 1 })
  const dot = { load: 1, u: 1e-3, v: 1e-3 }
  return [
    near('C-40a', 'clamped square, deflection', 'q b⁴/D', 0.00127, square.deflection, 1e-5, 'memory', source),
    near(
      'C-40b',
      'clamped square, moment in the middle',
      'q b²',
      0.0229,
      square.middleX,
      1e-4,
      'memory',
      source,
    ),
    near(
      'C-40c',
      'clamped square, moment at the edge',
      'q b²',
      -0.0513,
      square.edgeX,
      1e-4,
      'memory',
      source,
    ),
    near('C-40d', 'clamped 2 : 1, deflection', 'q b⁴/D', 0.00253, long.deflection, 1e-5, 'memory', source),
    near(
      'C-40e',
      'clamped 2 : 1, moment at the long edge',
      'q b²',
      -0.0829,
      long.edgeY,
      1e-4,
      'memory',
      source,
    ),
    row(
      'C-41a',
      'clamped square, point load',
      'P b²/D',
      0.0056,
      clampedPlate({ a: 1, b: 1, ...unit }, dot, 20).deflection,
      1e-2,
      'memory',
      `${timoshenko}table 37`,
    ),
    row(
      'C-41b',
      'supported square, point load',
      'P b²/D',
      0.0116,
      patchOnPlate({ a: 1, b: 1, ...unit }, dot, { terms: 199 }).deflection,
      1e-2,
      'memory',
      `${timoshenko}table 23`,
    ),
  ]
}

function largeDeflection(): Row[] {
  const plate = { a: 0.2, b: 0.2, t: 1.5e-3, ...al }
  const foot = { load: 900, u: 0.08, v: 0.08 }
  const held = patchOnPlate(plate, foot, { held: true })
  const thin = patchOnPlate(
    { a: 2, b: 2, t: 1e-3, modulus: 70e9, poisson: 0.33 },
    { load: 4 * 1e4, u: 2, v: 2 },
    { held: true },
  )
  const vlassak =
    'J. J. Vlassak and W. D. Nix, J. Mater. Res. 7 (1992) 3242, square membrane; figures from a Ritz solution of the membrane'
  return [
    row(
      'C-43a',
      'square membrane bulge, ν 0.25',
      'a (q a/E t)^⅓',
      0.733,
      squareMembrane(1, 1, 1, 1, 0.25),
      1.5e-2,
      'memory',
      vlassak,
    ),
    row(
      'C-43b',
      'square membrane bulge, ν 0.33',
      'a (q a/E t)^⅓',
      0.712,
      squareMembrane(1, 1, 1, 1, 0.33),
      1.5e-2,
      'memory',
      vlassak,
    ),
    row(
      'C-43c',
      'Berger plate so thin that it is a membrane, against that bulge',
      'm',
      squareMembrane(1e4, 1, 1e-3, 70e9, 0.33),
      thin.deflection,
      6e-2,
      'published',
      'J. J. Vlassak and W. D. Nix (1992); Berger’s plate is a few per cent stiffer',
    ),
    row(
      'C-44a',
      'held square bay 0.2 m, 1.5 mm, 900 N on 80 mm: deflection',
      'mm',
      2.9,
      1e3 * held.deflection,
      2e-2,
      'derived',
      'derived: full Föppl-von Kármán equations by Ritz’s method, outside this code',
    ),
    row(
      'C-44b',
      'the same by bending alone',
      'mm',
      15.3,
      1e3 * patchOnPlate(plate, foot).deflection,
      2e-2,
      'derived',
      'Navier series, summed outside this code',
    ),
  ]
}

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

function thin(): Row[] {
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
    ...roark(),
    ...clamped(),
    ...largeDeflection(),
    ...onFoam(),
    ...kelvinRows(),
    ...sandwich(),
    ...tables(),
    ...thin(),
  ].map((r) => ({
    ...r,
    group: 'strength',
  }))
}
