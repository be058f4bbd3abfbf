import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { FlatPoint } from '../base/answers/madePart.ts'
import { coneFlat, developCone } from './cone.ts'
import type { Development } from './development.ts'
import { developElbow, elbowNumbers } from './elbow.ts'
import { mitredPipe } from './mitredPipe.ts'
import { put, turned } from './placing.ts'
import { jointGap, proveFold } from './refold.ts'
import { tight } from './seam.ts'
import { flatRim, rimLength, stripArea } from './strip.ts'

const sheeting = { id: 'p', title: 'Pipe', thickness: 1e-3, seam: tight }
const radius = fc.double({ min: 0.01, max: 0.15, noNaN: true })
const runs = { numRuns: 40 }

describe('a cone', () => {
  const cone = fc.record({
    startRadius: radius,
    endRadius: radius,
    height: fc.double({ min: 0.02, max: 1, noNaN: true }),
  })

  test('rolls up to its own rims within 0.1 mm, and its seam closes', () => {
    fc.assert(
      fc.property(cone, (c) => {
        const [strip] = developCone(c, sheeting).strips
        const { edge, seam, kept } = proveFold(strip!)
        expect(edge).toBeLessThan(1e-4)
        expect(seam).toBeLessThan(1e-4)
        expect(kept.ruling).toBeLessThan(1e-9)
        expect(kept.rim).toBeLessThan(1e-4)
      }),
      runs,
    )
  })
  test('has the area and the rims of the cone itself, drawn as seen from outside', () => {
    fc.assert(
      fc.property(cone, (c) => {
        const made = developCone(c, sheeting)
        expect(made.area / coneFlat(c).area).toBeCloseTo(1, 4)
        expect(rimLength(made.strips[0]!, 'near') / (2 * Math.PI * c.startRadius)).toBeCloseTo(1, 4)
        expect(rimLength(made.strips[0]!, 'far') / (2 * Math.PI * c.endRadius)).toBeCloseTo(1, 4)
      }),
      runs,
    )
  })
  test('that is almost a cylinder has the cylinder’s flat', () => {
    const flat = (d: number) =>
      developCone({ startRadius: 0.05, endRadius: 0.05 - d, height: 0.2 }, sheeting).strips[0]!.flat
    const straight = flat(0)
    for (const d of [1e-13, 1e-10, -1e-10])
      flat(d).forEach((v, i) => {
        expect(v).toBeCloseTo(straight[i]!, 8)
      })
  })
  test('that does not exist is named', () => {
    const of = (startRadius: number, endRadius: number, height: number) => () =>
      developCone({ startRadius, endRadius, height }, sheeting)
    expect(of(0, 0, 1)).toThrow(/endRadius/)
    expect(of(0.1, -0.1, 1)).toThrow(/endRadius/)
    expect(of(0.1, 0.05, 0)).toThrow(/height/)
    expect(of(Number.NaN, 0.05, 1)).toThrow(/startRadius is not a number/)
    expect(of(0.1, 0.05, Number.POSITIVE_INFINITY)).toThrow(/height/)
  })
})

describe('a pipe with bends', () => {
  const pipe = fc
    .record({
      startRadius: fc.double({ min: 0.015, max: 0.05, noNaN: true }),
      endRadius: fc.double({ min: 0.015, max: 0.05, noNaN: true }),
      bends: fc.array(
        fc.record({
          turn: fc.double({ min: 0.05, max: 0.6, noNaN: true }),
          clock: fc.double({ min: -7, max: 7, noNaN: true }),
        }),
        { minLength: 1, maxLength: 5 },
      ),
    })
    .map(({ bends, ...ends }) => ({
      cone: { ...ends, height: 0.08 * (bends.length + 1) },
      mitres: bends.map((b, k) => ({ ...b, at: 0.08 * (k + 1) })),
    }))

  test('is made of patterns that meet when each is rolled up, in any direction, in cylinders and cones', () => {
    fc.assert(
      fc.property(pipe, ({ cone, mitres }) => {
        const made = mitredPipe(cone, mitres, sheeting)
        for (const piece of made.pieces) {
          const proof = proveFold(piece.strips[0]!)
          expect(proof.edge).toBeLessThan(1e-4)
          expect(proof.seam).toBeLessThan(1e-4)
        }
        for (let k = 0; k < mitres.length; k++)
          expect(
            jointGap(made.pieces[k]!.strips[0]!, 'far', made.pieces[k + 1]!.strips[0]!, 'near'),
          ).toBeLessThan(1e-4)
      }),
      { numRuns: 12 },
    )
  })
  test('carries ticks that meet across each cut: as far apart along both rims', () => {
    const ticksOn = (piece: Development, rim: 'near' | 'far') => {
      const points = flatRim(piece.strips[0]!, rim)
      const along = (q: FlatPoint) => {
        let sum = 0
        for (let i = 1; i < points.length; i++) {
          const [a, b] = [points[i - 1]!, points[i]!]
          const [l, u, v] = [
            Math.hypot(b[0] - a[0], b[1] - a[1]),
            Math.hypot(q[0] - a[0], q[1] - a[1]),
            Math.hypot(q[0] - b[0], q[1] - b[1]),
          ]
          if (u + v < l + 1e-9) return sum + u
          sum += l
        }
        return Number.NaN
      }
      const at = piece.piece.lines.flatMap((l) =>
        l.use === 'match' && l.points.length === 2 ? [along(l.points[0]!)] : [],
      )
      const round = rimLength(piece.strips[0]!, rim)
      const turns = at.filter((s) => !Number.isNaN(s)).map((s) => (s > round - 1e-9 ? 0 : s))
      const sorted = [...new Set(turns)].sort((a, b) => a - b)
      return sorted.map((s, i) => (sorted[(i + 1) % sorted.length]! - s + round) % round)
    }
    fc.assert(
      fc.property(pipe, ({ cone, mitres }) => {
        const { pieces } = mitredPipe(cone, mitres, sheeting)
        for (let k = 0; k < mitres.length; k++) {
          const [far, near] = [ticksOn(pieces[k]!, 'far'), ticksOn(pieces[k + 1]!, 'near')]
          expect(far).toHaveLength(5)
          expect(near).toHaveLength(5)
          const off = [0, 1, 2, 3, 4].map((turn) =>
            Math.max(...far.map((g, i) => Math.abs(g - near[(i + turn) % 5]!))),
          )
          expect(Math.min(...off)).toBeLessThan(5e-5)
        }
      }),
      { numRuns: 12 },
    )
  })
  test('has in all the area of the straight pipe', () => {
    fc.assert(
      fc.property(pipe, ({ cone, mitres }) => {
        const made = mitredPipe(cone, mitres, sheeting)
        const sum = made.pieces.reduce((s, p) => s + p.area, 0)
        expect(sum / stripArea(made.nested.strips[0]!)).toBeCloseTo(1, 9)
      }),
      runs,
    )
  })
  test('ends where its axis does, bent joint by joint', () => {
    fc.assert(
      fc.property(pipe, ({ cone, mitres }) => {
        const { end } = mitredPipe(cone, mitres, sheeting)
        // the axis by itself: a frame carried along, turned at each joint
        let x = [1, 0, 0]
        let y = [0, 1, 0]
        let z = [0, 0, 1]
        let at = [0, 0, 0]
        let from = 0
        for (const m of [...mitres, { at: cone.height, turn: 0, clock: 0 }]) {
          at = at.map((v, i) => v + (m.at - from) * z[i]!)
          from = m.at
          const d = x.map((v, i) => Math.cos(m.clock) * v + Math.sin(m.clock) * y[i]!)
          const [c, s] = [Math.cos(m.turn), Math.sin(m.turn)]
          const bend = (v: number[]) => {
            const [along, out] = [v, v].map((w, k) =>
              w.reduce((sum, e, i) => sum + e * (k === 0 ? z : d)[i]!, 0),
            ) as [number, number]
            return v.map(
              (e, i) => e + (along * (c - 1) - out * s) * z[i]! + (along * s + out * (c - 1)) * d[i]!,
            )
          }
          ;[x, y, z] = [bend(x), bend(y), bend(z)]
        }
        put(end, [0, 0, 0]).forEach((v, i) => {
          expect(v).toBeCloseTo(at[i]!, 9)
        })
        turned(end, [1, 0, 0]).forEach((v, i) => {
          expect(v).toBeCloseTo(x[i]!, 9)
        })
        turned(end, [0, 0, 1]).forEach((v, i) => {
          expect(v).toBeCloseTo(z[i]!, 9)
        })
      }),
      runs,
    )
  })
  test('with bends too near each other is named with how much is missing', () => {
    const cone = { startRadius: 0.05, endRadius: 0.05, height: 0.3 }
    const mitres = [0.14, 0.145].map((at) => ({ at, turn: 0.5, clock: 0 }))
    expect(() => mitredPipe(cone, mitres, sheeting)).toThrow(/mitres\.1\.at.*throat/)
  })
})

describe('an elbow', () => {
  test('tighter than its pipe is named with the limit', () => {
    const e = { startRadius: 0.04, endRadius: 0.03, bendRadius: 0.035, turn: 1, joints: 3 }
    expect(() => developElbow(e, sheeting)).toThrow(/bendRadius.*tighter/)
    expect(() => developElbow({ ...e, bendRadius: 0.1, joints: 0 }, sheeting)).toThrow(/joints/)
    expect(() => developElbow({ ...e, bendRadius: 0.1, turn: 7 }, sheeting)).toThrow(/turn/)
  })
  test('is longer along its pieces than along its arc, less so with more joints', () => {
    const at = (joints: number) => {
      const { length, arc } = elbowNumbers({
        startRadius: 0.025,
        endRadius: 0.025,
        bendRadius: 0.075,
        turn: 1.5,
        joints,
      })
      return length / arc
    }
    expect(at(2)).toBeGreaterThan(at(4))
    expect(at(4)).toBeGreaterThan(1)
  })
  test('has a pattern for each piece and one drawing of all with the cuts in common', () => {
    const made = developElbow(
      { startRadius: 0.04, endRadius: 0.03, bendRadius: 0.12, turn: 1.5, joints: 4 },
      sheeting,
    )
    expect(made.pieces).toHaveLength(5)
    expect(made.nested.piece.lines.filter((l) => l.use === 'cut')).toHaveLength(5)
  })
})
