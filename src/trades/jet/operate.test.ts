import fc from 'fast-check'
import { expect, test } from 'vitest'
import { headFactor, onsetOverBreakdown, torqueFactor } from './cavitation.ts'
import { bestVelocityRatio, jetEfficiency } from './ideal.ts'
import { solveJet } from './jet.ts'
import { jetFlagTexts } from './jetFlags.ts'
import { referenceJet } from './jetReference.ts'
import { airHeadFactor } from './operate.ts'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

test('the best velocity ratio is where the efficiency is highest', () => {
  fc.assert(
    fc.property(between(0.05, 0.4), between(0.01, 0.08), between(0, 0.2), (ramLoss, nozzleLoss, h) => {
      const losses = { ramLoss, nozzleLoss, nozzleHeight: h, V: 8 }
      const best = bestVelocityRatio(losses)
      let top = 0
      let at = 0
      for (let k = 1.01; k < 4; k += 1e-4) {
        const e = jetEfficiency(k, losses)
        if (e > top) {
          top = e
          at = k
        }
      }
      expect(at).toBeCloseTo(best.k, 3)
      expect(top).toBeCloseTo(best.efficiency, 7)
    }),
    { numRuns: 10 },
  )
})

test('cavitation factors stay in 0 to 1 and have no steps at 1.3, 1 and breakdown', () => {
  for (const x of [1.3, 1, 1 / onsetOverBreakdown]) {
    expect(headFactor(x + 1e-9)).toBeCloseTo(headFactor(x - 1e-9), 6)
  }
  fc.assert(
    fc.property(between(0, 3), (x) => {
      expect(headFactor(x)).toBeGreaterThan(0)
      expect(headFactor(x)).toBeLessThanOrEqual(1)
      expect(torqueFactor(headFactor(x))).toBeGreaterThan(headFactor(x) - 1e-12)
    }),
  )
})

test('thrust never grows as the pressure on the water falls', () => {
  const spec = referenceJet()
  let last = Number.POSITIVE_INFINITY
  for (let p = 140e3; p > 40e3; p -= 2500) {
    const F = solveJet({ ...spec, water: { ...spec.water, atmosphere: p } }, 110, 0).F
    expect(F).toBeLessThanOrEqual(last * (1 + 1e-6))
    last = F
  }
})

test('past the choking rotation more rotation gives no more thrust, and torque and thrust have no step at the knee', () => {
  const spec = referenceJet()
  let before = solveJet(spec, 118, 0)
  for (let n = 118.05; n < 150; n += 0.05) {
    const p = solveJet(spec, n, 0)
    expect(Math.abs(p.T / before.T - 1)).toBeLessThan(0.02)
    expect(Math.abs(p.F / before.F - 1)).toBeLessThan(0.03)
    if (before.state === 'choked') expect(p.F).toBeLessThan(before.F * 1.0001)
    before = p
  }
  expect(before.state).toBe('choked')
})

test('air takes thrust and torque away steadily and stops the jet at a tenth', () => {
  const spec = referenceJet()
  let last = Number.POSITIVE_INFINITY
  for (const airFraction of [0, 0.02, 0.04, 0.06, 0.08, 0.1]) {
    const p = solveJet({ ...spec, water: { ...spec.water, airFraction } }, 80, 0)
    expect(p.F).toBeLessThan(last)
    last = p.F
  }
  expect(airHeadFactor(0.1)).toBe(0)
  expect(solveJet({ ...spec, water: { ...spec.water, airFraction: 0.1 } }, 80, 0).state).toBe('lost prime')
})

test('a slow rotor in a fast boat reports that the ram exceeds the pump, a still one that it cannot lift the water', () => {
  expect(solveJet(referenceJet(), 15, 10).state).toBe('ram exceeds pump')
  const spec = referenceJet()
  spec.system.nozzleHeight = 2
  const p = solveJet(spec, 5, 0)
  expect(p.state).toBe('no flow')
  expect(p.F).toBe(0)
  expect(p.T).toBeGreaterThan(0)
})

test('a rotor driven far below its design flow raises the low-confidence flag', () => {
  const spec = referenceJet()
  spec.system.nozzleDiameter = 0.045
  const p = solveJet(spec, 80, 0)
  expect(p.flags).toContain('stall')
  expect(p.confidence).toBe('low')
})

test('without a stator the jet keeps the shaft’s angular momentum, and that costs a quarter of the thrust or more', () => {
  const spec = referenceJet()
  const bare = { ...spec, system: { ...spec.system, stator: null } }
  const p = solveJet(bare, 80, 0)
  const perMass = (p.T * spec.system.mechanicalEfficiency) / (spec.water.density * p.Q)
  expect(p.losses!.swirl).toBeCloseTo(0.5 * (perMass / 0.0325) ** 2, 6)
  const drop = 1 - p.F / solveJet(spec, 80, 0).F
  expect(drop).toBeGreaterThan(0.25)
  expect(drop).toBeLessThan(0.6)
})

test('less than 3 % of head lost to vapour is not called cavitation; every flag has its sign and its next trial', () => {
  const early = solveJet(referenceJet(), 98, 0)
  expect(early.state).toBe('cavitating')
  expect(early.cavitating).toBe(false)
  expect(solveJet(referenceJet(), 112, 0).flags).toContain('cavitation')
  for (const flag of solveJet(referenceJet(), 140, 0).flags)
    expect(jetFlagTexts[flag].length).toBeGreaterThan(40)
})
