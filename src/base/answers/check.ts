/** Where an expected value comes from. */
export type Origin = 'published' | 'exact' | 'derived' | 'memory' | 'common practice' | 'regression'

/** One comparison with the outside world. A row fails when `got` is outside the tolerance. */
export interface CheckRow {
  id: string
  /** trade or physics folder it checks */
  group: string
  quantity: string
  unit: string
  expected: number
  got: number
  /** absolute tolerance, same unit; give one of the two */
  within?: number
  /** relative tolerance, a fraction */
  withinPart?: number
  origin: Origin
  /** author, year, title, table or equation; or how it was derived */
  source: string
}

/** True when the row holds; false for any number that is not finite. */
export function holds(row: CheckRow): boolean {
  const allowed = Math.max(row.within ?? 0, (row.withinPart ?? 0) * Math.abs(row.expected))
  return Number.isFinite(row.got) && Math.abs(row.got - row.expected) <= allowed * (1 + 1e-12)
}
