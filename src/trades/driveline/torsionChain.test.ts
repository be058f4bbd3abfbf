import fc from 'fast-check'
import { expect, test } from 'vitest'
import { chainAnswer, chainFrequencies, chainWork, twoMass } from './torsionChain.ts'

const inertia = fc.double({ min: 1e-5, max: 1e-2, noNaN: true })
const stiffness = fc.double({ min: 50, max: 5e4, noNaN: true })

test('two masses by the chain are two masses by the formula', () => {
  fc.assert(
    fc.property(inertia, inertia, stiffness, (a, b, k) => {
      const [found] = chainFrequencies({ inertia: [a, b], stiffness: [k] })
      expect(found! / twoMass(a, b, k)).toBeCloseTo(1, 5)
    }),
  )
})

test('a stiffer spring never lowers a frequency, and frequencies rise in order', () => {
  fc.assert(
    fc.property(inertia, inertia, inertia, stiffness, stiffness, (a, b, c, k, l) => {
      const chain = { inertia: [a, b, c], stiffness: [k, l] }
      const soft = chainFrequencies(chain)
      const stiff = chainFrequencies({ ...chain, stiffness: [2 * k, l] })
      expect(soft[0]!).toBeLessThanOrEqual(soft[1]! * (1 + 1e-6))
      expect(stiff[0]!).toBeGreaterThanOrEqual(soft[0]! * (1 - 1e-6))
      expect(stiff[1]!).toBeGreaterThanOrEqual(soft[1]! * (1 - 1e-6))
    }),
    { numRuns: 50 },
  )
})

/** torque in the springs under a torque of one on the first mass */
function answer(
  chain: { inertia: number[]; stiffness: number[] },
  hertz: number,
  loss: number,
  drag = 0,
): Float64Array {
  const n = chain.inertia.length
  const out = new Float64Array(2 * (n - 1))
  const re = Float64Array.from({ length: n }, (_, i) => (i === 0 ? 1 : 0))
  chainAnswer(chain, 2 * Math.PI * hertz, { re, im: new Float64Array(n) }, loss, drag, chainWork(n), out)
  return out
}

test('slowly swung, a spring carries the part of the torque that the masses behind it have of all', () => {
  const chain = { inertia: [6e-4, 5e-4, 2e-4], stiffness: [4000, 900] }
  const [first, , second] = answer(chain, 0.5, 0)
  expect(first!).toBeCloseTo(7 / 13, 4)
  expect(second!).toBeCloseTo(2 / 13, 4)
})

test('two masses on a spring without loss answer as J2/(J1 + J2)/(1 − r²)', () => {
  const chain = { inertia: [6e-4, 3e-4], stiffness: [2000] }
  const own = twoMass(6e-4, 3e-4, 2000)
  for (const r of [0.3, 0.8, 1.5, 3]) {
    const [torque] = answer(chain, r * own, 0)
    expect(torque!).toBeCloseTo(1 / 3 / (1 - r * r), 6)
  }
})

test('at its own frequency loss alone holds a chain back; drag at the end only lowers it', () => {
  const chain = { inertia: [6e-4, 3e-4], stiffness: [2000] }
  const own = twoMass(6e-4, 3e-4, 2000)
  const size = (x: Float64Array) => Math.hypot(x[0]!, x[1]!)
  const free = size(answer(chain, own, 0.05))
  expect(free).toBeCloseTo(Math.hypot(1, 0.05) / 3 / 0.05, 3)
  expect(size(answer(chain, own, 0.05, 0.05))).toBeLessThan(free)
})
