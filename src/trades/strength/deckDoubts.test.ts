import fc from 'fast-check'
import { expect, test } from 'vitest'
import { seededRandom } from '../../base/numerics/random.ts'
import { demoCraft } from '../../whole/push/demo.testkit.ts'
import { deckBay } from './deckBay.ts'
import { marginRange } from './deckDoubts.ts'
import { strengthFromCraft } from './strengthFromCraft.ts'

const names = ['heron', 'teal', 'dabchick', 'sandpiper'] as const
const all = names.flatMap((name) => {
  const inputs = strengthFromCraft(demoCraft(name))
  return inputs.bays.map((bay, i) => ({
    name: `${name}, ${bay.name}`,
    bay,
    of: inputs.doubtful[i]!,
    rider: inputs.rider,
  }))
})

test.each(all)(
  '$name: 93 to 97 of 100 draws of sizes, rider, sheet and foam lie inside the printed margin',
  ({ bay, of, rider }) => {
    const margin = deckBay(bay, rider).margin
    const { low, high } = marginRange(of, margin)
    const random = seededRandom(7)
    let inside = 0
    const draws = 600
    for (let k = 0; k < draws; k++) {
      const drawn = of.at(of.doubts.map((d) => random.between(d.low, d.high)))
      const got = deckBay(drawn.bay, drawn.rider, undefined, 21).margin
      if (got >= low && got <= high) inside++
    }
    // the range also takes in each doubt at its own bound, which can only widen it; chance moves a share of 600 by 1.8 in 100
    expect(inside / draws).toBeGreaterThan(0.925)
    expect(inside / draws).toBeLessThan(0.99)
  },
)

test('values left as written give the bay itself, and no single value at its bound leaves the range', () => {
  for (const { bay, of, rider } of all) {
    const still = of.at(of.doubts.map((d) => d.value))
    expect(still).toEqual({ bay, rider })
    const margin = deckBay(bay, rider).margin
    const range = marginRange(of, margin)
    of.doubts.forEach((d, i) => {
      for (const end of [d.low, d.high]) {
        const drawn = of.at(of.doubts.map((q, k) => (k === i ? end : q.value)))
        const got = deckBay(drawn.bay, drawn.rider).margin
        expect(got, `doubt ${i}`).toBeGreaterThan(range.low * 0.99)
        expect(got, `doubt ${i}`).toBeLessThan(range.high * 1.01)
      }
    })
  }
})

test('a heavier rider never raises the margin, firmer sheet never lowers it', () => {
  fc.assert(
    fc.property(fc.nat(all.length - 1), fc.double({ min: 1, max: 1.25, noNaN: true }), (k, by) => {
      const { of } = all[k]!
      const values = of.doubts.map((d) => d.value)
      const at = (i: number) => {
        const drawn = of.at(values.with(i, values[i]! * by))
        return deckBay(drawn.bay, drawn.rider, undefined, 15).margin
      }
      const { bay, rider } = of.at(values)
      const still = deckBay(bay, rider, undefined, 15).margin
      expect(at(0)).toBeLessThanOrEqual(still * (1 + 1e-9))
      expect(at(1)).toBeGreaterThanOrEqual(still * (1 - 1e-9))
    }),
    { numRuns: 20 },
  )
})
