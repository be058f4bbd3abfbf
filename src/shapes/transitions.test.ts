import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { developOblique, elementLength } from './obliqueCone.ts'
import { proveFold } from './refold.ts'
import { tight } from './seam.ts'
import { developSquareToRound } from './squareToRound.ts'
import type { Strip } from './strip.ts'
import { type Ruling, twistOf } from './unroll.ts'

const sheeting = { id: 't', title: 'Transition', thickness: 1e-3, seam: tight }
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const runs = { numRuns: 40 }

const rulingsOf = (s: Strip): Ruling[] =>
  Array.from({ length: s.count }, (_, i) => {
    const v = [...s.space.subarray(6 * i, 6 * i + 6)]
    return [v.slice(0, 3), v.slice(3)] as unknown as Ruling
  })

function holds(strip: Strip): void {
  const { edge, seam, kept } = proveFold(strip)
  expect(edge).toBeLessThan(1e-4)
  expect(seam).toBeLessThan(1e-4)
  expect(kept.ruling).toBeLessThan(2e-5)
  expect(kept.rim).toBeLessThan(1e-4)
  expect(twistOf(rulingsOf(strip))).toBeLessThan(1e-5)
}

describe('an oblique cone', () => {
  const oblique = fc.record({
    baseRadius: between(0.01, 0.15),
    topRadius: between(0, 0.15),
    height: between(0.05, 0.5),
    offset: between(-0.2, 0.2),
  })
  test('rolls up to its own rims within 0.1 mm, its seam closes and it has no twist', () => {
    fc.assert(
      fc.property(oblique, (c) => holds(developOblique(c, sheeting).strips[0]!)),
      runs,
    )
  })
  test('of equal radii is a leaning pipe: all its elements are as long', () => {
    const c = { baseRadius: 0.03, topRadius: 0.03, height: 0.1, offset: 0.05 }
    for (const psi of [0, 1, 2, 3]) expect(elementLength(c, psi)).toBeCloseTo(Math.hypot(0.1, 0.05), 12)
    holds(developOblique(c, sheeting).strips[0]!)
  })
  test('that does not exist is named', () => {
    const c = { baseRadius: 0.03, topRadius: 0.03, height: 0.1, offset: 0.05 }
    expect(() => developOblique({ ...c, height: 0 }, sheeting)).toThrow(/height/)
    expect(() => developOblique({ ...c, baseRadius: Number.NaN }, sheeting)).toThrow(/baseRadius/)
    expect(() => developOblique({ ...c, offset: 2.1 }, sheeting)).toThrow(/offset.*flat/)
  })
})

describe('a rectangle drawn into a circle', () => {
  const shape = fc.record({
    length: between(0.02, 0.4),
    width: between(0.02, 0.4),
    radius: between(0.01, 0.2),
    height: between(0.03, 0.4),
    offsetX: between(-0.1, 0.1),
    offsetY: between(-0.1, 0.1),
  })
  test('rolls up to its own rims within 0.1 mm, its seam closes and it has no twist', () => {
    fc.assert(
      fc.property(shape, (s) => holds(developSquareToRound(s, sheeting).strips[0]!)),
      runs,
    )
  })
  test('is bent in its corners only', () => {
    const made = developSquareToRound(
      { length: 0.1, width: 0.1, radius: 0.03, height: 0.08, offsetX: 0, offsetY: 0 },
      sheeting,
    )
    expect(made.piece.lines.filter((l) => l.use === 'roll')).toHaveLength(28)
    expect(made.area * 1e6).toBeCloseTo(24690.66, 0)
  })
  test('that does not exist is named', () => {
    const s = { length: 0.1, width: 0.1, radius: 0.03, height: 0.08, offsetX: 0, offsetY: 0 }
    expect(() => developSquareToRound({ ...s, radius: -1 }, sheeting)).toThrow(/radius/)
    expect(() => developSquareToRound({ ...s, offsetX: 3 }, sheeting)).toThrow(/offsetX/)
  })
})
