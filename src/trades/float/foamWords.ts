/** Foam still wanted, in words that the finding and the page share. */
import { inCount, inMetres } from '../../base/answers/amounts.ts'
import { joined, type Sentence, say } from '../../base/answers/sentence.ts'
import { cm, litres } from './floatSay.ts'
import type { FoamNeed, NewFoam } from './foamNeeded.ts'
import type { FloatInput } from './input.ts'

/** blocks said in full; the rest are in the page's table */
const most = 3

/** "8 L from 0.41 m to 0.57 m forward of the transom, from 8 cm to 22 cm out from the centreline, from the bottom to 24 cm up" */
function placeOf(b: NewFoam): Sentence {
  const along = say`from ${inMetres(b.low[0])} to ${inMetres(b.high[0])} forward of the transom`
  const across =
    b.low[1] < 0.005
      ? say`from the centreline to ${cm(b.high[1])} out`
      : say`from ${cm(b.low[1])} to ${cm(b.high[1])} out from the centreline`
  const foot: Sentence = b.low[2] < 0.005 ? 'from the bottom' : say`from ${cm(b.low[2])}`
  return say`${litres(b.held)} ${along}, ${across}, ${foot} to ${cm(b.high[2])} up`
}

/** Where the blocks go: "14 L on each side from … "; '' when there are none. */
function foamPlaces({ blocks }: Pick<FoamNeed, 'blocks'>): Sentence {
  const port = blocks.filter((b) => b.name.endsWith('port')).sort((a, b) => b.held - a.held)
  if (port.length === 0) return ''
  const rest = port.slice(most)
  const held = rest.reduce((v, b) => v + b.held, 0)
  const more: Sentence =
    rest.length > 0
      ? say`; and ${litres(held)} in ${inCount(rest.length)} smaller ${rest.length === 1 ? 'piece' : 'pieces'}, as the page Float lists them`
      : ''
  return say`on each side ${joined(port.slice(0, most).map(placeOf), '; ')}${more}`
}

/** What foam is still wanted for the swamped craft to carry its rider, and where to put it; no act where there is no place for it. */
export function foamWanted(n: Pick<FoamNeed, 'blocks' | 'upright' | 'volume' | 'fitted'>): {
  says: Sentence
  act?: Sentence
} {
  const wants = say`To carry its rider lying on it when swamped, level and upright, it still needs foam, ${foamAmount(n)}.`
  if (!n.upright) return { says: say`${wants} No free place tried inside the hull keeps it upright.` }
  const where = foamPlaces(n)
  if (where === '') return { says: say`${wants} The hull has no free room for that much.` }
  return { says: wants, act: say`fix in foam ${where}` }
}

/** How much more foam, on top of what is there. */
function foamAmount(n: Pick<FoamNeed, 'volume' | 'fitted'>): Sentence {
  if (!(n.fitted > n.volume * 1.02)) return say`${litres(n.fitted || n.volume)} more than it has`
  return n.volume > 0
    ? say`${litres(n.fitted)} more than it has: ${litres(n.volume)} for the lift, the rest to keep it so`
    : say`${litres(n.fitted)} more than it has; for the lift alone it has enough`
}

/** What the new blocks keep clear of, "foam (bow block), fuel tank, jet"; '' when there is nothing. */
export function foamKeepsClear(input: FloatInput): string {
  const foam = input.foam.map((f) => f.name)
  const others = [
    ...input.compartments.filter((c) => c.sealed).map((c) => c.name),
    ...(input.tanks ?? []).map((t) => t.name),
    ...(input.taken ?? []).map((t) => t.name),
  ]
  return [...(foam.length > 0 ? [`the foam it has (${foam.join(', ')})`] : []), ...new Set(others)].join(', ')
}
