import fc from 'fast-check'
import { expect, test } from 'vitest'
import { demoCraft } from '../../craft/craft.testkit.ts'
import { riderEnvelope } from './envelope.ts'
import { sled } from './float.testkit.ts'
import { floatFromCraft } from './floatFromCraft.ts'
import type { FloatInput } from './input.ts'
import { roomGrid, roomInput, roomWithin } from './room.ts'

const limits = { heelLimit: Math.PI / 18, trimLimit: Math.PI / 30, reserve: 0 }

/** the same by the whole map: every place settled */
function byMap(input: FloatInput) {
  const e = riderEnvelope(roomInput(input, limits))
  const n = e.y.length
  const middle = (n - 1) / 2
  const along = Array.from(e.x).filter((_, i) => e.inside[i * n + middle] === 1)
  let wide = 0
  e.x.forEach((_, i) => {
    e.y.forEach((y, j) => {
      if (e.inside[i * n + j] === 1) wide = Math.max(wide, Math.abs(y))
    })
  })
  return { along, wide }
}

test('the ends found by halving are those of the whole map, for each demo', () => {
  for (const name of ['heron', 'teal', 'dabchick'] as const) {
    const { input } = floatFromCraft(demoCraft(name))
    const map = byMap(input)
    const ends = roomWithin(input, limits)
    expect(ends.along!.aft).toBeCloseTo(map.along[0]! - roomGrid / 2, 9)
    expect(ends.along!.fore).toBeCloseTo(map.along.at(-1)! + roomGrid / 2, 9)
    expect(ends.wide).toBeCloseTo(map.wide, 9)
    expect(ends.inside).toBe(true)
  }
}, 120_000)

test('for sleds loaded anyhow the ends are those of the map, and the way off the middle never farther', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 30, max: 110, noNaN: true }),
      fc.double({ min: 0.7, max: 1.5, noNaN: true }),
      fc.double({ min: -0.05, max: 0.05, noNaN: true }),
      fc.double({ min: 40, max: 120, noNaN: true }),
      fc.double({ min: 0.2, max: 2.2, noNaN: true }),
      (mass, x, y, rider, at) => {
        const input: FloatInput = {
          hull: sled,
          water: 999,
          weights: [{ name: 'craft', mass, at: [x, y, 0.13] }],
          rider: { mass: rider, stature: 1.76, stance: 'kneeling', x: at, y: 0 },
          openings: [],
          foam: [],
          compartments: [],
        }
        const map = byMap(input)
        const ends = roomWithin(input, limits)
        if (ends.along === undefined) expect(map.along.length).toBeLessThan(4)
        else {
          expect(ends.along.aft).toBeCloseTo(map.along[0]! - roomGrid / 2, 9)
          expect(ends.along.fore).toBeCloseTo(map.along.at(-1)! + roomGrid / 2, 9)
          expect(ends.wide).toBeLessThanOrEqual(map.wide + 1e-9)
        }
      },
    ),
    { numRuns: 12 },
  )
}, 240_000)
