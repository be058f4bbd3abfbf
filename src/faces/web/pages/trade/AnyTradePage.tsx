import type { Question } from '../../../../base/answers/finding.ts'
import { trades } from '../../../../whole/trades.ts'
import { EmptyState } from '../../parts/EmptyState.tsx'
import { TradePage } from './TradePage.tsx'

/** The page of a question that has none of its own: read off the list of trades. */
export function AnyTradePage({ id, asks }: { id: Question; asks: string }) {
  const entries = trades.filter((entry) => entry.trade.question === id)
  if (entries.length > 0) return <TradePage question={id} asks={asks} entries={entries} />
  return (
    <EmptyState
      title="There is no such page"
      says="Nothing is worked out for this question yet; pick one of the words above."
    />
  )
}
