/** Sheet that other findings ask for under and over the deck: doublers round hatches, frames across the hull, the skin over all of it. */
import { inCount, inMetres, inMm } from '../../base/answers/amounts.ts'
import type { FlatPoint, MadePart } from '../../base/answers/madePart.ts'
import { type Sentence, say } from '../../base/answers/sentence.ts'
import { doublerOf } from '../../shapes/deckPanel.ts'
import { deckSkin, type SkinGrid } from '../../shapes/deckSkin.ts'
import { hullFrame } from '../../shapes/hullFrame.ts'
import { tight } from '../../shapes/seam.ts'
import { sheetPart } from './partMaking.ts'
import type { PatternsInputs } from './patternsFromCraft.ts'

/** What strength and hull hand on, m. */
export interface DeckAsks {
  /** holes in the deck and the metal to put back round each */
  doublers: readonly { bay: number; length: number; width: number; corner: number; wide: number }[]
  /** frames at places along the hull: half sections from the keel to the deck's middle, half-breadth and height */
  frames: readonly { bay: number; x: number; section: readonly FlatPoint[]; depth: number }[]
  /** points of the deck, rows at increasing x; absent where the hull has no deck of one surface */
  skin?: SkinGrid
}

/** opening or overlap that thin sheet takes up between two bands when it is riveted down, m: judgement */
const bears = 1.5e-3
/** water runs past a frame beside the keel through a hole as wide, m: judgement */
const limber = 20e-3

export function deckWork({ deck }: Pick<PatternsInputs, 'deck'>, asks: DeckAsks): MadePart[] {
  const rivets = {
    diameter: deck.rivetSize.value,
    pitch: deck.rivetPitch.value,
    edge: 2 * deck.rivetSize.value,
  }
  const riveted = deck.joined === 'riveted'
  return [
    ...asks.doublers.map(({ bay, length, width, corner, wide }): MadePart => {
      const own = deck.bays[bay]!
      const id = `doubler-${bay + 1}`
      const title = `doubler round the hole under ${own.name}`
      return sheetPart({
        id,
        title,
        of: [`deck.bays.${bay}`],
        says: say`A ring ${inMm(wide)} wide round a hole of ${inMm(length)} by ${inMm(width)}, corners of ${inMm(corner)}: what the hole takes from the deck.`,
        metal: 'aluminium',
        thickness: own.skin.value,
        from: { length, width, corner, wide, pitch: rivets.pitch, size: rivets.diameter },
        paths: {
          width: `deck.bays.${bay}.width`,
          length: `deck.bays.${bay}.length`,
          rivets: 'deck.rivet size',
        },
        shape: () => {
          const flat = doublerOf({ x: 0, y: 0, length, width, corner }, wide, rivets, {
            id,
            title,
            thickness: own.skin.value,
          })
          const count = flat.lines.filter((l) => l.use === 'hole').length - 1
          return { flats: [flat], weld: 0, rivets: { count, pitch: rivets.pitch } }
        },
      })
    }),
    ...asks.frames.map(({ bay, x, section, depth }): MadePart => {
      const own = deck.bays[bay]!
      const id = `frame-${bay + 1}`
      const title = `frame under ${own.name}`
      return sheetPart({
        id,
        title,
        of: [`deck.bays.${bay}`, 'hull'],
        says: say`A ring ${inMm(depth)} deep inside the hull, ${inMetres(x)} forward of the transom, cut to its section there.`,
        metal: 'aluminium',
        thickness: own.skin.value,
        from: {
          x,
          depth,
          ...Object.fromEntries(
            section.flatMap(([y, z], k) => [
              [`y${k}`, y],
              [`z${k}`, z],
            ]),
          ),
        },
        paths: { section: 'hull', depth: `deck.bays.${bay}`, limber: 'hull' },
        shape: () => ({
          flats: [
            hullFrame({
              id,
              title,
              thickness: own.skin.value,
              section,
              skin: 0,
              depth,
              stringers: [],
              limber,
            }),
          ],
          weld: riveted ? 0 : perimeter(section),
          last: [
            'Cut it of card first and try it in the hull where the bay lies, which the file does not say: a hull of few numbers is not the one that was built.',
          ],
        }),
      })
    }),
    ...skinPart(deck, asks.skin),
  ]
}

const perimeter = (half: readonly FlatPoint[]): number =>
  2 * half.slice(1).reduce((sum, p, i) => sum + Math.hypot(p[0] - half[i]![0], p[1] - half[i]![1]), 0)

/** The whole deck in one sheet, or where it must be slit. */
function skinPart(deck: PatternsInputs['deck'], grid: SkinGrid | undefined): MadePart[] {
  if (!grid || deck.bays.length === 0) return []
  const thickness = Math.min(...deck.bays.map((b) => b.skin.value))
  const sheeting = { id: 'deck-skin', title: 'deck skin', thickness, seam: tight }
  // once, so that what it says and what is cut are the same
  let made: ReturnType<typeof deckSkin> | undefined
  const skin = () => (made ??= deckSkin(grid, bears, sheeting))
  return [
    sheetPart({
      id: 'deck-skin',
      title: 'deck skin',
      of: ['hull', 'deck.bays'],
      instead: true,
      says: skinSays(grid, skin),
      metal: 'aluminium',
      thickness,
      from: Object.fromEntries(grid.flatMap((row, i) => row.map((p, k) => [`p${i}.${k}`, p.join(' ')]))),
      paths: { grid: 'hull' },
      shape: () => {
        const { pieces } = skin()
        return { flats: pieces.map((p) => p.piece), rolled: pieces, weld: 0 }
      },
    }),
  ]
}

function skinSays(grid: SkinGrid, skin: () => ReturnType<typeof deckSkin>): Sentence {
  const long = grid.at(-1)![0]![0] - grid[0]![0]![0]
  const size = say`Instead of the panels, the deck from edge to edge over ${inMetres(long)}`
  try {
    const { leastRadius, slits, developable } = skin()
    const rolled = Number.isFinite(leastRadius)
      ? say`rolled to ${inMetres(leastRadius, 0.1)} at its tightest`
      : 'flat all over'
    return developable
      ? say`${size}, in one piece, ${rolled}.`
      : say`${size}, slit along ${inCount(slits.length)} lines where it would have to stretch, ${rolled}.`
  } catch {
    // the same fault is told when the part is shaped
    return say`${size}.`
  }
}
