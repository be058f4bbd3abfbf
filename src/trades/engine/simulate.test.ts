import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { at, field } from '../../physics/gas/arena.ts'
import { measuredSpread } from './band.testkit.ts'
import { nudged } from './band.ts'
import { runCycle } from './cycle.ts'
import { referenceEngine, referenceTable } from './engineReference.ts'
import { healthOf, plausibility } from './health.ts'
import { simulateCurve, simulatePoint } from './simulate.ts'
import { adoptState, createState } from './state.ts'
import { peaksOf, torqueFromSimulation } from './torqueFromSimulation.ts'
import { simulateCycleTrace } from './trace.ts'

const coarse = 0.025
const curve = simulateCurve(referenceEngine(), [9000, 9500, 10000], { dx: coarse })

test('three speeds of the reference engine on a coarse grid lie within 5 % of its table', () => {
  for (const p of curve.points) {
    expect(p.converged, p.says).toBe(true)
    const ref = referenceTable.find((r) => r[0] === p.rpm)!
    expect(Math.abs(p.point!.bmep / 1e5 / ref[1]! - 1)).toBeLessThan(0.05)
  }
})

test('the books of a settled point close: mass, energy, fresh charge', () => {
  for (const p of curve.points) {
    const h = healthOf(referenceEngine(), p)
    expect(h.checks.filter((c) => !c.holds)).toEqual([])
    expect(Math.abs(p.point!.books.energy)).toBeLessThan(0.003)
  }
})

test('charging is delivery times trapping, and power is torque times speed', () => {
  for (const { point: p } of curve.points) {
    expect(p!.charging).toBeCloseTo(p!.deliveryRatio * p!.trapping, 12)
    expect(p!.power / (p!.torque * ((2 * Math.PI * p!.rpm) / 60))).toBeCloseTo(1, 12)
    expect(p!.bmep).toBeCloseTo(p!.imep - p!.pmep - p!.fmep, 3)
    expect(p!.scavenging).toBeLessThanOrEqual(1)
  }
})

test('temperatures, pressures and fresh fractions stay within reason at every step', () => {
  const s = referenceEngine()
  const e = createState(s, coarse)
  let [low, high, cold] = [1, 0, 1e9]
  for (let k = 0; k < 6; k++)
    runCycle(s, e, 9000, () => {
      const g = e.ducts
      for (let i = g.first[0]!; i <= g.last[0]!; i++) {
        const b = at(i)
        low = Math.min(low, g.cell[b + field.Y]!)
        high = Math.max(high, g.cell[b + field.Y]!)
        cold = Math.min(cold, (g.cell[b + field.P]! * g.cell[b + field.V]!) / s.gas.r)
      }
      expect(e.cylinder.fresh).toBeLessThanOrEqual(e.cylinder.m)
      expect(e.cylinder.p).toBeGreaterThan(0)
    })
  expect(low).toBeGreaterThan(-0.03)
  expect(high).toBeLessThan(1.03)
  expect(cold).toBeGreaterThan(150)
})

test('without fuel that burns, fresh charge comes only through the inlet', () => {
  // a case of pure burnt gas and no inlet: nothing fresh may appear
  const s = { ...referenceEngine(), inlet: { kind: 'reed' as const, area: 1e-12, crack: 300, full: 6000 } }
  const e = createState(s, coarse)
  e.case.fresh = 0
  e.cylinder.fresh = 0
  for (let k = 0; k < 4; k++) {
    const sums = runCycle(s, e, 8000)
    expect(e.case.fresh).toBeLessThan(1e-12)
    expect(sums.trappedFresh).toBeLessThan(1e-12)
    expect(sums.massIn).toBeLessThan(1e-12)
  }
})

test('a warm start from the same engine settles in fewer cycles than a cold one, at the same point', () => {
  const s = referenceEngine()
  const e = createState(s, coarse)
  const cold = simulatePoint(s, e, 9500)
  const again = simulatePoint(s, adoptState(s, coarse, e), 9500)
  expect(again.cycles).toBeLessThan(cold.cycles)
  expect(again.point!.bmep / cold.point!.bmep).toBeCloseTo(1, 2)
})

test('a run that may not go on long enough gives no number and says why', () => {
  const r = simulateCurve(referenceEngine(), [9000], { dx: coarse, cycles: 4 }).points[0]!
  expect(r.converged).toBe(false)
  expect(r.point).toBeUndefined()
  expect(r.says).toMatch(/did not settle in 4/)
  expect(healthOf(referenceEngine(), r).closes).toBe(false)
  expect(torqueFromSimulation({ points: [r], dx: 1, cells: 1, cancelled: false }, 1)).toBeUndefined()
})

test('a run that is called off stops before the next speed and keeps what it has', () => {
  let asked = 0
  const said: string[] = []
  const r = simulateCurve(referenceEngine(), [9000, 9500, 10000], {
    dx: 0.04,
    cancelled: () => ++asked > 1,
    progress: (_part, says) => said.push(says),
  })
  expect(r.cancelled).toBe(true)
  expect(r.points).toHaveLength(1)
  expect(said).toEqual(['9000 rpm'])
})

test('the same run twice gives the same numbers', () => {
  const run = () => simulateCurve(referenceEngine(), [9000], { dx: 0.04 })
  expect(run()).toEqual(run())
})

test('the curve for the balance holds the settled torques of all cylinders', () => {
  const t = torqueFromSimulation(curve, 2)!
  expect(t.torquePeak.torque).toBeCloseTo(2 * peaksOf(curve)!.torque.point!.torque, 1)
  expect(peaksOf({ ...curve, points: [] })).toBeUndefined()
})

test('a trace holds one cycle: the port low in suction, mass flows that match the sums, a wave picture', () => {
  const t = simulateCycleTrace(referenceEngine(), 9000, { dx: coarse })
  expect(t.result.converged).toBe(true)
  expect(t.angle).toHaveLength(360)
  expect(t.pressure).toHaveLength(360 * t.x.length)
  const open = t.portP.slice(0, 176)
  expect(Math.min(...open)).toBeLessThan(0.6e5)
  expect(Math.max(...t.cylinderP)).toBeGreaterThan(40e5)
  const perCycle = 60 / 9000
  const out = t.outFlow.reduce((s, f) => s + (f * perCycle) / 360, 0)
  const fuelAir = t.result.point!.airFlow + t.result.point!.fuelFlow
  expect(out / (fuelAir * perCycle)).toBeCloseTo(1, 1)
  for (const p of t.pressure) expect(p).toBeGreaterThan(0)
})

test('a muffler box with a small outlet raises the pressure behind the pipe and takes torque', () => {
  const open = curve.points.find((p) => p.rpm === 9500)!.point!
  const outlet = { kind: 'box' as const, volume: 2e-3, bore: 0.018, discharge: 0.8, loss: 1.5 }
  const boxed = simulateCurve({ ...referenceEngine(), outlet }, [9500], { dx: coarse }).points[0]!
  expect(boxed.converged, boxed.says).toBe(true)
  expect(boxed.point!.behind).toBeGreaterThan(5000)
  expect(boxed.point!.torque).toBeLessThan(open.torque)
  expect(Math.abs(boxed.point!.books.energy)).toBeLessThan(0.005)
})

test('a piston-port inlet runs, spits back at low speed, and closes its books', () => {
  const s = {
    ...referenceEngine(),
    inlet: {
      kind: 'piston port' as const,
      opens: 1.3,
      width: 0.027,
      height: 0.015,
      corner: 0.002,
      windows: 1,
      discharge: 0.7,
    },
  }
  const r = simulateCurve(s, [6500], { dx: coarse }).points[0]!
  expect(r.converged, r.says).toBe(true)
  expect(Math.abs(r.point!.books.mass)).toBeLessThan(0.005)
  expect(r.point!.deliveryRatio).toBeGreaterThan(0.3)
})

test('nudging an input moves that input and nothing else', () => {
  const s = referenceEngine()
  const ratio = (x: typeof s): number => x.clearance
  expect(nudged(s, measuredSpread, 'trappedRatio', 1).clearance).toBeLessThan(ratio(s))
  expect(nudged(s, measuredSpread, 'scavenging', -1).transfers.scavenging).toBe('mediocre loop')
  expect(nudged(s, measuredSpread, 'exhaustWidth', 1).exhaust.width).toBeCloseTo(s.exhaust.width * 1.03, 12)
  expect(nudged(s, measuredSpread, 'transferOpens', 1).exhaust).toEqual(s.exhaust)
})

test('a peak inside the band of its class raises no eyebrow, one outside does', () => {
  const p = curve.points[0]!.point!
  const inside = { ...p, bmep: 7.5e5, deliveryRatio: 0.9, trapping: 0.7, bsfc: 420 / 3.6e9, exhaustT: 873 }
  expect(plausibility('sport', inside)).toEqual([])
  const codes = plausibility('utility', inside)
  expect(codes.length).toBeGreaterThan(0)
  expect(printed(codes[0]!.text)).toMatch(/utility engines show/)
})
