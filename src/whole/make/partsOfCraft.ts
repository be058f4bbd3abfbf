/** Every part that the trades would have made for a craft, in the order of the trades. */
import type { Finding } from '../../base/answers/finding.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import type { Craft } from '../../craft/index.ts'
import { NotKnown, solveTrade } from '../../trades/trade.ts'
import { partsToPrint } from '../prints/partsToPrint.ts'
import { type TradeEntry, trades } from '../trades.ts'

/** Parts of a craft; a trade that lacks something of it has none. Only trades that lean on no other are asked. */
export function partsOfCraft(craft: Craft, list: readonly TradeEntry[] = trades): readonly MadePart[] {
  return list.flatMap(({ trade, apart, setting }) => {
    if (!trade.parts || !apart) return []
    try {
      return trade.parts(solveTrade(trade, craft, setting?.({ craft, push: {} })))
    } catch (error) {
      if (error instanceof NotKnown) return []
      throw error
    }
  })
}

/** All parts to make: those of sheet, then those to print. `findings`: those of a look at the craft. */
export const allParts = (craft: Craft, findings: readonly Finding[]): readonly MadePart[] => [
  ...partsOfCraft(craft),
  ...partsToPrint(craft, findings),
]

/** Parts that count in sums: not those made in place of others. */
export const counted = (parts: readonly MadePart[]): readonly MadePart[] =>
  parts.filter((p) => parts.length === 1 || !p.instead)

/** Mass of parts, kg. */
export const massOf = (parts: readonly MadePart[]): number =>
  counted(parts).reduce((sum, p) => sum + (p.mass ?? 0), 0)

/** Hands-on time of parts, s, least and most. */
export function handsOn(parts: readonly MadePart[]): { low: number; high: number } {
  const sum = { low: 0, high: 0 }
  for (const { work, low, high } of counted(parts).flatMap((p) => p.hours)) {
    if (work === 'print') continue
    sum.low += low
    sum.high += high
  }
  return sum
}

export type PartState = 'not made' | 'made' | 'changed since made'

/** How a part stands to what the log says was made: by the newest entry of it. */
export function stateOf(
  part: Pick<MadePart, 'id' | 'madeFrom'>,
  made: readonly { part?: string | undefined; madeFrom?: string | undefined; at: string }[],
): PartState {
  const own = made.filter((m) => m.part === part.id)
  // of one day the later entry counts
  const newest = own.reduce<(typeof own)[number] | undefined>((a, b) => (a && a.at > b.at ? a : b), undefined)
  if (!newest) return 'not made'
  return newest.madeFrom === part.madeFrom ? 'made' : 'changed since made'
}
