import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { AREA, AREA_QQ, addBelow, clipBody, SUMS, VOLUME, VOLUME_P, VOLUME_Q, VOLUME_S } from './below.ts'
import { flawsOf } from './closed.ts'
import { solidProperties } from './integrals.ts'
import { flipped, joined, type Mesh, makeMesh, mapPoints, moved } from './mesh.ts'
import { boxMesh, cylinderMesh, sphereMesh } from './primitives.ts'
import { cutLines, cutLoops, heightsAt } from './section.ts'
import { sliceBetween, sliceBox } from './slice.ts'
import { makeFrame } from './waterFrame.ts'

const box = boxMesh([0, -0.35, 0], [2.4, 0.35, 0.3])
const below = (mesh: Mesh, trim: number, heel: number, h: number) => {
  const sums = new Float64Array(SUMS)
  addBelow(clipBody(mesh), makeFrame(trim, heel), h, sums)
  return sums
}
const angle = fc.double({ min: -1.2, max: 1.2, noNaN: true })

describe('integrals of a closed mesh', () => {
  test('volume and centroid do not depend on where the origin is', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: -50, max: 50, noNaN: true }),
        (dx, dz) => {
          const a = solidProperties(box)
          const b = solidProperties(moved(box, [dx, -2, dz]))
          expect(Math.abs(b.volume / a.volume - 1)).toBeLessThan(1e-12)
          expect(Math.abs(b.centroid[0] - dx - a.centroid[0])).toBeLessThan(1e-12)
          expect(Math.abs(b.centroid[2] - dz - a.centroid[2])).toBeLessThan(1e-12)
        },
      ),
    )
  })
  test('volume, area and the sum of second moments survive a rotation', () => {
    fc.assert(
      fc.property(angle, angle, (t, p) => {
        const f = makeFrame(t, p)
        const turnedBox = mapPoints(box, (x, y, z) => [
          f.e1x * x + f.e1y * y + f.e1z * z,
          f.e2y * y + f.e2z * z,
          f.nx * x + f.ny * y + f.nz * z,
        ])
        const a = solidProperties(box)
        const b = solidProperties(turnedBox)
        expect(Math.abs(b.volume / a.volume - 1)).toBeLessThan(1e-12)
        expect(Math.abs(b.area / a.area - 1)).toBeLessThan(1e-12)
        const trace = (s: Float64Array) => s[0]! + s[3]! + s[5]!
        expect(Math.abs(trace(b.second) / trace(a.second) - 1)).toBeLessThan(1e-11)
      }),
    )
  })
  test('a turned-round list of triangles and a split face give the same volume', () => {
    const t = Array.from(box.triangles)
    const shuffled = makeMesh(box.points, [...t.slice(18), ...t.slice(0, 18)])
    expect(solidProperties(shuffled).volume).toBeCloseTo(solidProperties(box).volume, 14)
    const [a, b, c] = t as [number, number, number]
    const m = [0, 1, 2].map(
      (k) => (box.points[3 * a + k]! + box.points[3 * b + k]! + box.points[3 * c + k]!) / 3,
    )
    const split = makeMesh([...box.points, ...m], [...t.slice(3), a, b, 8, b, c, 8, c, a, 8])
    expect(solidProperties(split).volume).toBeCloseTo(0.504, 14)
  })
})

describe('the part below the water', () => {
  test('a box on an even keel has the volume, waterplane and moments of arithmetic', () => {
    const s = below(box, 0, 0, 0.1)
    expect(s[VOLUME]).toBeCloseTo(2.4 * 0.7 * 0.1, 14)
    expect(s[AREA]).toBeCloseTo(2.4 * 0.7, 14)
    expect(s[AREA_QQ]).toBeCloseTo((2.4 * 0.7 ** 3) / 12, 14)
    expect(s[VOLUME_P]! / s[VOLUME]!).toBeCloseTo(1.2, 14)
    expect(s[VOLUME_S]! / s[VOLUME]!).toBeCloseTo(-0.05, 14)
  })
  test('below and above make the whole, at any attitude', () => {
    const whole = solidProperties(box).volume
    fc.assert(
      fc.property(angle, angle, fc.double({ min: -0.5, max: 1.5, noNaN: true }), (t, p, h) => {
        const down = below(box, t, p, h)[VOLUME]!
        const f = makeFrame(t, p)
        // the other side: the same plane with its normal turned round
        const up = below(box, Math.asin(-f.nx), Math.atan2(f.ny, -f.nz), -h)[VOLUME]!
        // points within a ten-thousand-millionth of the length count as on the plane
        expect(Math.abs(down + up - whole)).toBeLessThan(1e-9)
      }),
    )
  })
  test('the waterplane is the slope of the volume, at any attitude', () => {
    fc.assert(
      fc.property(angle, angle, (t, p) => {
        const h = 0.15 * Math.cos(t)
        const d = 1e-5
        const s = below(box, t, p, h)
        const slope = (below(box, t, p, h + d)[VOLUME]! - below(box, t, p, h - d)[VOLUME]!) / (2 * d)
        expect(Math.abs(slope - s[AREA]!)).toBeLessThan(1e-4 * Math.max(1, s[AREA]!))
      }),
    )
  })
  test('a deck exactly awash keeps its waterplane at the limit from below and gives no NaN', () => {
    const s = below(box, 0, 0, 0.3)
    expect(s[VOLUME]).toBeCloseTo(0.504, 14)
    expect(s[AREA]).toBeCloseTo(1.68, 14)
    expect(below(box, 0, 0, 0)[VOLUME]).toBe(0)
  })
  test('nothing is submerged above the water, all of it below', () => {
    expect(below(box, 0, 0, -1)[VOLUME]).toBe(0)
    expect(below(box, 0, 0, 2)[VOLUME]).toBeCloseTo(0.504, 13)
    expect(Math.abs(below(box, 0.3, 0.2, 5)[AREA]!)).toBeLessThan(1e-14)
    expect(below(box, 0, 0, 2)[VOLUME_Q]).toBeCloseTo(0, 14)
  })
  test('S scales with the square, V with the cube', () => {
    const s = below(
      mapPoints(box, (x, y, z) => [3 * x, 3 * y, 3 * z]),
      0.1,
      0.2,
      0.3,
    )
    const t = below(box, 0.1, 0.2, 0.1)
    expect(s[VOLUME]! / t[VOLUME]!).toBeCloseTo(27, 10)
    expect(s[AREA]! / t[AREA]!).toBeCloseTo(9, 10)
  })
})

describe('is it a closed solid', () => {
  test('boxes, cylinders and spheres are', () => {
    for (const m of [box, cylinderMesh(0.2, 0, 1, 24), sphereMesh(0.3, 12)]) expect(flawsOf(m)).toEqual([])
  })
  test('a missing face is an open edge, with its place', () => {
    const open = makeMesh(box.points, box.triangles.slice(3))
    const [flaw] = flawsOf(open)
    expect(flaw?.kind).toBe('open edge')
    expect(flaw?.count).toBe(3)
    expect(flaw?.says).toMatch(/leaks.*\(.*\) m/)
  })
  test('an inside-out box is said to be so', () => {
    expect(flawsOf(flipped(box)).map((f) => f.kind)).toEqual(['inside out'])
  })
  test('one face turned round is found', () => {
    const t = box.triangles.slice()
    t[1] = box.triangles[2]!
    t[2] = box.triangles[1]!
    expect(flawsOf(makeMesh(box.points, t)).map((f) => f.kind)).toContain('turned face')
  })
  test('two boxes through each other touch, with the place', () => {
    const other = moved(boxMesh([0, 0, 0], [0.5, 0.1, 0.11]), [0.313, 0.017, 0.253])
    const [flaw] = flawsOf(joined([box, other]))
    expect(flaw?.kind).toBe('self-touching')
    expect(flaw?.at[0]?.[2]).toBeCloseTo(0.3, 1)
  })
  test('an empty mesh and a flat one are refused', () => {
    expect(flawsOf(makeMesh([], []))[0]?.kind).toBe('empty')
    const flat = moved(box, [0, 0, 0])
    for (let i = 2; i < flat.points.length; i += 3) flat.points[i] = 0
    expect(flawsOf(flat)[0]?.kind).toBe('flat')
  })
  test('indices out of range and numbers that are not finite throw with their place', () => {
    expect(() => makeMesh([0, 0, 0], [0, 1, 2])).toThrow(/triangles\[1\]: 1/)
    expect(() => makeMesh([0, Number.NaN, 0], [])).toThrow(/points\[1\]/)
  })
})

describe('cuts', () => {
  test('a slice of a box has the volume of the slice, and is closed', () => {
    const piece = sliceBetween(box, 'x', 0.5, 1.1)!
    expect(solidProperties(piece).volume).toBeCloseTo(0.6 * 0.7 * 0.3, 13)
    expect(flawsOf(piece, { touching: false })).toEqual([])
  })
  test('slices at any places add up to the sphere', () => {
    const ball = sphereMesh(1, 16)
    fc.assert(
      fc.property(
        fc.double({ min: -0.95, max: 0.95, noNaN: true }),
        fc.constantFrom('x', 'y', 'z'),
        (at, axis) => {
          const a = sliceBetween(ball, axis as 'x', -2, at)!
          const b = sliceBetween(ball, axis as 'x', at, 2)!
          const sum = solidProperties(a).volume + solidProperties(b).volume
          expect(Math.abs(sum - solidProperties(ball).volume)).toBeLessThan(1e-12)
        },
      ),
    )
  })
  test('a box cut out of a box is the overlap; outside there is nothing', () => {
    expect(solidProperties(sliceBox(box, [1, 0, 0.1], [9, 9, 9])!).volume).toBeCloseTo(1.4 * 0.35 * 0.2, 13)
    expect(sliceBetween(box, 'x', 3, 4)).toBeUndefined()
  })
  test('the waterline of a box is one loop round its plan', () => {
    const loops = cutLoops(cutLines(box, [0, 0, 1], 0.1))
    expect(loops.length).toBe(1)
    let area = 0
    const l = loops[0]!
    for (let i = 0; i < l.length; i += 3) {
      const j = (i + 3) % l.length
      area += (l[i]! * l[j + 1]! - l[j]! * l[i + 1]!) / 2
    }
    expect(area).toBeCloseTo(1.68, 12)
  })
  test('an upright line meets the box at its bottom and top', () => {
    const h = heightsAt(box, 0.83, 0.11)
    expect(h[0]).toBeCloseTo(0, 14)
    expect(h.at(-1)).toBeCloseTo(0.3, 14)
    expect(heightsAt(box, 3, 0)).toEqual([])
  })
})
