import type { DisplaySystem } from '../../base/units/format.ts'
import type { Craft } from '../../craft/index.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { terminalOf, widthFor } from '../../drawing/terminal.ts'
import { craftPicture } from '../../whole/picture/craftPicture.ts'
import type { Balance } from '../../whole/push/balanceTypes.ts'
import { choiceFigure, pitchFigure } from '../../whole/push/designFigures.ts'
import type { DesignAnswer } from '../../whole/push/designTypes.ts'
import { matchingFigure } from '../../whole/push/matchingFigure.ts'
import { forcesFigure } from '../../whole/push/pushFigures.ts'
import { inchLook, type Look, metricLook } from '../../whole/push/shown.ts'

/** The craft, engines against impeller and thrust against drag, drawn with letters for a terminal so many columns wide. */
export const figuresText = (
  craft: Craft,
  balance: Balance | undefined,
  units: DisplaySystem,
  columns: number,
  colour: boolean,
): string =>
  lettered(units, columns, colour, (look) => [
    craftPicture(craft, look),
    ...(balance ? [matchingFigure(balance, undefined, look), forcesFigure(balance, undefined, look)] : []),
  ])

/** Impellers and nozzles that were compared: pull against top speed, and both over the pitch. */
export const choiceText = (
  answer: DesignAnswer,
  units: DisplaySystem,
  columns: number,
  colour: boolean,
): string =>
  lettered(units, columns, colour, (look) => [
    choiceFigure(answer, look),
    pitchFigure(answer, 'pull', look),
    pitchFigure(answer, 'topSpeed', look),
  ])

function lettered(
  units: DisplaySystem,
  columns: number,
  colour: boolean,
  draw: (look: Look) => Sheet[],
): string {
  // narrower than this nothing can be told apart, wider than this figures grow taller than a screen
  const width = widthFor(Math.min(120, Math.max(60, columns)))
  return draw({ ...(units === 'inch' ? inchLook : metricLook), width })
    .map((sheet) => ['', `  ${sheet.title}`, ...terminalOf(sheet, { colour })].join('\n'))
    .join('\n')
}

/** Colour on a terminal whose reader has not asked for none. */
export const inColour = (): boolean => process.stdout.isTTY === true && process.env['NO_COLOR'] === undefined
