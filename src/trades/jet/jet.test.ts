import fc from 'fast-check'
import { expect, test } from 'vitest'
import { prepareBlades } from './blades.ts'
import { bollardBound } from './ideal.ts'
import { pumpSetting, solveJet } from './jet.ts'
import { referenceJet } from './jetReference.ts'
import type { JetSpec } from './jetTypes.ts'
import { latticeLift, turningShare } from './lattice.ts'
import { pumpAt } from './pump.ts'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** jets a builder might make, at rotations and speeds where they run */
const anyJet = fc
  .record({
    D: between(0.08, 0.16),
    hub: between(0.35, 0.55),
    blades: fc.integer({ min: 2, max: 5 }),
    pitch: between(0.6, 1.1),
    growth: between(1, 1.4),
    wrap: between(1.6, 3.8),
    edge: between(0.5e-3, 3e-3),
    gap: between(0.2e-3, 1e-3),
    roughness: between(0, 25e-6),
    nozzle: between(0.5, 0.62),
    stator: fc.boolean(),
  })
  .map((x): JetSpec => {
    const spec = referenceJet()
    Object.assign(spec.rotor, {
      tipDiameter: x.D,
      hubDiameter: x.hub * x.D,
      blades: x.blades,
      pitchLeading: (x.pitch * x.D * 2) / (1 + x.growth),
      pitchTrailing: (x.pitch * x.D * 2 * x.growth) / (1 + x.growth),
      wrap: x.wrap,
      trailingEdge: x.edge,
      gap: x.gap,
      roughness: x.roughness,
    })
    spec.system.nozzleDiameter = x.nozzle * x.D
    if (!x.stator) spec.system.stator = null
    return spec
  })

test('energy: shaft power is water power plus every loss plus the shaft’s own, to 1e-9, and no loss is negative', () => {
  fc.assert(
    fc.property(anyJet, between(30, 150), between(0.15, 1.1), (spec, n, advance) => {
      const set = pumpSetting(spec)
      const Q = advance * n * spec.rotor.pitchTrailing * set.blades.areaIn
      const p = pumpAt(set, n, Q)
      const lost = Object.values(p.losses).reduce((a, b) => a + b, 0)
      expect(Math.abs(p.work - p.head - lost)).toBeLessThan(1e-9 * (Math.abs(p.work) + lost))
      for (const [name, value] of Object.entries(p.losses)) expect(value, name).toBeGreaterThanOrEqual(0)
    }),
    { numRuns: 150 },
  )
})

test('efficiency lies between 0 and 1 wherever the jet runs', () => {
  fc.assert(
    fc.property(anyJet, between(30, 120), between(0, 8), (spec, n, V) => {
      const p = solveJet(spec, n, V)
      fc.pre(p.state === 'wet' || p.state === 'cavitating')
      expect(p.eta).toBeGreaterThan(0)
      expect(p.eta).toBeLessThan(1)
      expect(p.T * 2 * Math.PI * n).toBeGreaterThan(p.F * V)
    }),
    { numRuns: 100 },
  )
})

test('continuity: the outflow over the annulus is the flow to 1e-9', () => {
  const set = pumpSetting(referenceJet())
  const b = set.blades
  for (const advance of [0.3, 0.5, 0.64, 0.8, 1]) {
    const Q = advance * 100 * 0.1 * b.areaIn
    pumpAt(set, 100, Q)
    let sum = 0
    for (let i = 0; i < b.count; i++) sum += b.cm[i]! * b.share[i]! * b.areaOut
    expect(Math.abs(sum / Q - 1)).toBeLessThan(1e-9)
  }
})

test('radial equilibrium: c dc/dr = (w_u/r) d(r c_u)/dr holds within 1 % between strips of a fine cut', () => {
  const spec = referenceJet()
  const set = { ...pumpSetting(spec), blades: prepareBlades(spec.rotor, { strips: 81, equilibrium: 1 }) }
  const b = set.blades
  const omega = 2 * Math.PI * 100
  pumpAt(set, 100, 0.064 * 100 * b.areaIn)
  const cu = (i: number) => b.a[i]! - b.slope[i]! * b.cm[i]!
  for (let i = 2; i < b.count - 2; i++) {
    const dr = b.r2[i + 1]! - b.r2[i - 1]!
    const left = (b.cm[i]! * (b.cm[i + 1]! - b.cm[i - 1]!)) / dr
    const swirl = (b.r2[i + 1]! * cu(i + 1) - b.r2[i - 1]! * cu(i - 1)) / dr
    const right = ((omega * b.r2[i]! - cu(i)) / b.r2[i]!) * swirl
    expect(Math.abs(left - right)).toBeLessThan(0.01 * Math.max(Math.abs(left), Math.abs(right)) + 1)
  }
})

test('strips: twice as many change torque and thrust by less than 0.5 %', () => {
  const spec = referenceJet()
  const coarse = solveJet(spec, 90, 0)
  const fine = solveJet({ ...spec, model: { strips: 22 } }, 90, 0)
  expect(Math.abs(fine.T / coarse.T - 1)).toBeLessThan(5e-3)
  expect(Math.abs(fine.F / coarse.F - 1)).toBeLessThan(5e-3)
})

test('affinity in rotation: flow, torque and thrust go as n, n², n² within 0.3 % (no lift, no cavitation)', () => {
  const spec = referenceJet()
  spec.system.nozzleHeight = 0
  spec.water.atmosphere = 1e7
  fc.assert(
    fc.property(between(0.5, 1.5), (k) => {
      const a = solveJet(spec, 100, 0)
      const b = solveJet(spec, 100 * k, 0)
      expect(Math.abs(b.Q / a.Q / k - 1)).toBeLessThan(3e-3)
      expect(Math.abs(b.T / a.T / k ** 2 - 1)).toBeLessThan(3e-3)
      expect(Math.abs(b.F / a.F / k ** 2 - 1)).toBeLessThan(3e-3)
    }),
    { numRuns: 20 },
  )
})

test('affinity in size: everything scaled by k, roughness and gap too, makes torque k⁵ and thrust k⁴ within 0.3 %', () => {
  const at = (k: number) => {
    const spec = referenceJet()
    for (const key of [
      'tipDiameter',
      'hubDiameter',
      'pitchLeading',
      'pitchTrailing',
      'trailingEdge',
      'gap',
      'roughness',
    ] as const)
      spec.rotor[key] *= k
    spec.system.nozzleDiameter *= k
    spec.system.intakeArea *= k * k
    spec.system.nozzleHeight = 0
    spec.water.atmosphere = 1e7
    return solveJet(spec, 80, 0)
  }
  const one = at(1)
  for (const k of [0.7, 1.3]) {
    expect(Math.abs(at(k).T / one.T / k ** 5 - 1)).toBeLessThan(3e-3)
    expect(Math.abs(at(k).F / one.F / k ** 4 - 1)).toBeLessThan(3e-3)
  }
})

test('limit: with vanishing blades there is no head and no torque', () => {
  const spec = referenceJet()
  spec.rotor.blades = 1e-4
  const set = pumpSetting(spec)
  const Q = 0.6 * 100 * 0.1 * set.blades.areaIn
  const full = pumpAt(pumpSetting(referenceJet()), 100, Q)
  const none = pumpAt(set, 100, Q)
  expect(none.head).toBeLessThan(1e-3 * full.head)
  expect(Math.abs(none.work)).toBeLessThan(1e-3 * full.work)
})

test('limit: many thin blades without viscous loss of turning send the water out along the blade', () => {
  const spec = referenceJet()
  spec.rotor.blades = 12
  spec.rotor.trailingEdge = 0
  const b = prepareBlades(spec.rotor, { turning: 1, equilibrium: 0 })
  // swirl with outflow along the blade: c_u = U - c tan λ
  for (let i = 0; i < b.count; i++) {
    expect(b.turning[i]).toBeCloseTo(1, 6)
    expect(b.slope[i]).toBeCloseTo(Math.tan(b.lambda2[i]!), 9)
  }
})

test('limit: water moving at the pitch speed or faster gets no head', () => {
  fc.assert(
    fc.property(anyJet, between(40, 120), between(1.02, 1.2), (spec, n, advance) => {
      const set = pumpSetting(spec)
      const flow = advance * n * spec.rotor.pitchTrailing * set.blades.areaIn
      expect(pumpAt(set, n, flow).head).toBeLessThan(0)
    }),
    { numRuns: 60 },
  )
})

/** thrust and torque as one input moves, at fixed rotation */
function along(values: readonly number[], set: (spec: JetSpec, x: number) => void, n = 90, V = 0) {
  return values.map((x) => {
    const spec = referenceJet()
    set(spec, x)
    return solveJet(spec, n, V)
  })
}
const rises = (xs: readonly number[]) => xs.every((x, i) => i === 0 || x > xs[i - 1]!)
const falls = (xs: readonly number[]) => rises(xs.map((x) => -x))

test('torque grows with pitch, rotation and diameter', () => {
  const pitch = along([0.08, 0.09, 0.1, 0.11, 0.12], (s, x) => {
    s.rotor.pitchLeading = x
    s.rotor.pitchTrailing = x
  })
  expect(rises(pitch.map((p) => p.T))).toBe(true)
  const size = along([0.11, 0.115, 0.12, 0.125, 0.13], (s, x) => {
    s.rotor.tipDiameter = x
  })
  expect(rises(size.map((p) => p.T))).toBe(true)
  expect(rises([40, 60, 80, 100].map((n) => solveJet(referenceJet(), n, 0).T))).toBe(true)
})

test('thrust and torque fall with boat speed; suction pressure and cavitation number grow with it and with depth', () => {
  const way = [0, 2, 4, 6, 8, 10, 12].map((V) => solveJet(referenceJet(), 100, V))
  expect(falls(way.map((p) => p.F))).toBe(true)
  expect(falls(way.map((p) => p.T))).toBe(true)
  expect(rises(way.map((p) => p.Ka))).toBe(true)
  const deep = along([0, 0.1, 0.2, 0.3], (s, x) => {
    s.system.rotorDepth = x
  })
  expect(rises(deep.map((p) => p.Ka))).toBe(true)
})

test('flow grows with the nozzle, suction specific speed with rotation', () => {
  const nozzle = along([0.058, 0.061, 0.065, 0.069], (s, x) => {
    s.system.nozzleDiameter = x
  })
  expect(rises(nozzle.map((p) => p.Q))).toBe(true)
  expect(rises([40, 60, 80, 100].map((n) => solveJet(referenceJet(), n, 0).Nss))).toBe(true)
})

test('efficiency falls with roughness and with the tip gap', () => {
  const rough = along([1e-6, 4e-6, 12e-6, 24e-6], (s, x) => {
    s.rotor.roughness = x
  })
  expect(falls(rough.map((p) => p.eta))).toBe(true)
  const gap = along([0, 0.2e-3, 0.4e-3, 0.8e-3], (s, x) => {
    s.rotor.gap = x
  })
  expect(falls(gap.map((p) => p.eta))).toBe(true)
})

test('vanishing pitch gives vanishing flow', () => {
  const [p] = along([0.012], (s, x) => {
    s.rotor.pitchLeading = x
    s.rotor.pitchTrailing = x
    s.system.nozzleHeight = 0
  })
  expect(p!.Q).toBeLessThan(0.15 * solveJet(referenceJet(), 90, 0).Q)
})

test('a coned hub gives nearly the straight hub’s answer when the cone is slight', () => {
  const spec = referenceJet()
  const coned = { ...spec, rotor: { ...spec.rotor, hubDiameterExit: 0.0501 } }
  expect(solveJet(coned, 80, 0).T / solveJet(spec, 80, 0).T).toBeCloseTo(1, 2)
})

test('lattice: lone blade 1, dense lattice full turning, unstaggered plates exact', () => {
  expect(latticeLift(0, 1)).toBe(1)
  expect(turningShare(0, 1)).toBe(0)
  fc.assert(
    fc.property(between(0.05, 3), (s) => {
      expect(latticeLift(s, 0)).toBeCloseTo((2 / (Math.PI * s)) * Math.tanh((Math.PI * s) / 2), 6)
      expect(turningShare(s, 0)).toBeCloseTo(1 - Math.exp(-Math.PI * s), 5)
    }),
  )
  expect(turningShare(6, 1.3)).toBeCloseTo(1, 4)
  expect(latticeLift(Number.NaN, 1)).toBeNaN()
})

test('a hub as wide as the bore is refused with both sizes', () => {
  const spec = referenceJet()
  spec.rotor.hubDiameter = 0.12
  expect(() => solveJet(spec, 80, 0)).toThrow(/0.12 m must lie between/)
})

test('no jet pulls more at rest than its power allows through its nozzle', () => {
  fc.assert(
    fc.property(anyJet, between(30, 150), (spec, n) => {
      const p = solveJet(spec, n, 0)
      const area = (Math.PI / 4) * spec.system.nozzleDiameter ** 2 * spec.system.contraction
      expect(p.F).toBeLessThanOrEqual(bollardBound(2 * Math.PI * n * p.T, area, spec.water.density))
    }),
    { numRuns: 100 },
  )
})
