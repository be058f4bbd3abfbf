import Table from 'cli-table3'
import { printedAmount } from '../../base/answers/sentence.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import type { Season } from '../../whole/log/season.ts'
import { seasonTable } from '../../whole/log/seasonTable.ts'

/** The season as a table of a terminal. */
export function seasonText(season: Season, units: DisplaySystem): string {
  const { heads, rows } = seasonTable(season)
  const table = new Table({
    head: [...heads],
    style: { head: [], border: [] },
    wordWrap: true,
    colWidths: [5, 12, 9, 9, 14, 11, 12, 44],
  })
  for (const row of rows)
    table.push(row.map((cell) => (typeof cell === 'string' ? cell : printedAmount(cell, units))))
  return `\n${table.toString()}`
}
