import { expect, test } from 'vitest'
import { inKg } from '../base/answers/amounts.ts'
import { limit } from '../base/answers/limit.ts'
import { printed, say } from '../base/answers/sentence.ts'
import { craftOf, heron } from '../craft/craft.testkit.ts'
import { type Craft, quantitiesOf } from '../craft/index.ts'
import { defineTrade } from '../trades/trade.ts'
import { decidingOf, joinDeciding } from './deciding.ts'
import { decidingSays } from './decidingSays.ts'

const limits = {
  most: limit(75, 'kg', 'mass it bears', 'this test'),
  far: limit(90, 'kg', 'mass it breaks at', 'this test'),
}
/** a craft that bears one rider of a certain mass, and nothing else to say */
const bears = defineTrade<number, number>({
  id: 'bears',
  question: 'strength',
  title: 'What it bears',
  reads: ['rider'],
  inputs: (craft: Craft) => craft.rider.mass.value,
  answer: (mass) => mass,
  limits,
  judge: ({ answer }) => [
    {
      id: 'bears.rider',
      question: 'strength',
      says: say`${inKg(answer)} stand on it.`,
      standing: answer > limits.far.value ? 'stop' : answer > limits.most.value ? 'watch' : 'good',
      because: [],
      sources: [],
    },
  ],
})
const list = [{ trade: bears }]
const riding = (mass: string) => craftOf(heron.replace(/^ {2}mass: .*$/m, `  mass: ${mass}`))

test('a value is told where an end of its range turns a decision, and only then', () => {
  const none = decidingOf(riding('70 kg ±4 (guess)'), { list })
  expect(none.values).toEqual([])
  expect(none.final).toBe(true)
  const turns = decidingOf(riding('70 kg ±6 (guess)'), { list })
  expect(turns.asked).toBe(none.asked)
  expect(turns.values.map((v) => v.path)).toEqual(['rider.mass'])
  expect(turns.values[0]!.ends).toMatchObject([{ at: 76, turns: [{ from: 'good', to: 'watch' }] }])
  expect(printed(turns.values[0]!.ends[0]!.turns[0]!.says, 'metric')).toBe('76.0 kg stand on it.')
  // both ends: what falls away says what was said of it
  const both = decidingOf(riding('83 kg ±9 (guess)'), { list }).values[0]!
  expect(both.ends.map((e) => e.turns.map((t) => t.to))).toEqual([['good'], ['stop']])
  expect(printed(both.ends[0]!.turns[0]!.says, 'metric')).toBe('83.0 kg stand on it.')
})

test('what is measured is not asked for', () => {
  const craft = riding('70 kg ±6 (measured)')
  const soft = [...quantitiesOf(craft)].filter((q) => q.source !== 'measured' && q.high > q.low)
  const answer = decidingOf(craft, { list })
  expect(answer.values).toEqual([])
  expect(answer.asked).toBeLessThanOrEqual(soft.length)
  expect(answer.asked).toBeGreaterThan(20)
})

test('dealt out to several hands it finds the same', () => {
  const craft = riding('83 kg ±9 (guess)')
  const whole = decidingOf(craft, { list })
  const hands = [0, 1, 2].map((hand) => decidingOf(craft, { list, hand, of: 3 }))
  expect(joinDeciding(hands)).toEqual(whole)
})

test('called off between two values it has told those found so far', () => {
  const told: string[][] = []
  let left = 60
  expect(() =>
    decidingOf(riding('83 kg ±9 (guess)'), {
      list,
      early: (a) => told.push(a.values.map((v) => v.path)),
      check: () => {
        if (--left < 0) throw new Error('called off')
      },
    }),
  ).toThrow('called off')
  expect(told).toEqual([['rider.mass']])
})

test('it says how many of how many', () => {
  expect(printed(decidingSays({ asked: 40, values: [] }), 'metric')).toMatch(/^None of 40 /)
  const { values } = decidingOf(riding('83 kg ±9 (guess)'), { list })
  expect(printed(decidingSays({ asked: 40, values }), 'metric')).toMatch(/^1 of 40 /)
})
