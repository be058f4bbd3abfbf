import { describe, expect, test } from 'vitest'
import { gravity } from '../../physics/fluid/water.ts'
import { alloyOf, aluminium } from './alloys.ts'
import { hatSection } from './beams.ts'
import { type DeckBay, deckBay } from './deckBay.ts'
import { foamAllowable, foamOf } from './foams.ts'
import { discOf, discOnFoam } from './onFoam.ts'

/** Each number of the options table against a formula worked by hand, for a rider whose step is 1800 N. */
const mass = 900 / gravity
const base = {
  name: 'bay',
  length: 0.4,
  width: 0.2,
  t: 1.5e-3,
  alloy: alloyOf('5052-H32'),
  welded: false,
  held: true,
}
const of = (support: DeckBay['support'], part: Partial<DeckBay> = {}) =>
  deckBay({ ...base, ...part, support }, mass)
const step = (a: ReturnType<typeof of>) => a.loads.find((l) => l.load === 'step')!
const near = (got: number, want: number, part: number) =>
  expect(Math.abs(got / want - 1), `${got} against ${want}`).toBeLessThan(part)

describe('a sheet alone', () => {
  test('weighs its thickness', () => expect(of({ kind: 'alone' }).massPerArea).toBeCloseTo(4.02, 9))
  // the full equations of Föppl and von Kármán by Ritz's method outside this code, a = 2b, 80 mm patch: bending with pull MPa, mm
  test.each([
    [1.5e-3, 0.2, 196, 4.393],
    [2e-3, 0.15, 188.2, 2.785],
    [3e-3, 0.2, 153.5, 2.785],
  ])('%f m over %f m: stress and give under a hard step', (t, width, stress, give) => {
    const l = step(of({ kind: 'alone' }, { t, width, length: 2 * width }))
    near(l.stress / 1e6, stress, 0.05)
    near(1e3 * l.deflection, give, 0.01)
    // a fan of yield lines by hand, clamped all round, hanging in a dish of 1 mm
    const fan = 1 - (2 * Math.sqrt((0.08 * 0.08) / Math.PI)) / (3 * (width / 2))
    const hang = 1 + (1e-3 / t) ** 2 / 3
    expect(l.margin).toBeCloseTo(((4 * Math.PI * 160e6 * t * t) / 4 / fan / 1800) * hang, 9)
  })
})

describe('a sheet on hats', () => {
  const section = hatSection(0.03, 0.03, 1.5e-3)
  const a = of({ kind: 'stringers', spacing: 0.1, section })
  test('weighs sheet and hats', () => {
    // 2 webs of 30 mm and a crown of 27 mm, all 1.5 mm: 130.5 mm²
    expect(section.area).toBeCloseTo(130.5e-6, 12)
    expect(a.massPerArea).toBeCloseTo(2680 * (1.5e-3 + 130.5e-6 / 0.1), 9)
  })
  test('bends its hats as a beam with ends held by three tenths', () => {
    const skin = { a: 1.5e-3 * 0.045, z: 0.03075 }
    const z = (section.area * section.middle + skin.a * skin.z) / (section.area + skin.a)
    const I =
      section.inertia +
      section.area * (section.middle - z) ** 2 +
      (0.045 * 1.5e-3 ** 3) / 12 +
      skin.a * (skin.z - z) ** 2
    const l = step(a)
    near(l.stringer!.stress, (1800 * 0.4 * (0.25 - 0.3 / 8) * Math.max(z, 0.0315 - z)) / I, 1e-9)
    const beam = (1800 * 0.4 ** 3 * (1 / 48 - 0.3 * (1 / 48 - 1 / 192))) / (aluminium.modulus * I)
    expect(l.deflection).toBeGreaterThan(beam)
    expect(l.margin).toBeCloseTo(Math.min(l.skin, 160e6 / l.stringer!.stress), 9)
  })
})

describe('a sheet on foam', () => {
  const foam = foamOf('XPS 25')
  const a = of({ kind: 'foam', foam, depth: 0.15 }, { width: 0.4, held: false })
  test('weighs sheet and foam', () =>
    expect(a.massPerArea).toBeCloseTo(2680 * 1.5e-3 + foam.density * 0.15, 9))
  test('sinks, presses and bends as an endless sheet on springs under a disc of the foot’s area', () => {
    const disc = discOnFoam(
      { modulus: aluminium.modulus, poisson: aluminium.poisson, t: 1.5e-3, bed: foam.modulus / 0.15 },
      1800,
      discOf(0.08, 0.08),
    )
    const l = step(a)
    near(l.deflection, disc.deflection, 0.05)
    near(l.foam!.pressure, disc.pressure, 0.05)
    near(l.stress, disc.stress, 0.1)
    expect(l.foam!.allowed).toBe(foamAllowable(foam, 'jump', 293.15))
    expect(l.margin).toBeCloseTo(Math.min(160e6 / l.stress, l.foam!.allowed / l.foam!.pressure), 9)
  })
})

describe('a sandwich', () => {
  const foam = foamOf('XPS 35')
  const a = of({ kind: 'sandwich', foam, core: 0.03, inner: 1e-3 }, { t: 1e-3 })
  test('weighs two sheets, core and glue', () =>
    expect(a.massPerArea).toBeCloseTo(2680 * 2e-3 + foam.density * 0.03 + 0.6, 9))
  test('shears its core round the edge of the foot and gives no more than a strip of its width', () => {
    const l = step(a)
    const d = 0.031
    near(l.core!.stress, 1800 / (2 * (0.08 + 0.08) * d), 1e-9)
    expect(l.core!.allowed).toBeCloseTo(0.8 * foam.shearStrength, 6)
    // the whole load on a strip 80 mm wide between the long sides is the softest it could be
    const D = 0.08 * ((70e9 * 1e-3 * d * d) / 2 + (70e9 * 1e-9) / 6 + (foam.modulus * 0.03 ** 3) / 12)
    const S = (0.08 * foam.shearModulus * d * d) / 0.03
    const strip = (1800 * 0.2 ** 3) / (48 * D) + (1800 * 0.2) / (4 * S)
    expect(l.bendingOnly).toBeLessThan(strip)
    expect(l.bendingOnly).toBeGreaterThan(strip / 6)
    expect(l.margin).toBeLessThanOrEqual(l.core!.allowed / l.core!.stress + 1e-12)
  })
})
