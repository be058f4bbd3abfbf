import fc from 'fast-check'
import { expect, test } from 'vitest'
import { cubicAt } from '../../base/numerics/interpolate.ts'
import {
  type PreplaningForm,
  preparePreplaning,
  preplaningNodes,
  preplaningRatio,
  standardRatios,
  transomWettedSurface,
} from './preplaning.ts'

const degree = Math.PI / 180
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const forms = fc
  .record({
    slenderness: number(4, 8),
    lengthOverBeam: number(2.8, 5.5),
    entrance: number(10 * degree, 28 * degree),
    transomRatio: number(0.4, 1),
  })
  .map((f): PreplaningForm => {
    const volume = 0.16
    const length = f.slenderness * Math.cbrt(volume)
    const beam = length / f.lengthOverBeam
    const draft = volume / (0.6 * length * beam)
    return {
      volume,
      length,
      beam,
      draft,
      entrance: f.entrance,
      transomRatio: f.transomRatio,
      wettedSurface: transomWettedSurface(volume, length, beam, draft),
    }
  })

test('the interpolation in Fv hits the regression at every node', () => {
  fc.assert(
    fc.property(forms, (form) => {
      const hull = preparePreplaning(form)
      const nodes = standardRatios(form)
      preplaningNodes.forEach((Fv, i) => {
        expect(cubicAt(hull.ratio, Fv)).toBeCloseTo(nodes[i]!, 12)
      })
    }),
  )
})

test('neighbouring rows of the coefficient table give nearly the same drag: a wrong digit would make a kink', () => {
  // slenderness, length over beam, entrance in degrees, transom ratio: hulls well inside the fit
  const hulls = [
    [4, 3, 22, 0.8],
    [4.2, 3.3, 25, 0.8],
    [4.5, 3.4, 16, 0.5],
    [4.5, 3.4, 28, 0.8],
    [5, 4, 20, 0.6],
  ] as const
  for (const [slenderness, lengthOverBeam, entrance, transomRatio] of hulls) {
    const length = slenderness * Math.cbrt(0.16)
    const beam = length / lengthOverBeam
    const r = standardRatios({
      volume: 0.16,
      length,
      beam,
      draft: 0.1,
      entrance: entrance * degree,
      transomRatio,
      wettedSurface: 1,
    })
    for (let i = 1; i < r.length; i++) {
      expect(r[i]! - r[i - 1]!).toBeGreaterThan(-0.002)
      if (i > 1) expect(Math.abs(r[i - 2]! - 2 * r[i - 1]! + r[i]!)).toBeLessThan(0.0135)
    }
  }
})

test('a longer hull for the same volume has less drag at Fv 1 to 1.5', () => {
  const at = (length: number) => {
    const form = {
      volume: 0.16,
      length,
      beam: 0.65,
      draft: 0.15,
      entrance: 20 * degree,
      transomRatio: 0.7,
      wettedSurface: 2,
    }
    return standardRatios(form)
  }
  const short = at(2.4)
  const long = at(3.2)
  for (let i = 0; i < 6; i++) expect(long[i]).toBeLessThan(short[i]!)
})

test('the small hull pays more friction than the 100 000 lb standard, and roughness adds to it', () => {
  fc.assert(
    fc.property(forms, number(1, 2), (form, Fv) => {
      const hull = preparePreplaning(form)
      const smooth = preplaningRatio(hull, Fv, 1.14e-6, 0)
      expect(smooth).toBeGreaterThan(cubicAt(hull.ratio, Fv))
      expect(preplaningRatio(hull, Fv, 1.14e-6, 4e-4)).toBeGreaterThan(smooth)
    }),
  )
})

test('an entrance blunter than the fit is held at its edge', () => {
  const base = { volume: 0.16, length: 2.4, beam: 0.65, draft: 0.15, transomRatio: 0.7, wettedSurface: 2 }
  expect(standardRatios({ ...base, entrance: 1 })).toEqual(
    standardRatios({ ...base, entrance: 28.6 * degree }),
  )
})
