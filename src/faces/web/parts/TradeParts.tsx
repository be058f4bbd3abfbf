import { useCallback } from 'react'
import type { Amount, Sentence } from '../../../base/answers/sentence.ts'
import { printedAmount } from '../../../base/answers/sentence.ts'
import { displayUnit } from '../../../base/units/format.ts'
import { proseIn } from '../../../base/units/prose.ts'
import type { NumberTable, Solved, Trade, TradeFigure } from '../../../trades/trade.ts'
import { useApp } from '../state/hooks.ts'
import type { UnitSystem } from '../state/store.ts'
import { Figure } from './Figure.tsx'
import type { FoldPart } from './Fold.tsx'
import { NumbersTable } from './NumbersTable.tsx'
import { Says } from './Says.tsx'
import { several } from './several.ts'

interface FigureProps<I, A> {
  figure: TradeFigure<I, A>
  now: Solved<I, A>
  tried?: Solved<I, A> | undefined
  /** which of several things */
  pick?: number
  /** without the words under it, where a finding says the same */
  bare?: boolean
}

/** A figure that a trade declares, now with what is tried. */
export function TradeFigureView<I, A>({ figure, now, tried, pick, bare = false }: FigureProps<I, A>) {
  const system = useApp((s) => s.units)
  const draw = useCallback(
    (width: number) => figure.draw(now, tried, { width, system, ...(pick === undefined ? {} : { pick }) }),
    [figure, now, tried, pick, system],
  )
  return <Figure draw={draw} name={figure.title} caption={bare ? undefined : figure.caption?.(now)} />
}

/** The number tables that a trade declares, in the reader's units. */
export function TradeTables({ tables }: { tables: readonly NumberTable[] }) {
  const units = useApp((s) => s.units)
  return tables.map((table) => <NumbersTable key={table.caption} {...inUnits(table, units)} />)
}

/** A table as it is shown: a unit that a whole column shares stands in its head, so that the cells copy as numbers. */
export function inUnits({ caption, heads, rows }: NumberTable, units: UnitSystem) {
  const columns = heads.map((head, i) => {
    const unit = sharedUnit(
      rows.map((row) => row[i]),
      units,
    )
    return unit ? { head, unit } : { head }
  })
  const cells = rows.map((row) =>
    row.map((cell, i) => {
      if (typeof cell === 'string') return proseIn(cell, units)
      const shown = printedAmount(cell, units)
      const unit = columns[i]?.unit
      if (shown === '—') return '–'
      return unit ? shown.slice(0, shown.length - (unit === '°' ? 1 : unit.length + 1)) : shown
    }),
  )
  return { caption, columns, rows: cells }
}

function sharedUnit(cells: readonly (string | Amount | undefined)[], units: UnitSystem): string | undefined {
  const amounts = cells.filter((c): c is Amount => c !== undefined && typeof c !== 'string')
  const first = amounts[0]
  if (!first || amounts.some((a) => a.kind !== first.kind || a.unit !== first.unit || a.low !== undefined))
    return undefined
  // a force as the scale shows it goes by the unit of a mass
  if (first.unit === 'kgf') return units === 'inch' ? 'lb' : 'kg'
  const unit = displayUnit(first.kind, units, first.unit)
  return unit === '1' ? undefined : unit === 'deg' ? '°' : unit
}

/** Steps to be done one after the other. */
function CardSteps({ steps }: { steps: readonly Sentence[] }) {
  return (
    <ol className="steps">
      {steps.map((step, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: steps keep their order and may be worded alike
        <li key={i}>
          <Says says={step} />
        </li>
      ))}
    </ol>
  )
}

/** Folds for the figures after the first, the lists of steps, and the numbers of a trade. */
export function foldsOf<I, A, S>(
  trade: Trade<I, A, S>,
  now: Solved<I, A>,
  tried: Solved<I, A> | undefined,
  from = 1,
): FoldPart[] {
  const figures = (trade.figures ?? []).slice(from).map((figure): FoldPart => {
    const caption = figure.caption?.(now)
    return {
      id: `${trade.id}-${figure.id}`,
      title: figure.title,
      says: caption,
      children: <TradeFigureView figure={figure} now={now} tried={tried} />,
    }
  })
  const shown = tried ?? now
  const cards = (trade.cards?.(shown) ?? []).map(
    (card): FoldPart => ({
      id: `${trade.id}-${card.id}`,
      title: card.title,
      says: card.says,
      children: <CardSteps steps={card.steps} />,
    }),
  )
  const folds = [...figures, ...cards]
  const tables = trade.numbers?.(now, tried) ?? []
  if (tables.length === 0) return folds
  const rows = tables.reduce((sum, table) => sum + table.rows.length, 0)
  return [
    ...folds,
    {
      id: `${trade.id}-numbers`,
      title: 'The numbers',
      says: several(rows, 'line'),
      children: <TradeTables tables={tables} />,
    },
  ]
}
