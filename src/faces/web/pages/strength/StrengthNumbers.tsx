import { inKpa, inMm, inMpa, inNewtons, inNewtonsPerMm, inTimes } from '../../../../base/answers/amounts.ts'
import type { DeckAnswer } from '../../../../trades/strength/deckBay.ts'
import { buildWords } from '../../../../trades/strength/deckFigures.ts'
import { TradeTables } from '../../parts/TradeParts.tsx'
import { bayCells, bayHead, loadWord } from './deckTable.ts'
import type { Deck } from './useDeck.ts'

interface Props {
  now: Deck
  tried: Deck | undefined
}

/** Every bay in one table, and every bay under every load. */
export function Numbers({ now, tried }: Props) {
  const pairs = now.answers.flatMap((a, i): [DeckAnswer, string][] => {
    const other = tried?.answers[i]
    const moved = other && JSON.stringify(other) !== JSON.stringify(a)
    return moved
      ? [
          [a, ''],
          [other, ', tried'],
        ]
      : [[a, '']]
  })
  return (
    <TradeTables
      tables={[
        {
          caption: 'The bays',
          heads: ['Bay', 'Build', ...bayHead],
          rows: pairs.map(([a, word]) => [`${a.bay.name}${word}`, buildWords(a.bay), ...bayCells(a)]),
        },
        {
          caption: 'Load by load',
          heads: [
            'Bay and load',
            'Force',
            'Gives',
            'Sheet',
            'may have',
            'Foam',
            'foam may',
            'Edge pull',
            'Margin',
          ],
          rows: pairs.flatMap(([a, word]) =>
            a.loads.map((l) => [
              `${a.bay.name}, ${loadWord[l.load]}${word}`,
              inNewtons(l.force),
              inMm(l.deflection, 0.1),
              inMpa(l.stress),
              inMpa(l.allowed),
              inKpa(l.foam ? l.foam.pressure : Number.NaN),
              inKpa(l.foam ? l.foam.allowed : Number.NaN),
              inNewtonsPerMm(l.edgePull, 0.1),
              inTimes(l.margin),
            ]),
          ),
        },
      ]}
    />
  )
}
