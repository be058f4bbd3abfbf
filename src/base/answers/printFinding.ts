import type { DisplaySystem } from '../units/format.ts'
import { siUnit } from '../units/kinds.ts'
import type { Because, Finding } from './finding.ts'
import { type Amount, amountsIn, printed, type Sentence } from './sentence.ts'

/** A number of a sentence as plain data: SI, with the name of its unit. */
export interface PlainAmount {
  value: number
  unit: string
  low?: number
  high?: number
}

/** A finding in words, its numbers beside them: what JSON and tests see. */
export interface PrintedFinding extends Omit<Finding, 'says' | 'because'> {
  says: string
  because: (Omit<Because, 'says'> & { says: string })[]
  /** the numbers the sentence carries, in order, SI */
  amounts?: PlainAmount[]
}

function plainAmount({ value, kind, low, high }: Amount): PlainAmount {
  return {
    value,
    unit: siUnit(kind),
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
  }
}

/** The numbers of a sentence as plain data. */
export const plainAmounts = (sentence: Sentence): PlainAmount[] => amountsIn(sentence).map(plainAmount)

/** A finding with its sentences in words, in the reader's units. */
export function printedFinding(finding: Finding, system: DisplaySystem = 'metric'): PrintedFinding {
  const amounts = plainAmounts(finding.says)
  return {
    ...finding,
    says: printed(finding.says, system),
    because: finding.because.map((b) => ({ ...b, says: printed(b.says, system) })),
    ...(amounts.length > 0 ? { amounts } : {}),
  }
}

/** Findings in words. */
export const inWords = (findings: readonly Finding[], system: DisplaySystem = 'metric'): PrintedFinding[] =>
  findings.map((f) => printedFinding(f, system))
