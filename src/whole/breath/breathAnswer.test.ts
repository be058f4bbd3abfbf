import { expect, test } from 'vitest'
import { curveFromPeak } from '../../trades/engine/curve.ts'
import { inchLook, metricLook } from '../push/shown.ts'
import { madeUpCurve } from './breath.testkit.ts'
import { givenAnswer, simulatedAnswer } from './breathAnswer.ts'
import { givenLine, simulatedLine } from './curveLines.ts'

const stage = { rough: false, banded: false, asked: 13, settled: 13 }
const line = simulatedLine('front', madeUpCurve(), 1)

test('the answer says power, torque, their speeds and the strong stretch, and begins as a sentence does', () => {
  const answer = simulatedAnswer(line, stage, metricLook)
  expect(answer.says).toMatch(
    /^Front gives [\d.]+ kW at \d+ rpm and [\d.]+ N·m at 9000 rpm\. Its power stays within a tenth of that from \d+ rpm to \d+ rpm\.$/,
  )
  expect(simulatedAnswer(line, stage, inchLook).says).toMatch(/hp at .* lbf·ft at/)
})

test('the range holds what the method may be off, and grows with the band of the inputs', () => {
  const ends = (l: typeof line) =>
    /([\d.]+) to ([\d.]+) kW/
      .exec(simulatedAnswer(l, stage, metricLook).range!)!
      .slice(1)
      .map(Number)
  const banded = { ...line, low: line.torque.map((t) => 0.8 * t), high: line.torque.map((t) => 1.3 * t) }
  const [low, high] = ends(line)
  const [lower, higher] = ends(banded)
  expect(high! / low!).toBeCloseTo(1.15 / 0.85, 1)
  expect(lower).toBeLessThan(low!)
  expect(higher).toBeGreaterThan(high!)
})

test('a rough answer says that it is one, and speeds that did not settle are counted', () => {
  expect(simulatedAnswer(line, { ...stage, rough: true }, metricLook).confidence).toContain('rough')
  expect(simulatedAnswer(line, { ...stage, settled: 11 }, metricLook).confidence).toContain('11 of 13')
})

test('a curve on which nothing settled gives no number', () => {
  const none = simulatedLine(
    'front',
    madeUpCurve(
      9000,
      madeUpCurve().points.map((p) => p.rpm),
    ),
    1,
  )
  const answer = simulatedAnswer(none, stage, metricLook)
  expect(answer.says).toContain('settled at no speed')
  expect(answer.range).toBeUndefined()
})

test('an engine known by its peak says so and that its breathing is not known; a motor does not breathe', () => {
  const given = givenLine('rear', curveFromPeak(4100, 126, 'tuned'), 0.1)
  expect(givenAnswer(given, 'peak', metricLook).says).toMatch(/^Rear gives 4\.1 kW .*not known yet/)
  expect(givenAnswer(given, 'electric', metricLook).says).toContain('does not breathe')
})
