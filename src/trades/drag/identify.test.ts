import fc from 'fast-check'
import { expect, test } from 'vitest'
import { dragAt, prepareDrag } from './drag.ts'
import {
  dragFromCoastDown,
  identify,
  motionFromMarks,
  priorSigma,
  type Reading,
  surgeMass,
} from './identify.ts'
import { accelerate } from './run.ts'

const model = prepareDrag(
  { length: 2.4, chineBeam: 0.7, deadrise: 0.1, noseDeadrise: 0.4, depth: 0.24, noseRocker: 0.15 },
  {
    mass: 64.5,
    x: 0.95,
    z: 0.14,
    riderMass: 78,
    riderRange: [0.5, 1.5],
    riderHeight: 0.85,
    dragArea: 0.42,
    dragHeight: 0.85,
    thrustLine: { height: 0.08, angle: 0 },
  },
  { density: 999, kinematicViscosity: 1.1e-6 },
)
const thrust = (V: number) => 380 - 14 * V

test('without readings the priors stand', () => {
  const r = identify(model, thrust, [])
  for (let k = 0; k < 3; k++) {
    expect(r.multipliers[k]!.value).toBeCloseTo(1, 12)
    expect(r.multipliers[k]!.sigma).toBeCloseTo(priorSigma[k]!, 12)
  }
})

test('sharp readings made with known multipliers give them back', () => {
  const k = fc.double({ min: 0.7, max: 1.4, noNaN: true })
  fc.assert(
    fc.property(k, k, k, (slow, fast, push) => {
      const readings: Reading[] = [{ kind: 'thrust', speed: 0, value: push * thrust(0), sigma: 0.01 }]
      for (const speed of [1.5, 3, 7, 9])
        readings.push({
          kind: 'drag',
          speed,
          value: (speed < 3.6 ? slow : fast) * dragAt(model, speed).drag,
          sigma: 0.01,
        })
      const { methods } = dragAt(model, 4.4)
      readings.push({
        kind: 'acceleration',
        speed: 4.4,
        value:
          (push * thrust(4.4) -
            slow * (1 - methods.share) * methods.slow -
            fast * methods.share * methods.planing) /
          surgeMass(model, 4.4),
        sigma: 1e-4,
      })
      const r = identify(model, thrust, readings)
      expect(r.multipliers.map((m) => m.value)).toEqual([
        expect.closeTo(slow, 3),
        expect.closeTo(fast, 3),
        expect.closeTo(push, 3),
      ])
      expect(r.misfit).toBeLessThan(0.2)
    }),
    { numRuns: 25 },
  )
})

test('a reading narrows its multiplier and leaves the others alone; the one moved most is named', () => {
  const r = identify(model, thrust, [{ kind: 'thrust', speed: 0, value: 0.7 * thrust(0), sigma: 10 }])
  expect(r.movedMost.name).toBe('thrust')
  expect(r.multipliers[2].sigma).toBeLessThan(0.03)
  expect(r.multipliers[0].value).toBeCloseTo(1, 12)
  expect(() => identify(model, thrust, [{ kind: 'thrust', speed: 0, value: 1, sigma: 0 }])).toThrow(
    /readings\.0\.sigma/,
  )
})

test('a coast-down made from the drag curve gives the drag curve back', () => {
  const body = { mass: model.mass, planing: 5.4, slow: 2.3 }
  const drag = (V: number) => dragAt(model, V, { riderAt: 1 }).drag
  const run = accelerate(body, () => 0, drag, { from: 8, added: [0, 0], longest: 6, keep: 0.05, step: 0.01 })
  const found = dragFromCoastDown(model, run.time, run.speed, 0.25)
  expect(found.length).toBeGreaterThan(50)
  for (const { speed, drag: R } of found.filter((f) => f.speed > 2.5))
    expect(R / (drag(speed) * (surgeMass(model, speed) / model.mass))).toBeCloseTo(1, 1)
})

test('motionFromMarks finds speed and acceleration of a steady pull within 2 %', () => {
  const time = Array.from({ length: 40 }, (_, i) => i / 10)
  const distance = time.map((t) => 0.5 * 1.6 * t * t)
  for (const p of motionFromMarks(time, distance, 0.6)) {
    expect(p.speed).toBeCloseTo(1.6 * p.time, 6)
    expect(p.acceleration).toBeCloseTo(1.6, 5)
  }
})
