import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { flawsOf } from '../../../physics/solid/closed.ts'
import { solidProperties } from '../../../physics/solid/integrals.ts'
import { atWorkbench } from '../../../shapes/solid/kernel.ts'
import { metricThread } from '../threadForms.ts'
import { givenOf } from './solidShape.ts'
import { shapeOf, solidShapes } from './solidShapes.ts'
import { threadOrder } from './threadParts.ts'

const names = Object.keys(solidShapes)

/** coarse on purpose: whether it is closed does not hang on how fine it is */
const chord = 0.3e-3

const bodiesOf = (name: string, values: Record<string, number | string>, fine = chord) =>
  atWorkbench(fine, (b) => {
    const shape = shapeOf(name)
    return shape.build(b, givenOf(shape, { shape: name, values })).map((body) => {
      const { corners, triangles } = b.mesh(body.solid)
      return { name: body.name, mesh: { points: corners, triangles }, pieces: body.solid.decompose().length }
    })
  })

const valuesOf = (name: string) => {
  const shape = shapeOf(name)
  const some: Record<string, fc.Arbitrary<number | string>> = {}
  for (const [key, v] of Object.entries(shape.values))
    some[key] =
      v.kind === 'count'
        ? key === 'hand'
          ? fc.constantFrom(-1, 1)
          : fc.integer({ min: v.low, max: Math.min(v.high, 2 * v.usual + 1) })
        : // near what is usual as often as anywhere
          fc.oneof(
            { weight: 1, arbitrary: fc.double({ min: v.low, max: v.high, noNaN: true }) },
            {
              weight: 7,
              arbitrary: fc.double({
                min: Math.max(v.low, v.usual - 0.2 * Math.abs(v.usual)),
                max: Math.min(v.high, v.usual + 0.2 * Math.abs(v.usual)),
                noNaN: true,
              }),
            },
          )
  for (const [key, w] of Object.entries(shape.words)) some[key] = fc.constantFrom(...w.words)
  // some of the values, the others as usual
  const record = fc.record(some, { requiredKeys: [] }) as fc.Arbitrary<Record<string, number | string>>
  if (!('d2' in some)) return record
  // three diameters and a pitch go together: threads of the standard's form, coarse and fine
  return fc
    .tuple(
      record,
      fc.double({ min: 8e-3, max: 120e-3, noNaN: true }),
      fc.double({ min: 1e-3, max: 6e-3, noNaN: true }),
    )
    .map(([values, d, pitch]) => ({ ...values, ...threadOrder(metricThread(d, Math.min(pitch, d / 5))) }))
}

describe.each(names)('%s', (name) => {
  test('as usual: each body is closed, outward, one piece, and stands on its bed', async () => {
    for (const { mesh, pieces } of await bodiesOf(name, {}, 0.1e-3)) {
      expect(flawsOf(mesh, { touching: false })).toEqual([])
      expect(pieces).toBe(1)
      expect(solidProperties(mesh).volume).toBeGreaterThan(1e-8)
      let low = Number.POSITIVE_INFINITY
      for (let i = 2; i < mesh.points.length; i += 3) low = Math.min(low, mesh.points[i]!)
      expect(low).toBeCloseTo(0, 6)
    }
  })

  test('with any one value at either end of its range it is closed and outward, or the value that cannot be is named', async () => {
    for (const [key, v] of Object.entries(shapeOf(name).values))
      for (const end of key === 'hand' ? [-1, 1] : [v.low, v.high])
        try {
          for (const { mesh } of await bodiesOf(name, { [key]: end }))
            expect(flawsOf(mesh, { touching: false }), `${key} ${end}`).toEqual([])
        } catch (error) {
          if (!(error instanceof RangeError)) throw error
          expect(error.message, `${key} ${end}`).toMatch(/^(?!mesh|solid)\w+: -?[\d.]/)
        }
  })

  test('over the whole range of its values it is closed and outward, or the value that cannot be is named', async () => {
    let built = 0
    await fc.assert(
      fc.asyncProperty(valuesOf(name), async (values) => {
        let bodies: Awaited<ReturnType<typeof bodiesOf>>
        try {
          bodies = await bodiesOf(name, values)
        } catch (error) {
          expect(error).toBeInstanceOf(RangeError)
          expect((error as Error).message).toMatch(/^\w+: -?[\d.]/)
          expect((error as Error).message).not.toMatch(/^(mesh|solid)/)
          return
        }
        built++
        for (const { mesh } of bodies) expect(flawsOf(mesh, { touching: false })).toEqual([])
      }),
      { numRuns: 40 },
    )
    expect(built).toBeGreaterThan(5)
  })
})

test('values out of range, of no name, of no number and shapes of no name are refused by name', () => {
  const shape = shapeOf('hose barb')
  const given = (values: Record<string, number | string>) => () =>
    givenOf(shape, { shape: 'hose barb', values })
  expect(given({ hose: 1 })).toThrow('hose: 1000 mm is outside 3 mm to 40 mm')
  expect(given({ hose: Number.NaN })).toThrow(/^hose/)
  expect(given({ hose: 'wide' })).toThrow('hose: "wide"')
  expect(given({ barbs: 2.5 })).toThrow(/whole/)
  expect(given({ nothing: 1 })).toThrow(/^nothing/)
  expect(() => shapeOf('toString')).toThrow(/is not one of/)
})
