import { describe, expect, test } from 'vitest'
import { setCell } from '../../src/physics/gas/arena.ts'
import { nozzleFlow } from '../../src/physics/gas/gasLaws.ts'
import { measuredSpread } from '../../src/trades/engine/band.testkit.ts'
import { torqueBand } from '../../src/trades/engine/band.ts'
import { annandFlux } from '../../src/trades/engine/burn.ts'
import { mixCv, mixEnthalpy, mixR, mixTemperature } from '../../src/trades/engine/caloric.ts'
import { runCycle } from '../../src/trades/engine/cycle.ts'
import { referenceEngine, referenceTable } from '../../src/trades/engine/engineReference.ts'
import type { TwoStrokeSpec } from '../../src/trades/engine/engineSpec.ts'
import { meanPistonSpeed, pistonArea, pistonRate, pistonTravel } from '../../src/trades/engine/geometry.ts'
import { healthOf } from '../../src/trades/engine/health.ts'
import { roofDepth, windowArea } from '../../src/trades/engine/portAreas.ts'
import { simulateCurve } from '../../src/trades/engine/simulate.ts'
import { createState } from '../../src/trades/engine/state.ts'
import { peaksOf } from '../../src/trades/engine/torqueFromSimulation.ts'

describe('the reference engine, every speed of its table', () => {
  const curve = simulateCurve(
    referenceEngine(),
    referenceTable.map((r) => r[0]!),
  )
  test.each(referenceTable.map((r) => [r[0]!, r] as const))(
    '%i rpm: mean pressure within 5 %%',
    (rpm, row) => {
      const p = curve.points.find((x) => x.rpm === rpm)!
      expect(p.converged, p.says).toBe(true)
      expect(Math.abs(p.point!.bmep / 1e5 / row[1]! - 1)).toBeLessThan(0.05)
      expect(Math.abs(p.point!.imep / 1e5 / row[2]! - 1)).toBeLessThan(0.05)
      expect(Math.abs(p.point!.deliveryRatio / row[4]! - 1)).toBeLessThan(0.05)
      // where less is delivered more of it stays, and less cold charge runs through: see engineReference.ts
      expect(Math.abs(p.point!.trapping / row[5]! - 1)).toBeLessThan(0.09)
      expect(Math.abs(p.point!.charging / row[6]! - 1)).toBeLessThan(0.05)
      expect(Math.abs(p.point!.exhaustT / (row[8]! + 273) - 1)).toBeLessThan(0.08)
    },
  )
  test('the books of every speed close', () => {
    for (const p of curve.points)
      expect(healthOf(referenceEngine(), p).checks.filter((c) => !c.holds)).toEqual([])
  })
})

/** the engine as it is meant to be predicted: inertia of the transfer columns, hot plug */
const predicted = (): TwoStrokeSpec => {
  const s = referenceEngine()
  return { ...s, transfers: { ...s.transfers, inertance: true, plug: 'hot' } }
}

test('halving cells and steps moves mean pressure by less than 1.5 %, and the peak by less than 1 % in rpm', () => {
  const rpms = [8500, 8750, 9000, 9250]
  for (const s of [referenceEngine(), predicted()]) {
    const coarse = simulateCurve(s, rpms, { dx: 0.01 })
    const fine = simulateCurve(s, rpms, { dx: 0.005 })
    const moves = rpms.map((_, k) => fine.points[k]!.point!.bmep / coarse.points[k]!.point!.bmep - 1)
    expect(Math.max(...moves.map(Math.abs))).toBeLessThan(0.015)
    const peak = (c: typeof coarse): number => {
      // parabola through the best speed and its neighbours
      const b = c.points.map((p) => p.point!.bmep)
      const k = Math.min(rpms.length - 2, Math.max(1, b.indexOf(Math.max(...b))))
      const [l, m, r] = [b[k - 1]!, b[k]!, b[k + 1]!]
      return rpms[k]! + (0.5 * (l - r) * 250) / (l - 2 * m + r)
    }
    expect(Math.abs(peak(fine) / peak(coarse) - 1)).toBeLessThan(0.01)
  }
})

/** worst difference of pressure and mass, while the cylinder blows down, from the bare equations of filling and emptying */
function blowdownError(dx: number): number {
  const base = referenceEngine()
  const s: TwoStrokeSpec = {
    ...base,
    pipe: [{ length: 0.06, d0: 1.5, d1: 1.5 }],
    transfers: { ...base.transfers, width: 1e-9 },
  }
  const rpm = 6000
  const e = createState(s, dx)
  const g = e.ducts
  for (let i = g.first[0]!; i <= g.last[0]!; i++) setCell(g, i, s.air.p / (s.gas.r * 600), 0, s.air.p, 0)
  const seen: { angle: number; p: number; m: number }[] = []
  runCycle(s, e, rpm, (v) => {
    if (v.angle < Math.PI) seen.push({ angle: v.angle, p: e.cylinder.p, m: e.cylinder.m })
  })
  // one mass, one temperature, a nozzle into ambient pressure
  const omega = (2 * Math.PI * rpm) / 60
  const crown = pistonArea(s.crank.bore)
  const steps = 40_000
  const from = s.exhaust.opens
  const h = (Math.PI - from) / steps
  let { m, u, p, t } = createState(s, dx).cylinder
  let k = 0
  let worst = 0
  for (let i = 0; i < steps; i++) {
    const a = from + (i + 0.5) * h
    const dt = h / omega
    const volume = s.clearance + crown * pistonTravel(s.crank, from + (i + 1) * h)
    const open = s.exhaust.discharge * windowArea(s.exhaust, roofDepth(s.crank, from, s.exhaust.height, a))
    const gamma = 1 + mixR(0) / mixCv(t, 0)
    const flow = p > s.air.p ? ((open * p) / Math.sqrt(mixR(0) * t)) * nozzleFlow(s.air.p / p, gamma) : 0
    const wall = 2 * crown + Math.PI * s.crank.bore * (pistonTravel(s.crank, a) + 1e-3)
    const speed = meanPistonSpeed(s.crank.stroke, rpm)
    const heat = annandFlux(s.walls.annand, s.crank.bore, speed, p, t, mixR(0), s.walls.cylinder) * wall
    u += -p * crown * pistonRate(s.crank, a) * h - (flow * mixEnthalpy(t, 0) + heat) * dt
    m -= flow * dt
    t = mixTemperature(u / m, 0, t)
    p = (m * mixR(0) * t) / volume
    while (k < seen.length && seen[k]!.angle <= from + (i + 1) * h + 1e-9) {
      if (seen[k]!.p > 1.1 * s.air.p)
        worst = Math.max(worst, Math.abs(seen[k]!.p / p - 1), Math.abs(seen[k]!.m / m - 1))
      k++
    }
  }
  expect(k).toBeGreaterThan(100)
  return worst
}

test('with a pipe so wide that it makes no waves, blowdown follows filling and emptying: within 1 % at 5 mm cells, and closer as they shrink', () => {
  const [coarse, fine, finer] = [0.01, 0.005, 0.0025].map(blowdownError)
  expect(coarse).toBeLessThan(0.02)
  expect(fine).toBeLessThan(0.01)
  expect(finer).toBeLessThan(0.7 * fine!)
})

test('a longer pipe brings the torque peak down in rpm, a shorter one up', () => {
  const scaled = (f: number): TwoStrokeSpec => {
    const s = predicted()
    return { ...s, pipe: s.pipe.map((p) => ({ ...p, length: f * p.length })) }
  }
  const rpms = Array.from({ length: 13 }, (_, k) => 7500 + 250 * k)
  const peak = (f: number): number => peaksOf(simulateCurve(scaled(f), rpms, { dx: 0.015 }))!.torque.rpm
  expect(peak(1.08)).toBeLessThan(peak(1))
  expect(peak(0.92)).toBeGreaterThan(peak(1))
})

test('a cold pipe brings the torque peak down in rpm', () => {
  const rpms = Array.from({ length: 11 }, (_, k) => 7500 + 200 * k)
  const peak = (s: TwoStrokeSpec): number => peaksOf(simulateCurve(s, rpms, { dx: 0.015 }))!.torque.rpm
  // held cold, as after a start or full of spray
  const s = predicted()
  const outside = { h: 1e4, emissivity: 0, t: Math.max(s.air.t, 320) }
  const [hot, cold] = [peak(s), peak({ ...s, outside })]
  expect(cold).toBeLessThan(hot)
  expect(cold).toBeGreaterThan(0.9 * hot)
})

test('better scavenging, freer exhaust and less friction give more torque at the peak', () => {
  const at = (change: (s: TwoStrokeSpec) => TwoStrokeSpec): number =>
    simulateCurve(change(predicted()), [9000], { dx: 0.015 }).points[0]!.point!.torque
  const base = at((s) => s)
  const scavenging = (kind: TwoStrokeSpec['transfers']['scavenging']) => (s: TwoStrokeSpec) => ({
    ...s,
    transfers: { ...s.transfers, scavenging: kind },
  })
  expect(at(scavenging('mixing'))).toBeLessThan(at(scavenging('mediocre loop')))
  expect(at(scavenging('mediocre loop'))).toBeLessThan(base)
  expect(at(scavenging('uniflow-like'))).toBeGreaterThan(base)
  expect(at((s) => ({ ...s, exhaust: { ...s.exhaust, discharge: 0.65 } }))).toBeLessThan(base)
  expect(at((s) => ({ ...s, friction: { c1: 0, c2: 150 } }))).toBeGreaterThan(base)
})

test('a smaller outlet of the muffler takes torque step by step', () => {
  const torque = (bore: number): number => {
    const outlet = { kind: 'box' as const, volume: 2e-3, bore, discharge: 0.8, loss: 1.5 }
    return simulateCurve({ ...predicted(), outlet }, [8000, 8500, 9000], { dx: 0.015 }).points[2]!.point!
      .torque
  }
  const [wide, middle, small, tiny] = [0.026, 0.022, 0.016, 0.012].map(torque)
  expect(middle).toBeLessThan(wide!)
  expect(small).toBeLessThan(0.95 * middle!)
  expect(tiny).toBeLessThan(0.9 * small!)
})

test('the band brackets the curve, names its drivers, and wider inputs give a wider band', () => {
  const narrow = torqueBand(referenceEngine(), [9500], { ...measuredSpread, scavenging: false }, { dx: 0.03 })
  const wide = torqueBand(
    referenceEngine(),
    [9500],
    { ...measuredSpread, exhaustDischarge: 0.12, exhaustWidth: 0.1, scavenging: false },
    { dx: 0.03 },
  )
  const [n, w] = [narrow.points[0]!, wide.points[0]!]
  expect(n.low).toBeLessThanOrEqual(1)
  expect(n.high).toBeGreaterThanOrEqual(1)
  expect(w.high - w.low).toBeGreaterThan(n.high - n.low)
  expect(narrow.drivers).toHaveLength(5)
})
