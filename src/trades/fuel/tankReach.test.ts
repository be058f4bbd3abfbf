import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { TankShape } from '../../hull/aboard/liquids.ts'
import { type FuelState, fuelStates, liquidFrame, worthOf } from './fuelStates.ts'
import { leftByWeight, shareAt, surfaceAt, tankBody, volumeBelow } from './tankReach.ts'

const box: TankShape = { kind: 'box', length: 0.4, width: 0.2, height: 0.1, cells: 1 }
const lean = (trim = 0, heel = 0, forward = 0): FuelState => ({
  name: 'lean',
  says: 'leaning',
  trim,
  heel,
  forward,
  driven: true,
  lasts: true,
})
const shapes: TankShape[] = [
  box,
  { ...box, cells: 2 },
  { kind: 'lying cylinder', diameter: 0.15, length: 0.4, lies: 'across' },
  { kind: 'lying cylinder', diameter: 0.15, length: 0.4, lies: 'along' },
  { kind: 'standing cylinder', diameter: 0.2, height: 0.3 },
]

describe('the liquid’s frame', () => {
  test('speeding up by g tips the fuel by 45° like a bow held up, and makes it √2 as heavy', () => {
    const { frame, weight } = liquidFrame(lean(0, 0, 9.80665))
    expect(frame.trim).toBeCloseTo(Math.PI / 4, 12)
    expect(weight / 9.80665).toBeCloseTo(Math.SQRT2, 12)
  })
  test('what a place is worth is density times g times height at rest, and falls forward when it slows', () => {
    expect(worthOf(lean(), [3, 1, 0.2], 745)).toBeCloseTo(745 * 9.80665 * 0.2, 9)
    expect(worthOf(lean(0, 0, -2), [1, 0, 0], 745)).toBeCloseTo(-1490, 9)
  })
})

describe('volumes below a place', () => {
  test('in a level box they are its floor times the height', () => {
    const tank = tankBody(box)
    expect(volumeBelow(tank, [0.1, 0.05, 0.02], lean())).toBeCloseTo(0.4 * 0.2 * 0.02, 12)
    expect(shareAt(tank, [0, 0, 0.1], lean())).toBeCloseTo(1, 12)
  })
  test('bow up, a corner pick-up aft leaves nothing and one forward a wedge', () => {
    const tank = tankBody(box)
    const up = lean(Math.atan(0.1))
    expect(volumeBelow(tank, [-0.2, 0, 0], up)).toBeCloseTo(0, 12)
    // a wedge 0.4 long and 0.04 high aft
    expect(volumeBelow(tank, [0.2, 0, 0], up)).toBeCloseTo(0.5 * 0.4 * 0.04 * 0.2, 10)
  })
  test.each(shapes)('in any lean the surface of a volume has that volume below it: %o', (shape) => {
    const tank = tankBody(shape)
    fc.assert(
      fc.property(
        fc.double({ min: -0.6, max: 0.6, noNaN: true }),
        fc.double({ min: -0.4, max: 0.4, noNaN: true }),
        fc.double({ min: 0.02, max: 0.98, noNaN: true }),
        (trim, heel, share) => {
          const s = lean(trim, heel)
          const { frame } = liquidFrame(s)
          const level = surfaceAt(tank, share * tank.capacity, s)
          const at = [frame.nx * level, frame.ny * level, frame.nz * level] as const
          expect(volumeBelow(tank, at, s) / tank.capacity).toBeCloseTo(share, 6)
        },
      ),
      { numRuns: 30 },
    )
  })
  test('a weighted hose leaves no more than its mouth’s clearance asks, in any lean', () => {
    const tank = tankBody(box)
    expect(leftByWeight(tank, 0, lean(0.3))).toBeCloseTo(0, 12)
    expect(leftByWeight(tank, 0.01, lean())).toBeCloseTo(0.4 * 0.2 * 0.01, 12)
    expect(leftByWeight(tank, 0.01, lean(0.3))).toBeLessThan(0.4 * 0.2 * 0.01)
  })
  test('cells are met each by its own vent: rolled, two narrow cells keep the vent dry longer than one wide tank', () => {
    const wide = shareAt(tankBody(box), [0, 0, 0.1], lean(0, 0.4))
    const cells = shareAt(tankBody({ ...box, cells: 2 }), [0, 0, 0.1], lean(0, 0.4))
    expect(cells).toBeGreaterThan(wide)
  })
})

test('the states cover rest, hump, flat out, bow down, waves and rolls; braking without a balance is a usual one', () => {
  const states = fuelStates({ rest: 0.01, aft: 0.03 })
  expect(states.map((s) => s.name)).toEqual([
    'at rest',
    'rider aft',
    'setting off',
    'hump',
    'flat out',
    'bow down',
    'slowing',
    'up a wave',
    'down a wave',
    'to port',
    'to starboard',
  ])
  expect(states.find((s) => s.name === 'slowing')!.forward).toBeLessThan(0)
})
