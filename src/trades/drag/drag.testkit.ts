/** Drag's findings in words, for tests. */
import { inWords, type PrintedFinding } from '../../base/answers/printFinding.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import type { Craft } from '../../craft/index.ts'
import { solveTrade } from '../trade.ts'
import { type DragLimits, dragLimits } from './dragLimits.ts'
import { dragTrade } from './dragTrade.ts'

/** What drag has to say of a craft whose top speed, m/s, is known or not. */
export function dragSaid(
  craft: Craft,
  top?: number,
  { limits = dragLimits, system }: { limits?: DragLimits; system?: DisplaySystem } = {},
): PrintedFinding[] {
  return inWords(dragTrade.judge(solveTrade(dragTrade, craft, top), limits), system)
}
