import type { DeckAnswer } from '../../../../trades/strength/deckBay.ts'
import { buildWords } from '../../../../trades/strength/deckFigures.ts'
import { partWord } from '../../../../trades/strength/strengthSay.ts'
import { plain } from '../../../../whole/push/shown.ts'
import { NumbersTable } from '../../parts/NumbersTable.tsx'
import { bayHead, loadWord } from './deckTable.ts'
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
    <>
      <NumbersTable
        caption="The bays"
        columns={[{ head: 'Bay' }, { head: 'Build' }, ...bayHead]}
        rows={pairs.map(([a, word]) => [
          `${a.bay.name}${word}`,
          buildWords(a.bay),
          plain(a.massPerArea, 1),
          plain(a.mass, 2),
          plain(1e3 * a.deflection, 1),
          plain(a.margin, 2),
          `${partWord[a.governs.weakest]}, ${loadWord[a.governs.load]}`,
        ])}
      />
      <NumbersTable
        caption="Load by load"
        columns={[
          { head: 'Bay and load' },
          { head: 'Force', unit: 'N' },
          { head: 'Gives', unit: 'mm' },
          { head: 'Sheet', unit: 'MPa' },
          { head: 'may have', unit: 'MPa' },
          { head: 'Foam', unit: 'kPa' },
          { head: 'foam may', unit: 'kPa' },
          { head: 'Edge pull', unit: 'N/mm' },
          { head: 'Margin' },
        ]}
        rows={pairs.flatMap(([a, word]) =>
          a.loads.map((l) => [
            `${a.bay.name}, ${loadWord[l.load]}${word}`,
            plain(l.force, 0),
            plain(1e3 * l.deflection, 1),
            plain(l.stress / 1e6, 0),
            plain(l.allowed / 1e6, 0),
            plain(l.foam ? l.foam.pressure / 1e3 : Number.NaN, 0),
            plain(l.foam ? l.foam.allowed / 1e3 : Number.NaN, 0),
            plain(l.edgePull / 1e3, 1),
            plain(l.margin, 2),
          ]),
        )}
      />
    </>
  )
}
