/** Pictures of trades that draw one for each of several things: engines, bays of the deck, hot parts. The same that the pages show. */
import type { Question } from '../../base/answers/finding.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { simulatedLine } from '../../trades/engine/torqueLine.ts'
import type { DeckAnswer } from '../../trades/strength/deckBay.ts'
import { sectionFigure } from '../../trades/strength/deckFigures.ts'
import { heatSketch } from '../../trades/strength/heatFigures.ts'
import type { StrengthInputs } from '../../trades/strength/strengthFromCraft.ts'
import { breathView } from '../../whole/breath/breathView.ts'
import { curveFigure } from '../../whole/breath/curveFigures.ts'
import { pipeFigure } from '../../whole/breath/pipeFigure.ts'
import { inchLook, metricLook } from '../../whole/push/shown.ts'
import { type BookSource, workedOn } from '../bookSource.ts'

type Named = readonly [name: string, draw: () => Sheet | undefined]

/** By name; drawn when asked for. */
export function moreFigures(source: BookSource, question: Question): readonly Named[] {
  if (question === 'breath') return breathFigures(source)
  if (question === 'strength') return strengthFigures(source)
  return []
}

function breathFigures({ craft, engines, units }: BookSource): Named[] {
  const look = units === 'inch' ? inchLook : metricLook
  return craft.engines.flatMap((_, i): Named[] => {
    const view = breathView(craft, i)
    const curve = engines?.simulated.get(i)?.curve
    const line = curve ? simulatedLine(view.name, curve, view.reading?.cylinders ?? 1) : view.given
    return [
      ...(line
        ? (['torque', 'power'] as const).map(
            (what): Named => [`breath ${what} ${i + 1}`, () => curveFigure({ what, lines: [line] }, look)],
          )
        : []),
      ...(view.pipe
        ? [[`breath pipe ${i + 1}`, () => pipeFigure(view.pipe!, undefined, look)] as Named]
        : []),
    ]
  })
}

function strengthFigures(source: BookSource): Named[] {
  const own = workedOn(source, 'strength').find(({ trade }) => trade.id === 'strength')
  if (!own) return []
  const { inputs, answer } = own.now as { inputs: StrengthInputs; answer: readonly DeckAnswer[] }
  return [
    ...answer.map(
      (bay, i): Named => [`strength bay ${i + 1}`, () => sectionFigure(bay, metricLook.width, source.units)],
    ),
    ...inputs.hot.map(
      (part, i): Named => [`strength hot ${i + 1}`, () => heatSketch(part, metricLook.width, source.units)],
    ),
  ]
}
