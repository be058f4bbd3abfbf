import { useState } from 'react'
import { Button } from 'react-aria-components/Button'

interface Column {
  head: string
  /** shown under the head; empty for words and plain numbers */
  unit?: string
}

interface Props {
  caption: string
  columns: readonly Column[]
  /** cells as shown; numbers already in the column's unit and rounded */
  rows: readonly (readonly (string | number)[])[]
}

/** numbers stand to the right, whether rounded to a text already or not */
const isNumber = (cell: string | number) => typeof cell === 'number' || /^[+−-]?[\d.]+$|^–$/.test(cell)
/** a spreadsheet takes a hyphen for a minus, not the sign used in print, and must not take words for a formula */
const copied = (cell: string | number) => {
  const text = shown(cell)
    .replace(/[\t\r\n]+/g, ' ')
    .replace(/^−(?=\d)/, '-')
  return /^[=+@-]/.test(text) && !/^[-+]?[\d.]+$/.test(text) ? `'${text}` : text
}
const shown = (cell: string | number) =>
  typeof cell === 'number' && !Number.isFinite(cell) ? '–' : String(cell)

/** The numbers as a table; the button copies it with tabs between the cells, as spreadsheets take it. */
export function NumbersTable({ caption, columns, rows }: Props) {
  const [said, setSaid] = useState('')
  const copy = async () => {
    const heads = columns.map((c) => (c.unit ? `${c.head} (${c.unit})` : c.head))
    const text = [heads, ...rows.map((row) => row.map(copied))].map((line) => line.join('\t')).join('\n')
    try {
      await navigator.clipboard.writeText(text)
      setSaid('Copied.')
    } catch {
      setSaid('The browser refused to copy; select the table instead.')
    }
  }
  return (
    <section className="numbers">
      <div className="row">
        <h2>{caption}</h2>
        <Button className="plain" onPress={copy}>
          Copy table
        </Button>
        <span role="status" className="quiet">
          {said}
        </span>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a table wider than the window must be scrollable by keyboard */}
      <section className="scroll" tabIndex={0} aria-label={caption}>
        <table>
          <thead>
            <tr>
              {columns.map((column, i) => (
                <th
                  scope="col"
                  key={column.head}
                  data-number={rows.some((row) => isNumber(row[i] ?? '')) || undefined}
                >
                  {column.head}
                  {column.unit && <small>{column.unit}</small>}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: rows may be equal and keep their order
              <tr key={i}>
                {row.map((cell, i) =>
                  i === 0 ? (
                    <th scope="row" key={columns[i]?.head}>
                      {shown(cell)}
                    </th>
                  ) : (
                    <td key={columns[i]?.head} data-number={isNumber(cell) || undefined}>
                      {shown(cell)}
                    </td>
                  ),
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  )
}
