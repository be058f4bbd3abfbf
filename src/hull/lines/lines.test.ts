import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { flawsOf } from '../../physics/solid/closed.ts'
import { solidProperties } from '../../physics/solid/integrals.ts'
import { type FewNumbers, fewTrouble } from './few.ts'
import { deckHeight, hullFromFew, hullFromMesh, hullFromStations } from './hullBody.ts'
import { lofted } from './loft.ts'
import { type Station, stationFromPoints, stationTrouble } from './stations.ts'

const few: FewNumbers = {
  length: 2.4,
  beam: 0.8,
  chineBeam: 0.7,
  depth: 0.24,
  deadrise: 0.1,
  noseRise: 0.16,
  noseRiseFrom: 1.5,
}

describe('hull from a few numbers', () => {
  test('is a closed, outward solid for any sensible numbers', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.6, max: 3.4, noNaN: true }),
        fc.double({ min: 0.45, max: 1.2, noNaN: true }),
        fc.double({ min: 0.8, max: 1.1, noNaN: true }),
        fc.double({ min: 0, max: 0.35, noNaN: true }),
        fc.double({ min: 0, max: 0.25, noNaN: true }),
        fc.double({ min: 0, max: 0.04, noNaN: true }),
        fc.double({ min: 0, max: 0.03, noNaN: true }),
        (length, beam, chine, deadrise, rocker, rail, camber) => {
          const hull = hullFromFew(
            {
              length,
              beam,
              chineBeam: chine * beam,
              depth: 0.3,
              deadrise,
              noseRise: rocker,
              railRadius: rail,
              deckCamber: camber,
              sternRise: 0.01,
            },
            { along: 24 },
          )
          expect(flawsOf(hull.mesh, { touching: false })).toEqual([])
          expect(hull.length).toBeCloseTo(length, 9)
        },
      ),
      { numRuns: 25 },
    )
  })
  test('keeps the breadths it was given, and is the same on both sides', () => {
    const hull = hullFromFew(few)
    expect(hull.beam).toBeCloseTo(0.8, 3)
    expect(Math.abs(solidProperties(hull.mesh).centroid[1])).toBeLessThan(1e-12)
    expect(deckHeight(hull.mesh, 1, 0.1)).toBeCloseTo(0.24, 9)
    expect(deckHeight(hull.mesh, 1, 0.5)).toBeUndefined()
  })
  test('a flat rectangular one has the volume of its box, less only its nose', () => {
    const hull = hullFromFew({
      length: 2,
      beam: 0.6,
      depth: 0.2,
      tailWidth: 1,
      widestAt: 1.98,
      noseExponents: [8, 8],
      noseRise: 0,
    })
    expect(hull.volume / (2 * 0.6 * 0.2)).toBeGreaterThan(0.99)
    expect(hull.volume / (2 * 0.6 * 0.2)).toBeLessThanOrEqual(1)
  })
  test('twice the pieces change the volume by less than a thousandth', () => {
    const a = hullFromFew(few, { along: 32 }).volume
    const b = hullFromFew(few, { along: 64, bottom: 12, side: 8 }).volume
    expect(Math.abs(a / b - 1)).toBeLessThan(1e-3)
  })
  test('numbers out of range are named with their range', () => {
    expect(() => hullFromFew({ ...few, length: -1 })).toThrow(/hull.length: -1, expected 0.3 to 30 m/)
    expect(fewTrouble({ ...few, tailWidth: 2 })[0]?.text).toMatch(/tailWidth: 2/)
  })
})

describe('hull from stations', () => {
  const station = (x: number, half: number): Station => ({
    x,
    bottom: [
      [0, 0],
      [half * 0.9, 0.03],
    ],
    side: [[half, 0.2]],
  })
  test('passes through its stations and keeps its corners sharp', () => {
    const hull = hullFromStations([station(0, 0.35), station(1, 0.4), station(2, 0.3), station(2.4, 0.05)])
    expect(flawsOf(hull.mesh)).toEqual([])
    expect(hull.beam).toBeCloseTo(0.8, 6)
    const edge = hull.edge.find((p) => Math.abs(p[0] - 1.05) < 0.04)!
    expect(edge[2]).toBeCloseTo(0.2, 3)
  })
  test('a few-number hull read back as stations is the same hull', () => {
    const a = hullFromFew(few)
    // the same lines, measured with a tape at ten places
    const sections = [0, 0.4, 0.8, 1.2, 1.6, 1.9, 2.1, 2.25, 2.35, 2.4].map(sampled)
    const b = hullFromStations(sections)
    expect(Math.abs(b.volume / a.volume - 1)).toBeLessThan(0.02)
  })
  test('stations out of order, half sections off the centreline and upside-down edges are named', () => {
    expect(stationTrouble([station(1, 0.3), station(0, 0.3)])).toMatch(/stations\[1\].*out of order/)
    expect(
      stationTrouble([
        station(0, 0.3),
        {
          ...station(1, 0.3),
          bottom: [
            [0.1, 0],
            [0.3, 0],
          ],
        },
      ]),
    ).toMatch(/centreline/)
    expect(stationTrouble([station(0, 0.3), { ...station(1, 0.3), side: [[0.3, -0.1]] }])).toMatch(
      /below the chine/,
    )
    expect(stationTrouble([station(0, 0.3)])).toMatch(/1 given, expected 2/)
    expect(() => hullFromStations([station(0, 0.3), station(0, 0.3)])).toThrow(RangeError)
  })
  test('one list of points finds its chine and its deck edge', () => {
    const s = stationFromPoints(1, [
      [0, 0],
      [0.3, 0.03],
      [0.34, 0.1],
      [0.38, 0.2],
      [0.2, 0.22],
      [0, 0.23],
    ])
    expect(s.bottom.at(-1)).toEqual([0.3, 0.03])
    expect(s.side.at(-1)).toEqual([0.38, 0.2])
    expect(s.deck!.at(-1)).toEqual([0, 0.23])
    const three = stationFromPoints(1, [
      [0, 0],
      [0.3, 0.1],
      [0, 0.1],
    ])
    expect(three.bottom.at(-1)).toEqual([0.3, 0.1])
    expect(() =>
      stationFromPoints(1, [
        [0, 0],
        [1, 1],
      ]),
    ).toThrow(/2 points/)
  })
  test('sections that do not match are refused', () => {
    expect(() =>
      lofted([
        {
          x: 0,
          points: [
            [0, 0],
            [1, 1],
            [0, 1],
          ],
        },
        {
          x: 1,
          points: [
            [0, 0],
            [0, 1],
          ],
        },
      ]),
    ).toThrow(/section 1 has 2 points/)
  })
  test('a mesh that leaks is refused with the place', () => {
    const mesh = hullFromFew(few).mesh
    expect(() => hullFromMesh({ points: mesh.points, triangles: mesh.triangles.slice(3) })).toThrow(/leaks/)
  })
})

/** the few-number lines of the test hull, written out independently */
function sampled(x: number): Station {
  const L = 2.4
  const full = 0.35
  const tail = full * 0.92
  const widest = 0.45 * L
  const s = x <= widest ? 1 - x / widest : (x - widest) / (L - widest)
  const half =
    x <= widest ? full - (full - tail) * s * s : Math.max(1e-3, full * Math.sqrt(Math.max(0, 1 - s ** 2.5)))
  const keel = x > 1.5 ? 0.16 * ((x - 1.5) / 0.9) ** 2 : 0
  const chine = keel + half * Math.tan(0.1)
  return {
    x,
    bottom: [
      [0, keel],
      [half, chine],
    ],
    side: [[(half * 0.8) / 0.7, Math.max(0.24, chine + 1e-3)]],
  }
}
