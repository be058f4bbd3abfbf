import fc from 'fast-check'
import { expect, test } from 'vitest'
import { boltSizes } from '../../craft/schema/boltSizes.ts'
import {
  boltFriction,
  byHand,
  handPull,
  mostPreload,
  nutFactor,
  preloadOf,
  torquePerPull,
  usualTorque,
} from './boltTorque.ts'
import {
  bearingArea,
  boltOf,
  classNames,
  classOf,
  nextSize,
  pitchDiameter,
  stressArea,
} from './metricBolts.ts'

const size = fc.constantFrom(...boltSizes)
const friction = fc.double({ min: 0.02, max: 0.4, noNaN: true })

test('pull grows with torque in proportion and falls as friction grows', () => {
  fc.assert(
    fc.property(
      size,
      friction,
      friction,
      fc.double({ min: 0.1, max: 100, noNaN: true }),
      (s, a, b, torque) => {
        const bolt = boltOf(s)
        const [low, high] = a < b ? [a, b] : [b, a]
        expect(preloadOf(bolt, torque, high)).toBeLessThanOrEqual(preloadOf(bolt, torque, low))
        expect(preloadOf(bolt, 2 * torque, a)).toBeCloseTo(2 * preloadOf(bolt, torque, a), 6)
      },
    ),
  )
})

test('without friction the torque is the work of the pitch alone', () => {
  const bolt = boltOf('M8')
  expect(torquePerPull(bolt, 0, 0)).toBeCloseTo(bolt.pitch / (2 * Math.PI), 5)
})

test('the nut factor of bolts as they come lies about a fifth', () => {
  for (const s of boltSizes) {
    expect(nutFactor(boltOf(s), boltFriction.value)).toBeGreaterThan(0.17)
    expect(nutFactor(boltOf(s), boltFriction.value)).toBeLessThan(0.24)
  }
})

test('the usual torque leaves no bolt beyond nine tenths of yield, however slippery it is', () => {
  fc.assert(
    fc.property(size, fc.constantFrom(...classNames), (s, name) => {
      const bolt = boltOf(s)
      const c = classOf(name)
      expect(preloadOf(bolt, usualTorque(bolt, c), boltFriction.low)).toBeLessThanOrEqual(
        mostPreload(bolt, c, boltFriction.low) * (1 + 1e-9),
      )
    }),
  )
})

test('a hand on the key of an M5 gives 2 to 8 N·m, on that of an M3 under 7', () => {
  const { low, high } = handPull['by hand']
  expect(byHand(boltOf('M5'), low)).toBeCloseTo(2.1, 1)
  expect(byHand(boltOf('M5'), high)).toBeLessThan(8)
  expect(byHand(boltOf('M3'), high)).toBeLessThan(7)
})

test('a size or class that is not in the tables is named in the error', () => {
  expect(() => boltOf('M7')).toThrow(/size: "M7" is not one of M3/)
  expect(() => classOf('9.9')).toThrow(/class: "9.9" is not one of A2-70/)
  expect(nextSize('M5')).toBe('M6')
  expect(nextSize('M12')).toBeUndefined()
})

test('threads are in order: least pitch diameter of the bolt under the nut’s, stress area between root and pitch areas', () => {
  for (const s of boltSizes) {
    const b = boltOf(s)
    expect(b.d2Min).toBeLessThan(b.D2Max)
    expect(b.D1Max).toBeLessThan(b.dMin)
    expect(pitchDiameter(b)).toBeGreaterThan(b.d2Min)
    expect(stressArea(b)).toBeLessThan((Math.PI / 4) * pitchDiameter(b) ** 2)
    expect(bearingArea(b, 'none')).toBeLessThan(bearingArea(b, 'plain'))
    expect(bearingArea(b, 'plain')).toBeLessThan(bearingArea(b, 'wide'))
  }
})
