import type { CheckRow } from '../src/base/answers/check.ts'
import { weightSum } from '../src/hull/aboard/masses.ts'
import { lookAt, makeState } from '../src/hull/afloat/energy.ts'
import { metacentricHeight, settle } from '../src/hull/afloat/settle.ts'
import { flawsOf } from '../src/physics/solid/closed.ts'
import { solidProperties } from '../src/physics/solid/integrals.ts'
import { moved } from '../src/physics/solid/mesh.ts'
import { boxMesh } from '../src/physics/solid/primitives.ts'
import {
  basicFlotationWeights,
  personsCapacity,
  personsCount,
  submergedFactor,
} from '../src/trades/float/flotation.ts'
import { holeFlow } from '../src/trades/float/tests.ts'
import { tankRows } from './float-tanks.ts'
import { afloat, board, box, boxBarge, floatingLog, masters, roundBodies, wigley } from './floatBodies.ts'
import { type Row, row, rowOf } from './row.ts'

/** A double-bottom tank pumped half out: the rise of G and the free surface, the latter by the exact tank. */
function slackTank(): Row[] {
  const ship = boxMesh([0, -10, 0], [100, 10, 12])
  const tank = boxMesh([40, -5, 0], [55, 5, 2])
  const full = 8153.75
  const pumped = 15 * 10 * 1 * 1.025
  const rise =
    weightSum([
      {
        name: 'ship, tank half full',
        mass: full - pumped,
        at: [50, 0, (full * 7.5 - pumped * 1.5) / (full - pumped)],
      },
    ]).centre[2] - 7.5
  const solids = 8000 - pumped
  const slack = settle(
    afloat(ship, solids, [50, 0, 6], 1.025, [{ name: 'tank', mesh: tank, volume: 150, density: 1.025 }]),
    undefined,
    { freeTrim: false, freeHeel: false },
  )
  const frozen = settle(afloat(ship, 8000, [50, 0, (solids * 6 + pumped * 0.5) / 8000], 1.025), undefined, {
    freeTrim: false,
    freeHeel: false,
  })
  const loss = metacentricHeight(frozen.state) - metacentricHeight(slack.state)
  const source = `${masters}free-surface example: 8153.75 t, KM 8 m, KG 7.5 m, tank 15 × 10 × 2 m pumped half out; answer worked from its formula`
  return [
    row('C-20a', 'rise of G', 'm', 0.1153, rise, 1e-3, 'derived', source),
    row('C-20b', 'free-surface loss, by the exact slack tank', 'm', 0.1602, loss, 1e-3, 'derived', source),
    row('C-20c', 'GM left', 'm', 0.2245, 8 - 7.5 - rise - loss, 1e-3, 'derived', source),
  ]
}

function meshRows(): Row[] {
  const p = solidProperties(box)
  const far = solidProperties(moved(box, [3, -2, 5]))
  const open = Math.hypot(...p.openArea)
  const exact = 'exact: box 2.4 × 0.7 × 0.3 m'
  return [
    row('C-56a', 'volume of a box mesh', 'm³', 0.504, p.volume, 1e-12, 'exact', exact),
    row('C-56b', 'height of its centroid', 'm', 0.15, p.centroid[2], 1e-12, 'exact', exact),
    row('C-56c', 'its area', 'm²', 5.22, p.area, 1e-12, 'exact', exact),
    {
      id: 'C-56d',
      quantity: 'sum of its area vectors',
      unit: 'm²',
      expected: 0,
      got: open,
      within: 1e-12,
      origin: 'exact',
      source: exact,
    },
    {
      id: 'C-56e',
      quantity: 'flaws found in it',
      unit: '1',
      expected: 0,
      got: flawsOf(box).length,
      within: 0,
      origin: 'exact',
      source: exact,
    },
    row(
      'C-57a',
      'volume with the origin moved to (3, −2, 5)',
      'm³',
      p.volume,
      far.volume,
      1e-12,
      'exact',
      exact,
    ),
    {
      id: 'C-57b',
      quantity: 'shift of its centroid',
      unit: 'm',
      expected: 0,
      got: Math.hypot(
        far.centroid[0] - p.centroid[0] - 3,
        far.centroid[1] - p.centroid[1] + 2,
        far.centroid[2] - p.centroid[2] - 5,
      ),
      within: 1e-12,
      origin: 'exact',
      source: exact,
    },
  ]
}

/** The exact second derivative against the difference of the exact first one. */
function derivatives(): Row[] {
  const f = afloat(box, 190, [1.2, 0, 0.2])
  const at = settle(f).value
  const d = 1e-5
  const look = (heel: number) => lookAt(f, at.h, at.trim, heel, makeState())
  const slope = (look(d).g2 - look(-d).g2) / (2 * d)
  return [
    row(
      'GM-1',
      'heel stiffness against a difference of moments',
      'kg·m',
      slope,
      look(0).h22,
      1e-7,
      'derived',
      'derived: central difference of the righting moment, step 1e-5 rad',
    ),
  ]
}

function rules(): Row[] {
  const lb = 0.45359237
  const w = basicFlotationWeights(300 * lb, 500 * lb)
  const handbook = 'US Coast Guard, Boatbuilder’s Handbook, safe loading; 33 CFR 183.41 and 183.43'
  return [
    {
      id: 'C-49a',
      quantity: 'persons capacity from a side load of 545 lb',
      unit: 'lb',
      expected: 908,
      got: personsCapacity(545 * lb) / lb,
      within: 0.5,
      origin: 'published',
      source: handbook,
    },
    {
      id: 'C-49b',
      quantity: 'persons of 550 lb, rounded',
      unit: '1',
      expected: 4,
      got: Math.round(personsCount(550 * lb)),
      within: 0,
      origin: 'published',
      source: handbook,
    },
    {
      id: 'C-49c',
      quantity: 'persons of 547 lb, rounded',
      unit: '1',
      expected: 4,
      got: Math.round(personsCount(547 * lb)),
      within: 0,
      origin: 'published',
      source: handbook,
    },
    row(
      'C-51',
      'submerged test weights, persons 300 lb of 500 lb',
      'lb',
      90,
      w.total / lb,
      1e-12,
      'published',
      '33 CFR 183.105: two fifteenths of persons and a quarter of the rest',
    ),
    row(
      'C-58',
      'leak through a 10 mm hole 0.1 m down',
      'L/s',
      0.066,
      1e3 * holeFlow(Math.PI * 0.005 ** 2, 0.1),
      5e-3,
      'derived',
      'Q = 0.6 A √(2gz), Torricelli with the usual sharp-edge coefficient',
    ),
    {
      id: 'K-1',
      quantity: 'weight under water over weight in air, resin-glass at 1.5',
      unit: '1',
      expected: 0.33,
      got: submergedFactor(1500),
      within: 0.005,
      origin: 'published',
      source: 'factor K of the US Coast Guard flotation sums',
    },
    {
      id: 'K-2',
      quantity: 'the same, aluminium at 2.7',
      unit: '1',
      expected: 0.63,
      got: submergedFactor(2700),
      within: 0.005,
      origin: 'derived',
      source: '(S − 1)/S',
    },
    {
      id: 'K-3',
      quantity: 'the same, steel at 7.85',
      unit: '1',
      expected: 0.87,
      got: submergedFactor(7850),
      within: 0.005,
      origin: 'derived',
      source: '(S − 1)/S',
    },
  ]
}

/** Flotation and stability against textbooks, closed solutions and printed rules. */
export function floatChecks(): CheckRow[] {
  const rows = [
    ...boxBarge(),
    ...board(),
    ...floatingLog(),
    ...roundBodies(),
    ...wigley(),
    ...slackTank(),
    ...tankRows(),
    ...meshRows(),
    ...derivatives(),
    ...rules(),
  ]
  return rows.map(rowOf('float'))
}
