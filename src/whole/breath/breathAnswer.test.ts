import { expect, test } from 'vitest'
import { printed } from '../../base/answers/sentence.ts'
import { readCraft } from '../../craft/index.ts'
import type { TorqueBand } from '../../trades/engine/band.ts'
import { madeUpCurve } from '../../trades/engine/curve.testkit.ts'
import { craftTextWith, sportEngine } from '../../trades/engine/twoStroke.testkit.ts'
import { lookAt } from '../look.ts'
import { engineAnswer, headlineOf } from './breathAnswer.ts'
import { breathView } from './breathView.ts'

const craft = readCraft(craftTextWith(sportEngine)).craft!
const view = breathView(craft, 0)
const curve = madeUpCurve()

test('the answer says power, torque and their speeds with their ranges, in the reader’s units; the strong stretch is its reason', () => {
  const answer = engineAnswer(view, { curve })
  expect(printed(answer.says)).toMatch(
    /^\S+ gives [\d.]+ kW \([\d.]+ to [\d.]+ kW\) at \d+ rpm and [\d.]+ N·m \(.*\) at 9000 rpm by simulation\.$/,
  )
  expect(printed(answer.says, 'inch')).toMatch(/hp \(.* hp\) at .* lbf·ft .*at/)
  expect(printed(answer.because[0]!.says)).toMatch(/within a tenth of that from [\d\s]+ rpm to [\d\s]+ rpm/)
})

test('the range holds what the method may be off, and grows with the band of the inputs', () => {
  const ends = (band?: TorqueBand) => {
    const { low, high } = engineAnswer(view, { curve, band })
    return [low!, high!] as const
  }
  const [low, high] = ends()
  const [lower, higher] = ends({
    points: curve.points.map((p) => ({ rpm: p.rpm, low: 0.8, high: 1.3 })),
    drivers: [],
    cancelled: false,
  })
  expect(high / low).toBeCloseTo(1.15 / 0.85, 6)
  expect(lower).toBeLessThan(low)
  expect(higher).toBeGreaterThan(high)
})

test('a curve on which nothing settled gives no number, nor one that is not worked out yet', () => {
  const none = madeUpCurve(
    9000,
    curve.points.map((p) => p.rpm),
  )
  for (const worked of [{ curve: none }, {}]) {
    const answer = engineAnswer(view, worked)
    expect([answer.standing, answer.value]).toEqual(['unknown', undefined])
    expect(printed(answer.says)).toContain('is not known: ')
  }
})

test('an engine known by its peak says so and that its breathing is not known; a motor does not breathe', () => {
  const peak = {
    name: 'rear',
    kind: 'peak',
    displacement: '60 cm³',
    power: '4.1 kW ±0.4',
    'power at': '7600 rpm',
  }
  const rear = readCraft(craftTextWith(`engines:\n  - ${JSON.stringify(peak)}\n`)).craft!
  const known = engineAnswer(breathView(rear, 0))
  expect(printed(known.says)).toMatch(/^Rear gives 4\.1 kW \(.*\) .*not known yet\.$/)
  expect(known.standing).toBe('unknown')
  const motor = engineAnswer({ ...breathView(rear, 0), kind: 'electric' })
  expect(printed(motor.says)).toContain('does not breathe')
  expect(motor.standing).toBe('good')
})

test('one engine’s answer is the headline; of several each is said once', () => {
  const one = engineAnswer(view, { curve })
  expect(headlineOf([one])).toEqual({ ...one, id: 'breath.headline' })
  const both = headlineOf([one, engineAnswer(view)])
  expect(printed(both.says)).toMatch(/by simulation\. How .* is not known: .*\.$/)
  expect(both.standing).toBe('unknown')
})

test('in a look no other finding of the question words what an engine gives', () => {
  const found = lookAt(craft, { ranges: false }).findings.filter((f) => f.question === 'breath')
  expect(found.filter((f) => /gives|is not known/.test(printed(f.says))).map((f) => f.id)).toEqual([
    'breath.headline',
  ])
})
