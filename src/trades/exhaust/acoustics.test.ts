import fc from 'fast-check'
import { expect, test } from 'vitest'
import { add, type Complex, multiply, scale } from '../../base/numerics/complex.ts'
import { branch, chain, chamberLoss, closedStub, type FourPole, transmissionLoss, tube } from './fourPole.ts'
import {
  aWeight,
  floorAtOneMetre,
  harmonicPressure,
  levelOf,
  outletLevel,
  passByLimit,
  sumOfLevels,
} from './level.ts'
import { boxFourPole, boxLoss, checkBox } from './muffler.ts'
import { absorption, delanyBazley, firstCrossMode, hotResistivity, straightThroughLoss } from './packing.ts'

const c = 343.2
const num = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const box = fc
  .record({
    length: num(0.05, 0.6),
    diameter: num(0.06, 0.2),
    inletBore: num(0.01, 0.04),
    outletBore: num(0.01, 0.04),
    a: num(0, 0.49),
    b: num(0, 0.49),
  })
  .map((x) => ({
    length: x.length,
    area: (Math.PI / 4) * x.diameter ** 2,
    inletBore: x.inletBore,
    outletBore: x.outletBore,
    inletReach: x.a * x.length,
    outletReach: x.b * x.length,
    packing: 0,
    resistivity: 15e3,
  }))

const one = (d: Complex, digits = 8) => {
  expect(d.re).toBeCloseTo(1, digits)
  expect(d.im).toBeCloseTo(0, digits)
}

/** AD − BC: one for every passive reciprocal element without flow */
const determinant = ([a, b, c, d]: FourPole): Complex => add(multiply(a, d), scale(multiply(b, c), -1))

test('tubes, branches and their chains have determinant one: they are reciprocal', () => {
  fc.assert(
    fc.property(num(0.01, 0.5), num(1e-4, 0.02), num(0.5, 40), (l, S, k) => {
      const parts = [tube(l, S, k, c), branch(closedStub(0.6 * l, 2 * S, k, c))]
      for (const p of parts) one(determinant(p), 7)
      one(determinant(chain(parts)), 6)
    }),
  )
})

test('a steady flow leaves the determinant on the unit circle', () => {
  const d = determinant(tube(0.3, 1e-3, 9, c, 0.2))
  expect(Math.hypot(d.re, d.im)).toBeCloseTo(1, 10)
})

test('no passive box gives sound away: transmission loss is never below nought between equal tubes', () => {
  fc.assert(
    fc.property(box, num(20, 2000), (b, f) => {
      const S = (Math.PI / 4) * b.inletBore ** 2
      expect(transmissionLoss(boxFourPole(b, f, c), S, S, c)).toBeGreaterThan(-1e-6)
    }),
  )
})

test('the loss is the same from either end of a box', () => {
  fc.assert(
    fc.property(box, num(20, 2000), (b, f) => {
      const turned = {
        ...b,
        inletBore: b.outletBore,
        outletBore: b.inletBore,
        inletReach: b.outletReach,
        outletReach: b.inletReach,
      }
      const [S1, S2] = [b.inletBore, b.outletBore].map((d) => (Math.PI / 4) * d * d) as [number, number]
      const there = transmissionLoss(boxFourPole(b, f, c), S1, S2, c)
      const back = transmissionLoss(boxFourPole(turned, f, c), S2, S1, c)
      expect(back).toBeCloseTo(there, 5)
    }),
  )
})

test('a plain chamber by matrices agrees with its closed form, and takes nothing off at whole half-waves', () => {
  fc.assert(
    fc.property(num(0.05, 0.6), num(1.5, 60), num(20, 3000), (length, m, f) => {
      const S = 4e-4
      const k = (2 * Math.PI * f) / c
      expect(transmissionLoss(tube(length, m * S, k, c), S, S, c)).toBeCloseTo(chamberLoss(m, k, length), 6)
      for (const n of [1, 2, 3]) {
        const kn = (n * Math.PI) / length
        expect(transmissionLoss(tube(length, m * S, kn, c), S, S, c)).toBeCloseTo(0, 8)
      }
    }),
  )
})

test('a larger chamber takes off more at every frequency that is not a half-wave', () => {
  fc.assert(
    fc.property(num(2, 30), num(1.05, 3), num(0.1, 3), (m, more, kl) => {
      expect(chamberLoss(m * more, kl, 1)).toBeGreaterThanOrEqual(chamberLoss(m, kl, 1))
    }),
  )
})

test('a stub a quarter wave long is a short circuit', () => {
  const z = closedStub(0.25, 1e-3, (2 * Math.PI) / 1, c)
  expect(Math.abs(z.im)).toBeLessThan(1e-6)
})

const emptyBox = {
  area: 0.008,
  inletBore: 0.02,
  outletBore: 0.02,
  inletReach: 0,
  outletReach: 0,
  packing: 0,
  resistivity: 15e3,
}

test('a box whose tubes meet or that is no wider than its tubes is refused, by name', () => {
  const good = { ...emptyBox, length: 0.2 }
  expect(() => checkBox({ ...good, inletReach: 0.1, outletReach: 0.1 })).toThrow(/reach/)
  expect(() => checkBox({ ...good, length: 0 })).toThrow(/length/)
  expect(() => checkBox({ ...good, area: 1e-4 })).toThrow(/as wide as the box/)
})

test('packing only adds to what the box takes off', () => {
  const plain = { ...emptyBox, length: 0.3 }
  const f = [150, 300, 600, 900]
  const a = boxLoss(plain, f, 520, 0.45)
  const b = boxLoss({ ...plain, packing: 0.02 }, f, 520, 0.45)
  for (let i = 0; i < f.length; i++) expect(b.loss[i]!).toBeGreaterThan(a.loss[i]!)
})

test('packing swallows between nothing and all of the sound, and lets no wave grow', () => {
  fc.assert(
    fc.property(num(2e3, 1e5), num(50, 1000), num(0.01, 0.2), (resistivity, f, depth) => {
      const medium = delanyBazley(f, resistivity, 1.2, c)
      expect(medium.k.im).toBeLessThan(0)
      const a = absorption(medium, depth, 1.2, c)
      expect(a).toBeGreaterThanOrEqual(0)
      expect(a).toBeLessThanOrEqual(1)
    }),
  )
})

test('hot packing is harder to blow through; a core as wide as its shell takes nothing off', () => {
  expect(hotResistivity(1e4, 600)).toBeGreaterThan(1e4)
  expect(hotResistivity(1e4, 293)).toBeCloseTo(1e4, 6)
  expect(
    straightThroughLoss({ bore: 0.05, outer: 0.05, resistivity: 1e4, density: 1.2, c }, 500),
  ).toBeCloseTo(0, 9)
})

test('plane waves end at 1.84 over πd: 2235 Hz for 90 mm in cold air', () => {
  expect(firstCrossMode(0.09, c)).toBeCloseTo((1.8412 * c) / (Math.PI * 0.09), 6)
})

test('levels: 20 µPa is 0 dB, twice the distance 6 dB less, two equal sources 3 dB more', () => {
  expect(levelOf(20e-6)).toBe(0)
  const near = levelOf(harmonicPressure(0.01, 150, 1, true))
  expect(near - levelOf(harmonicPressure(0.01, 150, 2, true))).toBeCloseTo(6.0206, 4)
  expect(sumOfLevels([70, 70])).toBeCloseTo(73.0103, 4)
  expect(near - levelOf(harmonicPressure(0.01, 150, 1, false))).toBeCloseTo(6.0206, 4)
})

test('A-weighting is nought at 1 kHz and falls towards the bass', () => {
  expect(aWeight(1000)).toBeCloseTo(0, 1)
  for (let f = 20; f < 900; f *= 1.2) expect(aWeight(f)).toBeLessThan(aWeight(f * 1.2))
})

test('an outlet level finds a pure tone and is never below the floor carried there', () => {
  const n = 360
  const wave = Array.from({ length: n }, (_, i) => 0.02 + 0.01 * Math.cos((2 * Math.PI * i) / n))
  const a = outletLevel(wave, 150, 25)
  const tone = levelOf(harmonicPressure(0.01, 150, 25, true)) + aWeight(150)
  expect(a.outlet).toBeCloseTo(tone, 6)
  fc.assert(
    fc.property(num(0, 0.05), num(30, 250), num(1, 100), (amplitude, rotation, r) => {
      const w = wave.map((x) => x * amplitude)
      const l = outletLevel(w, rotation, r)
      expect(l.level).toBeGreaterThanOrEqual(floorAtOneMetre - 20 * Math.log10(r) - 1e-9)
    }),
  )
})

test('a steady flow is silent: only the floor is left', () => {
  const l = outletLevel(new Float64Array(360).fill(0.02), 150, 25)
  expect(l.onFloor).toBe(true)
  expect(l.level).toBeCloseTo(floorAtOneMetre - 20 * Math.log10(25), 3)
})

test('pass-by figures step at 10 and 40 kW and add 3 dB for two engines', () => {
  expect([10e3, 10.1e3, 40e3, 41e3].map((p) => passByLimit(p, 1))).toEqual([67, 72, 72, 75])
  expect(passByLimit(5e3, 2)).toBe(70)
})
