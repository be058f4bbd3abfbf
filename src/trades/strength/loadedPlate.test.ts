import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { kelvin } from '../../base/numerics/kelvin.ts'
import { evenLoadOnPlate, type Plate, patchOnPlate } from './loadedPlate.ts'
import { discOnFoam } from './onFoam.ts'
import {
  deflectionAt,
  discStress,
  pointDeflectionAt,
  sandwichBeamEven,
  stripMembrane,
  westergaardStress,
} from './plateReference.testkit.ts'
import { sandwichBeam, sandwichPanel, sandwichStiffness, wrinklingStress } from './sandwich.ts'

const plate: Plate = { a: 0.4, b: 0.25, t: 1.5e-3, modulus: 70e9, poisson: 0.33 }
const foot = { load: 900, u: 0.08, v: 0.08 }
const some = { numRuns: 25 }

describe('plates', () => {
  test('the deflection at A for a load at B is that at B for the load at A', () => {
    const inside = fc.double({ min: 0.15, max: 0.85, noNaN: true })
    fc.assert(
      fc.property(inside, inside, inside, inside, (xa, ya, xb, yb) => {
        const small = { load: 1, u: 1e-4, v: 1e-4 }
        const a = deflectionAt(plate, { ...small, x: xb * 0.4, y: yb * 0.25 }, xa * 0.4, ya * 0.25, 60)
        const b = deflectionAt(plate, { ...small, x: xa * 0.4, y: ya * 0.25 }, xb * 0.4, yb * 0.25, 60)
        expect(Math.abs(a - b)).toBeLessThan(1e-6 * Math.max(Math.abs(a), 1e-9) + 1e-14)
      }),
      some,
    )
  })
  test('twice the terms change the answer by less than half a per cent', () => {
    const a = patchOnPlate(plate, foot, { terms: 49 })
    const b = patchOnPlate(plate, foot, { terms: 98 })
    expect(Math.abs(b.deflection / a.deflection - 1)).toBeLessThan(5e-3)
    expect(Math.abs(b.stress / a.stress - 1)).toBeLessThan(5e-3)
  })
  test('a patch shrunk to a point gives the point load’s deflection', () => {
    const p = { a: 1, b: 1, t: 1, modulus: 12 * (1 - 0.09), poisson: 0.3 }
    expect(patchOnPlate(p, { load: 1, u: 1e-3, v: 1e-3 }, { terms: 151 }).deflection).toBeCloseTo(0.0116, 5)
  })
  test('a held plate turns linear as the load goes to nothing, is stiffer than bending alone, and pulls more as it grows', () => {
    const tiny = { ...foot, load: 1e-3 }
    expect(
      patchOnPlate(plate, tiny, { held: true }).deflection / patchOnPlate(plate, tiny).deflection,
    ).toBeCloseTo(1, 6)
    let pull = 0
    for (const load of [10, 50, 200, 900, 3000]) {
      const held = patchOnPlate(plate, { ...foot, load }, { held: true })
      expect(held.converged).toBe(true)
      expect(held.deflection).toBeLessThan(patchOnPlate(plate, { ...foot, load }).deflection)
      expect(held.tension).toBeGreaterThan(pull)
      pull = held.tension
    }
  })
  test('a held plate turned round sags and pulls the same', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 4, noNaN: true }), (sides) => {
        const p = { ...plate, a: sides * plate.b }
        const turned = { ...p, a: p.b, b: p.a }
        const a = patchOnPlate(p, { load: 900, u: 0.12, v: 0.08 }, { held: true, terms: 39 })
        const b = patchOnPlate(turned, { load: 900, u: 0.08, v: 0.12 }, { held: true, terms: 39 })
        expect(b.deflection / a.deflection).toBeCloseTo(1, 6)
        expect(b.stress / a.stress).toBeCloseTo(1, 6)
      }),
      { numRuns: 20 },
    )
  })
  test('a long thin strip bulges as the strip membrane does', () => {
    const long = { a: 3, b: 0.3, t: 0.3e-3, modulus: 70e9, poisson: 0.33 }
    const q = 20e3
    const strip = stripMembrane(q, 0.3, 0.3e-3, 70e9, 0.33)
    expect(Math.abs(evenLoadOnPlate(long, q, { held: true, terms: 99 }).deflection / strip - 1)).toBeLessThan(
      0.08,
    )
  })
  test('the stress under a small disc is near that of the series for a patch of its area', () => {
    const side = 0.2
    const r0 = side / Math.sqrt(Math.PI)
    const series = patchOnPlate(
      { a: 1, b: 1, t: 0.01, modulus: 1, poisson: 0.3 },
      { load: 1, u: side, v: side },
      { terms: 151 },
    ).bending
    // beta of a square plate in Roark's case 1b is 0.435
    expect(Math.abs(discStress(1, 1, 0.01, r0, 0.435) / series - 1)).toBeLessThan(0.03)
  })
  test('a patch that does not fit, or a plate without thickness, is refused with the number', () => {
    expect(() => patchOnPlate(plate, { load: 1, u: 0.5, v: 0.1 })).toThrow(/patch.u: 0.5 m/)
    expect(() => patchOnPlate({ ...plate, t: 0 }, foot)).toThrow(/plate.t: 0/)
  })
})

describe('sheet on foam', () => {
  const sheet = { modulus: 70e9, poisson: 0.33, t: 1.5e-3, bed: 22e6 }
  test('a stiffer bed sinks less', () => {
    let before = Infinity
    for (const bed of [5e6, 10e6, 22e6, 60e6, 200e6]) {
      const w = discOnFoam({ ...sheet, bed }, 883, 0.05).deflection
      expect(w).toBeLessThan(before)
      before = w
    }
  })
  test('the bed carries the whole load', () => {
    const reach = discOnFoam(sheet, 883, 0).reach
    let sum = 0
    const n = 4000
    const far = 9.9 * reach
    for (let i = 0; i < n; i++) {
      const r = ((i + 0.5) * far) / n
      sum += sheet.bed * pointDeflectionAt(sheet, 883, r) * 2 * Math.PI * r * (far / n)
    }
    expect(Math.abs(sum / 883 - 1)).toBeLessThan(0.01)
  })
  test('a bay much wider than its reach behaves like an endless sheet', () => {
    const wide = patchOnPlate(
      { a: 0.8, b: 0.8, t: 1.5e-3, modulus: 70e9, poisson: 0.33 },
      { load: 883, u: 0.0886, v: 0.0886 },
      { bed: 22e6, terms: 99 },
    )
    const endless = discOnFoam(sheet, 883, 0.05)
    expect(Math.abs(wide.deflection / endless.deflection - 1)).toBeLessThan(0.02)
    expect(wide.onBed).toBeLessThan(883 * 1.02)
    expect(wide.onBed).toBeGreaterThan(883 * 0.95)
  })
  test('under a load far wider than its reach it bends most towards the rim, as Hetényi’s long beam does, and not in the middle', () => {
    const p = { a: 0.6, b: 3, t: 1e-3, modulus: 70e9, poisson: 0.33 }
    const bed = 1e8
    const got = patchOnPlate(p, { load: 1e5 * 0.2 * 2.8, u: 0.2, v: 2.8 }, { bed, terms: 199 })
    const D = (p.modulus * p.t ** 3) / (12 * (1 - p.poisson ** 2))
    const beta = (bed / (4 * D)) ** 0.25
    // Beams on Elastic Foundation, ch. 2: a strip of q over ±u/2, M = q/4β² (e^−βs sin βs + the same from the far rim), s from the rim
    const part = (s: number) => Math.exp(-beta * s) * Math.sin(beta * s)
    const s = Math.PI / 4 / beta
    const strip = (1e5 / (4 * beta * beta)) * (part(s) + part(0.2 - s))
    expect(Math.abs(got.bending / ((6 * strip) / p.t ** 2) - 1)).toBeLessThan(0.03)
    const middle = (6 * Math.max(got.momentX, got.momentY)) / p.t ** 2
    expect(Math.abs(middle)).toBeLessThan(0.05 * got.bending)
  })
  test('Westergaard’s short formula agrees for small discs and is refused for large ones', () => {
    const c = 0.2 * discOnFoam(sheet, 883, 0).reach
    expect(Math.abs(westergaardStress(sheet, 883, c) / discOnFoam(sheet, 883, c).stress - 1)).toBeLessThan(
      0.05,
    )
    expect(westergaardStress(sheet, 883, 0.05)).toBeNaN()
  })
  test('the Kelvin functions satisfy their own slopes, and are refused out of range', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 8, noNaN: true }), (x) => {
        const d = 1e-5
        const k = kelvin(x)
        expect((kelvin(x + d).ker - kelvin(x - d).ker) / (2 * d)).toBeCloseTo(k.kerSlope, 6)
        expect((kelvin(x + d).kei - kelvin(x - d).kei) / (2 * d)).toBeCloseTo(k.keiSlope, 6)
      }),
    )
    expect(() => kelvin(0)).toThrow(/outside 0 to 10/)
    expect(() => kelvin(11)).toThrow()
  })
})

describe('sandwich', () => {
  const s = { face: 1e-3, core: 0.04, faceModulus: 70e9, coreModulus: 15e6, coreShear: 6e6 }
  test('with no core it is the solid plate', () => {
    expect(sandwichStiffness({ ...s, core: 0 }, 0.25)).toBeCloseTo((0.25 * 70e9 * 0.002 ** 3) / 12, 12)
  })
  test('an even load bends 5/8 as far as the same load in the middle, and shears half as far', () => {
    const m = sandwichBeam(s, 0.25, 0.5, 900)
    const e = sandwichBeamEven(s, 0.25, 0.5, 1800)
    expect(e.bending / m.bending).toBeCloseTo(5 / 8, 12)
    expect(e.shear / m.shear).toBeCloseTo(1 / 2, 12)
  })
  test('a long panel is not stiffer than held strips nor softer than the strip', () => {
    const p = sandwichPanel(s, 3, 0.5, { load: 900 * 3, u: 3, v: 0.5 })
    const strip = sandwichBeamEven(s, 1, 0.5, (900 * 3) / 1.5)
    expect(p.bending).toBeLessThan(strip.bending)
    expect(p.bending).toBeGreaterThan(strip.bending * 0.85)
    expect(p.shear).toBeGreaterThan(strip.shear * 0.95)
  })
  test('wrinkling rises with the core', () => {
    expect(wrinklingStress({ ...s, coreModulus: 30e6 })).toBeGreaterThan(wrinklingStress(s))
  })
})
