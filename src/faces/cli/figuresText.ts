import type { DisplaySystem } from '../../base/units/format.ts'
import type { Craft } from '../../craft/index.ts'
import { terminalOf, widthFor } from '../../drawing/terminal.ts'
import { craftPicture } from '../../whole/picture/craftPicture.ts'
import type { Balance } from '../../whole/push/balanceTypes.ts'
import { matchingFigure } from '../../whole/push/matchingFigure.ts'
import { forcesFigure } from '../../whole/push/pushFigures.ts'
import { inchLook, type Look, metricLook } from '../../whole/push/shown.ts'

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
