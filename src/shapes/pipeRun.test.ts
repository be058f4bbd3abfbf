import fc from 'fast-check'
import { expect, test } from 'vitest'
import { elbowMitres } from './elbow.ts'
import { type PipeSection, pipeRun, proveRun } from './pipeRun.ts'
import { put, turned } from './placing.ts'
import { tight } from './seam.ts'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const sheeting = (id: string) => ({ id, title: id, thickness: 1e-3, seam: tight })

/** header bent through a cone, diffuser of two cones, belly bent, baffle, stinger */
function exhaust(turns: readonly [number, number], clocks: readonly [number, number]): PipeSection[] {
  const header = { startRadius: 0.02, endRadius: 0.025, bendRadius: 0.08, turn: turns[0], joints: 4 }
  const belly = { startRadius: 0.045, endRadius: 0.045, bendRadius: 0.15, turn: turns[1], joints: 3 }
  const long = (e: typeof header) => 2 * e.joints * e.bendRadius * Math.tan(e.turn / (2 * e.joints))
  const bent = (e: typeof header, clock: number) => ({
    cone: { startRadius: e.startRadius, endRadius: e.endRadius, height: long(e) + 0.06 },
    mitres: elbowMitres(e, clock, 0.03),
  })
  const straight = (startRadius: number, endRadius: number, height: number) => ({
    cone: { startRadius, endRadius, height },
    mitres: [],
  })
  return [
    bent(header, clocks[0]),
    straight(0.025, 0.035, 0.12),
    straight(0.035, 0.045, 0.08),
    bent(belly, clocks[1]),
    straight(0.045, 0.012, 0.14),
    straight(0.012, 0.012, 0.15),
  ].map((s, k) => ({ ...s, sheeting: sheeting(`s${k}`) }))
}

test('a whole exhaust of two bends in any direction is made of patterns that meet within 0.1 mm, rolled up from their drawings', () => {
  fc.assert(
    fc.property(between(0.3, 1.6), between(0.2, 1.2), between(-4, 4), between(-4, 4), (a, b, c, d) => {
      const run = pipeRun(exhaust([a, b], [c, d]))
      expect(run.pieces).toHaveLength(13)
      const { edge, seam, joint } = proveRun(run)
      expect(edge).toBeLessThan(1e-4)
      expect(seam).toBeLessThan(1e-4)
      expect(joint).toBeLessThan(1e-4)
    }),
    { numRuns: 8 },
  )
})

test('two bends of a right angle, the second to the side, end square to both', () => {
  const run = pipeRun(exhaust([Math.PI / 2, Math.PI / 2], [0, Math.PI / 2]))
  const end = run.places.at(-1)!
  const way = turned(end, [0, 0, 1])
  expect(way[0]).toBeCloseTo(0, 12)
  expect(way[1]).toBeCloseTo(1, 12)
  expect(way[2]).toBeCloseTo(0, 12)
  expect(put(end, [0, 0, 0])[1]).toBeGreaterThan(0.3)
})

test('a section that does not begin as wide as the one before ends is named', () => {
  const sections = exhaust([1, 1], [0, 0])
  expect(() => pipeRun([sections[0]!, sections[2]!])).toThrow(/sections\.1\.cone\.startRadius.*70\.0 mm wide/)
  expect(pipeRun([]).pieces).toEqual([])
})
