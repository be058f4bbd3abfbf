import fc from 'fast-check'
import { expect, test } from 'vitest'
import { chokedTorque, plateChoke } from './choke.ts'
import { solveJet } from './jet.ts'
import { jetDoubts } from './jetFromCraft.ts'
import { referenceJet } from './jetReference.ts'
import type { JetSpec } from './jetTypes.ts'
import { cavitationKnee } from './knee.ts'
import { buildPumpMap, jetPoint } from './pumpMap.ts'
import { oncomingAt, suctionAvailable } from './system.ts'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** jets a builder might make, some high up or with the rotor above the water */
const anyJet = fc
  .record({
    D: between(0.08, 0.15),
    pitch: between(0.6, 1.1),
    growth: between(1, 1.3),
    edge: between(0.3e-3, 1.2e-3),
    nozzle: between(0.5, 0.68),
    depth: between(-0.1, 0.2),
    atmosphere: between(70e3, 102e3),
    breakdown: between(2, 3),
    chokeFall: between(0.05, 1),
    V: between(0, 9),
  })
  .map((x) => {
    const spec: JetSpec = referenceJet()
    Object.assign(spec.rotor, {
      tipDiameter: x.D,
      hubDiameter: 0.42 * x.D,
      pitchLeading: x.pitch * x.D,
      pitchTrailing: x.pitch * x.growth * x.D,
      leadingEdgeRadius: x.edge,
    })
    Object.assign(spec.system, { nozzleDiameter: x.nozzle * x.D, rotorDepth: x.depth })
    spec.water.atmosphere = x.atmosphere
    spec.vapour = { breakdown: x.breakdown, chokeFall: x.chokeFall }
    return { spec, map: buildPumpMap(spec), V: x.V }
  })

/** rotation at which a jet chokes, when it does below 90 m/s of tip speed and does not merely churn before */
function chokeOf(jet: { spec: JetSpec; map: ReturnType<typeof buildPumpMap>; V: number }): number {
  const most = 90 / (Math.PI * jet.spec.rotor.tipDiameter)
  const n = cavitationKnee(jet.map, jet.spec, jet.V, most).choke
  fc.pre(Number.isFinite(n) && n > 0.05 * most)
  fc.pre(jetPoint(jet.map, jet.spec, 0.999 * n, jet.V).state === 'cavitating')
  return n
}

test('thrust, torque and flow have no jump at choking: 0.1 % of rotation moves none by more than 1 %', () => {
  fc.assert(
    fc.property(anyJet, (jet) => {
      const n = chokeOf(jet)
      let before = jetPoint(jet.map, jet.spec, 0.98 * n, jet.V)
      for (let k = 0.981; k < 1.02; k += 0.001) {
        const p = jetPoint(jet.map, jet.spec, k * n, jet.V)
        for (const key of ['F', 'T', 'Q'] as const)
          expect(Math.abs(p[key] / before[key] - 1), `${key} at ${k}`).toBeLessThan(0.01)
        before = p
      }
    }),
    { numRuns: 60 },
  )
})

test('past choking more rotation never brings more flow or thrust; tied up, thrust is never nothing', () => {
  fc.assert(
    fc.property(anyJet, (jet) => {
      const n = chokeOf(jet)
      const knee = jetPoint(jet.map, jet.spec, n, jet.V)
      let last = knee
      for (let k = 1.02; k < 2.2; k *= 1.03) {
        const p = jetPoint(jet.map, jet.spec, k * n, jet.V)
        expect(p.state).toBe('choked')
        expect(p.Q).toBeGreaterThan(0)
        expect(p.Q).toBeLessThanOrEqual(last.Q * (1 + 1e-3))
        expect(p.F).toBeLessThanOrEqual(last.F + 2e-3 * Math.abs(knee.F))
        expect(p.T).toBeGreaterThan(0)
        if (jet.V === 0 || jet.spec.vapour!.chokeFall! < 0.5) expect(p.F).toBeGreaterThan(0)
        expect(jetPoint(jet.map, jet.spec, k * n, 0).F).toBeGreaterThan(0)
        last = p
      }
    }),
    { numRuns: 60 },
  )
})

test('no choked rotor passes more than a throat full of water driven by all the suction pressure there is', () => {
  fc.assert(
    fc.property(anyJet, between(1, 2), (jet, more) => {
      const p = jetPoint(jet.map, jet.spec, more * chokeOf(jet), jet.V)
      const at = oncomingAt(jet.spec.system, jet.spec.water, jet.V)
      const energy = suctionAvailable(jet.spec.system, jet.spec.water, jet.map.annulus, at, p.Q)
      expect(0.5 * (p.Q / jet.map.annulus) ** 2).toBeLessThan(energy)
    }),
    { numRuns: 60 },
  )
})

test('past choking the flow holds, or falls as one over rotation, or between, as the constant of the fall says', () => {
  for (const chokeFall of [0, 0.5, 1]) {
    const spec = referenceJet()
    Object.assign(spec.system, { ductLoss: 0, nozzleHeight: 0 })
    spec.vapour = { chokeFall }
    const map = buildPumpMap(spec)
    const n = cavitationKnee(map, spec, 0, 300).choke
    const a = jetPoint(map, spec, 1.05 * n, 0)
    const b = jetPoint(map, spec, 1.4 * n, 0)
    expect(Math.log(a.Q / b.Q) / Math.log(1.4 / 1.05)).toBeCloseTo(chokeFall, 2)
  }
})

test('where nothing cavitates the constants of breakdown change nothing, and the numbers are those of the wetted pump', () => {
  fc.assert(
    fc.property(between(30, 150), between(0, 10), (n, V) => {
      const spec = referenceJet()
      spec.water.atmosphere = 1e7
      const plain = solveJet(spec, n, V)
      const other = solveJet({ ...spec, vapour: { breakdown: 3, chokeFall: 1 } }, n, V)
      expect(plain.state).not.toBe('choked')
      for (const key of ['F', 'T', 'Q', 'gH'] as const) expect(other[key]).toBe(plain[key])
    }),
    { numRuns: 30 },
  )
  const wet = solveJet(referenceJet(), 80, 0)
  expect(wet.F).toBeCloseTo(681.31, 1)
  expect(wet.T).toBeCloseTo(13.216, 2)
  const near = solveJet(referenceJet(), 120, 0)
  expect(near.F).toBeCloseTo(1446.08, 1)
  expect(near.T).toBeCloseTo(27.763, 2)
})

test('close before the knee the doubt of breakdown is one-sided: an early knee costs more than a late one brings', () => {
  const spec = referenceJet()
  const map = buildPumpMap(spec)
  const at = (n: number, breakdown: number) => jetPoint(map, { ...spec, vapour: { breakdown } }, n, 0).F
  const skew = (n: number) => {
    const { low, value, high } = jetDoubts.breakdown
    return { up: at(n, low) - at(n, value), down: at(n, value) - at(n, high) }
  }
  const choke = cavitationKnee(map, spec, 0, 300).choke
  const close = skew(0.98 * choke)
  expect(close.down).toBeGreaterThan(2 * close.up)
  expect(close.down).toBeGreaterThan(0.03 * at(0.98 * choke, 2.5))
  expect(skew(0.6 * choke)).toEqual({ up: 0, down: 0 })
})

test('plateChoke is tan²(β/2) at half the blade angle and highest there, nothing at no incidence and at no flow', () => {
  fc.assert(
    fc.property(between(0.03, 0.6), between(0, 1), (blade, share) => {
      const top = plateChoke(blade / 2, blade)
      expect(top).toBeCloseTo(Math.tan(blade / 2) ** 2, 12)
      expect(plateChoke(share * blade, blade)).toBeLessThanOrEqual(top + 1e-15)
      expect(plateChoke(0, blade)).toBeCloseTo(0, 12)
      expect(plateChoke(blade, blade)).toBeCloseTo(0, 12)
    }),
  )
  // φ(β - φ) for small angles
  expect(plateChoke(0.02, 0.05) / (0.03 * 0.02)).toBeCloseTo(1, 2)
})

test('chokedTorque is 1 at the knee, keeps the friction when the system asks for no head, and never leaves 0.15 to 1', () => {
  expect(chokedTorque(120, 120)).toBe(1)
  expect(chokedTorque(0, 120)).toBeCloseTo(0.15, 12)
  expect(chokedTorque(-50, 120)).toBeCloseTo(0.15, 12)
  expect(chokedTorque(10, 0)).toBeCloseTo(0.15, 12)
})
