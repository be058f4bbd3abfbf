import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  creepRatio,
  type JointDraw,
  pressureStood,
  pullLeft,
  relaxed,
  type Stack,
  springsOf,
  stages,
} from './jointRelax.ts'
import { bearingArea, boltOf } from './metricBolts.ts'
import { leftWarm, partDataOf, partNames } from './partMaterials.ts'

const bolt = boltOf('M5')
const stack = (over: Partial<Stack> = {}): Stack => ({
  bolt,
  thickness: 0.016,
  soft: 0.011,
  washer: bolt.washer,
  area: bearingArea(bolt, 'plain'),
  data: partDataOf('printed nylon'),
  sleeves: false,
  discSprings: false,
  ...over,
})
const usual: JointDraw = { embeds: 30e-6, creep: 0.75, stands: 1, warm: 328 }
const metal: JointDraw = { ...usual, embeds: 8e-6 }

test('pull only falls as time goes by, and never below nought', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...partNames),
      fc.double({ min: 10, max: 2e4, noNaN: true }),
      fc.double({ min: 280, max: 370, noNaN: true }),
      fc.boolean(),
      (made, first, warm, discSprings) => {
        const s = stack({ data: partDataOf(made), discSprings })
        const pulls = stages.map((stage) => pullLeft(s, springsOf(s), first, stage, { ...usual, warm }))
        expect(pulls[0]!).toBeLessThanOrEqual(first)
        for (let i = 1; i < pulls.length; i++) expect(pulls[i]!).toBeLessThanOrEqual(pulls[i - 1]! + 1e-9)
        expect(pulls.at(-1)!).toBeGreaterThanOrEqual(0)
      },
    ),
  )
})

test('no torque makes plastic under a head pull more than its pressure times the area', () => {
  const s = stack()
  const springs = springsOf(s)
  const cap = pressureStood(s.data, 1 / 6, usual.warm) * s.area
  for (const first of [2e3, 5e3, 2e4])
    expect(pullLeft(s, springs, first, 'minutes', usual)).toBeLessThanOrEqual(cap + 1e-9)
})

test('sleeves keep two thirds and more of a full pull, plastic alone keeps less than a third of it', () => {
  const bare = stack()
  const sleeved = stack({ sleeves: true })
  const first = 4.5e3
  expect(pullLeft(sleeved, springsOf(sleeved), first, 'season', metal) / first).toBeGreaterThan(2 / 3)
  expect(pullLeft(bare, springsOf(bare), first, 'season', usual) / first).toBeLessThan(1 / 3)
})

test('disc springs keep more of the pull of a soft joint', () => {
  const left = (s: Stack) => pullLeft(s, springsOf(s), 400, 'season', usual)
  expect(left(stack({ discSprings: true }))).toBeGreaterThan(left(stack()))
})

test('creep grows with time and warmth; a thousand hours at 23 °C give its table value', () => {
  expect(creepRatio(0.75, 1000, 296.15)).toBeCloseTo(0.75, 12)
  expect(creepRatio(0.75, 10, 296.15)).toBeLessThan(0.75)
  expect(creepRatio(0.75, 10, 323.15)).toBeCloseTo(2 * creepRatio(0.75, 10, 296.15), 9)
  expect(relaxed({ bolt: 1, soft: 1, hard: 0 }, 0)).toBe(1)
})

test('plastic halves with every 27 K and collapses beyond its working temperature; metal does neither', () => {
  const nylon = partDataOf('printed nylon')
  expect(leftWarm(nylon, 296.15 + 27)).toBeCloseTo(0.5, 9)
  expect(leftWarm(partDataOf('PLA'), 273.15 + 65)).toBeLessThan(0.05)
  expect(leftWarm(partDataOf('steel'), 500)).toBe(1)
  expect(pressureStood(nylon, 1000, 296.15)).toBeCloseTo(15e6, 0)
  expect(() => partDataOf('PEEK')).toThrow(/made: "PEEK" is not one of aluminium/)
})
