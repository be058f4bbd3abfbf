import fc from 'fast-check'
import { expect, test } from 'vitest'
import { curveFromMotor, curveFromPeak, curveFromTable, knownAt, scaleCurve, torqueAt } from './curve.ts'

const table = [
  { rotation: 50, torque: 5 },
  { rotation: 100, torque: 9 },
  { rotation: 120, torque: 10 },
  { rotation: 140, torque: 4 },
]

test('torqueAt goes through the table and says when it is beyond it', () => {
  const c = curveFromTable(table, 145)
  for (const p of table) expect(torqueAt(c, p.rotation)).toBeCloseTo(p.torque, 12)
  expect(knownAt(c, 49.9)).toBe('beyond')
  expect(knownAt(c, 100)).toBe('table')
  expect(torqueAt(c, 0)).toBe(2.5)
  expect(torqueAt(c, 145 * 1.1)).toBe(0)
  expect(torqueAt(c, 1e6)).toBe(0)
})

test('torqueAt is continuous at both ends of the table', () => {
  const c = curveFromTable(table)
  for (const n of [50, 140]) expect(torqueAt(c, n - 1e-9)).toBeCloseTo(torqueAt(c, n + 1e-9), 6)
})

test('curveFromPeak puts the power peak exactly where it was asked, for any engine', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 500, max: 30e3, noNaN: true }),
      fc.double({ min: 40, max: 250, noNaN: true }),
      fc.constantFrom('tuned' as const, 'mild' as const, 'flat' as const),
      (power, rotation, temper) => {
        const c = curveFromPeak(power, rotation, temper)
        expect(c.powerPeak.power / power).toBeCloseTo(1, 6)
        expect(c.powerPeak.rotation / rotation).toBeCloseTo(1, 4)
        // at a power peak torque falls as fast as rotation rises
        const steepness =
          Math.log(torqueAt(c, rotation * 1.001) / torqueAt(c, rotation * 0.999)) / Math.log(1.001 / 0.999)
        expect(steepness).toBeCloseTo(-1, 1)
      },
    ),
  )
})

test('a motor is current limited at rest and has no torque at its no-load speed', () => {
  const motor = { torquePerCurrent: 0.1, maxCurrent: 150, voltage: 58, resistance: 0.05 }
  const c = curveFromMotor(motor)
  expect(torqueAt(c, 0)).toBeCloseTo(15, 6)
  expect(torqueAt(c, 58 / 0.1 / 2 / Math.PI)).toBeCloseTo(0, 9)
  expect(c.powerPeak.power).toBeGreaterThan(5000)
  expect(() => curveFromMotor({ ...motor, resistance: 0 })).toThrow(/resistance/)
})

test('scaleCurve scales torque and power together', () => {
  const c = curveFromTable(table)
  const d = scaleCurve(c, 0.9)
  expect(torqueAt(d, 110)).toBeCloseTo(0.9 * torqueAt(c, 110), 12)
  expect(d.powerPeak.power).toBeCloseTo(0.9 * c.powerPeak.power, 9)
})

test('a bad table is refused naming the point', () => {
  expect(() => curveFromTable([table[0]!])).toThrow(/two or more/)
  expect(() => curveFromTable([{ rotation: 10, torque: Number.NaN }, table[1]!])).toThrow(/point 1/)
  expect(() => curveFromTable([table[1]!, table[0]!])).toThrow(/increasing/)
})
