import { useCallback, useMemo, useState } from 'react'
import { frameAcross, frameOf } from '../../../../trades/strength/deckFrames.ts'
import { frameFigure } from '../../../../trades/strength/frameFigure.ts'
import { Figure } from '../../parts/Figure.tsx'
import { QuantityField } from '../../parts/QuantityField.tsx'
import type { Deck } from './useDeck.ts'

/** Where foam cannot go: what a frame across the bay does for it. */
export function Frame({ deck, bay }: { deck: Deck; bay: number }) {
  const answer = deck.answers[bay]!
  const { rider } = deck.inputs
  const [height, setHeight] = useState(0.03)
  const frame = useMemo(() => frameAcross(answer, rider, frameOf(height)), [answer, rider, height])
  const draw = useCallback(
    (width: number) => frameFigure(answer.bay, frame!, height, Math.min(width, 200)),
    [answer, frame, height],
  )
  const { name } = answer.bay
  return (
    <section className="frame">
      <h2>Where foam cannot go: a frame across {name}</h2>
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
              unit="mm"
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
            {frame.count > 0
              ? `The most loaded of ${frame.count} stringers takes ${Math.round(100 * frame.share)} % of a foot instead of all of it.`
              : 'The field of sheet is halved and the frame carries the foot to the sides.'}{' '}
            With it {name} bears {frame.margin.toFixed(2)} times what is asked, {answer.margin.toFixed(2)}{' '}
            without: sheet {frame.sheet.toFixed(2)}
            {frame.count > 0 && `, stringers ${frame.stringers.toFixed(2)}`}, frame {frame.frame.toFixed(2)}.
            It gives {(1e3 * frame.deflection).toFixed(1)} mm underfoot,{' '}
            {(1e3 * answer.deflection).toFixed(1)} without, and weighs {frame.mass.toFixed(2)} kg.
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
