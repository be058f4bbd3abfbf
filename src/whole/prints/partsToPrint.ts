/** The parts to print for a craft, with what other trades found of them: the roots of the blades are judged where the jet is solved. */
import type { Finding } from '../../base/answers/finding.ts'
import type { MadePart } from '../../base/answers/madePart.ts'
import type { Craft } from '../../craft/index.ts'
import { printedParts } from '../../trades/prints/printedParts.ts'
import { printsTrade } from '../../trades/prints/printsTrade.ts'
import { solveTrade } from '../../trades/trade.ts'

/** `findings`: those of a look at the craft. */
export function partsToPrint(craft: Craft, findings: readonly Finding[]): MadePart[] {
  const root = findings.find((f) => f.id === 'jet.root')
  return printedParts(craft, solveTrade(printsTrade, craft, undefined), root ? { root } : {})
}
