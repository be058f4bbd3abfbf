/** The deck's panels from its bays: as long and wide as the bay, an edge to rivet all round. */
import { inMm } from '../../base/answers/amounts.ts'
import type { FlatPoint, MadePart } from '../../base/answers/madePart.ts'
import { say } from '../../base/answers/sentence.ts'
import { deckPanel, rivetsAlong } from '../../shapes/deckPanel.ts'
import { sheetPart } from './partMaking.ts'
import type { PatternsInputs } from './patternsFromCraft.ts'

export function deckParts({ deck }: Pick<PatternsInputs, 'deck'>): MadePart[] {
  const size = deck.rivetSize.value
  const pitch = deck.rivetPitch.value
  // rivets stand two diameters from the edge (common practice), and as far from what they are set into
  const edge = 2 * size
  const riveted = deck.joined === 'riveted'
  return deck.bays.map((bay, i) => {
    const lap = riveted ? 2 * edge : 0
    const [x, y] = [bay.length.value / 2 + lap, bay.width.value / 2 + lap]
    const outline: FlatPoint[] = [
      [-x, -y],
      [x, -y],
      [x, y],
      [-x, y],
    ]
    const rivets = { diameter: size, pitch, edge }
    return sheetPart({
      id: `deck-${i + 1}`,
      title: `deck panel ${bay.name}`,
      of: [`deck.bays.${i}`],
      says: say`${inMm(2 * x)} by ${inMm(2 * y)} of sheet ${inMm(bay.skin.value, 0.1)} thick, an edge of ${inMm(lap)} all round.`,
      metal: 'aluminium',
      thickness: bay.skin.value,
      from: { length: 2 * x, width: 2 * y, pitch: riveted ? pitch : 0, size: riveted ? size : 0 },
      paths: { 'rivets.pitch': 'deck.rivetPitch', rivets: 'deck.rivetSize' },
      shape: () => ({
        flats: [
          deckPanel({
            id: `deck-${i + 1}`,
            title: `deck panel ${bay.name}`,
            thickness: bay.skin.value,
            outline,
            ...(riveted ? { rivets } : {}),
          }),
        ],
        weld: deck.joined === 'welded' ? 4 * (x + y) : 0,
        ...(riveted ? { rivets: { count: rivetsAlong(outline, rivets).length, pitch } } : {}),
      }),
    })
  })
}
