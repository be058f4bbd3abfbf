/** Findings of printed parts: each of a group rests on the same sources. */
import { inMm } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'

/** Makes findings whose sources are given once; ids are without the trade's name. */
export const findingsBy =
  (sources: string[]) =>
  (id: string, f: Omit<Finding, 'id' | 'question' | 'sources'>): Finding => ({
    id: `prints.${id}`,
    question: 'make',
    ...f,
    sources,
  })

/** A length as a caliper reads it. */
export const fine = (x: number) => inMm(x, 0.01)
