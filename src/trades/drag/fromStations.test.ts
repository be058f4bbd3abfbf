import { expect, test } from 'vitest'
import { brent } from '../../base/numerics/roots.ts'
import { stationsFromFew } from '../../hull/lines/few.ts'
import { hullFromFew } from '../../hull/lines/hullBody.ts'
import { hullFormOf } from '../../hull/mesh/meshForm.ts'
import { dragAt, prepareDrag } from './drag.ts'
import { floatAtRest } from './dragForm.ts'
import { specFromStations } from './fromStations.ts'
import type { HullSpec } from './hullSpec.ts'

const sled = {
  length: 2.4,
  beam: 0.8,
  chineBeam: 0.7,
  depth: 0.24,
  deadrise: 0.1,
  midDeadrise: 0.12,
  noseDeadrise: 0.42,
  noseRise: 0.16,
  noseRiseFrom: 1.55,
  sternRise: 0.004,
  sternRiseOver: 0.3,
  widestAt: 1.1,
  tailWidth: 0.92,
} satisfies HullSpec & { beam: number }

test('strip integration and the closed mesh of the same numbers agree on everything the drag methods read', () => {
  const { mesh } = hullFromFew(sled)
  for (const [mass, x] of [
    [142.5, 0.97],
    [170, 1.0],
    [120, 0.95],
  ] as const) {
    const strips = floatAtRest(sled, mass, x, 0.5, 999)
    expect(strips.converged).toBe(true)
    const f = strips.value
    const exact = hullFormOf(mesh, { h: f.waterAtTransom * Math.cos(f.trim), trim: f.trim })!
    expect(f.volume / exact.volume).toBeCloseTo(1, 2)
    // the mesh measures along the water, the strips along the keel
    expect(f.centre).toBeCloseTo(exact.lcb, 1)
    expect(f.wettedSurface / (exact.wettedSurface - exact.transomArea)).toBeCloseTo(1, 1)
    expect(f.waterplane / exact.waterplaneArea).toBeCloseTo(1, 1)
    expect(f.beam / exact.waterlineBeam).toBeCloseTo(1, 2)
    expect(f.draft / exact.draft).toBeCloseTo(1, 1)
    expect(f.length / exact.waterlineLength).toBeCloseTo(1, 1)
    // a trimmed transom is not square to the water: compared level
    const level = brent((at) => floatAtRest(sled, mass, at, 0.5, 999).value.trim, 0.7, 1.2).value
    const flat = floatAtRest(sled, mass, level, 0.5, 999).value
    const square = hullFormOf(mesh, { h: flat.waterAtTransom })!
    expect(flat.transomRatio / (square.transomArea / square.greatestSection)).toBeCloseTo(1, 2)
    expect(flat.section / square.greatestSection).toBeCloseTo(1, 2)
  }
})

const measured = stationsFromFew(sled, 12).map((s) => ({
  at: s.x,
  points: [...s.bottom, ...s.side, ...(s.deck ?? [])],
}))

test('stations cut from a hull give its numbers back', () => {
  const back = specFromStations(measured)
  expect(back.length).toBeCloseTo(2.4, 9)
  expect(back.chineBeam).toBeCloseTo(0.7, 2)
  expect(back.beam).toBeCloseTo(0.8, 2)
  expect(back.deadrise).toBeCloseTo(0.1, 2)
  expect(back.noseRise).toBeCloseTo(0.16, 2)
  expect(back.noseRiseFrom).toBeGreaterThan(1.35)
  expect(back.noseRiseFrom).toBeLessThan(1.75)
  expect(back.tailWidth).toBeCloseTo(0.92, 2)
  expect(back.depth).toBeCloseTo(0.24, 2)
})

test('the drag from stations is the drag from the numbers within 2 %, wherever the heights were measured from', () => {
  const loading = {
    mass: 64.5,
    x: 0.98,
    z: 0.14,
    riderMass: 78,
    riderRange: [0.4, 1.5] as const,
    riderHeight: 0.7,
    dragArea: 0.42,
    dragHeight: 0.85,
    thrustLine: { height: 0.1, angle: 0 },
  }
  const pond = { density: 999, kinematicViscosity: 1.1e-6 }
  const a = prepareDrag(sled, loading, pond)
  const b = prepareDrag(specFromStations(measured), loading, pond)
  const string = measured.map((s) => ({ ...s, points: s.points.map(([y, z]) => [y, z + 0.31] as const) }))
  const c = prepareDrag(specFromStations(string), loading, pond)
  for (const V of [1, 2, 3, 4.5, 6, 9]) {
    const at = { riderAt: 1 }
    expect(Math.abs(dragAt(b, V, at).drag / dragAt(a, V, at).drag - 1)).toBeLessThan(0.03)
    expect(dragAt(c, V, at).drag / dragAt(b, V, at).drag).toBeCloseTo(1, 9)
  }
})

test('fewer than three stations are refused by name', () => {
  expect(() => specFromStations(measured.slice(0, 2))).toThrow('hull.stations: 2 given, expected 3 or more')
})
