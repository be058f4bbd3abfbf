import fc from 'fast-check'
import { expect, test } from 'vitest'
import { openState, portState, straight } from '../../../checks/gasCases.ts'
import { createDucts, type Ducts, setCell } from './arena.ts'
import { closedEnd, createCrossing, crossed, endArea, joinEnds, openEnd, portEnd } from './boundaries.ts'
import { predictEnds } from './duct.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const pipe = fc.record({ p: number(4e4, 4e5), t: number(280, 1400), u: number(-250, 250) })

/** one duct of uniform gas, ends predicted */
function uniform(s: { p: number; t: number; u: number }, area = 1e-3): Ducts {
  const g = createDucts([straight(4, 0.04, area)], 1.32, 295)
  fill(g, 0, s)
  predictEnds(g, 0)
  return g
}

function fill(g: Ducts, d: number, s: { p: number; t: number; u: number }): void {
  for (let i = g.first[d]!; i <= g.last[d]!; i++) setCell(g, i, s.p / (295 * s.t), s.u, s.p, 0.25)
}

test('what a port books on either side is one and the same flux', () => {
  fc.assert(
    fc.property(pipe, number(5e4, 8e5), number(300, 2000), number(0, 9e-4), (s, p, t, throat) => {
      const g = uniform(s)
      const out = createCrossing()
      portEnd(g, 0, 0, throat, p, t, 1.3, 299, 0.6, s.p, out)
      const area = endArea(g, 0, 0)
      expect(out[crossed.mass]).toBeCloseTo(g.edge[0]! * area, 14)
      expect(out[crossed.energy]).toBeCloseTo(g.edge[2]! * area, 6)
      expect(out[crossed.fresh]).toBeCloseTo(g.edge[3]! * area, 14)
    }),
    { numRuns: 300, seed: 1 },
  )
})

test('gas goes through a port from the higher wall pressure to the lower, and carries the giver’s freshness', () => {
  fc.assert(
    fc.property(pipe, number(5e4, 8e5), number(300, 2000), (s, p, t) => {
      const g = uniform(s)
      const out = createCrossing()
      portEnd(g, 0, 0, 3e-4, p, t, 1.3, 299, 0.6, s.p, out)
      const into = out[crossed.mass]!
      if (p > out[crossed.wallP]! * 1.001) {
        expect(into).toBeGreaterThan(0)
        expect(out[crossed.fresh]! / into).toBeCloseTo(0.6, 9)
        expect(out[crossed.t0]).toBeCloseTo(t, 6)
      } else if (p < out[crossed.wallP]! * 0.999) {
        expect(into).toBeLessThan(0)
        expect(out[crossed.fresh]! / into).toBeCloseTo(0.25, 9)
      }
    }),
    { numRuns: 300, seed: 2 },
  )
})

test('the answer does not depend on the guess', () => {
  fc.assert(
    fc.property(pipe, number(5e4, 8e5), number(300, 2000), number(1e4, 1e6), (s, p, t, guess) => {
      const [a, b] = [createCrossing(), createCrossing()]
      portEnd(uniform(s), 0, 0, 3e-4, p, t, 1.3, 299, 0, s.p, a)
      portEnd(uniform(s), 0, 0, 3e-4, p, t, 1.3, 299, 0, guess, b)
      expect(b[crossed.p]! / a[crossed.p]!).toBeCloseTo(1, 8)
    }),
    { numRuns: 300, seed: 3 },
  )
})

test('a port at the right end is the mirror of one at the left', () => {
  fc.assert(
    fc.property(pipe, number(5e4, 8e5), (s, p) => {
      const [a, b] = [createCrossing(), createCrossing()]
      portEnd(uniform(s), 0, 0, 3e-4, p, 900, 1.3, 299, 0, s.p, a)
      portEnd(uniform({ ...s, u: -s.u }), 0, 1, 3e-4, p, 900, 1.3, 299, 0, s.p, b)
      for (const k of [crossed.mass, crossed.p, crossed.w, crossed.t]) expect(b[k]! / a[k]!).toBeCloseTo(1, 9)
    }),
    { numRuns: 200, seed: 4 },
  )
})

test('more pressure in the cylinder blows more out, until nothing else changes', () => {
  let last = 0
  for (let p = 1.2e5; p < 1e6; p += 2e4) {
    const m = portState({ p, t: 1200 }, 3e-4, 1e-3, { p: 1e5, t: 700, u: 0 }).mdot
    expect(m).toBeGreaterThan(last)
    last = m
  }
})

test('a choked port passes the same whatever a low pipe pressure is', () => {
  const at = (p: number): number => portState({ p: 8e5, t: 1500 }, 1e-4, 1e-3, { p, t: 700, u: 0 }).mdot
  expect(at(1e5) / at(0.5e5)).toBeCloseTo(1, 6)
})

test('a shut port is a wall', () => {
  const s = { p: 1.5e5, t: 800, u: -120 }
  const [a, b] = [createCrossing(), createCrossing()]
  portEnd(uniform(s), 0, 0, 0, 9e5, 1500, 1.3, 299, 0, s.p, a)
  closedEnd(uniform(s), 0, 0, b)
  expect(a[crossed.mass]).toBe(0)
  expect(a[crossed.p]).toBe(b[crossed.p])
  // gas running at the wall is stopped by a shock: more than acoustic pressure
  const z = (1.5e5 / (295 * 800)) * Math.sqrt(1.32 * 295 * 800)
  expect(b[crossed.p]).toBeGreaterThan(1.5e5 + z * 120)
})

test('an open end lets gas of the outside pressure rest, and never out faster than sound', () => {
  const rest = openState({ p: 101325, t: 500, u: 0 }, { p: 101325, t: 298 })
  expect(Math.abs(rest.u)).toBeLessThan(1e-9)
  fc.assert(
    fc.property(number(1.1e5, 2e6), number(300, 1200), number(0, 300), (p, t, u) => {
      const s = openState({ p, t, u }, { p: 101325, t: 298 })
      expect(s.u / Math.sqrt(1.32 * 295 * s.t)).toBeLessThanOrEqual(1 + 1e-9)
      expect(s.p).toBeGreaterThanOrEqual(101325 * (1 - 1e-12))
    }),
    { numRuns: 300, seed: 5 },
  )
})

test('an open end draws air in isentropically from rest', () => {
  fc.assert(
    fc.property(number(4e4, 1e5), number(300, 1200), number(-200, 0), (p, t, u) => {
      const s = openState({ p, t, u }, { p: 101325, t: 298 })
      if (s.u >= 0) return
      expect(s.t + (s.u * s.u) / (2 * ((1.32 * 295) / 0.32))).toBeCloseTo(298, 6)
      expect((s.t / 298) ** (1.32 / 0.32)).toBeCloseTo(s.p / 101325, 9)
    }),
    { numRuns: 300, seed: 6 },
  )
})

test('a junction hands over exactly what it takes, and is transparent between equal bores', () => {
  fc.assert(
    fc.property(pipe, pipe, number(0.2, 5), (a, b, ratio) => {
      const g = createDucts([straight(4, 0.04, 1e-3), straight(4, 0.04, 1e-3 * ratio)], 1.32, 295)
      fill(g, 0, a)
      fill(g, 1, b)
      predictEnds(g, 0)
      const out = createCrossing()
      joinEnds(g, 0, 1, 1, 0, a.p, out)
      const [left, right] = [endArea(g, 0, 1), endArea(g, 1, 0)]
      // edge: duct 0 right end at 4.., duct 1 left end at 8..
      for (const k of [0, 2, 3]) {
        const scale = Math.abs(g.edge[4 + k]! * left) + 1e-9
        expect(Math.abs(g.edge[4 + k]! * left - g.edge[8 + k]! * right) / scale).toBeLessThan(1e-9)
      }
    }),
    { numRuns: 300, seed: 8 },
  )
  const same = { p: 1.7e5, t: 600, u: 90 }
  const g = createDucts([straight(4, 0.04, 1e-3), straight(4, 0.04, 1e-3)], 1.32, 295)
  fill(g, 0, same)
  fill(g, 1, same)
  predictEnds(g, 0)
  const out = createCrossing()
  joinEnds(g, 0, 1, 1, 0, 1e5, out)
  expect(out[crossed.p]! / same.p).toBeCloseTo(1, 9)
  expect(-out[crossed.w]!).toBeCloseTo(90, 6)
  openEnd(g, 0, 0, 1.7e5, 600, 0, 1.7e5, out)
})
