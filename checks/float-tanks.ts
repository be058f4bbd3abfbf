/** Slack tanks against closed solutions; part of the group float. */

import { liquidsOf, surfaceLoss, type TankShape } from '../src/hull/aboard/liquids.ts'
import { liquidIn } from '../src/hull/afloat/energy.ts'
import { tankState } from '../src/hull/afloat/load.ts'
import { makeFrame } from '../src/physics/solid/waterFrame.ts'
import { type Row, row } from './row.ts'

const deg = Math.PI / 180
const naval =
  'E. V. Lewis (ed.), Principles of Naval Architecture vol. I (1988), ch. II, free surface: loss ρ i / m'

const holding = (shape: TankShape, volume: number) =>
  liquidsOf({ name: 'tank', shape, foot: [0, 0, 0], volume, give: 0, density: 745, sealed: false })

const exact = (
  id: string,
  quantity: string,
  unit: string,
  expected: number,
  got: number,
  part: number,
  source: string,
): Row => row(id, quantity, unit, expected, got, part, 'derived', source)

/** Upright: the second moment of the surface of each shape, and cells. */
function surfaces(): Row[] {
  const box: TankShape = { kind: 'box', length: 0.3, width: 0.4, height: 0.2, cells: 1 }
  const lying: TankShape = { kind: 'lying cylinder', diameter: 0.2, length: 0.5, lies: 'along' }
  const standing: TankShape = { kind: 'standing cylinder', diameter: 0.3, height: 0.2 }
  const mass = 150
  const loss = (shape: TankShape, volume: number) => surfaceLoss(holding(shape, volume), mass)
  const of = (i: number) => (745 * i) / mass
  return [
    exact(
      'T-1',
      'GM lost to a box 0.3 × 0.4 m, i = l b³/12',
      'm',
      of((0.3 * 0.4 ** 3) / 12),
      loss(box, 0.009),
      1e-9,
      naval,
    ),
    exact(
      'T-2',
      'the same in two tight cells: a quarter',
      'm',
      of((0.3 * 0.4 ** 3) / 48),
      loss({ ...box, cells: 2 }, 0.009),
      1e-9,
      naval,
    ),
    exact(
      'T-3',
      'a drum lying along, half full: i = l d³/12 (48 facets)',
      'm',
      of((0.5 * 0.2 ** 3) / 12),
      loss(lying, (Math.PI / 8) * 0.2 ** 2 * 0.5),
      5e-3,
      naval,
    ),
    exact(
      'T-4',
      'a drum on end: i = π d⁴/64 (48 facets)',
      'm',
      of((Math.PI * 0.3 ** 4) / 64),
      loss(standing, 0.007),
      3e-3,
      naval,
    ),
  ]
}

/** Heeled: where the liquid's middle goes, worked out from triangles and circle segments. */
function heeled(): Row[] {
  const b = 0.36
  const d = 0.16
  const box: TankShape = { kind: 'box', length: 0.3, width: b, height: d, cells: 1 }
  const at = (shape: TankShape, volume: number, heel: number) =>
    liquidIn(tankState(holding(shape, volume)[0]!), makeFrame(0, heel)).centre
  // small heel: a wedge moves across, tan φ b³/12 over the area
  const small = 10 * deg
  const section = (b * d) / 2
  // 45°, half full: the surface meets floor and lid; a rectangle b/2 − d/2 wide and a triangle of legs d lie at the low wall
  const top = b / 2 - d / 2
  const fromWall = (top * d * (top / 2) + ((d * d) / 2) * (top + d / 3)) / section
  // 60°, a tenth full: all of it a triangle in the low corner, legs along floor and wall as cot and tan of the heel
  const steep = 60 * deg
  const area = 0.1 * b * d
  const floor = Math.sqrt((2 * area) / Math.tan(steep))
  const radius = 0.1
  const lying: TankShape = { kind: 'lying cylinder', diameter: 2 * radius, length: 0.5, lies: 'along' }
  const drum = at(lying, (Math.PI / 2) * radius ** 2 * 0.5, 40 * deg)
  const triangles = 'derived: first moments of the triangle and rectangle the surface leaves; see the comment'
  return [
    exact(
      'T-5',
      'middle of the liquid in a half full box at 10°, to the low side',
      'm',
      (Math.tan(small) * b ** 3) / 12 / section,
      at(box, section * 0.3, small)[1],
      1e-9,
      'derived: the wedge of a wall-sided surface, tan φ b³/12 over the section',
    ),
    exact(
      'T-6',
      'the same at 45°, its surface on floor and lid',
      'm',
      b / 2 - fromWall,
      at(box, section * 0.3, 45 * deg)[1],
      1e-9,
      triangles,
    ),
    exact(
      'T-7',
      'a tenth full at 60°, all in the low corner',
      'm',
      b / 2 - floor / 3,
      at(box, area * 0.3, steep)[1],
      1e-9,
      triangles,
    ),
    exact(
      'T-8',
      'a half full drum lying along, 40°: its middle 4r/3π from the axis',
      'm',
      (4 * radius) / (3 * Math.PI),
      Math.hypot(drum[1], drum[2] - radius),
      4e-3,
      'derived: centroid of a half circle, 4r/3π (48 facets)',
    ),
    exact(
      'T-9',
      'and straight below it',
      'rad',
      40 * deg,
      Math.atan2(drum[1], radius - drum[2]),
      2e-3,
      'derived: a round tank’s liquid does not turn with the tank',
    ),
  ]
}

export function tankRows(): Row[] {
  return [...surfaces(), ...heeled()]
}
