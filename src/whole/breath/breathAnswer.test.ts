import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { madeUpCurve } from '../../trades/engine/curve.testkit.ts'
import { curveFromPeak } from '../../trades/engine/curve.ts'
import { givenLine, simulatedLine } from '../../trades/engine/torqueLine.ts'
import { givenAnswer, simulatedAnswer } from './breathAnswer.ts'

const stage = { rough: false, banded: false, asked: 13, settled: 13 }
const line = simulatedLine('front', madeUpCurve(), 1)

test('the answer says power, torque, their speeds and the strong stretch, by the words of the headline', () => {
  const answer = simulatedAnswer(line, stage)
  expect(printed(answer.says)).toMatch(
    /^Front gives [\d.]+ kW at \d+ rpm and [\d.]+ N·m at 9000 rpm by simulation\. Its power stays within a tenth of that from [\d\s]+ rpm to [\d\s]+ rpm\.$/,
  )
  expect(printed(simulatedAnswer(line, stage).says, 'inch')).toMatch(/hp at .* lbf·ft at/)
})

test('the range holds what the method may be off, and grows with the band of the inputs', () => {
  const ends = (l: typeof line) =>
    /([\d.]+) kW to ([\d.]+) kW/
      .exec(printed(simulatedAnswer(l, stage).range!))!
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
  expect(printed(simulatedAnswer(line, { ...stage, rough: true }).confidence!)).toContain('rough')
  expect(printed(simulatedAnswer(line, { ...stage, settled: 11 }).confidence!)).toContain('11 of 13')
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
  const answer = simulatedAnswer(none, stage)
  expect(printed(answer.says)).toContain('settled at no speed')
  expect(answer.range).toBeUndefined()
})

test('an engine known by its peak says so and that its breathing is not known; a motor does not breathe', () => {
  const given = givenLine('rear', curveFromPeak(4100, 126, 'tuned'), 0.1)
  expect(printed(givenAnswer(given, 'peak')!.says)).toMatch(/^Rear gives 4\.1 kW .*not known yet/)
  expect(printed(givenAnswer(given, 'electric')!.says)).toContain('does not breathe')
})
