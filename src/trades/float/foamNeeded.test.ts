import { readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { readCraft } from '../../craft/index.ts'
import { type Box, freeBlocks, freeOf } from '../../hull/aboard/boxes.ts'
import type { FoamBlock } from '../../hull/aboard/foamBlocks.ts'
import { hullFromMesh } from '../../hull/lines/hullBody.ts'
import { boxMesh } from '../../physics/solid/primitives.ts'
import { floatAnswer } from './floatAnswer.ts'
import { floatFromCraft } from './floatFromCraft.ts'
import type { FloatInput } from './input.ts'
import { foamVolumes, swampedBodies, wholeLift } from './swamped.ts'
import { foamFinding } from './swampedFindings.ts'

/** boxes on a grid of cells, so that cells can be counted */
const cells = 8
const boxOn = fc
  .tuple(
    ...[0, 1, 2].map(() => fc.tuple(fc.integer({ min: 0, max: cells }), fc.integer({ min: 0, max: cells }))),
  )
  .filter((ends) => ends.every(([a, b]) => a !== b))
  .map(
    (ends): Box => ({
      low: ends.map(([a, b]) => Math.min(a, b)) as [number, number, number],
      high: ends.map(([a, b]) => Math.max(a, b)) as [number, number, number],
    }),
  )
const holds = (b: Box, p: readonly number[]) =>
  [0, 1, 2].every((k) => b.low[k]! < p[k]! && p[k]! < b.high[k]!)
const middles = Array.from({ length: cells ** 3 }, (_, i) => [
  (i % cells) + 0.5,
  (Math.floor(i / cells) % cells) + 0.5,
  Math.floor(i / cells ** 2) + 0.5,
])

describe('what boxes leave free', () => {
  test('is every cell of the box that no hole has, each in one piece only', () => {
    fc.assert(
      fc.property(boxOn, fc.array(boxOn, { maxLength: 6 }), (box, holes) => {
        const free = freeOf(box, holes)
        for (const p of middles) {
          const want = holds(box, p) && !holes.some((h) => holds(h, p)) ? 1 : 0
          expect(free.filter((f) => holds(f, p)).length).toBe(want)
        }
      }),
      { numRuns: 60 },
    )
  })
  test('comes as blocks too: the same cells, and no free box is bigger than the first block', () => {
    fc.assert(
      fc.property(boxOn, fc.array(boxOn, { maxLength: 5 }), boxOn, (box, holes, other) => {
        const blocks = freeBlocks(box, holes, 0, 0)
        for (const p of middles) {
          const want = holds(box, p) && !holes.some((h) => holds(h, p)) ? 1 : 0
          expect(blocks.filter((f) => holds(f, p)).length).toBe(want)
        }
        const inOther = middles.filter((p) => holds(other, p))
        const isFree = inOther.every((p) => holds(box, p) && !holes.some((h) => holds(h, p)))
        const first = blocks[0]?.high.reduce((v, high, k) => v * (high - blocks[0]!.low[k]!), 1) ?? 0
        if (isFree) expect(inOther.length).toBeLessThanOrEqual(first)
        for (const [i, b] of blocks.slice(1).entries())
          expect(b.high.reduce((v, h, k) => v * (h - b.low[k]!), 1)).toBeLessThanOrEqual(
            blocks[i]!.high.reduce((v, h, k) => v * (h - blocks[i]!.low[k]!), 1),
          )
      }),
      { numRuns: 60 },
    )
  })
  test('and is one block where two boxes stand apart, not one to each side of every corner', () => {
    const free = freeBlocks(
      { low: [0, 0, 0], high: [2, 1, 1] },
      [
        { low: [0.5, 0, 0], high: [0.7, 0.6, 1] },
        { low: [1.1, 0, 0], high: [1.3, 0.5, 0.8] },
      ],
      0.05,
      1e-3,
    )
    expect(free[0]).toEqual({ low: [0, 0.6, 0], high: [2, 1, 1] })
    // nothing thinner than asked for
    expect(free.every((b) => b.high.every((h, k) => h - b.low[k]! > 0.05))).toBe(true)
  })
})

/** a box hull whose cells are 0.3 by 0.1 by 0.03 m */
const cell = [0.3, 0.1, 0.03]
const hull = hullFromMesh(boxMesh([0, -0.4, 0], [2.4, 0.4, 0.24]), 'a box')
const blockAt = (b: Box): FoamBlock => ({
  name: 'foam',
  low: b.low.map((v, k) => v * cell[k]! - (k === 1 ? 0.4 : 0)) as [number, number, number],
  high: b.high.map((v, k) => v * cell[k]! - (k === 1 ? 0.4 : 0)) as [number, number, number],
  density: 30,
  soaked: 0.03,
})

test('blocks of foam that overlap lift what their union lifts, however many and in whatever order', () => {
  fc.assert(
    fc.property(fc.array(boxOn, { maxLength: 5 }), (boxes) => {
      const union = middles.filter((p) => boxes.some((b) => holds(b, p))).length * 0.3 * 0.1 * 0.03
      const foam = boxes.map(blockAt)
      const lifts = (list: FoamBlock[]) =>
        wholeLift(swampedBodies({ hull, weights: [], foam: list, compartments: [] }), 1000)
      expect(lifts(foam)).toBeCloseTo(970 * union, 8)
      expect(lifts(foam.toReversed())).toBeCloseTo(970 * union, 8)
      expect(foamVolumes(hull, foam, 1000).reduce((v, f) => v + f.volume, 0)).toBeCloseTo(union, 10)
    }),
    { numRuns: 40 },
  )
})

const demo = (name: string): FloatInput => {
  const text = readFileSync(resolve(import.meta.dirname, `../../../demo/${name}.yaml`), 'utf8')
  return floatFromCraft(readCraft(text).craft!).input
}

const overlap = (a: Box, b: Box) =>
  [0, 1, 2].every((k) => Math.min(a.high[k]!, b.high[k]!) - Math.max(a.low[k]!, b.low[k]!) > 1e-9)

describe('foam still wanted', () => {
  const heron = demo('heron')
  const share = fc.double({ min: 0, max: 1, noNaN: true })
  // Heron with its side foam cut anywhere, so that it wants little or much
  const less = fc.tuple(share, share).map(([aft, fore]): FloatInput => {
    const [bow, ...sides] = heron.foam
    const cut = sides.map((b) => ({
      ...b,
      low: [0.15 + 0.7 * aft, b.low[1], b.low[2]] as const,
      high: [1.7 - 0.7 * fore, b.high[1], b.high[2]] as const,
    }))
    return { ...heron, foam: [bow!, ...cut] }
  })
  test('overlaps neither itself nor foam, tanks, machinery or the reach under a hatch, and its litres are the litres that come on top', () => {
    fc.assert(
      fc.property(less, (input) => {
        const { need, swampedBodies: before } = floatAnswer(input)
        const taken: Box[] = [...input.foam, ...(input.taken ?? [])]
        for (const [i, b] of need.blocks.entries()) {
          for (const t of taken) expect(overlap(b, t)).toBe(false)
          for (const other of need.blocks.slice(0, i)) expect(overlap(b, other)).toBe(false)
        }
        expect(need.blocks.reduce((v, b) => v + b.held, 0)).toBeCloseTo(need.fitted, 9)
        const after = swampedBodies({ ...input, foam: [...input.foam, ...need.blocks] })
        const more = wholeLift(after, input.water) - wholeLift(before, input.water)
        expect(more).toBeCloseTo(input.water * 0.97 * need.fitted, 6)
      }),
      { numRuns: 8 },
    )
  })
  for (const name of ['heron', 'teal', 'dabchick'])
    test(`written into ${name} as blocks and their weight, it floats the swamped craft as was claimed`, () => {
      const input = demo(name)
      const { need, cases } = floatAnswer(input)
      expect(need.upright).toBe(true)
      expect(need.blocks.length).toBeGreaterThan(0)
      expect(cases.at(-1)!.over || Math.abs(cases.at(-1)!.attitude.heel) > 0.17).toBe(true)
      const placed = foamVolumes(input.hull, need.blocks, input.water)
      const weights = placed.map((f) => ({ name: 'new foam', mass: 30 * f.volume, at: f.centre }))
      // what is in the lists is counted as metal under water where no size is given: foam is light enough to say otherwise
      const kept = weights.map((w) => ({ ...w, material: 1e9 }))
      const again = floatAnswer({
        ...input,
        foam: [...input.foam, ...need.blocks],
        weights: [...input.weights, ...kept],
      })
      const swamped = again.cases.find((c) => c.name === 'swamped, rider aboard')!
      expect(swamped.over).toBe(false)
      expect(swamped.attitude.h).toBeCloseTo(need.rest.value.h, 4)
      expect(swamped.attitude.trim).toBeCloseTo(need.rest.value.trim, 4)
      expect(swamped.attitude.heel).toBeCloseTo(need.rest.value.heel, 4)
      expect(swamped.gmRigid).toBeCloseTo(need.gm, 2)
      // and then there is enough, but for the tenth in hand
      expect(again.need.upright).toBe(true)
    })
  test('is one plank a side in Heron and Dabchick, whose free room beside engine and jet is long and narrow', () => {
    for (const name of ['heron', 'dabchick']) {
      const { need } = floatAnswer(demo(name))
      expect(need.blocks.length).toBe(2)
      expect(need.upright).toBe(true)
    }
  })
  test('says where, in pieces that a saw can cut, and what it keeps clear of', () => {
    const f = foamFinding(heron, floatAnswer(heron))
    expect(printed(f.says)).toMatch(/it still needs foam, \d+ L more than it has/)
    expect(printed(f.act!)).toMatch(
      /^fix in foam on each side \d+ L from [\d.]+ m to [\d.]+ m forward of the transom, from /,
    )
    expect(f.because.map((b) => printed(b.says)).join(' ')).toMatch(
      /clear of the foam it has \(bow block, port side/,
    )
    expect(f.because.map((b) => printed(b.says)).join(' ')).toMatch(
      /fuel tank.*engine and pipe.*jet.*reach under engine hatch/,
    )
  })
  test('a hull full of machinery has no place for it, and that is said', () => {
    const full = { ...heron, taken: [{ name: 'all', low: [-1, -2, -1] as const, high: [9, 2, 2] as const }] }
    const a = floatAnswer(full)
    expect(a.need.blocks).toEqual([])
    expect(foamFinding(full, a).act).toBeUndefined()
    expect(printed(foamFinding(full, a).says)).toMatch(/No free place tried inside the hull keeps it upright/)
  })
})
