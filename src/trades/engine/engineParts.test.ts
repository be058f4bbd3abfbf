import fc from 'fast-check'
import { expect, test } from 'vitest'
import { annandFlux, dilutionFactor, releaseFactor, wiebe } from './burn.ts'
import { mixCv, mixEnergy, mixEnthalpy, mixR, mixTemperature } from './caloric.ts'
import { angleOfTravel, type Crank, pistonRate, pistonTravel } from './geometry.ts'
import { advanceColumn, petalFrequency, reedArea } from './inletFlow.ts'
import { createParcels, pop, push, topT, topY } from './parcels.ts'
import { angleArea, happyRpm, roofDepth, skirtDepth, timeArea, windowArea } from './portAreas.ts'
import { leavingFresh, type Scavenging, scavengeCurves, scavengeEfficiency } from './scavenge.ts'
import { advanceVessel, createVessel, nozzle } from './vessel.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const crank: fc.Arbitrary<Crank> = fc
  .record({ bore: number(0.03, 0.08), stroke: number(0.03, 0.08), ratio: number(1.6, 2.3) })
  .map(({ bore, stroke, ratio }) => ({ bore, stroke, rod: ratio * stroke }))
const kinds = Object.keys(scavengeCurves) as Scavenging[]

test('angleOfTravel undoes pistonTravel, and refuses a travel outside the stroke', () => {
  fc.assert(
    fc.property(crank, number(0.05, 3.1), (c, a) => {
      expect(angleOfTravel(c, pistonTravel(c, a))).toBeCloseTo(a, 6)
      expect(pistonTravel(c, -a)).toBeCloseTo(pistonTravel(c, a), 12)
      const h = 1e-6
      expect(pistonRate(c, a)).toBeCloseTo((pistonTravel(c, a + h) - pistonTravel(c, a - h)) / (2 * h), 6)
    }),
  )
  expect(() => angleOfTravel({ bore: 0.05, stroke: 0.05, rod: 0.1 }, 0.06)).toThrow(/travel: 0.06/)
})

test('the piston goes from nought to the whole stroke', () => {
  fc.assert(
    fc.property(crank, (c) => {
      expect(pistonTravel(c, 0)).toBeCloseTo(0, 12)
      expect(pistonTravel(c, Math.PI)).toBeCloseTo(c.stroke, 12)
    }),
  )
})

const window = fc.record({
  width: number(0.005, 0.06),
  height: number(0.004, 0.03),
  corner: number(0, 0.02),
  windows: fc.integer({ min: 1, max: 5 }),
})

test('a window opens from nothing to a rectangle less its corners, never faster than its width', () => {
  fc.assert(
    fc.property(window, number(0, 1), (w, part) => {
      const r = Math.min(w.corner, w.height / 2, w.width / 2 / w.windows)
      const whole = w.width * w.height - w.windows * (4 - Math.PI) * r * r
      expect(windowArea(w, 0)).toBe(0)
      expect(windowArea(w, w.height) / whole).toBeCloseTo(1, 9)
      expect(windowArea(w, 2 * w.height)).toBe(windowArea(w, w.height))
      const h = part * w.height * 0.98
      const step = windowArea(w, h + 0.01 * w.height) - windowArea(w, h)
      expect(step).toBeGreaterThanOrEqual(-1e-15)
      expect(step).toBeLessThanOrEqual(w.width * 0.01 * w.height * (1 + 1e-9))
    }),
    { numRuns: 300 },
  )
})

test('a rounded window agrees with counting small squares', () => {
  const w = { width: 0.03, height: 0.016, corner: 0.006, windows: 1 }
  for (const h of [0.002, 0.005, 0.008, 0.012, 0.015]) {
    let count = 0
    const n = 800
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++) {
        const x = ((i + 0.5) / n) * w.width
        const y = ((j + 0.5) / n) * w.height
        if (y > h) continue
        const dx = Math.max(w.corner - x, x - (w.width - w.corner), 0)
        const dy = Math.max(w.corner - y, y - (w.height - w.corner), 0)
        if (dx * dx + dy * dy <= w.corner * w.corner) count++
      }
    expect(windowArea(w, h) / ((count / n / n) * w.width * w.height)).toBeCloseTo(1, 2)
  }
})

test('roof ports open downwards from their angle, skirt ports upwards, symmetric about dead centre', () => {
  const c = { bore: 0.05, stroke: 0.05, rod: 0.097 }
  expect(roofDepth(c, 1.6, 0.02, 1.5)).toBe(0)
  expect(roofDepth(c, 1.6, 0.02, 2.2)).toBeCloseTo(roofDepth(c, 1.6, 0.02, 2 * Math.PI - 2.2), 12)
  expect(skirtDepth(c, 1.1, 0.01, 1.2)).toBe(0)
  expect(skirtDepth(c, 1.1, 0.01, 0.2)).toBe(0.01)
})

test('the happy rpm of a port is where its time-area meets the target', () => {
  fc.assert(
    fc.property(number(1e-5, 1e-3), number(3e-5, 3e-4), number(0.005, 0.02), (area, swept, target) => {
      expect(timeArea(area, swept, happyRpm(area, swept, target)) / target).toBeCloseTo(1, 9)
    }),
  )
  expect(angleArea(() => 2, 0, 3)).toBeCloseTo(6, 9)
})

test('temperature and energy of any mixture undo each other, and heat capacity is their slope', () => {
  fc.assert(
    fc.property(number(250, 2700), number(0, 1), (t, y) => {
      fc.pre(t < 1200 || y < 0.2) // fresh charge is never that hot
      expect(mixTemperature(mixEnergy(t, y), y, 600)).toBeCloseTo(t, 6)
      expect((mixEnergy(t + 0.01, y) - mixEnergy(t - 0.01, y)) / 0.02).toBeCloseTo(mixCv(t, y), 3)
      expect(mixEnthalpy(t, y) - mixEnergy(t, y)).toBeCloseTo(mixR(y) * t, 6)
    }),
  )
})

test('scavenging rises with delivery, never above what was delivered by displacement plus a hair, and stays within 1', () => {
  for (const kind of kinds)
    for (let sr = 0; sr < 2.5; sr += 0.05) {
      const e = scavengeEfficiency(kind, sr)
      expect(e).toBeLessThanOrEqual(Math.min(1, sr + 0.03))
      expect(scavengeEfficiency(kind, sr + 0.05)).toBeGreaterThanOrEqual(e)
      expect(leavingFresh(kind, sr)).toBeGreaterThanOrEqual(0)
      expect(leavingFresh(kind, sr)).toBeLessThanOrEqual(1)
    }
  for (const sr of [0.3, 1, 1.7]) expect(scavengeEfficiency('mixing', sr)).toBeCloseTo(1 - Math.exp(-sr), 12)
})

test('a cold cylinder scavenged step by step follows its own curve, but for the offset at the start of the fit', () => {
  for (const kind of kinds) {
    // equal temperatures: volume and mass fractions are the same thing
    const offset = Math.abs(1 - Math.exp(scavengeCurves[kind][0]))
    const step = 1e-3
    let fresh = 0
    for (let k = 0; k < 1500; k++) {
      fresh += step * (1 - leavingFresh(kind, (k + 0.5) * step))
      expect(Math.abs(fresh - scavengeEfficiency(kind, (k + 1) * step))).toBeLessThan(offset + 1e-3)
    }
  }
})

test('burning runs from nothing to all, never backwards', () => {
  fc.assert(
    fc.property(number(0, 1), number(2, 7), number(0.5, 3), (y, a, m) => {
      expect(wiebe(y, a, m)).toBeGreaterThanOrEqual(0)
      expect(wiebe(Math.min(1, y + 0.01), a, m)).toBeGreaterThanOrEqual(wiebe(y, a, m))
    }),
  )
  expect(wiebe(-1, 5, 1.3)).toBe(0)
  expect(wiebe(1, 5, 1.3)).toBe(1)
  expect(releaseFactor(1.1)).toBe(1)
  expect(releaseFactor(0.8)).toBeLessThan(releaseFactor(0.9))
  expect(dilutionFactor(0.95)).toBe(dilutionFactor(0.9))
})

test('wall heat turns with the sign of gas less wall temperature', () => {
  expect(annandFlux(0.338, 0.054, 16, 2e6, 1500, 299, 470)).toBeGreaterThan(0)
  expect(annandFlux(0.338, 0.054, 16, 1e5, 350, 273, 470)).toBeLessThan(0)
  expect(annandFlux(0.338, 0.054, 16, 1e5, 470, 273, 470)).toBeCloseTo(0, 9)
})

test('parcels come back last in, first out, and none is lost', () => {
  fc.assert(
    fc.property(fc.array(number(1e-9, 1e-6), { minLength: 1, maxLength: 900 }), (masses) => {
      const p = createParcels()
      for (const m of masses) push(p, m, 300 + m * 1e8, m * 1e6, 1e5)
      const total = masses.reduce((a, b) => a + b, 0)
      const held = () => masses.reduce((sum, _, i) => sum + (i < p.count ? p.data[3 * i]! : 0), 0)
      expect(held() / total).toBeCloseTo(1, 9)
      pop(p, 0.3 * total)
      expect(held() / (0.7 * total)).toBeCloseTo(1, 6)
      pop(p, 2 * total)
      expect(p.count).toBe(0)
    }),
  )
  const p = createParcels()
  push(p, 1, 300, 0.1, 1e5)
  push(p, 1, 400, 0.9, 1e5)
  expect(topY(p)).toBe(0.9)
  expect(topT(p, 1e5)).toBeCloseTo(400, 9)
  expect(topT(p, 2e5)).toBeCloseTo(400 * 2 ** 0.26, 9)
})

test('a shut, insulated cylinder gives back in expansion what compression took, to a millionth', () => {
  const v = createVessel(1e5, 350, 0.8, 1.4e-4)
  const energy = v.u
  const n = 360
  let work = 0
  let squeezed = 0
  const volume = (k: number): number => 0.8e-4 + 0.6e-4 * Math.cos((2 * Math.PI * k) / n)
  for (let k = 0; k < n; k++) {
    work += advanceVessel(v, 0, 0, 0, volume(k), volume(k + 1))
    if (k === n / 2 - 1) squeezed = -work
  }
  expect(squeezed).toBeGreaterThan(1)
  expect(Math.abs(work) / squeezed).toBeLessThan(1e-6)
  expect(v.u / energy).toBeCloseTo(1, 6)
  expect(v.p / 1e5).toBeCloseTo(1, 5)
})

test('a vessel books work, heat and mass exactly', () => {
  fc.assert(
    fc.property(number(-1e-6, 1e-6), number(-2, 2), number(-1e-6, 1e-6), (dm, heat, dv) => {
      fc.pre(Math.abs(dv) > 1e-9)
      const v = createVessel(2e5, 600, 0.3, 1e-4)
      const [u, m] = [v.u, v.m]
      const work = advanceVessel(v, dm, 0.3 * dm, heat, 1e-4, 1e-4 + dv)
      expect(v.u).toBeCloseTo(u + heat - work, 12)
      expect(v.m).toBeCloseTo(m + dm, 15)
      expect(work / dv / v.p).toBeGreaterThan(0.5)
    }),
  )
})

test('nozzles pass nothing without a pressure difference, and the column stops at a shut valve', () => {
  expect(nozzle(1e-4, 2e5, 400, 287, 1.4, 2e5)).toBe(0)
  expect(nozzle(1e-4, 2e5, 400, 287, 1.4, 1e5)).toBe(nozzle(1e-4, 2e5, 400, 287, 1.4, 0.5e5))
  expect(advanceColumn(0.05, 1e-5, 6e-4, 0.12, 3000, 1.2, 5e-4, 0)).toBe(0)
  // steady flow is the nozzle's own
  let flow = 0
  for (let k = 0; k < 20000; k++) flow = advanceColumn(flow, 1e-5, 6e-4, 0.12, 3000, 1.2, 5e-4, 3e-4)
  const k = (1 / 5e-4 ** 2 + 1 / 3e-4 ** 2) / (2 * 1.2)
  expect(k * flow * flow).toBeCloseTo(3000, 3)
})

test('a reed is shut below its preload, full above its span, and stiffer petals ring higher', () => {
  expect(reedArea(3e-4, 300, 6000, 200)).toBe(0)
  expect(reedArea(3e-4, 300, 6000, 3300)).toBeCloseTo(1.5e-4, 12)
  expect(reedArea(3e-4, 300, 6000, 9000)).toBe(3e-4)
  expect(petalFrequency('carbon', 0.03, 3e-4)).toBeGreaterThan(petalFrequency('glass', 0.03, 3e-4))
})
