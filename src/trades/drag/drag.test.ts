import fc from 'fast-check'
import { expect, test } from 'vitest'
import { gravity } from '../../physics/fluid/water.ts'
import { centreOf, dragAt, dragCurve, prepareDrag } from './drag.ts'
import type { Conditions, HullSpec, Loading } from './hullSpec.ts'
import { humpOf } from './hump.ts'
import { planingState } from './planing.ts'
import { planingCase } from './planingCase.ts'
import { slowDrag } from './slow.ts'
import { lambdaWindow, settle } from './trimBalance.ts'
import { blendRange } from './validity.ts'

const degree = Math.PI / 180
const sled: HullSpec = {
  length: 2.4,
  chineBeam: 0.7,
  deadrise: 6 * degree,
  noseDeadrise: 24 * degree,
  depth: 0.24,
  noseRise: 0.16,
  noseRiseFrom: 1.55,
  widestAt: 1.1,
  tailWidth: 0.92,
  intake: { front: 0.62, area: 0.0325 },
}
const loading: Loading = {
  mass: 64.5,
  x: 0.95,
  z: 0.14,
  riderMass: 78,
  riderRange: [0.5, 1.5],
  riderHeight: 0.85,
  dragArea: 0.42,
  dragHeight: 0.85,
  thrustLine: { height: 0.08, angle: 0 },
}
const pond: Conditions = { density: 999, kinematicViscosity: 1.1e-6 }
const model = prepareDrag(sled, loading, pond)
const perFv = Math.sqrt(gravity * Math.cbrt(model.rest.value.volume))

const hulls = fc.record({
  length: fc.double({ min: 2, max: 3.2, noNaN: true }),
  chineBeam: fc.double({ min: 0.6, max: 1, noNaN: true }),
  deadrise: fc.double({ min: 0, max: 0.3, noNaN: true }),
  riderMass: fc.double({ min: 50, max: 110, noNaN: true }),
  x: fc.double({ min: 0.8, max: 1.2, noNaN: true }),
  riderHeight: fc.double({ min: 0.3, max: 1.1, noNaN: true }),
})
const modelOf = (h: typeof hulls extends fc.Arbitrary<infer T> ? T : never) =>
  prepareDrag(
    { ...sled, length: h.length, chineBeam: h.chineBeam, deadrise: h.deadrise, depth: 0.3 },
    { ...loading, x: h.x, riderMass: h.riderMass, riderHeight: h.riderHeight },
    pond,
  )

test('drag is nil at rest, positive and finite above, and lies inside its band', () => {
  fc.assert(
    fc.property(hulls, fc.double({ min: 0.01, max: 15, noNaN: true }), (h, V) => {
      const p = dragAt(modelOf(h), V)
      expect(p.drag).toBeGreaterThan(0)
      expect(Number.isFinite(p.high)).toBe(true)
      expect(p.low).toBeLessThan(p.drag)
      expect(p.high).toBeGreaterThan(p.drag)
    }),
    { numRuns: 60 },
  )
  expect(dragAt(model, 0).drag).toBeCloseTo(0, 6)
})

test('drag has no step where the methods join: Fv 0.9, 1.0, 1.6, 2.0, 2.4', () => {
  for (const options of [{}, { riderAt: 0.85 }, { riderAt: 1.1 }])
    for (const Fv of [0.9, 1, 1.6, 2, 2.4]) {
      const below = dragAt(model, Fv * perFv * (1 - 1e-8), options).drag
      const above = dragAt(model, Fv * perFv * (1 + 1e-8), options).drag
      expect(Math.abs(above / below - 1)).toBeLessThan(1e-6)
    }
})

test('the parts add up to the drag', () => {
  for (const p of dragCurve(model, [0.5, 2, 2.6, 3.3, 4.4, 5, 7, 10])) {
    const sum = p.parts.friction + p.parts.pressure + p.parts.spray + p.parts.air + p.parts.appendage
    expect(sum / p.drag).toBeCloseTo(1, 9)
  }
})

test('outside the blend the drag is its component alone', () => {
  for (const Fv of [0.5, 0.9]) {
    const slow = slowDrag(model.slow, Fv * perFv)
    const p = dragAt(model, Fv * perFv)
    expect(p.drag).toBeCloseTo(slow.friction + slow.pressure + p.parts.air, 9)
  }
  for (const Fv of [blendRange[1], 3, 4]) {
    const V = Fv * perFv
    const c = planingCase(model, V)
    const s = planingState()
    settle(c, centreOf(loading, 0.9), lambdaWindow(c, sled.length), s)
    expect(dragAt(model, V, { riderAt: 0.9 }).drag).toBeCloseTo(s.drag, 6)
  }
})

test('the best rider place found quickly is as good as the best of 101 tried one by one', () => {
  const flat = prepareDrag({ ...sled, deadrise: 0 }, { ...loading, riderHeight: 1.2 }, pond)
  // without the intake, which keeps the quick search from places the trials would take
  const { intake: _, ...open } = sled
  const free = prepareDrag(open, loading, pond)
  for (const m of [flat, free])
    for (let V = 2.6; V < 11; V += 0.7) {
      const quick = dragAt(m, V)
      let least = Number.POSITIVE_INFINITY
      let at = 0
      for (let i = 0; i <= 100; i++) {
        const place = 0.5 + i / 100
        const tried = dragAt(m, V, { riderAt: place })
        if (tried.porpoiseMargin < -1.5 * degree || tried.balance !== 'balanced') continue
        if (tried.flags.some((f) => f.code === 'intake dry')) continue
        // no more of the curved nose than the quick search allows itself
        if (tried.wettedKeel > quick.wettedKeel + 1e-3 && V / perFv > 1.2 && tried.wettedKeel > 1.975)
          continue
        if (tried.drag < least) {
          least = tried.drag
          at = place
        }
      }
      if (!Number.isFinite(least)) continue
      expect(quick.drag, `at ${V} m/s, tried best ${at}, quick ${quick.riderAt}`).toBeLessThan(least * 1.002)
    }
})

test('dragAt at the place it found best gives that drag again', () => {
  for (const V of [3.2, 4, 5, 6.5, 8, 10]) {
    const best = dragAt(model, V)
    const again = dragAt(model, V, { riderAt: best.riderAt })
    expect(again.drag / best.drag).toBeCloseTo(1, 4)
    if (best.balance === 'balanced' && V > 4) expect(again.trim).toBeCloseTo(best.trim, 4)
  }
})

test('a rider further aft never lowers the drag at the hump, and the trim rises', () => {
  const at = (riderAt: number) => dragAt(model, 3.6, { riderAt })
  let before = at(1.2)
  for (let x = 1.1; x > 0.55; x -= 0.1) {
    const p = at(x)
    expect(p.drag).toBeGreaterThanOrEqual(before.drag - 1e-9)
    expect(p.trim).toBeGreaterThan(before.trim)
    before = p
  }
})

test('a heavier rider makes more drag through the hump', () => {
  const heavy = prepareDrag(sled, { ...loading, riderMass: 98 }, pond)
  for (const V of [2, 3, 4, 6]) expect(dragAt(heavy, V).drag).toBeGreaterThan(dragAt(model, V).drag)
})

test('near the wave speed of a thin sheet of water the point is flagged shallow', () => {
  const puddle = prepareDrag(sled, loading, { ...pond, depth: 0.6 })
  expect(dragAt(puddle, 2.4).flags.map((f) => f.code)).toContain('shallow')
  expect(dragAt(puddle, 6).flags.map((f) => f.code)).not.toContain('shallow')
  expect(dragAt(model, 2.4).flags.map((f) => f.code)).not.toContain('shallow')
})

test('a craft too heavy for its hull says that it does not float', () => {
  const brick = prepareDrag(sled, { ...loading, mass: 900 }, pond)
  expect(brick.flags.map((f) => f.code)).toContain('does not float')
  // and gives no number
  expect(dragAt(brick, 5).drag).toBeNaN()
  expect(dragAt(brick, 0.5).flags).toBe(brick.flags)
})

test('with nobody aboard the rider place is not a number and the drag is', () => {
  const empty = prepareDrag(sled, { ...loading, riderMass: 0 }, pond)
  const p = dragAt(empty, 6)
  expect(p.riderAt).toBeNaN()
  expect(p.drag).toBeGreaterThan(0)
})

test('the slope of drag over speed has no negative jump above 5 % of drag over speed at the joints', () => {
  const slope = (V: number) => (dragAt(model, V * 1.001).drag - dragAt(model, V / 1.001).drag) / (V * 0.002)
  for (const Fv of [1.6, 2, 2.4]) {
    const V = Fv * perFv
    const drop = slope(V * 0.996) - slope(V * 1.004)
    expect((drop * V) / dragAt(model, V).drag).toBeLessThan(0.05)
  }
})

test('slow drag with the thin-ship tail meets the regression at Fv 1 and stays within a factor of 2.5 of the power law', () => {
  const thin = prepareDrag(sled, loading, pond, { tail: 'thin ship' })
  expect(dragAt(thin, perFv).drag).toBeCloseTo(dragAt(model, perFv).drag, 6)
  for (const Fv of [0.3, 0.5, 0.7, 0.9]) {
    const ratio = dragAt(thin, Fv * perFv).drag / dragAt(model, Fv * perFv).drag
    expect(ratio).toBeGreaterThan(0.4)
    expect(ratio).toBeLessThan(2.5)
  }
})

test('a float handed in takes the place of the strip integration', () => {
  const given = prepareDrag(sled, loading, pond, { float: () => ({ ...model.rest, converged: true }) })
  expect(given.rest.value).toEqual(model.rest.value)
  expect(dragAt(given, 3).drag).toBeCloseTo(dragAt(model, 3).drag, 9)
})

test('a fin, a ride plate and a guard add drag that grows with the square of speed or a little less', () => {
  const fitted = prepareDrag(
    { ...sled, fins: [{ area: 0.01, chord: 0.12, thickness: 0.1 }], ridePlateArea: 0.03, blockedArea: 2e-4 },
    loading,
    pond,
  )
  const at = (V: number) => dragAt(fitted, V).parts.appendage
  expect(dragAt(model, 8).parts.appendage).toBe(0)
  expect(at(8)).toBeGreaterThan(4)
  expect(at(8) / at(4)).toBeGreaterThan(3.6)
  expect(at(8) / at(4)).toBeLessThan(4.01)
  expect(dragAt(fitted, 8).drag).toBeGreaterThan(dragAt(model, 8).drag + 0.8 * at(8))
})

test('a rounded rail narrows the planing beam, and a narrower beam planes deeper', () => {
  const round = prepareDrag({ ...sled, railRadius: 0.05 }, loading, pond)
  expect(round.beam).toBeCloseTo(model.beam - 0.04, 12)
  expect(dragAt(round, 7, { riderAt: 1 }).lambda).toBeGreaterThan(dragAt(model, 7, { riderAt: 1 }).lambda)
})

test('raising the thrust line lowers the bow', () => {
  const low = dragAt(model, 6, { riderAt: 0.95, thrustLine: { height: 0, angle: 0 } })
  const high = dragAt(model, 6, { riderAt: 0.95, thrustLine: { height: 0.2, angle: 0 } })
  expect(high.trim).toBeLessThan(low.trim)
})

test('humpOf is the most drag between Fv 1 and 2.4 and asks for a quarter more thrust', () => {
  const { speed, point, thrustToPlane } = humpOf(model, { riderAt: 0.8 })
  for (let Fv = 1; Fv <= 2.4; Fv += 0.02)
    expect(dragAt(model, Fv * perFv, { riderAt: 0.8 }).drag).toBeLessThanOrEqual(point.drag * (1 + 1e-6))
  expect(speed).toBeGreaterThan(perFv)
  expect(thrustToPlane).toBeCloseTo(1.25 * point.drag, 12)
})
