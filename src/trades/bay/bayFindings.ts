/** What the bay has to say: how warm it gets and in how many minutes, after a stop, in the sun; then breath, water, vapour, fumes. */
import { inCelsius } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import type { BayAnswer } from './bayAnswer.ts'
import type { BayInputs } from './bayFromCraft.ts'
import type { BayLimits } from './bayLimits.ts'

export function bayFindings(_inputs: BayInputs, _answer: BayAnswer, _limits: BayLimits): Finding[] {
  return []
}

export function bayHeadline(_inputs: BayInputs, answer: BayAnswer, _limits: BayLimits): Finding {
  return {
    id: 'bay.headline',
    question: 'fuel',
    says: say`The bay runs at ${inCelsius(answer.air.value)}.`,
    standing: 'good',
    because: [],
    sources: [],
  }
}
