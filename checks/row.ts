import type { CheckRow } from '../src/answers/check.ts'

/** A row before its group is known. */
export type Row = Omit<CheckRow, 'group'>

/** A row with a relative tolerance. */
export function row(
  id: string,
  quantity: string,
  unit: string,
  expected: number,
  got: number,
  withinPart: number,
  origin: CheckRow['origin'],
  source: string,
): Row {
  return { id, quantity, unit, expected, got, withinPart, origin, source }
}
