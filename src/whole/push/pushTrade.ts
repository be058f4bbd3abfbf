/** The trade push: engines, jet and hull solved together. */
import type { Craft } from '../../craft/index.ts'
import { type AnyTrade, defineTrade, type Section } from '../../trades/trade.ts'
import type { EngineAnswers } from '../breath/engineAnswers.ts'
import type { Balance } from './balanceTypes.ts'
import { pushFindings } from './pushFindings.ts'
import { pushHeadline } from './pushHeadline.ts'
import { type PushLimits, pushLimits } from './pushLimits.ts'
import { pushCautions, pushFigures, pushMethod, pushNumbers } from './pushShown.ts'
import { type BalanceOptions, solveBalance } from './solveBalance.ts'

/** What a look hands to the balance: engines that were simulated, and how it is to be solved. */
export interface PushSetting extends BalanceOptions {
  engines?: EngineAnswers
}

interface PushInputs {
  craft: Craft
  options: BalanceOptions
}

/** all that the balance, its ranges and its changes read */
const reads: readonly Section[] = [
  'wants',
  'place',
  'rider',
  'engines',
  'drive',
  'jet',
  'hull',
  'weights',
  'tanks',
  'openings',
  'fitted',
  'files',
]

export const pushTrade: AnyTrade = defineTrade<PushInputs, Balance, PushSetting>({
  id: 'push',
  question: 'push',
  title: 'Engines, jet and hull together',
  reads,
  inputs: (craft, { engines, ...options }) => ({
    craft,
    options: engines ? { solved: engines.solved, ...options } : options,
  }),
  answer: ({ craft, options }) => solveBalance(craft, options),
  limits: pushLimits,
  judge: ({ inputs, answer }, limits) => pushFindings(inputs.craft, answer, limits as PushLimits),
  headline: ({ inputs, answer }) => pushHeadline(inputs.craft, answer),
  figures: pushFigures,
  numbers: pushNumbers,
  cautions: pushCautions,
  method: pushMethod,
})
