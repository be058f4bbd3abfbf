/**
 * Limits of judgement. A trade's judgement reads every one of its limits from one table, so that a test can move each and see a
 * verdict change, and a reader can see them all at once.
 */

export interface Limit {
  readonly value: number
  /** name of the SI unit, "1" for a ratio */
  readonly unit: string
  /** what happens on which side of it */
  readonly says: string
  /** author, year, title, table; or "common practice, no source", "judgement, no source" */
  readonly source: string
}

export type LimitTable<K extends string = string> = Readonly<Record<K, Limit>>

/** One limit, so that a table of them reads like one. */
export const limit = (value: number, unit: string, says: string, source: string): Limit => ({
  value,
  unit,
  says,
  source,
})
