import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bellyShape, cellState, restSpeed, smoothError, straight } from '../../../checks/gasCases.ts'
import { at, createDucts, type Ducts, field, setCell } from './arena.ts'
import { closedEnd, createCrossing, openEnd } from './boundaries.ts'
import { contents } from './contents.testkit.ts'
import { nextStep, predictEnds, refreshWallRates, stableStep, sweep } from './duct.ts'

const out = createCrossing()

/** closed at both ends, for as many steps, at courant 0.8 */
function shake(g: Ducts, steps: number): void {
  for (let k = 0; k < steps; k++) {
    const dt = stableStep(g, 0.8)
    if (k % 4 === 0) refreshWallRates(g, 0)
    predictEnds(g, dt)
    for (let d = 0; d < g.count; d++) {
      closedEnd(g, d, 0, out)
      closedEnd(g, d, 1, out)
    }
    sweep(g, dt)
  }
}

/** rough random gas in duct 0 from a list of numbers in 0..1 */
function roughen(g: Ducts, parts: readonly number[]): void {
  const n = g.last[0]! - g.first[0]! + 1
  const pick = (k: number): number => parts[k % parts.length]!
  for (let c = 0; c < n; c++) {
    const p = 5e4 + 4e5 * pick(3 * c)
    const t = 300 + 1200 * pick(3 * c + 1)
    setCell(g, g.first[0]! + c, p / (g.gasConstant * t), 400 * (pick(3 * c + 2) - 0.5), p, pick(5 * c))
  }
}

const parts = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 17, maxLength: 60 })

test('gas at rest in cones with a temperature gradient stays at rest to 1e-9 m/s', () => {
  expect(restSpeed(2000)).toBeLessThan(1e-9)
})

test('mass, energy and fresh charge of a sealed cone keep to 1e-12 through 20000 steps of strong waves', () => {
  const g = createDucts([bellyShape(60)], 1.32, 295)
  roughen(g, [0.3, 0.9, 0.1, 0.5, 0.7, 0.2, 0.95, 0.05, 0.6, 0.4, 0.8, 0.15, 0.35])
  const before = contents(g, 0)
  shake(g, 20000)
  const after = contents(g, 0)
  expect(Math.abs(after.mass / before.mass - 1)).toBeLessThan(1e-12)
  expect(Math.abs(after.energy / before.energy - 1)).toBeLessThan(1e-12)
  expect(Math.abs(after.fresh / before.fresh - 1)).toBeLessThan(1e-12)
})

test('any rough start keeps mass, energy and fresh charge, and stays positive', () => {
  fc.assert(
    fc.property(parts, (p) => {
      const g = createDucts([bellyShape(24)], 1.32, 295)
      roughen(g, p)
      const before = contents(g, 0)
      shake(g, 150)
      const after = contents(g, 0)
      expect(after.mass / before.mass).toBeCloseTo(1, 11)
      expect(after.energy / before.energy).toBeCloseTo(1, 11)
      expect(Math.abs(after.fresh - before.fresh) / before.mass).toBeLessThan(1e-11)
      for (let c = 0; c < 24; c++) {
        const s = cellState(g, 0, c)
        expect(s.rho).toBeGreaterThan(0)
        expect(s.p).toBeGreaterThan(0)
      }
    }),
    { numRuns: 40, seed: 7 },
  )
})

test('a mirrored start gives the mirrored flow', () => {
  fc.assert(
    fc.property(parts, (p) => {
      const n = 16
      const [g, h] = [0, 1].map(() => createDucts([straight(n, 0.16, 1e-3)], 1.4, 287)) as [Ducts, Ducts]
      roughen(g, p)
      for (let c = 0; c < n; c++) {
        const s = cellState(g, 0, n - 1 - c)
        setCell(h, h.first[0]! + c, s.rho, -s.u, s.p, s.y)
      }
      shake(g, 40)
      shake(h, 40)
      for (let c = 0; c < n; c++) {
        const a = cellState(g, 0, c)
        const b = cellState(h, 0, n - 1 - c)
        expect(b.p / a.p).toBeCloseTo(1, 9)
        expect(b.u).toBeCloseTo(-a.u, 5)
      }
    }),
    { numRuns: 25, seed: 11 },
  )
})

test('the scheme is second order on a smooth wave', () => {
  expect(Math.log2(smoothError(64) / smoothError(128))).toBeGreaterThan(1.9)
})

/** The same step from textbook formulas, one quantity at a time: slow and plain. Walls at both ends, no friction. */
function plainStep(g: Ducts, dt: number): { rho: number; u: number; p: number; y: number }[] {
  const n = g.last[0]! - g.first[0]! + 1
  const gamma = g.gamma
  const w = Array.from({ length: n }, (_, c) => cellState(g, 0, c))
  const face = (c: number): number => g.cell[at(g.first[0]! + c) + field.FACE]!
  const area = (c: number): number => 1 / g.cell[at(g.first[0]! + c) + field.INV_AREA]!
  const k = dt / g.dx[0]!
  const limited = (a: number, b: number): number => (a * b > 0 ? (2 * a * b) / (a + b) : 0)
  const keys = ['rho', 'u', 'p', 'y'] as const
  const slopes = w.map((s, c) => {
    const d = { rho: 0, u: 0, p: 0, y: 0 }
    for (const q of keys)
      d[q] =
        c === 0
          ? 0.5 * (w[1]![q] - s[q])
          : c === n - 1
            ? 0.5 * (s[q] - w[n - 2]![q])
            : limited(s[q] - w[c - 1]![q], w[c + 1]![q] - s[q])
    return d
  })
  const faces = w.map((s, c) => {
    const d = slopes[c]!
    const alpha = (face(c + 1) - face(c)) / area(c)
    const half = {
      rho: -0.5 * k * (s.u * d.rho + s.rho * d.u + s.rho * s.u * alpha),
      u: -0.5 * k * (s.u * d.u + d.p / s.rho),
      p: -0.5 * k * (s.u * d.p + gamma * s.p * d.u + gamma * s.p * s.u * alpha),
      y: -0.5 * k * s.u * d.y,
    }
    const side = (sign: number) => {
      const f = { rho: 0, u: 0, p: 0, y: 0 }
      for (const q of keys) f[q] = s[q] + 0.5 * sign * d[q] + half[q]
      return f
    }
    const [l, r] = [side(-1), side(1)]
    const dry = Math.min(l.rho, l.p, r.rho, r.p) <= 0
    return dry ? { l: { ...s }, r: { ...s }, mid: s.p } : { l, r, mid: s.p + half.p }
  })
  type Face = { rho: number; u: number; p: number; y: number }
  const energy = (s: Face): number => s.p / (gamma - 1) + 0.5 * s.rho * s.u * s.u
  const hllc = (l: Face, r: Face): number[] => {
    const [al, ar] = [Math.sqrt((gamma * l.p) / l.rho), Math.sqrt((gamma * r.p) / r.rho)]
    const [ql, qr] = [Math.sqrt(l.rho), Math.sqrt(r.rho)]
    const u = (ql * l.u + qr * r.u) / (ql + qr)
    const h = (ql * ((energy(l) + l.p) / l.rho) + qr * ((energy(r) + r.p) / r.rho)) / (ql + qr)
    const a = Math.sqrt((gamma - 1) * (h - 0.5 * u * u))
    const sl = Math.min(l.u - al, u - a)
    const sr = Math.max(r.u + ar, u + a)
    const star =
      (r.p - l.p + l.rho * l.u * (sl - l.u) - r.rho * r.u * (sr - r.u)) /
      (l.rho * (sl - l.u) - r.rho * (sr - r.u))
    const flux = (s: Face): number[] => [s.rho * s.u, s.rho * s.u * s.u + s.p, s.u * (energy(s) + s.p)]
    const [s, sk] = star >= 0 ? [l, sl] : [r, sr]
    const f = flux(s)
    if ((star >= 0 && sl < 0) || (star < 0 && sr > 0)) {
      const rhoStar = (s.rho * (sk - s.u)) / (sk - star)
      const starState = [
        rhoStar,
        rhoStar * star,
        rhoStar * (energy(s) / s.rho + (star - s.u) * (star + s.p / (s.rho * (sk - s.u)))),
      ]
      const own = [s.rho, s.rho * s.u, energy(s)]
      for (let q = 0; q < 3; q++) f[q] = f[q]! + sk * (starState[q]! - own[q]!)
    }
    return [...f, f[0]! * s.y]
  }
  const fluxes = Array.from({ length: n + 1 }, (_, j) =>
    j === 0 ? [0, g.edge[1]!, 0, 0] : j === n ? [0, g.edge[5]!, 0, 0] : hllc(faces[j - 1]!.r, faces[j]!.l),
  )
  return w.map((s, c) => {
    const [a, b] = [fluxes[c]!, fluxes[c + 1]!]
    const ratio = k / area(c)
    const net = (q: number): number => face(c + 1) * b[q]! - face(c) * a[q]!
    const rho = s.rho - ratio * net(0)
    const m = s.rho * s.u - ratio * (net(1) - faces[c]!.mid * (face(c + 1) - face(c)))
    const e = energy(s) - ratio * net(2)
    const u = m / rho
    return { rho, u, p: (gamma - 1) * (e - 0.5 * m * u), y: (s.rho * s.y - ratio * net(3)) / rho }
  })
}

test('the fused kernel does what the textbook formulas say, on any rough state', () => {
  fc.assert(
    fc.property(parts, (p) => {
      const n = 14
      const g = createDucts([bellyShape(n)], 1.32, 295)
      roughen(g, p)
      const dt = stableStep(g, 0.8)
      predictEnds(g, dt)
      closedEnd(g, 0, 0, out)
      closedEnd(g, 0, 1, out)
      const plain = plainStep(g, dt)
      sweep(g, dt)
      for (let c = 0; c < n; c++) {
        const s = cellState(g, 0, c)
        expect(s.rho / plain[c]!.rho).toBeCloseTo(1, 10)
        expect(s.p / plain[c]!.p).toBeCloseTo(1, 9)
        expect(s.u).toBeCloseTo(plain[c]!.u, 6)
        expect(s.y).toBeCloseTo(plain[c]!.y, 10)
      }
    }),
    { numRuns: 200, seed: 3 },
  )
})

test('friction slows the gas and warms it by exactly what it takes', () => {
  const g = createDucts([{ ...straight(20, 0.4, 1e-3), viscous: true, heatFactor: 0 }], 1.32, 295)
  for (let c = 0; c < 20; c++) setCell(g, g.first[0]! + c, 0.5, 100, 1e5, 0)
  const before = contents(g, 0)
  shake(g, 400)
  const after = contents(g, 0)
  expect(after.energy / before.energy).toBeCloseTo(1, 11)
  const speed = Array.from({ length: 20 }, (_, c) => Math.abs(cellState(g, 0, c).u))
  expect(Math.max(...speed)).toBeLessThan(100)
})

test('a long stay brings still gas to the temperature of its wall, never past it', () => {
  const g = createDucts([{ ...straight(10, 0.2, 1e-4), viscous: true }], 1.32, 295)
  for (let c = 0; c < 10; c++) {
    setCell(g, g.first[0]! + c, 1e5 / (295 * 900), 0, 1e5, 0)
    g.cell[at(g.first[0]! + c) + field.WALL] = 400
  }
  let last = 900
  for (let k = 0; k < 40; k++) {
    shake(g, 500)
    const t = cellState(g, 0, 5).t
    expect(t).toBeLessThanOrEqual(last + 1e-9)
    expect(t).toBeGreaterThanOrEqual(400)
    last = t
  }
  expect(last).toBeLessThan(410)
})

test('two ducts in one arena do not touch each other', () => {
  const alone = createDucts([straight(20, 0.4, 1e-3)], 1.32, 295)
  const both = createDucts([straight(20, 0.4, 1e-3), straight(12, 0.2, 2e-3)], 1.32, 295)
  const p = [0.2, 0.7, 0.4, 0.9, 0.1, 0.6, 0.5]
  roughen(alone, p)
  roughen(both, p)
  for (let k = 0; k < 100; k++)
    for (const g of [alone, both]) {
      predictEnds(g, 5e-6)
      for (let d = 0; d < g.count; d++) {
        closedEnd(g, d, 0, out)
        openEnd(g, d, 1, 1e5, 300, 0, 1e5, out)
      }
      sweep(g, 5e-6)
    }
  for (let c = 0; c < 20; c++) expect(cellState(both, 0, c)).toEqual(cellState(alone, 0, c))
  expect(cellState(both, 1, 6).p).toBeCloseTo(1e5, -3)
})

test('the step that the sweep proposes is the stable one, near enough for the margin', () => {
  const g = createDucts([bellyShape(40)], 1.32, 295)
  roughen(g, [0.2, 0.7, 0.4, 0.9, 0.1, 0.6, 0.5])
  shake(g, 50)
  expect(nextStep(g, 0.8) / stableStep(g, 0.8)).toBeGreaterThan(0.8)
  expect(nextStep(g, 0.8) / stableStep(g, 0.8)).toBeLessThan(1.2)
})

test('a duct with too few cells or without section is refused by name', () => {
  expect(() => createDucts([straight(1, 0.1)])).toThrow(/ducts\[0\]: 1 cells/)
  expect(() => createDucts([straight(4, 0)])).toThrow(/ducts\[0\]\.dx/)
  expect(() => createDucts([straight(4, 0.1, 0)])).toThrow(/faceArea\[0\]: 0; must be above 0/)
  expect(() => createDucts([{ dx: 1, faceArea: [1, 1], cellArea: [1, 1, 1] }])).toThrow(/2 faces for 3 cells/)
})
