import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mitredPipe } from './mitredPipe.ts'
import { after, atHome, minus, put, shift, turnAbout, turned, type Vec } from './placing.ts'
import {
  endOf,
  flangeFrame,
  fromBox,
  fromPipe,
  jointsAlong,
  leastGap,
  type Route,
  type RouteLeg,
  routeOf,
  sampled,
} from './route.ts'
import { closeRoute } from './routeClose.ts'
import { tight } from './seam.ts'

const apart = (a: Vec, b: Vec) => Math.hypot(...minus(a, b))
/** Which way the end points. */
const headingOf = (route: Route): Vec => turned(route.frames.at(-1)!, [0, 0, 1])
const leg = (length: number, bend = 0, clock = 0, startRadius = 0.02, endRadius = startRadius): RouteLeg => ({
  name: 'tube',
  length,
  startRadius,
  endRadius,
  bend,
  clock,
})
const anyLeg = fc
  .tuple(
    fc.double({ min: 0.1, max: 0.6, noNaN: true }),
    fc.oneof(fc.constant(0), fc.double({ min: 0.05, max: 1.6, noNaN: true })),
    fc.double({ min: -3, max: 3, noNaN: true }),
  )
  .map(([l, b, c]) => leg(l, b, c))
const anyLegs = fc.array(anyLeg, { minLength: 1, maxLength: 6 })
const anyPlace = fc
  .tuple(...Array.from({ length: 6 }, () => fc.double({ min: -2, max: 2, noNaN: true })))
  .map(([a, b, c, d, e, f]) => after(shift([a!, b!, c!]), turnAbout([d!, e!, 0], [e! + 0.1, f!, 3], d!)))

describe('the way of a pipe', () => {
  it('moves as one body with its flange', () => {
    fc.assert(
      fc.property(anyLegs, anyPlace, (legs, place) => {
        const home = routeOf(atHome, legs)
        const moved = routeOf(place, legs)
        home.points.forEach((p, i) => {
          expect(apart(put(place, p.at), moved.points[i]!.at)).toBeLessThan(1e-9)
        })
      }),
    )
  })

  it('is as long as its parts together, along straight pieces', () => {
    fc.assert(
      fc.property(anyLegs, (legs) => {
        const { points } = routeOf(atHome, legs)
        const drawn = points.slice(1).reduce((sum, p, i) => sum + apart(p.at, points[i]!.at), 0)
        const said = legs.reduce((sum, l) => sum + l.length, 0)
        expect(drawn).toBeCloseTo(said, 9)
        expect(points.at(-1)!.along).toBeCloseTo(said, 9)
      }),
    )
  })

  it('ends where the mitred patterns of the same bends end', () => {
    const legs = [leg(0.3), leg(0.25, 1.1, 0.4), leg(0.2), leg(0.3, 0.8, -1.7), leg(0.1)]
    let from = 0
    const mitres = legs.flatMap((l) => {
      const here = from
      from += l.length
      return jointsAlong(l).map(({ at, turn }) => ({ at: here + at, turn, clock: l.clock }))
    })
    const made = mitredPipe({ startRadius: 0.02, endRadius: 0.02, height: from }, mitres, {
      id: 'p',
      title: 'p',
      thickness: 1e-3,
      seam: tight,
    })
    const end = routeOf(atHome, legs)
    expect(apart(put(made.end, [0, 0, 0]), endOf(end))).toBeLessThan(1e-9)
    expect(apart(minus(put(made.end, [0, 0, 1]), put(made.end, [0, 0, 0])), headingOf(end))).toBeLessThan(
      1e-9,
    )
  })

  it('marks the flange on its upper side, and clocks clockwise as seen along the pipe', () => {
    // aft along the craft: up is up, port is at the right hand
    const frame = flangeFrame([1, 0, 0.2], [0, 0, 0.2])
    expect(headingOf(routeOf(frame, [leg(0.2, 0.5, 0)]))[2]).toBeGreaterThan(0.4)
    expect(headingOf(routeOf(frame, [leg(0.2, 0.5, Math.PI / 2)]))[1]).toBeGreaterThan(0.4)
    expect(headingOf(routeOf(flangeFrame([0, 0, 0], [0, 0, 1]), [leg(0.2, 0.5, 0)]))[0]).toBeGreaterThan(0.4)
  })
})

describe('a way that misses its hole', () => {
  it('is closed by changes that end it there within a tenth of a millimetre, when they are laid again', () => {
    const legs = [leg(0.2), leg(0.2, 0.9, 0.3), leg(0.3, 0, 0, 0.02, 0.04), leg(0.25, 0.8, -1.2), leg(0.3)]
    const there = endOf(routeOf(atHome, legs))
    fc.assert(
      fc.property(
        fc.tuple(...Array.from({ length: 3 }, () => fc.double({ min: -0.04, max: 0.04, noNaN: true }))),
        ([x, y, z]) => {
          const to: Vec = [there[0] + x!, there[1] + y!, there[2] + z!]
          const closed = closeRoute(atHome, legs, to)
          expect(closed.converged).toBe(true)
          expect(apart(endOf(routeOf(atHome, closed.value.legs)), to)).toBeLessThan(1e-4)
          // the tuned cone is left alone where bends and tubes do it
          expect(closed.value.legs[2]).toEqual(legs[2])
        },
      ),
      { numRuns: 12 },
    )
  })

  it('says so where nothing closes it: a straight pipe does not reach a hole beside it', () => {
    const closed = closeRoute(atHome, [leg(0.5)], [0.2, 0, 0.5])
    expect(closed.converged).toBe(false)
    expect(closed.value.changes).toEqual([])
    expect(closed.residual).toBeCloseTo(0.2, 9)
  })
})

describe('the gap beside a pipe', () => {
  it('is measured from its outside to a box, and is negative where it runs through it', () => {
    const samples = sampled(routeOf(flangeFrame([0, 0, 0], [1, 0, 0]), [leg(1, 0, 0, 0.02, 0.05)]))
    const box = { name: 'foam', from: [0.8, 0.1, -1] as Vec, to: [2, 0.3, 1] as Vec }
    const gap = leastGap(samples, (at) => fromBox(box, at))!
    expect(gap.gap).toBeCloseTo(0.1 - 0.05, 6)
    expect(gap.along).toBeCloseTo(1, 6)
    const through = leastGap(samples, (at) => fromBox({ ...box, from: [0.5, -0.1, -1] }, at))!
    expect(through.gap).toBeLessThan(0)
  })

  it('between two pipes side by side is their distance less both radii', () => {
    const a = sampled(routeOf(flangeFrame([0, 0, 0], [1, 0, 0]), [leg(0.5)]))
    const b = sampled(routeOf(flangeFrame([0, 0.1, 0], [1, 0.1, 0]), [leg(0.5)]))
    expect(leastGap(a, (at) => fromPipe(b, at))!.gap).toBeCloseTo(0.06, 6)
  })
})
