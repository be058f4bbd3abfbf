import type { CheckRow, Origin } from '../src/base/answers/check.ts'

/** A row before its group is known. */
export type Row = Omit<CheckRow, 'group'>

/** Puts a row into a group. */
export const rowOf =
  (group: string) =>
  (row: Row): CheckRow => ({ group, ...row })

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

/** One row with a tolerance in its own unit. */
export function near(
  id: string,
  quantity: string,
  unit: string,
  expected: number,
  got: number,
  within: number,
  origin: Origin,
  source: string,
): Row {
  return { id, quantity, unit, expected, got, within, origin, source }
}

/** quantity, unit, got, expected */
export type Line = readonly [string, string, number, number]

/** Makes the rows of a group that share an id, told apart by a letter, with their origin, source and tolerance. */
export const letteredRows =
  (group: string) =>
  (
    id: string,
    lines: readonly Line[],
    origin: Origin,
    source: string,
    tolerance: { within?: number; withinPart?: number },
  ): CheckRow[] =>
    lines.map(([quantity, unit, got, expected], i) => ({
      id: lines.length === 1 ? id : `${id}${String.fromCharCode(97 + i)}`,
      group,
      quantity,
      unit,
      got,
      expected,
      origin,
      source,
      ...tolerance,
    }))
