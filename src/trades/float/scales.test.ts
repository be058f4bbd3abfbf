import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Weight, weightSum } from '../../hull/aboard/masses.ts'
import { listMatching, weighed } from './scales.ts'

const level = { aft: { at: 0.2, reads: 40 }, fore: { at: 2.0, reads: 24 }, giveReading: 0.1, giveTape: 0.005 }

describe('weighing at two places', () => {
  test('the readings add up to the weight and balance about the centre', () => {
    const r = weighed(level)
    expect(r.mass).toBe(64)
    // moments: 40 kg at 0.2 m and 24 kg at 2.0 m
    expect(r.forward).toBeCloseTo((40 * 0.2 + 24 * 2) / 64, 12)
    expect(r.up).toBeUndefined()
  })

  test('a body of known centre, weighed level and tilted, gives its height back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.4, max: 1.8, noNaN: true }),
        fc.double({ min: -0.1, max: 0.3, noNaN: true }),
        fc.double({ min: 0.1, max: 0.7, noNaN: true }),
        (x, height, angle) => {
          // hooks on the line z = 0: with the bow up by the angle the centre, seen along the craft, moves aft by z tan(angle)
          const share = (at: number) => (at - 0.2) / 1.8
          const seen = x - height * Math.tan(angle)
          fc.pre(seen > 0.25 && seen < 1.95)
          const r = weighed({
            ...level,
            aft: { at: 0.2, reads: 60 * (1 - share(x)) },
            fore: { at: 2, reads: 60 * share(x) },
            tilted: { angle, aft: 60 * (1 - share(seen)), fore: 60 * share(seen), hooks: 0.05 },
          })
          expect(r.forward).toBeCloseTo(x, 9)
          expect(r.up).toBeCloseTo(height + 0.05, 9)
        },
      ),
      { seed: 11 },
    )
  })

  test('a steeper tilt tells the height more surely', () => {
    const at = (angle: number) =>
      weighed({ ...level, tilted: { angle, aft: 42, fore: 22, hooks: 0 } }).giveUp!
    expect(at(0.35)).toBeLessThan(at(0.15))
  })

  test('readings of nothing, places too close and a tilt too small are refused with the value', () => {
    expect(() => weighed({ ...level, aft: { at: 0.2, reads: 0 } })).toThrow(/0 and 24 kg/)
    expect(() => weighed({ ...level, fore: { at: 0.3, reads: 24 } })).toThrow(/0.2 and 0.3 m/)
    expect(() => weighed({ ...level, tilted: { angle: 0.01, aft: 40, fore: 24, hooks: 0 } })).toThrow(/0\.6°/)
  })
})

describe('the list brought to agree', () => {
  const list: Weight[] = [
    { name: 'engine', mass: 14, at: [0.7, 0, 0.2] },
    { name: 'hull', mass: 34, at: [1.1, 0, 0.12] },
    { name: 'tank', mass: 6, at: [1.4, 0.05, 0.16] },
  ]
  test('has the weighed mass and centre, and only its heaviest item has changed', () => {
    const r = { mass: 58, giveMass: 0.2, forward: 1.05, giveForward: 0.01, up: 0.17, giveUp: 0.02 }
    const m = listMatching(list, r)
    expect(list[m.index]!.name).toBe('hull')
    const sum = weightSum(list.map((w, i) => (i === m.index ? { ...w, mass: m.mass, at: m.at } : w)))
    expect(sum.mass).toBeCloseTo(58, 12)
    expect(sum.centre[0]).toBeCloseTo(1.05, 12)
    expect(sum.centre[2]).toBeCloseTo(0.17, 12)
  })
  test('keeps the height of its items when only the level weighing is there', () => {
    const m = listMatching(list, { mass: 58, giveMass: 0.2, forward: 1.05, giveForward: 0.01 })
    expect(m.at[2]).toBe(0.12)
  })
  test('is refused when the other items already weigh more', () => {
    expect(() => listMatching(list, { mass: 18, giveMass: 0.2, forward: 1, giveForward: 0.01 })).toThrow(
      /20.0 kg/,
    )
  })
})
