import { useCallback, useMemo, useState } from 'react'
import { inCount, inKg, inMm, inPercent, inTimes } from '../../../../base/answers/amounts.ts'
import { type Sentence, say } from '../../../../base/answers/sentence.ts'
import type { DeckAnswer } from '../../../../trades/strength/deckBay.ts'
import { type FrameAcross, frameAcross, frameOf } from '../../../../trades/strength/deckFrames.ts'
import { frameFigure } from '../../../../trades/strength/frameFigure.ts'
import { Figure } from '../../parts/Figure.tsx'
import { QuantityField } from '../../parts/QuantityField.tsx'
import { Says } from '../../parts/Says.tsx'
import { shownUnit } from '../../state/craftFile.ts'
import { useApp } from '../../state/hooks.ts'
import type { Deck } from './useDeck.ts'

/** m, of a frame to begin with */
const usual = 0.03

/** What a usual frame would do, in a few words. */
export function frameSays(deck: Deck, bay: number): Sentence {
  const answer = deck.answers[bay]!
  const frame = frameAcross(answer, deck.inputs.rider, frameOf(usual))
  return frame
    ? say`bears ${inTimes(frame.margin)} times what is asked with it, ${inTimes(answer.margin)} without`
    : 'none is wanted: foam spreads a foot by itself'
}

/** Where foam cannot go: what a frame across the bay does for it. */
export function Frame({ deck, bay }: { deck: Deck; bay: number }) {
  const answer = deck.answers[bay]!
  const units = useApp((s) => s.units)
  const { rider } = deck.inputs
  const [height, setHeight] = useState(usual)
  const frame = useMemo(() => frameAcross(answer, rider, frameOf(height)), [answer, rider, height])
  const draw = useCallback(
    (width: number) => frameFigure(answer.bay, frame!, height, Math.min(width, 200)),
    [answer, frame, height],
  )
  const { name } = answer.bay
  return (
    <section className="frame">
      {frame ? (
        <>
          <p>
            Over an engine, a tank or a hot pipe nothing may be filled in under the sheet; a folded frame then
            spreads the load.
          </p>
          <div className="fields">
            <QuantityField
              label="Frame height"
              kind="length"
              unit={shownUnit('length', units, 'mm')}
              value={height}
              min={0.01}
              max={0.15}
              onCommit={(v) => {
                setHeight(v)
                return undefined
              }}
            />
          </div>
          <Figure
            draw={draw}
            name="frame across"
            caption="Red: the part of a foot’s load that goes down at each place."
          />
          <p role="status">
            <Says says={withFrame(frame, answer)} />
          </p>
        </>
      ) : (
        <p>
          {name} lies on foam or is a sandwich: both spread a foot by themselves. Pick a bay that spans alone
          or on stringers.
        </p>
      )}
    </section>
  )
}

function withFrame(frame: FrameAcross, answer: DeckAnswer): Sentence {
  const spread =
    frame.count > 0
      ? say`The most loaded of ${inCount(frame.count)} stringers takes ${inPercent(frame.share)} of a foot instead of all of it.`
      : 'The field of sheet is halved and the frame carries the foot to the sides.'
  const stringers = frame.count > 0 ? say`, stringers ${inTimes(frame.stringers)}` : ''
  return say`${spread} With it ${answer.bay.name} bears ${inTimes(frame.margin)} times what is asked, ${inTimes(answer.margin)} without: sheet ${inTimes(frame.sheet)}${stringers}, frame ${inTimes(frame.frame)}. It gives ${inMm(frame.deflection, 0.1)} underfoot, ${inMm(answer.deflection, 0.1)} without, and weighs ${inKg(frame.mass, 0.01)}.`
}
