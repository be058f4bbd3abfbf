import type { CheckRow, Origin } from '../src/answers/check.ts'

/** A row before its group is known. */
export type Row = Omit<CheckRow, 'group'>

/** id, quantity, unit, expected, got */
export type Entry = readonly [string, string, string, number, number]

/** Rows that share their source, origin and relative tolerance. */
export function rows(origin: Origin, source: string, withinPart: number, entries: readonly Entry[]): Row[] {
  return entries.map(([id, quantity, unit, expected, got]) => ({
    id,
    quantity,
    unit,
    expected,
    got,
    withinPart,
    origin,
    source,
  }))
}

/** One row with a relative tolerance. */
export function row(
  id: string,
  quantity: string,
  unit: string,
  expected: number,
  got: number,
  withinPart: number,
  origin: Origin,
  source: string,
): Row {
  return { id, quantity, unit, expected, got, withinPart, origin, source }
}
