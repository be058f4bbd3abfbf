/** One look at a craft: every trade solved once, what each has to say, and what to do about it. */
import type { Decision } from '../base/answers/decision.ts'
import { type Finding, type Question, worstFirst } from '../base/answers/finding.ts'
import { say, whole } from '../base/answers/sentence.ts'
import type { Craft } from '../craft/index.ts'
import { NotKnown, solveTrade } from '../trades/trade.ts'
import { decisionsOf } from './decisions.ts'
import type { Balance } from './push/balanceTypes.ts'
import { type Decided, decided, undecidedFindings } from './push/decided.ts'
import type { PushSetting } from './push/pushTrade.ts'
import { pushTrade } from './push/pushTrade.ts'
import { handedTo, type Known, type TradeEntry, trades } from './trades.ts'

/** What one look at a craft gives: the same object for the command line, the pages, JSON and the book. */
export interface Look {
  /** all that was found, worst first, each page's headline among them */
  findings: Finding[]
  decisions: Decision[]
  /** absent when an engine has no torque curve yet */
  balance?: Balance
}

/** How it goes, with ranges from few draws. */
export interface FirstLook {
  balance: Balance
  headline: Finding
}

export interface LookOptions extends PushSetting {
  /** told how it goes, with ranges from few draws, while the good ones are worked out */
  first?: (first: FirstLook) => void
}

/** Solves a craft and gathers what every trade has to say. */
export function lookAt(craft: Craft, options: LookOptions = {}, list: readonly TradeEntry[] = trades): Look {
  return finished(craft, leaning(craft, options, list), findingsApart(craft, list))
}

/** The findings of trades that lean on no other, so that they can be worked out on another core. */
export function findingsApart(craft: Craft, list: readonly TradeEntry[] = trades): Finding[] {
  const known: Known = { craft, push: {} }
  return list.flatMap((entry) => (entry.apart ? saidBy(entry, known) : []))
}

/** The same without what `findingsApart` adds. */
export function leaning(
  given: Craft,
  { first, ...rest }: LookOptions = {},
  list: readonly TradeEntry[] = trades,
): Omit<Look, 'decisions'> {
  const made = madeOf(given, rest)
  const { craft } = made
  const options: PushSetting = first ? { ...rest, early: (b) => first(firstOf(craft, b)) } : rest
  let known: Known = { craft, push: options }
  const findings: Finding[] = undecidedFindings(given, made)
  for (const entry of list) {
    if (entry.apart) continue
    findings.push(...saidBy(entry, known))
    // the balance comes first in the list; what comes after may lean on it
    if (entry.trade === pushTrade) known = { ...known, ...balanceOf(craft, options) }
  }
  if (known.balance) knowns.set(known.balance, known)
  return { findings, ...(known.balance ? { balance: known.balance } : {}) }
}

const knowns = new WeakMap<Balance, Known>()

/** What the look that a balance is of knew: trades asked with it again answer at once. Undefined where it came from another thread. */
export const knownBy = (balance: Balance): Known | undefined => knowns.get(balance)

const firstOf = (craft: Craft, balance: Balance): FirstLook => ({
  balance,
  headline: pushTrade.headline!({ inputs: { craft }, answer: balance }, pushTrade.limits),
})

/** The craft with its open choices made, or as it is where an engine has no curve to choose by. */
function madeOf(craft: Craft, options: PushSetting): Decided {
  try {
    return decided(craft, options.engines?.solved)
  } catch (error) {
    if (error instanceof NotKnown) return { craft, filled: [] }
    throw error
  }
}

/** Puts the two halves of a look together. */
export function finished(craft: Craft, part: Omit<Look, 'decisions'>, apart: readonly Finding[]): Look {
  const findings = worstFirst([...part.findings, ...apart])
  return { ...part, findings, decisions: decisionsOf(craft, findings, part.balance) }
}

/** A trade's headline and findings; what it lacks, where it cannot answer at all. */
function saidBy(entry: TradeEntry, known: Known): Finding[] {
  const { trade } = entry
  const handed = handedTo(entry, known)
  if (trade.onlyHanded && handed === undefined) return []
  try {
    const solved = solveTrade(trade, known.craft, handed)
    const headline = trade.headline ? [trade.headline(solved, trade.limits)] : []
    return [...headline, ...trade.judge(solved, trade.limits)]
  } catch (error) {
    if (!(error instanceof NotKnown)) throw error
    return [
      {
        id: `${trade.id}.not-known`,
        question: trade.question,
        says: whole(say`${trade.title}: not known yet, as ${error.message}`),
        standing: 'unknown',
        because: [{ says: 'to be given in the craft file', link: error.path }],
        sources: ['The craft file'],
      },
    ]
  }
}

function balanceOf(craft: Craft, options: PushSetting): { balance?: Balance } {
  try {
    return { balance: solveTrade(pushTrade, craft, options).answer as Balance }
  } catch (error) {
    if (error instanceof NotKnown) return {}
    throw error
  }
}

export const questions: readonly Question[] = [
  'craft',
  'push',
  'breath',
  'float',
  'strength',
  'fuel',
  'make',
  'runs',
]
