/** Every printed part of every demo, over the whole range of its values, and cut for a small bed: closed, outward, or the value that cannot be named. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readCraft } from '../../src/craft/index.ts'
import { flawsOf } from '../../src/physics/solid/closed.ts'
import { printedParts } from '../../src/trades/prints/printedParts.ts'
import { printsTrade } from '../../src/trades/prints/printsTrade.ts'
import { makeSolid, type SolidPrinting } from '../../src/trades/prints/solids/makeSolid.ts'
import { shapeOf } from '../../src/trades/prints/solids/solidShapes.ts'
import { solveTrade } from '../../src/trades/trade.ts'

const demo = join(import.meta.dirname, '../../demo')
const names = readdirSync(demo).filter((f) => f.endsWith('.yaml'))
/** whether it is closed does not hang on how fine it is */
const printing: SolidPrinting = { chord: 0.3e-3, walls: false }

type Values = Record<string, number | string>

/** the values that tell a thread */
const threaded = { d: 0, d2: 0, d1: 0, pitch: 0, half: 0 }

/** Some of a part's values moved: a little often, anywhere in their range now and then. */
function moved(shape: string, own: Readonly<Values>): fc.Arbitrary<Values> {
  const some: Record<string, fc.Arbitrary<number>> = {}
  for (const [key, v] of Object.entries(shapeOf(shape).values)) {
    const now = typeof own[key] === 'number' ? own[key] : v.usual
    some[key] =
      key === 'hand'
        ? fc.constantFrom(-1, 1)
        : v.kind === 'count'
          ? fc.integer({ min: v.low, max: Math.min(v.high, 2 * now + 1) })
          : fc.oneof(
              { weight: 1, arbitrary: fc.double({ min: v.low, max: v.high, noNaN: true }) },
              {
                weight: 7,
                arbitrary: fc.double({
                  min: Math.max(v.low, 0.85 * now),
                  max: Math.max(Math.max(v.low, 0.85 * now), Math.min(v.high, 1.15 * now)),
                  noNaN: true,
                }),
              },
            )
  }
  const keys = Object.keys(some).filter((key) => !(key in threaded && 'd2' in own))
  const record = fc.record(Object.fromEntries(keys.map((key) => [key, some[key]!])), { requiredKeys: [] })
  // three diameters and a pitch go together: the same form of thread, larger or smaller
  const larger = fc.double({ min: 0.5, max: 1.5, noNaN: true })
  return fc.tuple(record, larger).map(([change, by]) => {
    const values: Values = { ...own }
    for (const [key, value] of Object.entries(change)) if (value !== undefined) values[key] = value
    for (const key of Object.keys(threaded))
      if ('d2' in own && key !== 'half') values[key] = by * Number(own[key])
    return values
  })
}

/** Bodies of an order, or the error that names what cannot be. */
async function closedOrNamed(shape: string, values: Values, how: SolidPrinting): Promise<number> {
  let made: Awaited<ReturnType<typeof makeSolid>>
  try {
    made = await makeSolid({ shape, values }, how)
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError)
    expect((error as Error).message).toMatch(/^(?!mesh|solid)\w+: -?[\d.]/)
    return 0
  }
  for (const { mesh } of made.bodies)
    expect(flawsOf({ points: mesh.corners, triangles: mesh.triangles }, { touching: false })).toEqual([])
  return made.bodies.length
}

describe.each(names)('%s', (file) => {
  const { craft } = readCraft(readFileSync(join(demo, file), 'utf8'))
  if (!craft) throw new Error(`${file} does not read`)
  const parts = printedParts(craft, solveTrade(printsTrade, craft, undefined))

  test.each(parts.map((p) => [p.id, p.solid!] as const))(
    '%s is closed over the whole range of its values',
    async (_, { shape, values }) => {
      let built = 0
      await fc.assert(
        fc.asyncProperty(moved(shape, values), async (changed) => {
          if ((await closedOrNamed(shape, changed, printing)) > 0) built++
        }),
        { numRuns: 25 },
      )
      expect(built).toBeGreaterThan(2)
    },
  )

  test('on a bed of 90 mm each part comes in pieces that fit, closed, or names the bed', async () => {
    const bed = [0.09, 0.09, 0.09] as const
    let cut = 0
    for (const { id, solid } of parts) {
      const whole = await makeSolid(solid!, printing)
      const pieces = await closedOrNamed(solid!.shape, { ...solid!.values }, { ...printing, bed })
      if (pieces === 0) continue
      expect(pieces, id).toBeGreaterThanOrEqual(whole.bodies.length)
      if (pieces > whole.bodies.length) cut++
    }
    expect(cut).toBeGreaterThan(0)
  })
})
