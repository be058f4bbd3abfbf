/**
 * The operating table: rotation, thrust and drag over speed; then the hump and the steady top speed.
 * The boat is taken from rest with full throttle, so each speed starts from the rotation of the one
 * before (quasi-steady; the engine answers much faster than the boat gathers way).
 */

import { brent } from '../../base/numerics/roots.ts'
import type { DragPoint } from '../../trades/drag/drag.ts'
import { type CraftModel, dragOf, idleOf, type Propulsion, propel } from './propulsionModel.ts'

export interface TableRow {
  speed: number
  propulsion: Propulsion
  drag: DragPoint
}

export interface Table {
  rows: TableRow[]
  /** steady speed reached from rest, when thrust and drag meet within the model's range */
  top?: TableRow
  /** a second, faster steady speed that the boat cannot reach by itself: it is stuck below the hump */
  beyondHump?: number
  /** index of the row with the least thrust over drag before the top of the pre-planing range */
  humpRow: number
}

export interface TableOptions {
  /** steps over the range, 16 or more */
  steps?: number
  /** highest speed looked at, m/s */
  most?: number
  /** hold the rider there instead of the best place at each speed, m forward of the transom */
  riderAt?: number
}

const rotations = (p: Propulsion) => p.states.map((s) => s.rotation)

/** Table from rest to a little past the top speed. */
export function operatingTable(model: CraftModel, options: TableOptions = {}): Table {
  const steps = options.steps ?? 40
  const most = options.most ?? 18
  const rowAt = (speed: number, from: ArrayLike<number>): TableRow => ({
    speed,
    propulsion: propel(model, speed, from),
    drag: dragOf(model, speed, options.riderAt),
  })
  const rows: TableRow[] = []
  let from: number[] = model.units.map(idleOf)
  const surplus = (r: TableRow) => r.propulsion.thrust - r.drag.drag
  let past = 0
  for (let i = 0; i <= steps; i++) {
    // finer steps at low speed, where the hump is
    const row = rowAt(most * (i / steps) ** 1.3, from)
    rows.push(row)
    from = rotations(row.propulsion)
    // two rows beyond where the thrust runs out at speed are enough for a picture
    if (row.speed > 0.35 * most && surplus(row) < 0 && ++past >= 3) break
  }
  const crossing = (want: 'down' | 'up', start: number) => {
    for (let i = start; i + 1 < rows.length; i++) {
      const a = surplus(rows[i]!)
      const b = surplus(rows[i + 1]!)
      if (want === 'down' ? a > 0 && b <= 0 : a <= 0 && b > 0) return i
    }
    return -1
  }
  const humpRow = worstBefore(rows)
  const down = crossing('down', 0)
  if (down < 0) return { rows, humpRow }
  const top = refineTop(rowAt, rows[down]!, rows[down + 1]!)
  const up = crossing('up', down + 1)
  const next = up < 0 ? -1 : crossing('down', up)
  const table: Table = { rows, humpRow }
  if (top) table.top = top
  if (next >= 0) {
    const faster = refineTop(rowAt, rows[next]!, rows[next + 1]!)
    if (faster) table.beyondHump = faster.speed
  }
  return table
}

/** volumetric-Froude window of the hump, in rows: where thrust is least over drag before planing */
function worstBefore(rows: readonly TableRow[]): number {
  let worst = 1
  let least = Number.POSITIVE_INFINITY
  rows.forEach((r, i) => {
    if (r.drag.regime !== 'hump' || !(r.drag.drag > 0)) return
    const margin = r.propulsion.thrust / r.drag.drag
    if (margin < least) {
      least = margin
      worst = i
    }
  })
  return Math.min(worst, rows.length - 1)
}

const marginOf = (r: TableRow) => r.propulsion.thrust / r.drag.drag

/**
 * The hump itself: the least thrust over drag between the rows beside the worst one, by parabolas through the three lowest
 * (R. P. Brent 1973, ch. 5.1), two looks. Where thrust over drag still falls as the hull comes on the plane, that place is the
 * worst. Never better than the row it starts from.
 */
export function humpOf(model: CraftModel, table: Table, riderAt?: number): TableRow {
  const worst = table.rows[table.humpRow]!
  const before = table.rows[table.humpRow - 1]
  const next = table.rows[table.humpRow + 1]
  if (!before || !next || worst.drag.regime !== 'hump') return worst
  const from = rotations(worst.propulsion)
  const rowAt = (speed: number): TableRow => ({
    speed,
    propulsion: propel(model, speed, from),
    drag: dragOf(model, speed, riderAt),
  })
  const after =
    next.drag.regime === 'hump' ? next : rowAt(lastOnHump(model, worst.speed, next.speed, riderAt))
  if (marginOf(after) < marginOf(worst)) return after
  let three = [before, worst, after]
  for (let look = 0; look < 2; look++) {
    const [a, b, c] = three as [TableRow, TableRow, TableRow]
    const speed = lowestOf(a.speed, marginOf(a), b.speed, marginOf(b), c.speed, marginOf(c))
    if (!(Math.abs(speed - b.speed) > 1e-4 * b.speed)) break
    const row = rowAt(speed)
    if (row.drag.regime !== 'hump' || !Number.isFinite(marginOf(row))) break
    const all = [...three, row].sort((x, y) => x.speed - y.speed)
    const least = all.reduce((best, r, i) => (marginOf(r) < marginOf(all[best]!) ? i : best), 0)
    if (least === 0 || least === all.length - 1) break
    three = all.slice(least - 1, least + 2)
  }
  return three[1]!
}

/** Highest speed, to 1/256 of the gap, at which the hull is still on the hump: it is at `on` and no more at `off`, m/s. */
function lastOnHump(model: CraftModel, on: number, off: number, riderAt?: number): number {
  let low = on
  let high = off
  for (let i = 0; i < 8; i++) {
    const middle = (low + high) / 2
    if (dragOf(model, middle, riderAt).regime === 'hump') low = middle
    else high = middle
  }
  return low
}

/** Where the parabola through three points is lowest, between the outer two; NaN where it is not hollow. */
function lowestOf(a: number, fa: number, b: number, fb: number, c: number, fc: number): number {
  const left = (fb - fa) / (b - a)
  const right = (fc - fb) / (c - b)
  const hollow = (right - left) / (c - a)
  if (!(hollow > 0)) return Number.NaN
  return Math.min(c, Math.max(a, 0.5 * (a + b) - left / (2 * hollow)))
}

function refineTop(
  rowAt: (speed: number, from: ArrayLike<number>) => TableRow,
  before: TableRow,
  after: TableRow,
): TableRow | undefined {
  const from = rotations(before.propulsion)
  const root = brent(
    (v) => {
      const r = rowAt(v, from)
      return r.propulsion.thrust - r.drag.drag
    },
    before.speed,
    after.speed,
    { tolerance: 1e-6 },
  )
  return root.converged ? rowAt(root.value, from) : undefined
}
