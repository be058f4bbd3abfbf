import type { Finding } from '../../base/answers/finding.ts'
import { printed } from '../../base/answers/sentence.ts'
import type { Craft } from '../../craft/index.ts'
import type { FuelAnswer } from '../../trades/fuel/fuelAnswer.ts'
import type { FuelInputs } from '../../trades/fuel/fuelFromCraft.ts'
import { fuelTrade } from '../../trades/fuel/fuelTrade.ts'
import { type Solved, solveTrade } from '../../trades/trade.ts'
import { lookAt } from '../look.ts'
import { trades } from '../trades.ts'
import { fuelKnown } from './fuelKnown.ts'

const led = trades.filter((e) => e.trade.id === 'push' || e.trade.id === 'fuel')

/** A craft's fuel findings by id, as a look at it gives them. */
export function fuelFound(craft: Craft): Map<string, Finding> {
  const { findings } = lookAt(craft, { ranges: false }, led)
  return new Map(findings.filter((f) => f.question === 'fuel').map((f) => [f.id, f]))
}

/** The fuel solved for a craft, with what others found out first. */
export function fuelSolved(craft: Craft): Solved<FuelInputs, FuelAnswer | undefined> {
  const { balance } = lookAt(craft, { ranges: false }, led)
  return solveTrade(fuelTrade, craft, fuelKnown({ craft, push: {}, ...(balance ? { balance } : {}) }))
}

export const wordsOf = (f: Finding | undefined): string => (f ? printed(f.says) : '')
export const orderOf = (f: Finding | undefined): string => (f?.act ? printed(f.act) : '')
