import fc from 'fast-check'
import { expect, test } from 'vitest'
import { airForFilling, blockedVentFall, drawnUntil } from './fuelAir.ts'
import {
  boilsAt,
  mixtureViscosity,
  oilFor,
  petrolExpansion,
  petrolVapour,
  volumeCorrection,
} from './petrol.ts'

test('petrol boils at the temperature at which its vapour has the pressure it is under', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 4e4, max: 9e4, noNaN: true }),
      fc.double({ min: 2e4, max: 1.1e5, noNaN: true }),
      (reid, p) => {
        expect(petrolVapour(reid, boilsAt(reid, p)) / p).toBeCloseTo(1, 9)
      },
    ),
  )
  expect(petrolVapour(6e4, 310.93)).toBeCloseTo(6e4, 6)
  expect(() => boilsAt(6e4, 0)).toThrow(/pressure/)
})

test('warmed by a step and cooled by one it is off by 1.6 times the square of the step’s expansion, and never grows by cooling', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 40, noNaN: true }),
      fc.double({ min: 700, max: 800, noNaN: true }),
      (step, density) => {
        const both = volumeCorrection(density, step) * volumeCorrection(density, -step)
        expect(both).toBeCloseTo(Math.exp(-1.6 * (petrolExpansion(density) * step) ** 2), 12)
        expect(volumeCorrection(density, step)).toBeLessThanOrEqual(1)
      },
    ),
  )
})

test('a tank filled to 95 % is not over full 40 K warmer', () => {
  expect(0.95 / volumeCorrection(745, 40)).toBeLessThan(1)
})

test('more oil is thicker, warmer is thinner', () => {
  expect(mixtureViscosity(0.04, 293)).toBeGreaterThan(mixtureViscosity(0.02, 293))
  expect(mixtureViscosity(0.04, 313)).toBeLessThan(mixtureViscosity(0.04, 293))
})

test('parts of nought are refused', () => {
  expect(() => oilFor(5e-3, 0)).toThrow(/parts/)
})

test('a shut vent has fallen by what the pump lifts when so much is drawn, whatever the air in the tank', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-4, max: 0.02, noNaN: true }),
      fc.double({ min: 1e3, max: 5e4, noNaN: true }),
      (ullage, lift) => {
        expect(blockedVentFall(ullage, drawnUntil(ullage, lift, 101_325), 101_325) / lift).toBeCloseTo(1, 9)
      },
    ),
  )
  expect(() => drawnUntil(1e-3, 2e5, 101_325)).toThrow(/lift/)
})

test('petrol in a vent takes hundreds of times the pressure of air', () => {
  expect(airForFilling(1e-4, 6e-3, 745) / airForFilling(1e-4, 6e-3, 1.2)).toBeCloseTo(745 / 1.2, 9)
})
