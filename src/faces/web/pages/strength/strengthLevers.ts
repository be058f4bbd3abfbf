import type { PanelInput } from '../../parts/InputsPanel.tsx'
import type { Deck } from './useDeck.ts'

/** What moves the margin of a bay most: its sheet first, then what holds it up, then its size. */
export function bayLevers(deck: Deck, bay: number): PanelInput[] {
  const at = `deck.bays.${bay}`
  const { support, name } = deck.inputs.bays[bay]!
  const of = (word: string, path = word) => ({ path: `${at}.${path}`, label: `${name}: ${word}` })
  const skin: PanelInput = {
    ...of('sheet', 'skin'),
    low: 0.0008,
    high: 0.004,
    effect: 'stress of a thin sheet falls faster than its weight grows',
  }
  const size: PanelInput[] = [of('width'), of('length')]
  const edge: PanelInput = {
    path: 'deck.joined',
    effect: 'welds hold the edges but soften the sheet beside them',
  }
  const rest: PanelInput[] = [edge, { path: 'deck.alloy' }, { path: 'rider.mass', low: 40, high: 130 }]
  switch (support.kind) {
    case 'alone':
      return [skin, ...size, ...rest]
    case 'stringers':
      return [skin, of('stringer spacing', 'spacing'), of('stringer height'), ...size, ...rest]
    case 'foam':
      return [
        { ...of('foam'), effect: 'denser foam crushes later' },
        { ...skin, effect: 'a stiffer sheet spreads the load over more foam' },
        of('foam depth', 'depth'),
        ...size,
        ...rest,
      ]
    case 'sandwich':
      return [of('core'), skin, of('lower sheet', 'lower skin'), of('foam'), ...size, ...rest]
  }
}
