import { expect, test } from 'vitest'
import { referenceEngine } from './engineReference.ts'
import { type TwoStrokeSpec, timingAgainstHeight, validateSpec } from './engineSpec.ts'
import { SpecError, simulateCurve } from './simulate.ts'
import { simulateCycleTrace } from './trace.ts'

const degree = Math.PI / 180
const changed = (change: (s: TwoStrokeSpec) => void): TwoStrokeSpec => {
  const s = structuredClone(referenceEngine())
  change(s)
  return s
}

test('the reference engine is in order', () => {
  expect(validateSpec(referenceEngine(), [3000, 9000, 11500])).toEqual([])
})

const faults: [string, (s: TwoStrokeSpec) => void, string, RegExp, number[]?][] = [
  [
    'an exhaust that never opens',
    (s) => {
      s.exhaust.opens = 179.5 * degree
    },
    'exhaust.opens',
    /never opens/,
  ],
  [
    'transfers that never open',
    (s) => {
      s.transfers.opens = Math.PI
    },
    'transfers.opens',
    /never opens/,
  ],
  [
    'transfers before the exhaust',
    (s) => {
      s.transfers.opens = 90 * degree
    },
    'transfers.opens',
    /no blowdown/,
  ],
  [
    'a port of no width',
    (s) => {
      s.exhaust.width = 0
    },
    'exhaust.width',
    /above 0/,
  ],
  [
    'a pipe with a negative section',
    (s) => {
      s.pipe = [{ length: 0.1, d0: 0.03, d1: -0.02 }]
    },
    'pipe[0].d1',
    /above 0/,
  ],
  [
    'a pipe with a zero section',
    (s) => {
      s.pipe = [{ length: 0.1, d0: 0, d1: 0.02 }]
    },
    'pipe[0].d0',
    /above 0/,
  ],
  [
    'no pipe',
    (s) => {
      s.pipe = []
    },
    'pipe',
    /no segments/,
  ],
  [
    'a box smaller than the cylinder',
    (s) => {
      s.outlet = { kind: 'box', volume: 1e-4, bore: 0.02, discharge: 0.8, loss: 1 }
    },
    'outlet.volume',
    /smaller than the cylinder/,
  ],
  [
    'a rod shorter than half the stroke',
    (s) => {
      s.crank.rod = 0.02
    },
    'crank.rod',
    /cannot turn/,
  ],
  ['a speed beyond what pistons bear', () => {}, 'rpm', /beyond 26 m\/s/, [20000]],
  ['a speed of nought', () => {}, 'rpm', /above 0/, [0]],
  [
    'ports wider than the bore is round',
    (s) => {
      s.transfers.width = 0.16
    },
    'transfers.width',
    /circumference/,
  ],
  [
    'a crankcase of no size',
    (s) => {
      s.caseRatio = 1
    },
    'caseRatio',
    /1.05/,
  ],
  [
    'a mixture that cannot burn',
    (s) => {
      s.mixture.lambda = 0.3
    },
    'mixture.lambda',
    /0.6 to 1.4/,
  ],
]

test.each(faults)('%s is named with its field', (_name, change, path, says, rpms) => {
  const found = validateSpec(changed(change), rpms ?? [9000])
  expect(found.map((f) => f.path)).toContain(path)
  expect(found.find((f) => f.path === path)!.says).toMatch(says)
})

test('a curve or a trace of such an engine is refused before anything runs', () => {
  const broken = changed((s) => {
    s.exhaust.width = -1
  })
  expect(() => simulateCurve(broken, [9000])).toThrow(SpecError)
  expect(() => simulateCycleTrace(broken, 9000)).toThrow(/exhaust.width/)
})

test('wheel and caliper must agree within 1.5 degrees', () => {
  const c = referenceEngine().crank
  // 92 degrees is 31.80 mm down
  expect(timingAgainstHeight(c, 'opens', 92 * degree, 0.0318)).toBeUndefined()
  expect(timingAgainstHeight(c, 'opens', 92 * degree, 0.033)?.says).toMatch(/measure both again/)
  expect(timingAgainstHeight(c, 'opens', 92 * degree, 0.06)?.says).toMatch(/outside the stroke/)
})
