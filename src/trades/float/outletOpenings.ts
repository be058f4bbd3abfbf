/**
 * The exhaust outlets among the openings. One whose place is not listed, but whose height over the water stands under its engine's
 * exhaust, becomes an opening by itself; one that stands at both places is kept for comparison.
 */
import type { Craft } from '../../craft/index.ts'
import { engineOutlets, statedLip } from '../../craft/outlets.ts'
import { atRest, shareRest } from './atRest.ts'
import type { FloatInput, StatedOutlet } from './input.ts'
import { heightOver, type Opening } from './openingHeights.ts'

/** The input with what the engines' exhausts say of their outlets. */
export function withOutlets(craft: Craft, input: FloatInput): FloatInput {
  const gained: Opening[] = []
  const stated: StatedOutlet[] = []
  for (const { engine, opening } of engineOutlets(craft)) {
    const lip = statedLip(craft, engine)
    if (lip === undefined) continue
    const path = `engines.${engine}.exhaust.outlet.height`
    const name = craft.engines[engine]?.name ?? `engine ${engine + 1}`
    if (opening === undefined) {
      const made = openingAt(input, craft, engine, lip.height)
      if (made) gained.push({ ...made, name: `exhaust outlet of ${name}`, path })
    } else stated.push({ engine: name, path, opening, lip: lip.height, give: lip.give })
  }
  if (gained.length === 0 && stated.length === 0) return input
  const all: FloatInput = { ...input, openings: [...input.openings, ...gained], outlets: stated }
  // openings weigh nothing: what was settled for one is settled for the other
  if (gained.length > 0) shareRest(input, all)
  return all
}

/** An outlet of which only the height over the water, loaded, is known: in the middle of the transom. Undefined where it does not float. */
function openingAt(
  input: FloatInput,
  craft: Craft,
  engine: number,
  lip: number,
): Omit<Opening, 'name'> | undefined {
  const { attitude } = atRest(input).ridden
  const [foot, over] = [heightOver(attitude, [0, 0, 0]), heightOver(attitude, [0, 0, 1])]
  const z = (lip - foot) / (over - foot)
  const e = craft.engines[engine]
  const bore = (e?.kind === 'two-stroke' && e.exhaust?.outlet?.bore.value) || 0
  return Number.isFinite(z)
    ? { kind: 'exhaust outlet', at: [0, 0, z], area: (Math.PI / 4) * bore ** 2, placeAssumed: true }
    : undefined
}
