/** What is found of deck and hull and made of sheet: holes that want a doubler, bays that want a frame, the deck's own surface. */
import type { FlatPoint } from '../../base/answers/madePart.ts'
import type { Craft } from '../../craft/index.ts'
import { deckHeight } from '../../hull/lines/hullBody.ts'
import { hullMeshFromCraft } from '../../hull/mesh/hullFromCraft.ts'
import { halfOutline, thinned } from '../../physics/solid/halfOutline.ts'
import { boundsOf, type Mesh } from '../../physics/solid/mesh.ts'
import type { SkinGrid } from '../../shapes/deckSkin.ts'
import type { DeckAsks } from '../../trades/patterns/deckWork.ts'
import { hatchOf } from '../../trades/strength/frameFindings.ts'
import { placeOnCraft } from '../picture/placeOnCraft.ts'

/** depth of the hat that strength reckons a frame as, m */
const frameDepth = 0.03
/** rows of points along the deck, and points across each half */
const [rows, half] = [15, 4]
/** m: where the deck is narrower it is the stem's, cut by eye */
const leastBreadth = 0.06
/** sections are followed to this, m */
const fine = 1e-3

const kept = new WeakMap<Craft, DeckAsks>()

/** Asked once a craft. */
export function deckAsksOf(craft: Craft): DeckAsks {
  let asks = kept.get(craft)
  if (!asks) {
    asks = asksOf(craft)
    kept.set(craft, asks)
  }
  return asks
}

function asksOf(craft: Craft): DeckAsks {
  const { bays } = craft.deck
  const doublers = bays.flatMap((bay, i) => {
    const needs = hatchOf({
      name: bay.name,
      length: bay.length.value,
      width: bay.width.value,
      t: bay.skin.value,
    })
    return needs
      ? [
          {
            bay: i,
            length: bay.length.value,
            width: bay.width.value,
            corner: needs.radiusFrom,
            wide: needs.doubler / bay.skin.value,
          },
        ]
      : []
  })
  const mesh = meshOf(craft)
  if (!mesh) return { doublers, frames: [] }
  const frames = bays.flatMap((bay, i) => {
    // foam carries its own bay; a lid takes its frame along
    if ((bay.kind !== 'stringers' && bay.kind !== 'alone') || doublers.some((d) => d.bay === i)) return []
    const x = placeOnCraft(craft, `deck.bays.${i}.skin`)?.at[0]
    const section = x === undefined ? undefined : halfOutline(mesh, x)
    if (x === undefined || !section) return []
    return [
      { bay: i, x, section: thinned(section, fine).map(([y, z]): FlatPoint => [y, z]), depth: frameDepth },
    ]
  })
  const skin = skinOf(mesh)
  return { doublers, frames, ...(skin ? { skin } : {}) }
}

/** The craft's hull; undefined where its measures close to none. */
function meshOf(craft: Craft): Mesh | undefined {
  try {
    return hullMeshFromCraft(craft).mesh
  } catch (error) {
    if (error instanceof RangeError) return undefined
    throw error
  }
}

/** The topmost surface from transom to where it runs out, edge to edge; undefined where a row has no deck. */
function skinOf(mesh: Mesh): SkinGrid | undefined {
  const { low, high } = boundsOf(mesh)
  const length = high[0] - low[0]
  const grid: (readonly [number, number, number])[][] = []
  for (let i = 0; i < rows; i++) {
    const x = low[0] + length * (0.002 + (0.996 * i) / (rows - 1))
    const outline = halfOutline(mesh, x)
    if (!outline) break
    const breadth = Math.max(...outline.map(([y]) => y))
    if (breadth < leastBreadth / 2) break
    const row: (readonly [number, number, number])[] = []
    for (let k = -half; k <= half; k++) {
      const y = (0.998 * breadth * k) / half
      const z = deckHeight(mesh, x, y)
      if (z === undefined) return undefined
      row.push([x, y, z])
    }
    grid.push(row)
  }
  return grid.length >= 2 ? grid : undefined
}
