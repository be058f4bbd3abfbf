import { useCallback } from 'react'
import { deflectionFigure, shareFigure } from '../../../../trades/strength/deckFigures.ts'
import { Figure } from '../../parts/Figure.tsx'
import { useApp } from '../../state/hooks.ts'
import { type Deck, sweepOf } from './useDeck.ts'

interface Props {
  now: Deck
  tried: Deck | undefined
  bay: number
}

/** What one bay does as the load on it grows. */
export function LoadPictures({ now, tried, bay }: Props) {
  const units = useApp((s) => s.units)
  const own = now.answers[bay]!
  const other = tried?.answers[bay]
  const sweep = sweepOf(now, bay)!
  const triedSweep =
    tried && JSON.stringify(other?.bay) !== JSON.stringify(own.bay) ? sweepOf(tried, bay) : undefined
  const { rider } = (tried ?? now).inputs
  const gives = useCallback(
    (width: number) => deflectionFigure(sweep, triedSweep, rider, width, units),
    [sweep, triedSweep, rider, units],
  )
  const share = useCallback(
    (width: number) => shareFigure(sweep, triedSweep, rider, width, units),
    [sweep, triedSweep, rider, units],
  )
  return (
    <div className="pictures">
      <Figure
        draw={share}
        name="share of strength"
        caption="On 80 mm of heel or knee. Above 100 % the sheet takes a lasting dish, the foam a lasting dent."
      />
      <Figure draw={gives} name="deflection" caption="On 80 mm of heel or knee, in the middle of the bay." />
    </div>
  )
}
