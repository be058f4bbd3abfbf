import type { Finding } from './finding.ts'
import type { LimitTable } from './limit.ts'

/** The same table with one limit moved. */
export function withLimit<K extends string>(table: LimitTable<K>, name: K, value: number): LimitTable<K> {
  return { ...table, [name]: { ...table[name], value } }
}

/** what a verdict is: which findings there are, how each stands, and whether it asks for an act */
export const verdictOf = (findings: readonly Finding[]): string =>
  JSON.stringify(findings.map((f) => [f.id, f.standing, f.act === undefined]))

/** Limits that can be moved, to nothing or a thousandfold, without any of the judgements saying anything else. */
export function deafLimits<K extends string>(
  limits: LimitTable<K>,
  judgements: readonly ((limits: LimitTable<K>) => Finding[])[],
): string[] {
  const before = judgements.map((judge) => verdictOf(judge(limits)))
  return (Object.keys(limits) as K[]).filter((name) => {
    const { value } = limits[name]
    return ![0, 0.1, 0.5, 0.9, 1.1, 2, 10, 1e3].some((k) => {
      const moved = withLimit(limits, name, value === 0 ? k - 1 : k * value)
      return judgements.some((judge, i) => verdictOf(judge(moved)) !== before[i])
    })
  })
}
