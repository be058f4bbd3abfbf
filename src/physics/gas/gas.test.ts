import fc from 'fast-check'
import { expect, test } from 'vitest'
import { createDucts, setCell } from './arena.ts'
import { boreAt, meshDuct, type Segment, stations, volumeTo } from './ductMesh.ts'
import {
  areaRatio,
  fannoAfter,
  fannoLength,
  machOfArea,
  normalShock,
  nozzleFlow,
  pressureRatio,
} from './gasLaws.ts'
import { burntPetrol, gammaOf, gasConstantOf } from './mixture.ts'
import { sampleRiemann, solveRiemann } from './riemann.ts'
import { stefanBoltzmann, wallTemperature } from './walls.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

test('machOfArea undoes areaRatio on both branches, and refuses a ratio below 1', () => {
  fc.assert(
    fc.property(number(0.02, 0.99), number(1.01, 5), number(1.2, 1.6), (sub, sup, gamma) => {
      expect(machOfArea(areaRatio(sub, gamma), gamma, 'subsonic')).toBeCloseTo(sub, 8)
      expect(machOfArea(areaRatio(sup, gamma), gamma, 'supersonic')).toBeCloseTo(sup, 8)
    }),
  )
  expect(() => machOfArea(0.9, 1.4, 'subsonic')).toThrow(/ratio: 0.9/)
})

test('a shock loses stagnation pressure, always ends subsonic, and needs Mach 1', () => {
  fc.assert(
    fc.property(number(1.0001, 8), number(1.2, 1.6), (m, gamma) => {
      const s = normalShock(m, gamma)
      expect(s.mach).toBeLessThan(1)
      expect(s.p0).toBeLessThan(1)
      expect(s.p).toBeGreaterThan(1)
    }),
  )
  expect(() => normalShock(0.9, 1.4)).toThrow(/Mach 1/)
})

test('friction lengths add up, and a tube too long for its flow is refused', () => {
  fc.assert(
    fc.property(number(0.1, 0.6), number(0.05, 0.9), (m, part) => {
      const d = part * fannoLength(m, 1.4)
      expect(fannoLength(fannoAfter(m, d, 1.4), 1.4)).toBeCloseTo(fannoLength(m, 1.4) - d, 8)
    }),
  )
  expect(() => fannoAfter(0.5, 10, 1.4)).toThrow(/chokes/)
})

test('nozzle flow is nought at ratio 1, rises as the ratio falls, and stands still once choked', () => {
  fc.assert(
    fc.property(number(0.55, 0.999), number(1.25, 1.4), (r, gamma) => {
      expect(nozzleFlow(r * 0.99, gamma)).toBeGreaterThanOrEqual(nozzleFlow(r, gamma))
      expect(nozzleFlow(0.3, gamma)).toBe(nozzleFlow(0.1, gamma))
    }),
  )
  expect(nozzleFlow(1, 1.4)).toBe(0)
  expect(nozzleFlow(1.5, 1.4)).toBe(0)
})

const state = fc.record({ rho: number(0.05, 5), u: number(-1, 1), p: number(0.05, 20) })

test('the Riemann solution turns round with its sides, and joins its own states', () => {
  fc.assert(
    fc.property(state, state, (l, r) => {
      const a = solveRiemann(l, r, 1.4)
      const b = solveRiemann({ ...r, u: -r.u }, { ...l, u: -l.u }, 1.4)
      fc.pre(a.converged && a.value.p > 1e-6)
      expect(b.value.p / a.value.p).toBeCloseTo(1, 7)
      expect(b.value.u).toBeCloseTo(-a.value.u, 6)
      expect(sampleRiemann(l, r, a.value, 1.4, -100)).toEqual(l)
      expect(sampleRiemann(l, r, a.value, 1.4, 100).rho).toBe(r.rho)
      const [m, n] = [-1e-9, 1e-9].map((d) => sampleRiemann(l, r, a.value, 1.4, a.value.u + d))
      expect(m!.p).toBeCloseTo(n!.p, 6)
    }),
    { numRuns: 200, seed: 4 },
  )
})

test('states that fly apart into a vacuum do not converge', () => {
  expect(solveRiemann({ rho: 1, u: -50, p: 1 }, { rho: 1, u: 50, p: 1 }, 1.4).converged).toBe(false)
})

const segment = fc.record({ length: number(0.02, 0.4), d0: number(0.01, 0.12), d1: number(0.01, 0.12) })

test('cells of any pipe hold exactly the pipe’s volume, whatever their length', () => {
  fc.assert(
    fc.property(fc.array(segment, { minLength: 1, maxLength: 6 }), number(0.004, 0.03), (pipe, dx) => {
      const shape = meshDuct(pipe, dx)
      const total = stations(pipe).at(-1)!
      const cells = Array.from(shape.cellArea).reduce((s, a) => s + a * shape.dx, 0)
      expect(cells / volumeTo(pipe, total)).toBeCloseTo(1, 10)
      expect(shape.dx * shape.cellArea.length).toBeCloseTo(total, 12)
    }),
  )
})

test('meshDuct names the segment and the measure that is not above 0', () => {
  const pipe: Segment[] = [
    { length: 0.1, d0: 0.03, d1: 0.03 },
    { length: 0.1, d0: -0.02, d1: 0.03 },
  ]
  expect(() => meshDuct(pipe, 0.01)).toThrow(/segments\[1\]\.d0: -0.02/)
  expect(() => meshDuct([], 0.01)).toThrow(/none/)
  expect(boreAt([pipe[0]!, { length: 0.2, d0: 0.03, d1: 0.05 }], 0.2)).toBeCloseTo(0.04, 12)
})

test('a bend adds its whole loss to the cells it covers', () => {
  const shape = meshDuct([{ length: 0.2, d0: 0.04, d1: 0.04, bend: Math.PI / 2 }], 0.01)
  const loss = Array.from(shape.bendFriction!).reduce((s, f) => s + (4 * f * shape.dx) / 0.04, 0)
  expect(loss).toBeCloseTo(0.18, 9)
})

test('a wall gives away exactly what it gets', () => {
  fc.assert(
    fc.property(number(20, 600), number(400, 1300), number(5, 600), number(0, 1), (h, t, ho, e) => {
      const w = wallTemperature(h, h * t, { h: ho, emissivity: e, t: 295 }, 500)
      const given = ho * (w - 295) + e * stefanBoltzmann * (w ** 4 - 295 ** 4)
      expect(given / (h * (t - w))).toBeCloseTo(1, 6)
      expect(w).toBeGreaterThan(295)
      expect(w).toBeLessThan(t)
    }),
  )
})

test('burnt petrol balances its elements at any mixture, and air is air', () => {
  fc.assert(
    fc.property(number(0.65, 1.4), (lambda) => {
      const m = burntPetrol(lambda)
      const sum = Object.values(m).reduce((a, b) => a + b, 0)
      expect(sum).toBeCloseTo(1, 10)
      const carbon = (m.CO2 ?? 0) + (m.CO ?? 0)
      const hydrogen = (m.H2O ?? 0) + (m.H2 ?? 0)
      expect(hydrogen / carbon).toBeCloseTo(9 / 8, 8)
      for (const x of Object.values(m)) expect(x).toBeGreaterThanOrEqual(0)
    }),
  )
  // dry air as oxygen and nitrogen, argon counted as nitrogen
  const air = { O2: 0.2095, N2: 0.7905 }
  expect(gasConstantOf(air)).toBeCloseTo(288, 0)
  expect(gammaOf(air, 300)).toBeCloseTo(1.4, 2)
  expect(() => burntPetrol(0.3)).toThrow(/lambda/)
})

test('setCell keeps the inverse of density', () => {
  const g = createDucts([meshDuct([{ length: 0.1, d0: 0.03, d1: 0.03 }], 0.01)])
  setCell(g, g.first[0]!, 0.5, 10, 2e5, 0.3)
  expect(g.cell[16 * g.first[0]! + 4]).toBe(2)
  expect(pressureRatio(0, 1.4)).toBe(1)
})
