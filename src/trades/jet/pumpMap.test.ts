import fc from 'fast-check'
import { expect, test } from 'vitest'
import { solveJet } from './jet.ts'
import { referenceJet } from './jetReference.ts'
import { buildPumpMap, jetPoint } from './pumpMap.ts'

test('the map gives torque, thrust and flow of the full model within 0.3 %', () => {
  fc.assert(
    fc.property(
      fc.record({
        pitch: fc.double({ min: 0.07, max: 0.14, noNaN: true }),
        growth: fc.double({ min: 1, max: 1.3, noNaN: true }),
        blades: fc.integer({ min: 2, max: 4 }),
        roughness: fc.double({ min: 0, max: 25e-6, noNaN: true }),
        nozzle: fc.double({ min: 0.055, max: 0.075, noNaN: true }),
        n: fc.double({ min: 20, max: 160, noNaN: true }),
        V: fc.double({ min: 0, max: 14, noNaN: true }),
      }),
      (x) => {
        const spec = referenceJet()
        spec.rotor.pitchLeading = x.pitch
        spec.rotor.pitchTrailing = x.pitch * x.growth
        spec.rotor.blades = x.blades
        spec.rotor.roughness = x.roughness
        spec.system.nozzleDiameter = x.nozzle
        const full = solveJet(spec, x.n, x.V)
        const fast = jetPoint(buildPumpMap(spec), spec, x.n, x.V)
        // near stall and beyond the rotor's advance the model itself is not worth 0.3 %
        fc.pre(full.confidence === 'ok' && full.advance < 0.9)
        expect(fast.state).toBe(full.state)
        expect(Math.abs(fast.T / full.T - 1)).toBeLessThan(3e-3)
        expect(Math.abs(fast.Q / full.Q - 1)).toBeLessThan(3e-3)
        expect(Math.abs(fast.F - full.F)).toBeLessThan(3e-3 * Math.abs(full.F) + 3e-3 * 998 * full.Q * x.V)
      },
    ),
    { numRuns: 60 },
  )
})

test('any rotor at any rotation and boat speed gives finite numbers and a named state', () => {
  const states = new Set<string>()
  fc.assert(
    fc.property(
      fc.record({
        D: fc.double({ min: 0.04, max: 0.3, noNaN: true }),
        hub: fc.double({ min: 0.2, max: 0.8, noNaN: true }),
        blades: fc.integer({ min: 1, max: 8 }),
        pitch: fc.double({ min: 0.3, max: 2, noNaN: true }),
        growth: fc.double({ min: 0.8, max: 1.6, noNaN: true }),
        wrap: fc.double({ min: 0.4, max: 6.5, noNaN: true }),
        edge: fc.double({ min: 0, max: 8e-3, noNaN: true }),
        nozzle: fc.double({ min: 0.25, max: 0.98, noNaN: true }),
        depth: fc.double({ min: -0.4, max: 0.5, noNaN: true }),
        stator: fc.boolean(),
        n: fc.double({ min: 0.5, max: 300, noNaN: true }),
        V: fc.double({ min: 0, max: 25, noNaN: true }),
      }),
      (x) => {
        const spec = referenceJet()
        Object.assign(spec.rotor, {
          tipDiameter: x.D,
          hubDiameter: x.hub * x.D,
          blades: x.blades,
          pitchLeading: x.pitch * x.D,
          pitchTrailing: x.pitch * x.growth * x.D,
          wrap: x.wrap,
          trailingEdge: x.edge,
        })
        Object.assign(spec.system, { nozzleDiameter: x.nozzle * x.D, rotorDepth: x.depth })
        if (!x.stator) spec.system.stator = null
        const p = jetPoint(buildPumpMap(spec), spec, x.n, x.V)
        states.add(p.state)
        for (const key of [
          'Q',
          'gH',
          'T',
          'F',
          'eta',
          'etaOverall',
          'Nss',
          'Ka',
          'diffusion',
          'wake',
        ] as const)
          expect(Number.isFinite(p[key]), key).toBe(true)
        if (p.state !== 'wet' && p.state !== 'cavitating') expect(p.confidence).toBe('low')
      },
    ),
    { numRuns: 150 },
  )
  expect(states.size).toBeGreaterThan(2)
})

test('torque and thrust have no jumps as rotation rises, from outrun by the boat to cavitating', () => {
  const spec = referenceJet()
  const map = buildPumpMap(spec)
  for (const V of [4, 8, 12]) {
    let before = jetPoint(map, spec, 20, V)
    for (let n = 20.25; n < 130; n += 0.25) {
      const p = jetPoint(map, spec, n, V)
      expect(Math.abs(p.T - before.T)).toBeLessThan(0.35)
      expect(Math.abs(p.F - before.F)).toBeLessThan(14)
      before = p
    }
  }
})
