/** Frames where foam cannot go, and holes cut for hatches. */
import { inCount, inKg, inMm, inMm2, inPercent, inTimes } from '../../base/answers/amounts.ts'
import type { Finding } from '../../base/answers/finding.ts'
import { say } from '../../base/answers/sentence.ts'
import type { DeckAnswer } from './deckBay.ts'
import { frameAcross, frameOf } from './deckFrames.ts'
import { type HatchNeeds, hatchNeeds } from './hatchHole.ts'
import type { StrengthInputs } from './strengthFromCraft.ts'
import type { StrengthLimits } from './strengthLimits.ts'
import { plates } from './strengthSay.ts'

const height = 0.03

/** What a frame across does for each bay that lies on no foam. */
export function frames(
  answers: readonly DeckAnswer[],
  inputs: StrengthInputs,
  limits: StrengthLimits,
): Finding[] {
  return answers.flatMap((a, i): Finding[] => {
    const f = frameAcross(a, inputs.rider, frameOf(height))
    if (!f) return []
    const does =
      f.count > 0
        ? say`shares a foot among its ${inCount(f.count)} stringers, ${inPercent(f.share)} on the most loaded`
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
        says: say`Where foam cannot go under ${a.bay.name}, a ${inMm(height)} hat across its middle ${does}; it then bears ${inTimes(f.margin)} times what is asked (${inTimes(a.margin)} without) and gives ${inMm(f.deflection, 0.1)} underfoot (${inMm(a.deflection, 0.1)} without); ${weakest} governs.`,
        ...(f.margin < limits.frame.value
          ? {
              act: say`more sheet than ${inMm(a.bay.t, 0.1)} under ${a.bay.name}: a frame alone is not enough`,
            }
          : {}),
        harm: 'comfort',
        twin: 'deck.frame',
        value: f.margin,
        unit: '1',
        standing: f.margin >= limits.frame.value ? 'good' : 'watch',
        because: [
          { says: say`the frame weighs ${inKg(f.mass, 0.01)}` },
          { says: say`its own margin is ${inTimes(f.frame, 0.1)}` },
          ...(f.count > 0
            ? [
                { says: say`its help reaches ${inMm(f.reach)} to each side`, link: `deck.bays.${i}.spacing` },
                {
                  says: 'it lies under the stringers, so the sheet between them is as before',
                  link: `deck.bays.${i}.skin`,
                },
              ]
            : [
                {
                  says: say`the sheet of the halved field bears ${inTimes(f.sheet)}: under a heel a thin sheet hangs on its thickness more than on its span`,
                  link: `deck.bays.${i}.skin`,
                },
              ]),
        ],
        sources: ['M. Hetényi, Beams on Elastic Foundation (1946)', plates],
      },
    ]
  })
}

/** What goes back round the hole under a lid; undefined for a bay whose name says that it is none. */
export function hatchOf(bay: {
  name: string
  length: number
  width: number
  t: number
}): HatchNeeds | undefined {
  if (!/hatch|lid/i.test(bay.name)) return undefined
  return hatchNeeds({
    length: bay.length,
    width: bay.width,
    t: bay.t,
    cornerRadius: 0.125 * Math.min(bay.length, bay.width),
    cut: 0,
    stringerInertia: 0,
  })
}

/** The hole under each lid: what goes back round it, and whether the lid stays on its seal under a foot. */
export function hatches(answers: readonly DeckAnswer[], limits: StrengthLimits): Finding[] {
  const sealTakes = limits.sealTakes.value
  return answers.flatMap((a, i): Finding[] => {
    const { bay } = a
    const needs = hatchOf(bay)
    if (!needs) return []
    const lifts = a.deflection > sealTakes
    return [
      {
        id: `deck.hatch.${i}`,
        question: 'strength',
        says: say`${bay.name} gives ${inMm(a.deflection, 0.1)} underfoot${lifts ? ', more than a soft seal takes up' : ', which a soft seal takes up'}; the hole under it, ${inMm(bay.length)} by ${inMm(bay.width)}, wants ${inMm2(needs.doubler)} put back on each side, a doubler of ${inMm(bay.t, 0.1)} sheet ${inMm(needs.doubler / bay.t)} wide, and corners rounded to ${inMm(needs.radiusFrom)} to ${inMm(needs.radiusTo)}.`,
        ...(lifts
          ? {
              act: say`a frame under the lid, or sheet above ${inMm(bay.t, 0.1)}: it may give ${inMm(sealTakes, 0.1)}`,
            }
          : {}),
        harm: 'will stop the run',
        twin: 'deck.hatch',
        value: a.deflection,
        unit: 'm',
        standing: lifts ? 'watch' : 'good',
        because: [
          {
            says: say`a square corner has about 3 times the stress of plain sheet, one of ${inMm(needs.radiusFrom)} about 1.6`,
          },
          {
            says: 'stringers that the hole cuts go back as coaming: their second moment shared by its two sides',
          },
          {
            says: say`a soft seal takes up about ${inMm(sealTakes, 0.1)} (judgement, no source)`,
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
