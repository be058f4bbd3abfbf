import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Hose, hoseDrop, hoseFlow } from './hoseDrop.ts'
import { type NetworkHose, type NetworkNode, solveNetwork } from './hoseNetwork.ts'

const petrol = { density: 745, viscosity: 0.6e-3 }
const hose = (bore: number, length = 1, more: Partial<Hose> = {}): Hose => ({
  bore,
  length,
  roughness: 1.5e-6,
  losses: 0,
  narrowest: bore,
  ...more,
})
const between = (from: number, to: number, h: Hose): NetworkHose => ({ ...h, from, to })
const node = (name: string, more: Partial<NetworkNode> = {}): NetworkNode => ({
  name,
  potential: 0,
  demand: 0,
  ...more,
})

describe('hoseDrop', () => {
  test('half the bore takes sixteen times the pressure while both are laminar', () => {
    const wide = hoseDrop(1e-6, hose(4e-3), petrol)
    const thin = hoseDrop(1e-6, hose(2e-3), petrol)
    expect([wide.regime, thin.regime]).toEqual(['laminar', 'laminar'])
    expect(thin.drop / wide.drop).toBeCloseTo(16, 9)
  })
  test('it rises with the flow without a step, through the stretch where nothing is sure', () => {
    let before = 0
    let widest = 0
    for (let k = 1; k <= 4000; k++) {
      const { drop } = hoseDrop(k * 1e-8, hose(4e-3), petrol)
      expect(drop).toBeGreaterThan(before)
      if (k > 1) widest = Math.max(widest, drop / before / (k / (k - 1)))
      before = drop
    }
    expect(widest).toBeLessThan(1.02)
  })
  test('it says which flow it is: laminar to Reynolds 2000, turbulent from 4000, neither between', () => {
    const at = (Re: number) => hoseDrop((Re * Math.PI * 4e-3 * 0.6e-3) / (4 * 745), hose(4e-3), petrol).regime
    expect([at(1999), at(3000), at(4001)]).toEqual(['laminar', 'between', 'turbulent'])
    expect(hoseDrop(0, hose(4e-3), petrol)).toEqual({ drop: 0, reynolds: 0, regime: 'still' })
  })
  test('a hose or a fitting without a hole is refused by name', () => {
    expect(() => hoseDrop(1e-6, hose(0), petrol)).toThrow(/bore/)
    expect(() => hoseDrop(1e-6, hose(4e-3, 1, { narrowest: 0 }), petrol)).toThrow(/narrowest/)
  })
  test('hoseFlow is its inverse, either way round', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-9, max: 3e-4, noNaN: true }),
        fc.double({ min: 1e-3, max: 0.01, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.boolean(),
        (flow, bore, losses, back) => {
          const h = hose(bore, 0.7, { losses, narrowest: 0.7 * bore })
          const signed = back ? -flow : flow
          const got = hoseFlow(hoseDrop(signed, h, petrol).drop, h, petrol)
          expect(got.flow / signed).toBeCloseTo(1, 8)
          expect(got.slope).toBeGreaterThan(0)
        },
      ),
    )
  })
})

describe('solveNetwork', () => {
  const demand = fc.double({ min: 0, max: 5e-6, noNaN: true })
  const size = fc.record({
    bore: fc.double({ min: 1.5e-3, max: 8e-3, noNaN: true }),
    length: fc.double({ min: 0.05, max: 3, noNaN: true }),
  })
  test('as much flows in as out at every tee, whatever the hoses and what is drawn', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(size, demand), { minLength: 1, maxLength: 6 }),
        size,
        (branches, trunk) => {
          const nodes = [
            node('tank', { pressure: 0 }),
            node('tee'),
            ...branches.map(([, d], i) => node(`carburettor ${i}`, { demand: d, potential: 200 * i })),
          ]
          const hoses = [
            between(0, 1, hose(trunk.bore, trunk.length)),
            ...branches.map(([b], i) => between(1, i + 2, hose(b.bore, b.length))),
          ]
          const got = solveNetwork(nodes, hoses, petrol)
          expect(got.converged).toBe(true)
          const wanted = branches.reduce((s, [, d]) => s + d, 0)
          expect(Math.abs(got.value.flow[0]! - wanted)).toBeLessThanOrEqual(1e-9 * Math.max(wanted, 1e-7))
          branches.forEach(([, d], i) => {
            expect(Math.abs(got.value.flow[i + 1]! - d)).toBeLessThanOrEqual(1e-9 * Math.max(d, 1e-6))
          })
        },
      ),
      { numRuns: 60 },
    )
  })
  test('branches alike carry alike, and a ring of hoses shares the flow', () => {
    const nodes = [
      node('tank', { pressure: 1000 }),
      node('left'),
      node('right'),
      node('end', { demand: 4e-6 }),
    ]
    const ring = [
      between(0, 1, hose(3e-3)),
      between(0, 2, hose(3e-3)),
      between(1, 3, hose(3e-3)),
      between(2, 3, hose(3e-3)),
    ]
    const { value, converged } = solveNetwork(nodes, ring, petrol)
    expect(converged).toBe(true)
    expect(value.flow[0]).toBeCloseTo(2e-6, 12)
    expect(value.flow[1]).toBeCloseTo(value.flow[0]!, 12)
  })
  test('with nothing drawn every place has what its height leaves it', () => {
    const nodes = [
      node('tank', { pressure: 500, potential: 0 }),
      node('top', { potential: 1200 }),
      node('low', { potential: -300 }),
    ]
    const { value } = solveNetwork(nodes, [between(0, 1, hose(3e-3)), between(1, 2, hose(3e-3))], petrol)
    expect(value.pressure[1]).toBeCloseTo(-700, 6)
    expect(value.pressure[2]).toBeCloseTo(800, 6)
  })
  test('a tank below its carburettor gives suction at the inlet, not a flow the other way', () => {
    const nodes = [node('tank', { pressure: 0 }), node('carburettor', { potential: 2000, demand: 1e-6 })]
    const { value } = solveNetwork(nodes, [between(0, 1, hose(4e-3))], petrol)
    expect(value.pressure[1]!).toBeLessThan(-2000)
    expect(value.flow[0]).toBeCloseTo(1e-6, 14)
  })
  test('two tanks feed one place from both sides, and a pump adds its own', () => {
    const nodes = [node('one', { pressure: 0 }), node('two', { pressure: 0 }), node('mid', { demand: 2e-6 })]
    const hoses = [between(0, 2, hose(3e-3)), between(1, 2, hose(3e-3))]
    expect(solveNetwork(nodes, hoses, petrol).value.flow[0]).toBeCloseTo(1e-6, 13)
    const pumped = [{ ...hoses[0]!, gain: 2e4 }, hoses[1]!]
    const got = solveNetwork(nodes, pumped, petrol)
    expect(got.converged).toBe(true)
    expect(got.value.flow[1]!).toBeLessThan(0)
  })
  test('a place that no hose joins to a tank is named, not solved', () => {
    const nodes = [node('tank', { pressure: 0 }), node('tee'), node('rear', { demand: 1e-6 })]
    expect(() => solveNetwork(nodes, [between(0, 1, hose(3e-3))], petrol)).toThrow(
      /nodes\.2: no hose joins rear/,
    )
  })
})
