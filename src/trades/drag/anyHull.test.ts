import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dragAt, prepareDrag } from './drag.ts'
import type { HullSpec } from './hullSpec.ts'

const d = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** Any hull the craft file lets through, sensible or not. */
const anyHull = fc
  .record({
    length: d(0.8, 8),
    beam: d(0.2, 3),
    chinePart: d(0.5, 1),
    deadrise: d(0, 0.69),
    midDeadrise: d(0, 0.85),
    noseDeadrise: d(0, 1.2),
    depth: d(0.05, 1.5),
    noseRise: d(0, 1),
    rockerPart: d(0, 0.98),
    sternRise: d(0, 0.2),
    tailPart: d(0.01, 0.5),
    widestPart: d(0, 0.95),
    tailWidth: d(0.1, 1),
    fullness: d(1, 8),
  })
  .map(
    (h): HullSpec => ({
      length: h.length,
      beam: h.beam,
      chineBeam: h.beam * h.chinePart,
      deadrise: h.deadrise,
      midDeadrise: h.midDeadrise,
      noseDeadrise: h.noseDeadrise,
      depth: h.depth,
      noseRise: h.noseRise,
      noseRiseFrom: h.rockerPart * h.length,
      sternRise: h.sternRise,
      sternRiseOver: h.tailPart * h.length,
      widestAt: h.widestPart * h.length,
      tailWidth: h.tailWidth,
      noseExponents: [h.fullness, Math.min(2, h.fullness)],
      intake: { front: 0.3 * h.length, area: 0.03 },
    }),
  )

test('any hull that floats gives finite drag in order in its band, above nothing in still air, or no number at all', () => {
  let floating = 0
  fc.assert(
    fc.property(
      anyHull,
      d(20, 400),
      d(0.2, 0.7),
      d(20, 150),
      d(0.2, 1.5),
      d(0, 10),
      (spec, mass, x, rider, height, wind) => {
        const { length } = spec
        const m = prepareDrag(
          spec,
          {
            mass,
            x: x * length,
            z: 0.15,
            riderMass: rider,
            riderRange: [0.15 * length, 0.65 * length],
            riderHeight: height,
            dragArea: 0.4,
            dragHeight: height,
            thrustLine: { height: 0.1, angle: 0 },
          },
          { density: 999, kinematicViscosity: 1.1e-6, wind },
        )
        if (m.rest.converged) floating++
        for (const V of [0.1, 1, 2, 3, 4.5, 7, 12, 25])
          for (const options of [{}, { riderAt: 0.4 * length }]) {
            const p = dragAt(m, V, options)
            if (!m.rest.converged) {
              expect(p.drag).toBeNaN()
              continue
            }
            for (const n of [p.trim, p.lambda, p.wettedKeel, p.riderAt, ...Object.values(p.parts)])
              expect(Number.isFinite(n)).toBe(true)
            expect(p.drag).toBeGreaterThan(0)
            expect(p.low).toBeLessThanOrEqual(p.drag)
            expect(p.high).toBeGreaterThanOrEqual(p.drag)
          }
      },
    ),
    { numRuns: 250 },
  )
  expect(floating).toBeGreaterThan(20)
})

test('a following wind that outdoes a slow craft makes the drag negative, still inside its band', () => {
  const m = prepareDrag(
    { length: 2.4, chineBeam: 0.7, deadrise: 0.1, depth: 0.25 },
    {
      mass: 65,
      x: 1,
      z: 0.15,
      riderMass: 80,
      riderRange: [0.5, 1.5],
      riderHeight: 0.8,
      dragArea: 0.5,
      dragHeight: 0.8,
      thrustLine: { height: 0.1, angle: 0 },
    },
    { density: 999, kinematicViscosity: 1.1e-6, wind: -10 },
  )
  const p = dragAt(m, 0.5)
  expect(p.drag).toBeLessThan(0)
  expect(p.low).toBeLessThan(p.drag)
  expect(p.high).toBeGreaterThan(p.drag)
})

test('a hull far outside the regression says so and still drags at least its friction', () => {
  const m = prepareDrag(
    { length: 8, chineBeam: 0.43, beam: 0.93, deadrise: 0, depth: 1.5, tailWidth: 0.1, widestAt: 7.6 },
    {
      mass: 120,
      x: 3,
      z: 0.15,
      riderMass: 150,
      riderRange: [1.2, 5.2],
      riderHeight: 0.3,
      dragArea: 0.5,
      dragHeight: 0.8,
      thrustLine: { height: 0.1, angle: 0 },
    },
    { density: 999, kinematicViscosity: 1.1e-6 },
  )
  expect(m.rest.converged).toBe(true)
  expect(m.flags.map((f) => f.code)).toContain('regression outside')
  const p = dragAt(m, 3)
  expect(p.parts.friction).toBeGreaterThan(0)
  expect(p.drag).toBeGreaterThan(p.parts.friction)
})
