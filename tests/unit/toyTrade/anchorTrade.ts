/** A trade invented for the tests: does a stone of a kilogram hold the craft? */
import { asChange, inKg } from '../../../src/base/answers/amounts.ts'
import type { LimitTable } from '../../../src/base/answers/limit.ts'
import { say } from '../../../src/base/answers/sentence.ts'
import { defineTrade } from '../../../src/trades/trade.ts'
import { anchorLimits } from './anchorLimits.ts'

const stone = 1

/** kg of the craft and its rider, to kg of stone that is missing */
export const anchorTrade = defineTrade<number, number>({
  id: 'anchor',
  question: 'make',
  title: 'Holding still',
  reads: ['weights', 'rider'],
  inputs: (craft) => craft.rider.mass.value + craft.weights.reduce((sum, w) => sum + w.mass.value, 0),
  answer: (mass) => stone / mass,
  limits: anchorLimits,
  judge: ({ inputs, answer }, limits) => [
    {
      id: 'anchor.stone',
      question: 'make',
      says: say`A stone of ${inKg(stone)} holds ${inKg(inputs)}.`,
      ...(answer < wanted(limits)
        ? { act: say`${asChange(inKg(wanted(limits) * inputs - stone))} of stone` }
        : {}),
      standing: answer < wanted(limits) ? 'watch' : 'good',
      because: [{ says: say`${inKg(inputs)} all told`, link: 'weights' }],
      sources: ['invented for this test'],
    },
  ],
  headline: ({ inputs }) => ({
    id: 'anchor.headline',
    question: 'make',
    says: say`It weighs ${inKg(inputs)} at anchor.`,
    standing: 'good',
    because: [],
    sources: ['invented for this test'],
  }),
  cautions: ['Mind your toes.'],
})

const wanted = (limits: LimitTable) => limits['ofWeight']!.value
