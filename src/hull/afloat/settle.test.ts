import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Mesh, mapPoints } from '../../physics/solid/mesh.ts'
import { boxMesh } from '../../physics/solid/primitives.ts'
import { afloat, board, deg, sled } from '../../trades/float/float.testkit.ts'
import { angleOfLoll, rightingCurve, wallSidedArm } from '../../trades/float/righting.ts'
import { lookAt, makeState } from './energy.ts'
import { floaterOf, reloaded } from './load.ts'
import { isStable, metacentricHeight, nudged, settle, sinkDeficit } from './settle.ts'

const scaled = (mesh: Mesh, s: number) => mapPoints(mesh, (x, y, z) => [s * x, s * y, s * z])
const mass = fc.double({ min: 20, max: 260, noNaN: true })
const some = { numRuns: 40 }

describe('energy', () => {
  test('its first and second derivatives are those of finite differences, at any attitude, with slack liquid', () => {
    const tank = {
      name: 'tank',
      mesh: boxMesh([1.2, -0.15, 0.05], [1.6, 0.15, 0.25]),
      volume: 0.01,
      density: 745,
    }
    const f = afloat(sled.mesh, 150, [1.02, 0.03, 0.3], { liquids: [tank] })
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.18, noNaN: true }),
        fc.double({ min: -0.3, max: 0.3, noNaN: true }),
        fc.double({ min: -1.2, max: 1.2, noNaN: true }),
        (h, trim, heel) => {
          const d = 1e-5
          const s = lookAt(f, h, trim, heel, makeState())
          const e = (a: number, b: number, c: number) => lookAt(f, h + a, trim + b, heel + c, makeState())
          const near = (got: number, want: number, size: number) =>
            expect(Math.abs(got - want)).toBeLessThan(2e-4 * size + 2e-4 * Math.abs(want))
          near((e(d, 0, 0).energy - e(-d, 0, 0).energy) / (2 * d), s.g0, 50)
          near((e(0, d, 0).energy - e(0, -d, 0).energy) / (2 * d), s.g1, 50)
          near((e(0, 0, d).energy - e(0, 0, -d).energy) / (2 * d), s.g2, 20)
          near((e(d, 0, 0).g1 - e(-d, 0, 0).g1) / (2 * d), s.h01, 1000)
          near((e(0, d, 0).g1 - e(0, -d, 0).g1) / (2 * d), s.h11, 1000)
          near((e(0, 0, d).g2 - e(0, 0, -d).g2) / (2 * d), s.h22, 200)
          near((e(0, 0, d).g1 - e(0, 0, -d).g1) / (2 * d), s.h12, 200)
          near((e(0, 0, d).g0 - e(0, 0, -d).g0) / (2 * d), s.h02, 200)
        },
      ),
      some,
    )
  })
})

describe('coming to rest', () => {
  test('the balance is met to better than a billionth of a metre', () => {
    fc.assert(
      fc.property(
        mass,
        fc.double({ min: 0.85, max: 1.15, noNaN: true }),
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        (m, x, y) => {
          const r = settle(afloat(sled.mesh, m, [x, y, 0.15]))
          expect(r.converged).toBe(true)
          expect(r.residual).toBeLessThan(1e-9)
          expect(isStable(r.state)).toBe(true)
        },
      ),
      some,
    )
  })
  test('a symmetric craft with its weight on the centreline does not heel', () => {
    fc.assert(
      fc.property(mass, (m) => {
        expect(Math.abs(settle(afloat(sled.mesh, m, [1, 0, 0.1])).value.heel)).toBeLessThan(1e-9)
      }),
      some,
    )
  })
  test('draft rises with mass, by dm/(ρA) for a little more', () => {
    fc.assert(
      fc.property(mass, (m) => {
        const a = settle(afloat(board, m, [1.2, 0, 0.1]))
        const b = settle(afloat(board, m + 0.01, [1.2, 0, 0.1]))
        expect(b.value.h).toBeGreaterThan(a.value.h)
        expect(b.value.h - a.value.h).toBeCloseTo(0.01 / (1000 * 1.68), 12)
      }),
      some,
    )
  })
  test('moving mass forward lowers the bow', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.8, max: 1.15, noNaN: true }), (x) => {
        const a = settle(afloat(sled.mesh, 120, [x, 0, 0.15])).value.trim
        const b = settle(afloat(sled.mesh, 120, [x + 0.02, 0, 0.15])).value.trim
        expect(b).toBeLessThan(a)
      }),
      some,
    )
  })
  test('a weight moved to port heels to port by w·y/(m·GM) for small y', () => {
    const up = metacentricHeight(settle(afloat(board, 150, [1.2, 0, 0.2])).state)
    const r = settle(afloat(board, 150, [1.2, 0.002, 0.2]))
    expect(r.value.heel).toBeGreaterThan(0)
    expect(Math.tan(r.value.heel)).toBeCloseTo(0.002 / up, 5)
  })
  test('lengths times s: volume s³, metacentric height s', () => {
    const s = 2.7
    const a = metacentricHeight(settle(afloat(sled.mesh, 100, [1, 0, 0.15])).state)
    const b = metacentricHeight(settle(afloat(scaled(sled.mesh, s), 100 * s ** 3, [s, 0, 0.15 * s])).state)
    expect(b / a).toBeCloseTo(s, 8)
  })
  test('a weight above the lift sinks, and says by how much', () => {
    const f = afloat(board, 560, [1.2, 0, 0.1])
    const r = settle(f)
    expect(r.converged).toBe(false)
    expect(sinkDeficit(f)).toBeCloseTo(560 - 504, 9)
    expect(r.deficit).toBeCloseTo(56, 9)
  })
  test('a top-heavy board leaves its knife edge and comes to rest where it stays', () => {
    const f = afloat(board, 190, [1.2, 0, 0.5])
    const r = settle(f)
    expect(r.converged).toBe(true)
    expect(isStable(r.state)).toBe(true)
    expect(Math.abs(r.value.heel)).toBeGreaterThan(0.5)
  })
  test('nothing near the resting place has less energy, by a plain search', () => {
    fc.assert(
      fc.property(
        mass,
        fc.double({ min: 0.9, max: 1.1, noNaN: true }),
        fc.double({ min: -0.04, max: 0.04, noNaN: true }),
        (m, x, y) => {
          const f = afloat(sled.mesh, m, [x, y, 0.12])
          const r = settle(f)
          const least = lookAt(f, r.value.h, r.value.trim, r.value.heel, makeState()).energy
          for (const d of [1e-3, 1e-2])
            for (const [a, b, c] of [
              [1, 0, 0],
              [0, 1, 0],
              [0, 0, 1],
              [1, 1, 0],
              [1, 0, 1],
              [0, 1, 1],
              [1, -1, 0],
              [0, 1, -1],
            ] as const)
              for (const s of [d, -d])
                expect(
                  lookAt(f, r.value.h + s * a, r.value.trim + s * b, r.value.heel + s * c, makeState())
                    .energy,
                ).toBeGreaterThanOrEqual(least - 1e-12)
        },
      ),
      some,
    )
  })
  test('the slow search, let loose at once, finds the same place', () => {
    const f = afloat(sled.mesh, 120, [1.05, 0.02, 0.15])
    const quick = settle(f)
    const slow = settle(f, undefined, { maxIterations: 0 })
    expect(slow.converged).toBe(true)
    expect(slow.value.heel).toBeCloseTo(quick.value.heel, 6)
    expect(slow.value.trim).toBeCloseTo(quick.value.trim, 6)
    expect(slow.value.h).toBeCloseTo(quick.value.h, 7)
  })
  test('a deck exactly awash settles', () => {
    const r = settle(afloat(board, 504 - 1e-6, [1.2, 0, 0.1]))
    expect(r.value.h).toBeCloseTo(0.3, 6)
  })
  test('no weight at all and no bodies are handled as said', () => {
    expect(settle(floaterOf({ bodies: [], mass: 10, centre: [0, 0, 0], density: 1000 })).deficit).toBe(10)
    expect(() => afloat(board, Number.NaN, [0, 0, 0])).toThrow(/load.mass/)
    expect(() => afloat(board, -1, [0, 0, 0])).toThrow(/-1 kg/)
  })
})

describe('righting arm', () => {
  test('is odd in heel for a symmetric craft', () => {
    const f = afloat(sled.mesh, 140, [1, 0, 0.25])
    const a = rightingCurve(f, undefined, { to: 1.2, step: 0.1 })
    const b = rightingCurve(f, undefined, { to: -1.2, step: -0.1 })
    for (let i = 0; i < a.arm.length; i++) expect(a.arm[i]! + b.arm[i]!).toBeCloseTo(0, 8)
  })
  test('starts with the slope GM, and ends with that of the craft upside down', () => {
    const f = afloat(sled.mesh, 140, [1, 0, 0.25])
    const c = rightingCurve(f, undefined, { to: 2e-4, step: 1e-4 })
    expect(c.arm[1]! / 1e-4).toBeCloseTo(c.gm, 4)
    const all = rightingCurve(f)
    const over = settle(f, { h: all.h.at(-1)!, trim: all.trim.at(-1)!, heel: Math.PI }, { freeHeel: false })
    const e = 1e-4
    const near = settle(f, { ...over.value, heel: Math.PI - e }, { freeHeel: false })
    expect(-near.state.g2 / near.state.mass / Math.cos(near.value.trim) / e).toBeCloseTo(
      metacentricHeight(over.state),
      3,
    )
  })
  test('its work is the rise of the energy, whole way round', () => {
    const f = afloat(sled.mesh, 140, [1, 0, 0.25])
    const c = rightingCurve(f, undefined, { step: Math.PI / 720 })
    expect(c.converged).toBe(true)
    let work = 0
    for (let i = 1; i < c.arm.length; i++) {
      const at = (k: number) => 140 * c.arm[k]! * Math.cos(c.trim[k]!)
      work += ((at(i) + at(i - 1)) / 2) * (c.heel[i]! - c.heel[i - 1]!)
    }
    const most = Math.max(...c.energy)
    expect(Math.abs(work - c.energy.at(-1)!)).toBeLessThan(2e-4 * most)
  })
  test('follows the wall-sided formula until the chine lifts', () => {
    const f = afloat(board, 250, [1.2, 0, 0.2])
    const c = rightingCurve(f, undefined, { to: 0.35, step: 0.05 })
    const bm = (2.4 * 0.7 ** 3) / 12 / 0.25
    for (let i = 1; i < 6; i++) expect(c.arm[i]!).toBeCloseTo(wallSidedArm(c.gm, bm, c.heel[i]!), 6)
  })
  test('scales with length', () => {
    const a = rightingCurve(afloat(board, 100, [1.2, 0, 0.2]), undefined, { to: 0.6, step: 0.2 })
    const b = rightingCurve(afloat(scaled(board, 2), 800, [2.4, 0, 0.4]), undefined, {
      to: 0.6,
      step: 0.2,
    })
    for (let i = 0; i < 4; i++) expect(b.arm[i]!).toBeCloseTo(2 * a.arm[i]!, 8)
  })
  test('a negative GM rests at the wall-sided angle of loll while the sides stay wall-sided', () => {
    // a deep box so that neither deck nor chine interferes
    const deep = boxMesh([0, -0.35, -0.6], [2.4, 0.35, 0.6])
    const f = afloat(deep, 2.4 * 0.7 * 0.6 * 1000, [1.2, 0, -0.2])
    const up = settle(f, undefined, { freeHeel: false })
    const gm = metacentricHeight(up.state)
    const bm = 0.7 ** 2 / 12 / 0.6
    expect(gm).toBeLessThan(0)
    const r = settle(f, { ...up.value, heel: 0.3 })
    expect(r.value.heel).toBeCloseTo(angleOfLoll(gm, bm), 6)
    expect(r.value.heel / deg).toBeGreaterThan(5)
  })
})

describe('nudged from a rest nearby', () => {
  const f = afloat(sled.mesh, 140, [1.05, 0, 0.25])
  const rest = settle(f, undefined, { freeHeel: false, leaveEdge: false })
  test('a little more weight a little elsewhere lies where settling it anew finds it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.1, max: 0.1, noNaN: true }),
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        (part, along) => {
          const [x, y, z] = f.centre
          const other = reloaded(f, f.mass * (1 + part), [x + along, y, z])
          const anew = settle(other, rest.value, { freeHeel: false, leaveEdge: false })
          const near = nudged(other, rest.value)
          expect(near.converged && anew.converged).toBe(true)
          expect(near.value.h).toBeCloseTo(anew.value.h, 4)
          expect(near.value.trim).toBeCloseTo(anew.value.trim, 4)
        },
      ),
      { numRuns: 40 },
    )
  })
  test('far from its rest it says that it found none', () => {
    const [x, y, z] = f.centre
    const far = nudged(reloaded(f, f.mass, [x + 3 * f.size, y, z]), rest.value)
    expect(far.converged).toBe(false)
  })
})
