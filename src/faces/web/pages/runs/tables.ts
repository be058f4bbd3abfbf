import { type Piece, printedAmount } from '../../../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../../../base/units/format.ts'
import type { NumberTable } from '../../../../trades/trade.ts'

/** A number and its unit apart, in the reader's units; words have no unit. */
function apart(cell: Piece, units: DisplaySystem): [figure: string, unit: string | undefined] {
  if (typeof cell === 'string') return [cell, undefined]
  const [figure = '', ...unit] = printedAmount(cell, units).split(' ')
  // a spreadsheet takes no spaces between thousands
  return [figure.replaceAll('\u202F', ''), unit.join(' ')]
}

/** A trade's table for the page: a unit that all numbers of a column share stands in its head, once. */
export function shownTable({ caption, heads, rows }: NumberTable, units: DisplaySystem) {
  const cells = rows.map((row) => row.map((cell) => apart(cell, units)))
  const shared = heads.map((_, i) => {
    const found = new Set(cells.flatMap((row) => row[i]?.[1] ?? []))
    return found.size === 1 ? [...found][0] : undefined
  })
  return {
    caption,
    columns: heads.map((head, i) => (shared[i] ? { head, unit: shared[i] } : { head })),
    rows: cells.map((row) =>
      row.map(([figure, unit], i) => (unit && unit !== shared[i] ? `${figure} ${unit}` : figure)),
    ),
  }
}
