import fc from 'fast-check'
import { expect, test } from 'vitest'
import { madeUpCurve } from './curve.testkit.ts'
import { curveFromPeak } from './curve.ts'
import { givenLine, peakOf, powerOf, searchedLine, simulatedLine, strongBand } from './torqueLine.ts'

test('a simulated line goes through every settled point, all cylinders together', () => {
  const curve = madeUpCurve()
  const line = simulatedLine('front', curve, 2)
  for (const p of curve.points)
    expect(line.torque[line.rpm.indexOf(p.rpm)]).toBeCloseTo(2 * p.point!.torque, 12)
  expect(line.knots).toEqual(curve.points.map((p) => p.rpm))
})

test('a speed that did not settle leaves a gap: no number stands between its neighbours', () => {
  const line = simulatedLine('front', madeUpCurve(9000, [8000]), 1)
  const within = line.rpm.flatMap((n, i) => (n > 7500 && n < 8500 ? [line.torque[i]!] : []))
  expect(within.every(Number.isNaN)).toBe(true)
  expect(line.knots).not.toContain(8000)
  const at = line.rpm.indexOf(7500)
  expect(Number.isNaN(line.torque[at + 1]!)).toBe(true)
})

test('a curve on which nothing settled has no peak and no strong band', () => {
  const all = madeUpCurve().points.map((p) => p.rpm)
  const line = simulatedLine('front', madeUpCurve(9000, all), 1)
  expect(line.rpm).toEqual([])
  expect(peakOf(line, line.torque)).toBeUndefined()
  expect(strongBand(line)).toBeUndefined()
})

test('the band of the inputs multiplies the curve and holds it', () => {
  const band = {
    points: [
      { rpm: 5000, low: 0.9, high: 1.1 },
      { rpm: 11000, low: 0.8, high: 1.3 },
    ],
    drivers: [],
    cancelled: false,
  }
  const line = simulatedLine('front', madeUpCurve(), 1, band)
  line.torque.forEach((t, i) => {
    expect(line.low![i]).toBeLessThan(t)
    expect(line.high![i]).toBeGreaterThan(t)
  })
  expect(line.low![0]! / line.torque[0]!).toBeCloseTo(0.9, 12)
})

test('power is torque times angular speed, and the strong band holds its peak', () => {
  fc.assert(
    fc.property(fc.integer({ min: 6500, max: 9500 }), (peak) => {
      const line = simulatedLine('front', madeUpCurve(peak), 1)
      const power = powerOf(line)
      const top = peakOf(line, power)!
      const i = line.rpm.indexOf(top.rpm)
      expect(top.value).toBeCloseTo((line.torque[i]! * 2 * Math.PI * top.rpm) / 60, 9)
      const band = strongBand(line)!
      expect(band.from).toBeLessThanOrEqual(top.rpm)
      expect(band.to).toBeGreaterThanOrEqual(top.rpm)
      line.rpm.forEach((n, k) => {
        if (n >= band.from && n <= band.to) expect(power[k]).toBeGreaterThanOrEqual(0.9 * top.value)
      })
    }),
  )
})

test('the curve a file gives carries the trust of the file as its band', () => {
  const line = givenLine('front', curveFromPeak(4100, 126, 'tuned'), 0.1)
  expect(line.low![30]! / line.torque[30]!).toBeCloseTo(0.9, 12)
  expect(line.high![30]! / line.torque[30]!).toBeCloseTo(1.1, 12)
})

test('a searched line of one point or none is drawn as it is', () => {
  expect(searchedLine('found', [8000], [9]).torque).toEqual([9])
  expect(searchedLine('found', [], []).rpm).toEqual([])
  expect(searchedLine('found', [8000, 9000], [9, 8]).torque.at(-1)).toBe(8)
})
