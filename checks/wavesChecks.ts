/** Drag below planing: the regression of tank models, and waves of thin ships. */
import { schoenherr } from '../src/physics/fluid/friction.ts'
import { criticalSpeed } from '../src/trades/drag/hullSpec.ts'
import { michell, wigley, wigleySurface } from '../src/trades/drag/michell.ts'
import {
  type PreplaningForm,
  preparePreplaning,
  preplaningRatio,
  standardRatios,
  transomWettedSurface,
} from '../src/trades/drag/preplaning.ts'
import { codeTwin, degree } from './planingChecks.ts'
import type { Row } from './row.ts'

export function preplaning(): Row[] {
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

export function waves(): Row[] {
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
