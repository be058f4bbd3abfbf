import fc from 'fast-check'
import { expect, test } from 'vitest'
import { accelerate, steadySpeeds } from './run.ts'

const plain = { mass: 180, planing: 5, slow: 2 }
const bare = { added: [0, 0] as const, longest: 400 }

test('constant thrust against a quadratic drag follows V = Vm tanh(T t / (m Vm))', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 100, max: 900, noNaN: true }),
      fc.double({ min: 1, max: 8, noNaN: true }),
      (T, k) => {
        const Vm = Math.sqrt(T / k)
        const run = accelerate(
          { ...plain, planing: 0.9 * Vm },
          () => T,
          (V) => k * V * V,
          bare,
        )
        const tau = (plain.mass * Vm) / T
        expect(run.settlesAt).toBeCloseTo(Vm, 6)
        expect(run.timeToPlane! / (tau * Math.atanh(0.9))).toBeCloseTo(1, 6)
        expect(run.timeTo95! / (tau * Math.atanh(0.95))).toBeCloseTo(1, 6)
        const s = (plain.mass / k) * Math.log(Math.cosh(Math.atanh(0.95)))
        expect(run.distanceTo95! / s).toBeCloseTo(1, 4)
        for (let i = 0; i < run.time.length; i += 10)
          expect(run.speed[i]).toBeCloseTo(Vm * Math.tanh(run.time[i]! / tau), 6)
      },
    ),
    { numRuns: 25 },
  )
})

test('thrust a − bV against cV² follows its logarithms', () => {
  const [a, b, c] = [600, 25, 2.5]
  const root = Math.sqrt(b * b + 4 * a * c)
  const V1 = (-b + root) / (2 * c)
  const V2 = (-b - root) / (2 * c)
  const run = accelerate(
    { ...plain, planing: 0.7 * V1 },
    (V) => a - b * V,
    (V) => c * V * V,
    bare,
  )
  const time = (V: number) =>
    (plain.mass / (c * (V1 - V2))) * (Math.log((V - V2) / (V1 - V)) - Math.log(-V2 / V1))
  expect(run.timeToPlane).toBeCloseTo(time(0.7 * V1), 6)
  expect(run.timeTo95).toBeCloseTo(time(0.95 * V1), 6)
})

/** a hump of height `peak` at 3.5 m/s on a gentle rise */
const humped = (peak: number) => (V: number) =>
  2.2 * V * V + ((peak * V * V) / 12.25) * Math.exp(1 - (V / 3.5) ** 2)

test('energy in is energy out plus kinetic energy to 1e-4, added mass and all', () => {
  fc.assert(
    fc.property(fc.double({ min: 20, max: 200, noNaN: true }), (peak) => {
      const run = accelerate(plain, (V, t) => Math.min(1, t / 0.8) * (420 - 12 * V), humped(peak))
      expect(Math.abs(run.energyError)).toBeLessThan(1e-4)
    }),
    { numRuns: 25 },
  )
})

test('doubling the step changes time to 95 % and speed by less than 0.1 %', () => {
  const at = (step: number) => accelerate(plain, (V) => 420 - 12 * V, humped(150), { step })
  const fine = at(0.02)
  const coarse = at(0.04)
  expect(coarse.timeTo95! / fine.timeTo95!).toBeCloseTo(1, 4)
  expect(coarse.speed.at(-1)! / fine.speed.at(-1)!).toBeCloseTo(1, 4)
})

test('a hump above the thrust sticks the craft there, with the deficit and its speed', () => {
  const thrust = (V: number) => 300 - 6 * V
  const drag = humped(320)
  const run = accelerate(plain, thrust, drag)
  expect(run.stuck).toBe(true)
  expect(run.stuckAt).toBeCloseTo(run.settlesAt!, 9)
  expect(run.settlesAt).toBeLessThan(3.5)
  expect(run.topSpeed).toBeGreaterThan(6)
  expect(run.deficit).toBeCloseTo(drag(run.deficitAt!) - thrust(run.deficitAt!), 9)
  expect(run.timeToPlane).toBeUndefined()
  expect(run.speed.at(-1)).toBeLessThan(run.settlesAt!)
})

test('enough thrust is not stuck and takes the rightmost stable root', () => {
  const run = accelerate(plain, (V) => 420 - 6 * V, humped(150))
  expect(run.stuck).toBe(false)
  expect(run.settlesAt).toBe(run.topSpeed)
  expect(run.timeToPlane).toBeLessThan(run.timeTo95!)
})

test('steadySpeeds alternates stable and unstable roots and each closes the equation', () => {
  const thrust = (V: number) => 300 - 6 * V
  const roots = steadySpeeds(thrust, humped(320))
  expect(roots.map((r) => r.stable)).toEqual([true, false, true])
  for (const r of roots) expect(thrust(r.speed)).toBeCloseTo(humped(320)(r.speed), 6)
})

test('no thrust goes nowhere and says so', () => {
  const run = accelerate(
    plain,
    () => 0,
    (V) => 3 * V * V,
  )
  expect(run.settlesAt).toBe(0)
  expect(run.stuck).toBe(true)
  expect(run.speed.at(-1)).toBe(0)
})

test('thrust that is still above drag at the fastest speed looked at gives no top speed', () => {
  const run = accelerate(
    plain,
    () => 5000,
    (V) => V * V,
    { fastest: 20 },
  )
  expect(run.topSpeed).toBeUndefined()
  expect(run.settlesAt).toBeUndefined()
  expect(run.stuck).toBe(false)
})
