import fc from 'fast-check'
import { expect, test } from 'vitest'
import { inWords } from '../../base/answers/printFinding.ts'
import { type Craft, whatIf } from '../../craft/index.ts'
import { dryPressure, powerInAir, powerInAirIso, referenceAir } from '../../trades/engine/airPower.ts'
import { airShareOf } from '../../trades/engine/enginesFromCraft.ts'
import { airFindings } from './airFindings.ts'
import { MapStore } from './craftModel.ts'
import { demoCraft } from './demo.testkit.ts'
import { pushLimits } from './pushLimits.ts'
import { solveBalance } from './solveBalance.ts'

const heron = demoCraft('heron')
const maps = new MapStore()
const quick = (craft: Craft) => solveBalance(craft, { maps, ranges: false, oneDead: false, pitches: false })
const matters = pushLimits.airMatters.value
const high = whatIf(heron, { 'place.altitude': 3500 })

test('in its reference air an engine has the power it was given', () => {
  expect(powerInAir(referenceAir.dry, referenceAir.temperature)).toBeCloseTo(1, 12)
})

test('power falls with less pressure and more warmth, friction faster than the air, and lies near ISO 1585 to 3500 m', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 64e3, max: 104e3, noNaN: true }),
      fc.double({ min: 258, max: 313, noNaN: true }),
      (dry, t) => {
        expect(powerInAir(0.98 * dry, t)).toBeLessThan(powerInAir(dry, t))
        expect(powerInAir(dry, t + 3)).toBeLessThan(powerInAir(dry, t))
        if (dry < referenceAir.dry && t >= 298)
          expect(powerInAir(dry, t)).toBeLessThan((dry / referenceAir.dry) * Math.sqrt(298 / t) + 1e-9)
        expect(Math.abs(powerInAir(dry, t) / powerInAirIso(dry, t) - 1)).toBeLessThan(0.025)
      },
    ),
  )
  expect(powerInAir(10e3, 298)).toBe(0)
  expect(dryPressure(1e5, 298)).toBeLessThan(1e5)
})

test('Heron at 3500 m loses a third of its power, and pull and speed with it', () => {
  expect(airShareOf(high, 0)).toBeGreaterThan(0.55)
  expect(airShareOf(high, 0)).toBeLessThan(0.7)
  const [low, up] = [quick(heron), quick(high)]
  expect(up.tiedUp.power).toBeLessThan(0.8 * low.tiedUp.power)
  expect(up.tiedUp.thrust).toBeLessThan(low.tiedUp.thrust)
  expect(up.topSpeed.value).toBeLessThan(low.topSpeed.value)
})

test('warm air takes power, and a curve measured here is taken as it is', () => {
  const hot = whatIf(heron, { 'place.air temperature': 273.15 + 40 })
  expect(airShareOf(hot, 0)).toBeLessThan(airShareOf(heron, 0))
  expect(airShareOf(whatIf(high, { 'engines.0.measured in': 'here' }), 0)).toBe(1)
})

test('an electric motor does not feel the air', () => {
  const electric = { ...high, engines: [{ kind: 'electric', running: true }] } as unknown as Craft
  expect(airShareOf(electric, 0)).toBe(1)
  expect(airFindings(electric, 0.001)).toEqual([])
})

test('one finding says what the air takes where it matters, none where it does not, and the limit decides', () => {
  expect(airFindings(heron, matters)).toEqual([])
  const [said] = inWords(airFindings(high, matters))
  expect(said!.standing).toBe('watch')
  expect(said!.says).toMatch(/6\d %/)
  expect(airFindings(high, 0.9)).toEqual([])
})
