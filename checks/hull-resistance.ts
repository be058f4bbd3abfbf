import type { CheckRow } from '../src/base/answers/check.ts'
import { airDrag } from '../src/trades/drag/air.ts'
import { blountFoxMultiplier, savitskyHighSpeedLift, shufordLift } from '../src/trades/drag/corrections.ts'
import { volumetricFroude } from '../src/trades/drag/hullSpec.ts'
import { celanoLimit, chartLimit } from '../src/trades/drag/porpoising.ts'
import { accelerate } from '../src/trades/drag/run.ts'
import { sprayProjectedArea, whiskerSpray } from '../src/trades/drag/spray.ts'
import { board, degree, savitskyExample } from './planingChecks.ts'
import { type Row, rowOf } from './row.ts'
import { friction, water } from './waterChecks.ts'
import { preplaning, waves } from './wavesChecks.ts'

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
  const group = (name: string, rows: Row[]) => rows.map(rowOf(name))
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
