import { craftPicture } from '../balance/craftPicture.ts'
import { forcesFigure } from '../balance/figures.ts'
import { matchingFigure } from '../balance/matchingFigure.ts'
import { inchLook, type Look, metricLook } from '../balance/shown.ts'
import type { Balance } from '../balance/types.ts'
import type { Craft } from '../craft/index.ts'
import { terminalOf, widthFor } from '../drawing/terminal.ts'
import type { DisplaySystem } from '../units/format.ts'

/** The craft, engines against impeller and thrust against drag, drawn with letters for a terminal so many columns wide. */
export function figuresText(
  craft: Craft,
  balance: Balance | undefined,
  units: DisplaySystem,
  columns: number,
  colour: boolean,
): string {
  // narrower than this nothing can be told apart, wider than this figures grow taller than a screen
  const width = widthFor(Math.min(120, Math.max(60, columns)))
  const look: Look = { ...(units === 'inch' ? inchLook : metricLook), width }
  const sheets = [
    craftPicture(craft, look),
    ...(balance ? [matchingFigure(balance, undefined, look), forcesFigure(balance, undefined, look)] : []),
  ]
  return sheets
    .map((sheet) => ['', `  ${sheet.title}`, ...terminalOf(sheet, { colour })].join('\n'))
    .join('\n')
}
