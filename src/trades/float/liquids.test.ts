import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  liquidsOf,
  liquidWeight,
  stilled,
  surfaceLoss,
  type Tank,
  type TankShape,
  tankMeshes,
} from '../../hull/aboard/liquids.ts'
import { liquidIn } from '../../hull/afloat/energy.ts'
import { tankState } from '../../hull/afloat/load.ts'
import { metacentricHeight, settle } from '../../hull/afloat/settle.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import { makeFrame } from '../../physics/solid/waterFrame.ts'
import { atRest } from './atRest.ts'
import { afloat, board, deg, sled } from './float.testkit.ts'
import { floatAnswer } from './floatAnswer.ts'
import { rightingAt } from './heeled.ts'
import { type FloatInput, slackOf } from './input.ts'
import { swampedBodies } from './swamped.ts'

const box = (cells = 1): TankShape => ({ kind: 'box', length: 0.3, width: 0.36, height: 0.16, cells })
const shapes: TankShape[] = [
  box(),
  box(3),
  { kind: 'lying cylinder', diameter: 0.16, length: 0.4, lies: 'across' },
  { kind: 'lying cylinder', diameter: 0.16, length: 0.4, lies: 'along' },
  { kind: 'standing cylinder', diameter: 0.24, height: 0.2 },
]
const capacity = (s: TankShape) => tankMeshes(s, [0, 0, 0]).reduce((v, m) => v + solidProperties(m).volume, 0)
const tank = (shape: TankShape, part: number, foot: Tank['foot'] = [1.2, 0, 0.06]): Tank => ({
  name: 'tank',
  shape,
  foot,
  volume: part * capacity(shape),
  give: 0,
  density: 745,
  sealed: false,
})
const anyShape = fc.constantFrom(...shapes)
const some = { numRuns: 60 }
const angle = (most: number) => fc.double({ min: -most, max: most, noNaN: true })

const armAt = (on: FloatInput, heel: number) => rightingAt(on, heel, atRest(on).ridden.attitude)

const input = (tanks: Tank[]) => ({
  hull: sled,
  water: 999,
  weights: [{ name: 'craft', mass: 60, at: [1.05, 0, 0.15] as const }],
  rider: { mass: 78, stature: 1.76, stance: 'kneeling' as const, x: 0.95, y: 0 },
  openings: [],
  foam: [],
  compartments: [],
  tanks,
})

describe('tank shapes', () => {
  test('each holds what its measures say: length × width × height, or π/4 d² l', () => {
    expect(capacity(box())).toBeCloseTo(0.3 * 0.36 * 0.16, 12)
    expect(capacity(box(3))).toBeCloseTo(0.3 * 0.36 * 0.16, 12)
    expect(capacity(shapes[2]!)).toBeCloseTo((Math.PI / 4) * 0.16 ** 2 * 0.4, 12)
    expect(capacity(shapes[4]!)).toBeCloseTo((Math.PI / 4) * 0.24 ** 2 * 0.2, 12)
  })

  test('each stands on its foot: the middle of the floor is the lowest place over the given point', () => {
    for (const s of shapes) {
      const all = tankMeshes(s, [1.1, 0.05, 0.07]).flatMap((m) => Array.from(m.points))
      const axis = (k: number) => all.filter((_, i) => i % 3 === k)
      const middle = (k: number) => (Math.min(...axis(k)) + Math.max(...axis(k))) / 2
      expect(middle(0)).toBeCloseTo(1.1, 9)
      expect(middle(1)).toBeCloseTo(0.05, 9)
      expect(Math.abs(Math.min(...axis(2)) - 0.07)).toBeLessThan(5e-4)
    }
  })
})

describe('slack liquid of a tank', () => {
  test('its volume is the same at every heel and trim, and its middle stays inside the tank', () => {
    fc.assert(
      fc.property(
        anyShape,
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        angle(1.5),
        angle(3),
        (s, part, trim, heel) => {
          for (const l of liquidsOf(tank(s, part))) {
            const got = liquidIn(tankState(l), makeFrame(trim, heel))
            expect(Math.abs(got.volume - l.volume)).toBeLessThan(
              1e-9 * solidProperties(l.mesh).volume + 1e-15,
            )
            expect(got.centre[0]).toBeGreaterThan(1.2 - 0.21)
            expect(got.centre[0]).toBeLessThan(1.2 + 0.21)
            expect(Math.abs(got.centre[1])).toBeLessThan(0.21)
            expect(got.centre[2]).toBeGreaterThan(0.059)
            expect(got.centre[2]).toBeLessThan(0.06 + 0.21)
          }
        },
      ),
      some,
    )
  })

  test('full or empty it moves nothing: righting arms are those of the same weight fixed in place', () => {
    fc.assert(
      fc.property(
        anyShape,
        fc.constantFrom(0, 1),
        fc.double({ min: 0.02, max: 1.2, noNaN: true }),
        (s, part, heel) => {
          const t = tank(s, part)
          const { tanks: _, ...dry } = input([])
          const fixed = liquidWeight(t)
          const frozen = { ...dry, weights: [...dry.weights, ...(fixed ? [fixed] : [])] }
          expect(armAt(input([t]), heel)).toBeCloseTo(armAt(frozen, heel), 7)
        },
      ),
      { numRuns: 25 },
    )
  })

  test('upright it takes Σ ρ i / m from GM, and the solver finds the same', () => {
    fc.assert(
      fc.property(anyShape, fc.double({ min: 0.15, max: 0.85, noNaN: true }), (s, part) => {
        const liquids = liquidsOf(tank(s, part))
        const slack = settle(afloat(board, 120, [1.2, 0, 0.1], { liquids }), undefined, { freeHeel: false })
        const still = liquids.map(stilled)
        const mass = 120 + still.reduce((m, w) => m + w.mass, 0)
        const centre = [0, 1, 2].map(
          (k) => (120 * [1.2, 0, 0.1][k]! + still.reduce((m, w) => m + w.mass * w.at[k]!, 0)) / mass,
        ) as [number, number, number]
        const fixed = settle(afloat(board, mass, centre), undefined, { freeHeel: false })
        const lost = metacentricHeight(fixed.state) - metacentricHeight(slack.state)
        expect(lost).toBeCloseTo(surfaceLoss(liquids, mass), 5)
      }),
      some,
    )
  })

  test('n tight cells side by side take 1/n² of what one does', () => {
    for (const n of [2, 3, 5])
      expect(surfaceLoss(liquidsOf(tank(box(n), 0.5)), 150)).toBeCloseTo(
        surfaceLoss(liquidsOf(tank(box(), 0.5)), 150) / n ** 2,
        12,
      )
  })

  test('a box of liquid at a heel its lid and floor meet: the triangle of the surface against the walls, worked out by hand', () => {
    // half full, 45° of heel: width b, depth d < b; the surface runs from lid to floor, so the section is a trapezium of
    // area b d/2 with its bottom edge b/2 + d/2 and top b/2 − d/2 from the low wall; first moments by parts
    const [l] = liquidsOf(tank(box(), 0.5))
    const got = liquidIn(tankState(l!), makeFrame(0, 45 * deg))
    const b = 0.36
    const d = 0.16
    const top = b / 2 - d / 2
    // rectangle of width `top` and triangle of legs d, distances from the low (port) wall and from the floor
    const area = (b * d) / 2
    const fromWall = (top * d * (top / 2) + ((d * d) / 2) * (top + d / 3)) / area
    const fromFloor = (top * d * (d / 2) + ((d * d) / 2) * (d / 3)) / area
    expect(got.centre[1]).toBeCloseTo(b / 2 - fromWall, 9)
    expect(got.centre[2]).toBeCloseTo(0.06 + fromFloor, 9)
  })

  test('never makes the craft stiffer: the righting arm with it running is at most that with it frozen, heel by heel', () => {
    fc.assert(
      fc.property(
        anyShape,
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        fc.double({ min: 0.05, max: 1.2, noNaN: true }),
        (s, part, heel) => {
          const t = tank(s, part)
          const { tanks: _, ...dry } = input([])
          const frozen = { ...dry, weights: [...dry.weights, liquidWeight(t)!] }
          expect(armAt(input([t]), heel)).toBeLessThan(armAt(frozen, heel) + 1e-6)
        },
      ),
      { numRuns: 25 },
    )
  })
})

describe('the craft with tanks', () => {
  test('counts the liquid once: mass and draft are those of the same weight in the list', () => {
    const t = tank(box(), 0.6)
    const { tanks: _, ...dry } = input([])
    const a = floatAnswer(input([t]))
    const b = floatAnswer({ ...dry, weights: [...dry.weights, liquidWeight(t)!] })
    expect(a.weights.mass).toBeCloseTo(b.weights.mass, 9)
    expect(a.ridden.mass).toBeCloseTo(b.ridden.mass, 9)
    // the liquid levels out as the craft trims: drafts agree to the little that shifts
    expect(a.ridden.draftAft).toBeCloseTo(b.ridden.draftAft, 3)
    expect(a.ridden.gmFeet).toBeLessThan(b.ridden.gmFeet)
    expect(slackOf(input([tank(box(), 0)]))).toEqual([])
  })

  test('asks about a tank that reaches out of the hull, and not about one that stands on deck', () => {
    const asked = (foot: Tank['foot']) =>
      floatAnswer(input([tank(box(), 0.5, foot)])).flags.filter((f) => f.path === 'tanks.0.foot')
    expect(asked([1.2, 0, 0.06])).toEqual([])
    expect(asked([1.2, 0.3, 0.06])[0]?.text).toMatch(/% of tank lies outside the hull/)
    expect(asked([1.2, 0, 0.25])).toEqual([])
  })

  test('swamped, a sealed tank lifts with its whole inside, an open one with its liquid only, none twice', () => {
    const of = (
      t: Tank,
      weights: {
        name: string
        mass: number
        at: [number, number, number]
        size?: [number, number, number]
        sealed?: boolean
      }[] = [],
    ) =>
      swampedBodies({ hull: sled, weights, foam: [], compartments: [], tanks: [t] }).reduce(
        (v, b) => v + b.share * solidProperties(b.mesh).volume,
        0,
      )
    const t = tank(box(), 0.4)
    expect(of(t)).toBeCloseTo(t.volume, 12)
    expect(of({ ...t, sealed: true })).toBeCloseTo(capacity(box()), 12)
    const shell = {
      name: 'tank',
      mass: 2,
      at: [1.2, 0, 0.14] as [number, number, number],
      size: [0.3, 0.36, 0.17] as [number, number, number],
      sealed: true,
    }
    expect(of({ ...t, sealed: true }, [shell])).toBeCloseTo(0.3 * 0.36 * 0.17, 12)
  })
})
