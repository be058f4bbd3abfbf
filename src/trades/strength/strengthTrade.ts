/** The trade strength: the deck under a rider, foam beside hot parts, seams. */
import { defineTrade } from '../trade.ts'
import { strengthFindingsOf } from './deckFindings.ts'
import { type StrengthInputs, strengthFromCraft } from './strengthFromCraft.ts'
import { strengthReckoners } from './strengthReckoners.ts'

export const strengthTrade = defineTrade<StrengthInputs, undefined>({
  id: 'strength',
  question: 'strength',
  title: 'Deck and foam',
  reads: ['deck', 'rider', 'place', 'hotParts'],
  inputs: (craft) => strengthFromCraft(craft),
  answer: () => undefined,
  limits: {},
  judge: ({ inputs }) => strengthFindingsOf(inputs),
  reckoners: strengthReckoners,
})
