/** Silencers, packing and levels against closed forms and published values. */
import type { CheckRow } from '../src/base/answers/check.ts'
import { chain, chamberLoss, transmissionLoss, tube } from '../src/trades/exhaust/fourPole.ts'
import { aWeight, harmonicPressure, levelOf, passByLimit } from '../src/trades/exhaust/level.ts'
import { boxLoss } from '../src/trades/exhaust/muffler.ts'
import { absorption, delanyBazley, straightThroughLoss } from '../src/trades/exhaust/packing.ts'
import { rowOf } from './row.ts'

const row = rowOf('exhaust')
const davis = 'Davis, Stokes, Moore and Stevens 1954, NACA Report 1192: single expansion chamber, closed form'
const delany = 'Delany and Bazley 1970, Applied Acoustics 3, 105: power laws, evaluated independently'

export function mufflerRows(): CheckRow[] {
  const most = (m: number) => chamberLoss(m, Math.PI / 2 / 0.3, 0.3)
  const c = 343.2
  const box = {
    length: 0.3,
    area: (Math.PI / 4) * 0.09 ** 2,
    inletBore: 0.03,
    outletBore: 0.03,
    inletReach: 0,
    outletReach: 0,
    packing: 0,
    resistivity: 1e4,
  }
  const tuned = { ...box, inletReach: 0.15, outletReach: 0.075 }
  const four = (f: number) => {
    const S = (Math.PI / 4) * 0.03 ** 2
    return transmissionLoss(chain([tube(0.3, box.area, (2 * Math.PI * f) / c, c)]), S, S, c)
  }
  const reach = [
    [100, 7.84],
    [200, 13.24],
    [286, 16.18],
    [400, 19.01],
    [500, 21.35],
    [700, 21.72],
    [858, 23.11],
  ] as const
  return [
    ...(
      [
        [4, 6.547],
        [9, 13.171],
        [10, 14.066],
        [16, 18.096],
        [25, 21.952],
        [64, 30.105],
      ] as const
    ).map(([m, dB]) =>
      row({
        id: `E-35-${m}`,
        quantity: `chamber, area ratio ${m}: most loss`,
        unit: 'dB',
        expected: dB,
        got: most(m),
        within: 1e-3,
        origin: 'exact',
        source: davis,
      }),
    ),
    ...(
      [
        [100, 8.05],
        [286, 13.171],
        [400, 11.452],
        [572, 0],
      ] as const
    ).map(([f, dB]) =>
      row({
        id: `E-37-${f}`,
        quantity: `30 in 90 mm chamber, 300 mm, at ${f} Hz by four-poles`,
        unit: 'dB',
        expected: dB,
        got: four(f),
        within: 1e-3,
        origin: 'exact',
        source: davis,
      }),
    ),
    ...reach.map(([f, dB]) =>
      row({
        id: `E-38-${f}`,
        quantity: `same with tubes reaching l/2 and l/4 at ${f} Hz`,
        unit: 'dB',
        expected: dB,
        got: boxLoss(tuned, [f], c, 1.2).loss[0]!,
        within: 0.02,
        origin: 'derived',
        source: 'Munjal 1987, extended-tube chamber, evaluated by an independent matrix code',
      }),
    ),
  ]
}

export function packingRows(): CheckRow[] {
  const air = { density: 1.2041, c: 343.2 }
  const a = delanyBazley(1000, 1e4, air.density, air.c)
  const b = delanyBazley(500, 1e4, air.density, air.c)
  const Z0 = air.density * air.c
  const k0 = (f: number) => (2 * Math.PI * f) / air.c
  const s = { bore: 0.025, outer: 0.07, resistivity: 1e4, ...air }
  const one = (id: string, quantity: string, expected: number, got: number, within: number, unit = '1') =>
    row({ id, quantity, unit, expected, got, within, origin: 'derived', source: delany })
  return [
    one('E-40a', 'packing 1 kHz, 10 kPa·s/m²: Re Z/ρc', 1.2817, a.Z.re / Z0, 2e-3),
    one('E-40b', 'same: Im Z/ρc', -0.4097, a.Z.im / Z0, 2e-3),
    one('E-40c', 'same: Re k/k0', 1.4304, a.k.re / k0(1000), 2e-3),
    one('E-40d', 'same: Im k/k0', -0.666, a.k.im / k0(1000), 2e-3),
    one(
      'E-40e',
      'same: absorption of 50 mm on a hard wall',
      0.885,
      absorption(a, 0.05, air.density, air.c),
      2e-3,
    ),
    one('E-41a', 'packing 500 Hz: Re Z/ρc', 1.4751, b.Z.re / Z0, 2e-3),
    one('E-41b', 'same: Im k/k0', -1.006, b.k.im / k0(500), 2e-3),
    one('E-41c', 'same: absorption of 50 mm', 0.496, absorption(b, 0.05, air.density, air.c), 2e-3),
    one('E-41d', 'packed tube 25 in 70 mm at 250 Hz', 31.1, straightThroughLoss(s, 250), 0.3, 'dB/m'),
    one('E-41e', 'same at 500 Hz', 53.7, straightThroughLoss(s, 500), 0.5, 'dB/m'),
    one('E-41f', 'same at 1 kHz', 80.3, straightThroughLoss(s, 1000), 0.8, 'dB/m'),
  ]
}

export function levelRows(): CheckRow[] {
  const iec = 'IEC 61672-1:2013 Table 3, A-weighting (from memory)'
  return [
    ...(
      [
        [100, -19.1],
        [200, -10.8],
        [500, -3.2],
        [1000, 0],
      ] as const
    ).map(([f, dB]) =>
      row({
        id: `E-56-${f}`,
        quantity: `A-weighting at ${f} Hz`,
        unit: 'dB',
        expected: dB,
        got: aWeight(f),
        within: 0.1,
        origin: 'published',
        source: iec,
      }),
    ),
    row({
      id: 'E-63a',
      quantity: 'monopole 0.01 kg/s at 150 Hz, 1 m, free space',
      unit: 'Pa',
      expected: 0.53,
      got: harmonicPressure(0.01, 150, 1, false),
      within: 1e-3,
      origin: 'exact',
      source: 'p = 2πf ṁ/(√2 4πr)',
    }),
    row({
      id: 'E-63b',
      quantity: 'same, level over water',
      unit: 'dB',
      expected: 94.5,
      got: levelOf(harmonicPressure(0.01, 150, 1, true)),
      within: 0.05,
      origin: 'exact',
      source: 'p = 2πf ṁ/(√2 2πr), re 20 µPa',
    }),
    row({
      id: 'E-64',
      quantity: 'pass-by limit, 15 kW, two engines',
      unit: 'dB(A)',
      expected: 75,
      got: passByLimit(15e3, 2),
      within: 0,
      origin: 'published',
      source: 'Directive 2013/53/EU, Annex I part C',
    }),
  ]
}
