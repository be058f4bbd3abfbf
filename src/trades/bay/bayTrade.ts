/** The trade bay: how warm the engine bay gets, what air it wants, and what lies in that air. */
import { defineTrade } from '../trade.ts'
import { type BayAnswer, bayAnswer } from './bayAnswer.ts'
import { bayFindings, bayHeadline } from './bayFindings.ts'
import { type BayInputs, bayFromCraft } from './bayFromCraft.ts'
import { type BayLimits, bayLimits } from './bayLimits.ts'
import type { BayRun } from './bayRun.ts'

export const bayTrade = defineTrade<BayInputs, BayAnswer, BayRun>({
  id: 'bay',
  question: 'fuel',
  title: 'The engine bay: heat and air',
  reads: [
    'bay',
    'place',
    'engines',
    'hull',
    'weights',
    'tanks',
    'openings',
    'foam',
    'compartments',
    'jet',
    'rider',
    'cable',
  ],
  inputs: bayFromCraft,
  answer: bayAnswer,
  limits: bayLimits,
  judge: ({ inputs, answer }, limits) => bayFindings(inputs, answer, limits as BayLimits),
  headline: ({ inputs, answer }, limits) => bayHeadline(inputs, answer, limits as BayLimits),
})
