import { useCallback } from 'react'
import { buildWords, sectionFigure } from '../../../../trades/strength/deckFigures.ts'
import { Figure } from '../../parts/Figure.tsx'
import { useApp } from '../../state/hooks.ts'
import type { Deck } from './useDeck.ts'

interface Props {
  now: Deck
  tried: Deck | undefined
  bay: number
}

/** The bay cut across to scale: as the file has it, and beside it what is tried, as soon as it is picked. */
export function Sections({ now, tried, bay }: Props) {
  const units = useApp((s) => s.units)
  const own = now.answers[bay]!
  const other = tried?.answers[bay]
  const moved = other !== undefined && JSON.stringify(other.bay) !== JSON.stringify(own.bay)
  const draw = useCallback((width: number) => sectionFigure(own, width, units), [own, units])
  const drawTried = useCallback(
    (width: number) => sectionFigure(other ?? own, width, units),
    [other, own, units],
  )
  const red = 'the red foot is the load that governs'
  return (
    <div className={moved ? 'sections pair' : 'sections'}>
      <Figure
        draw={draw}
        name="deck section"
        caption={moved ? `Now: ${buildWords(own.bay)}.` : `${buildWords(own.bay)}; ${red}.`}
      />
      {moved && other && (
        <Figure
          draw={drawTried}
          name="deck section tried"
          caption={`Tried: ${buildWords(other.bay)}; ${red}.`}
        />
      )}
    </div>
  )
}
