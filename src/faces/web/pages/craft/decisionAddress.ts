import type { Decision } from '../../../../base/answers/decision.ts'
import type { Finding } from '../../../../base/answers/finding.ts'
import { leadsTo } from '../../../../whole/decisions.ts'
import { addressOf } from '../../frame/pageRoute.ts'

/** Where a decision leads, as an address of this app. */
export function addressOfDecision(decision: Decision, findings: readonly Finding[]): string {
  const { question, to } = leadsTo(decision, findings)
  return addressOf(question, to)
}
