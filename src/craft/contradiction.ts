import { formatQuantity } from '../base/units/format.ts'
import type { Quantity } from './craftTypes.ts'

/** Two values of a craft that cannot both be right. */
export interface Contradiction {
  path: string
  found: string
  expected: string
  severity: 'error' | 'warning'
}

/** A value as the file has it, else to four figures in a unit. */
export const shown = (q: Quantity, unit: string): string => q.text ?? formatQuantity(q.value, q.kind, unit, 4)

/** A value that is wrong when the first is true, and what was expected in its place. */
export type Test = readonly [
  wrong: boolean,
  q: Quantity,
  unit: string,
  expected: string,
  severity?: 'warning',
]

export const failing = (tests: readonly Test[]): Contradiction[] =>
  tests
    .filter(([wrong]) => wrong)
    .map(([, q, unit, expected, severity]) => ({
      path: q.path,
      found: shown(q, unit),
      expected,
      severity: severity ?? 'error',
    }))
