import type { Finding, Question } from '../base/answers/finding.ts'
import { worstFirst } from '../base/answers/finding.ts'
import type { Craft } from '../craft/index.ts'
import { hullDragFindings } from '../trades/drag/dragFindings.ts'
import { floatFindings } from '../trades/float/floatFindings.ts'
import { jetFindings, situationOf } from '../trades/jet/jetFindings.ts'
import { strengthFindings } from '../trades/strength/deckFindings.ts'
import { breathFindings } from './breath/breathFindings.ts'
import type { EngineAnswers } from './breath/engineAnswers.ts'
import type { Balance } from './push/balanceTypes.ts'
import { NotBalanced } from './push/craftModel.ts'
import { pushFindings } from './push/pushFindings.ts'
import { type BalanceOptions, solveBalance } from './push/solveBalance.ts'

/** What one look at a craft gives. */
export interface Look {
  findings: Finding[]
  /** absent when an engine has no torque curve yet */
  balance?: Balance
}

export interface LookOptions extends BalanceOptions {
  /** engines worked out by simulation: their curves go into the balance */
  engines?: EngineAnswers
}

type Contributor = (
  craft: Craft,
  balance: Balance | undefined,
  engines: EngineAnswers | undefined,
) => Finding[]

/** Every trade's findings; a new trade adds one line here. */
const contributors: readonly Contributor[] = [
  (craft, balance) => hullDragFindings(craft, balance?.top?.speed),
  (craft, b) => jetFindings(craft, b && situationOf(b)),
  breathFindings,
]

/** Findings that do not lean on the balance, so that they can be worked out beside it. */
const apart: readonly ((craft: Craft) => Finding[])[] = [(craft) => floatFindings(craft), strengthFindings]

export function findingsApart(craft: Craft): Finding[] {
  return apart.flatMap((contribute) => contribute(craft))
}

/** Solves a craft and gathers every trade's findings, worst first. */
export function lookAt(craft: Craft, options: LookOptions = {}): Look {
  const look = lookWithout(craft, options)
  return { ...look, findings: worstFirst([...look.findings, ...findingsApart(craft)]) }
}

/** The same without what `findingsApart` adds, for a caller that works that out beside it. */
export function lookWithout(craft: Craft, { engines, ...options }: LookOptions = {}): Look {
  const findings: Finding[] = []
  let balance: Balance | undefined
  try {
    balance = solveBalance(craft, engines ? { solved: engines.solved, ...options } : options)
    findings.push(...pushFindings(craft, balance))
  } catch (error) {
    if (!(error instanceof NotBalanced)) throw error
    findings.push(notBalanced(error))
  }
  for (const contribute of contributors) findings.push(...contribute(craft, balance, engines))
  const look: Look = { findings: worstFirst(findings) }
  if (balance) look.balance = balance
  return look
}

function notBalanced(error: NotBalanced): Finding {
  return {
    id: 'push.no-curve',
    question: 'push',
    says: `How it will go is not known: ${error.message}.`,
    standing: 'unknown',
    because: [{ says: error.message, link: error.path }],
    sources: ['The craft file'],
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
