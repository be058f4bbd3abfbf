/** Frames where foam cannot go, and holes cut for hatches. */
import type { Finding } from '../../base/answers/finding.ts'
import type { DeckAnswer } from './deckBay.ts'
import { frameAcross, frameOf } from './deckFrames.ts'
import { hatchNeeds } from './hatchHole.ts'
import type { StrengthInputs } from './strengthFromCraft.ts'
import { mm, plates, wholeMm } from './strengthSay.ts'

const height = 0.03

/** What a frame across does for each bay that lies on no foam. */
export function frames(answers: readonly DeckAnswer[], inputs: StrengthInputs): Finding[] {
  return answers.flatMap((a, i): Finding[] => {
    const f = frameAcross(a, inputs.rider, frameOf(height))
    if (!f) return []
    const does =
      f.count > 0
        ? `shares a foot among its ${f.count} stringers, ${Math.round(100 * f.share)} % on the most loaded`
        : 'halves the field and carries a foot to the sides'
    const weakest =
      f.margin === f.sheet
        ? f.count > 0
          ? 'the sheet between the stringers'
          : 'the sheet'
        : f.margin === f.frame
          ? 'the frame'
          : 'the stringers'
    return [
      {
        id: `deck.frame.${i}`,
        question: 'strength',
        says: `Where foam cannot go under ${a.bay.name}, a ${wholeMm(height)} hat across its middle ${does}; it then bears ${f.margin.toFixed(2)} times what is asked (${a.margin.toFixed(2)} without) and gives ${mm(f.deflection)} underfoot (${mm(a.deflection)} without); ${weakest} governs.`,
        value: f.margin,
        unit: '1',
        standing: f.margin >= 1 ? 'good' : 'watch',
        because: [
          { says: `the frame weighs ${f.mass.toFixed(2)} kg` },
          { says: `its own margin is ${f.frame.toFixed(1)}` },
          ...(f.count > 0
            ? [
                { says: `its help reaches ${wholeMm(f.reach)} to each side`, link: `deck.bays.${i}.spacing` },
                {
                  says: 'it lies under the stringers, so the sheet between them is as before',
                  link: `deck.bays.${i}.skin`,
                },
              ]
            : [
                {
                  says: `the sheet of the halved field bears ${f.sheet.toFixed(2)}: under a heel a thin sheet’s stress hangs on its thickness far more than on its span`,
                  link: `deck.bays.${i}.skin`,
                },
              ]),
        ],
        sources: ['M. Hetényi, Beams on Elastic Foundation (1946)', plates],
      },
    ]
  })
}

/** what a soft seal takes up before it lets water by; judgement, no source */
const sealTakes = 2e-3

/** The hole under each lid: what goes back round it, and whether the lid stays on its seal under a foot. */
export function hatches(answers: readonly DeckAnswer[]): Finding[] {
  return answers.flatMap((a, i): Finding[] => {
    const { bay } = a
    if (!/hatch|lid/i.test(bay.name)) return []
    const needs = hatchNeeds({
      length: bay.length,
      width: bay.width,
      t: bay.t,
      cornerRadius: 0.125 * Math.min(bay.length, bay.width),
      cut: 0,
      stringerInertia: 0,
    })
    const lifts = a.deflection > sealTakes
    return [
      {
        id: `deck.hatch.${i}`,
        question: 'strength',
        says: `The hole under ${bay.name}, ${wholeMm(bay.length)} by ${wholeMm(bay.width)}, wants ${Math.round(1e6 * needs.doubler)} mm² put back on each side, a doubler of ${mm(bay.t)} sheet ${wholeMm(needs.doubler / bay.t)} wide, and corners rounded to ${wholeMm(needs.radiusFrom)} to ${wholeMm(needs.radiusTo)}; the lid gives ${mm(a.deflection)} underfoot${lifts ? ', more than a soft seal takes up' : ', which a soft seal takes up'}.`,
        value: a.deflection,
        unit: 'm',
        standing: lifts ? 'watch' : 'good',
        because: [
          {
            says: `a square corner has about 3 times the stress of plain sheet, one of ${wholeMm(needs.radiusFrom)} about 1.6`,
          },
          {
            says: 'stringers that the hole cuts go back as coaming: their second moment shared by its two sides',
          },
          {
            says: `a soft seal takes up about ${mm(sealTakes)} (judgement, no source)`,
            link: `deck.bays.${i}.skin`,
          },
        ],
        sources: [
          'Cut area and stiffness put back: practice of small craft and aircraft structures (Bruhn), from memory',
          plates,
        ],
      },
    ]
  })
}
