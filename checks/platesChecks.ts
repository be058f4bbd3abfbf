/** Flat plates, supported and clamped, bending little and much, against printed tables. */

import { evenLoadOnPlate, patchOnPlate, squareMembrane } from '../src/trades/strength/loadedPlate.ts'
import { setLoad } from '../src/trades/strength/permanentSet.ts'
import { clampedPlate } from './clampedPlate.ts'
import { near, type Row, row } from './row.ts'

/** modulus at which D is 1 for thickness 1, ν = 0.3 */
const unit = { t: 1, modulus: 12 * (1 - 0.09), poisson: 0.3 }

export const al = { modulus: 70e9, poisson: 0.33 }
const timoshenko = 'S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed. (1959), '

export function navier(): Row[] {
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

export function roark(): Row[] {
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

export function clamped(): Row[] {
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
      'C-41c',
      'clamped square, moment at the edge under a point load',
      'P',
      -0.1257,
      clampedPlate({ a: 1, b: 1, ...unit }, dot, 40).edgeX,
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

export function largeDeflection(): Row[] {
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

/** Loads at which thin sheet keeps a dish, against the classic results of plastic plates. */
export function lastingDish(): Row[] {
  const sheet = { span: 1, t: 2, stress: 1, fixity: 1, held: true }
  // plastic moment σt²/4 is 1 for this sheet
  const johansen = 'K. W. Johansen, Yield-Line Theory (1962), fan under a point load, from memory'
  const jones = 'N. Jones, Structural Impact (1989), ch. 3, plates at moderate deflection, from memory'
  const point = setLoad(sheet, 1e-14, 0)
  return [
    near('C-46a', 'point load, clamped, collapse', 'm', 4 * Math.PI, point, 1e-3, 'memory', johansen),
    near(
      'C-46b',
      'point load, supported, collapse',
      'm',
      2 * Math.PI,
      setLoad({ ...sheet, fixity: 0 }, 1e-14, 0),
      1e-3,
      'memory',
      johansen,
    ),
    near(
      'C-46c',
      'hanging in a dish of one thickness, over bending alone',
      '1',
      4 / 3,
      setLoad(sheet, 1e-14, 2) / point,
      1e-6,
      'memory',
      jones,
    ),
    near(
      'C-46d',
      'hanging in a dish of three thicknesses, over bending alone',
      '1',
      28 / 9,
      setLoad(sheet, 1e-14, 6) / point,
      1e-6,
      'memory',
      jones,
    ),
  ]
}
