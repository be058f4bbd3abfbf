/**
 * Where on the craft a value of its file is: from its own place where it has one, else from what it is a part of. The file gives deck
 * bays and hot parts no place: a bay lies at the opening it is named like, or under the rider; a hot part between engine and outlet.
 */
import type { Craft } from '../../craft/index.ts'
import { heightAt } from '../../drawing/craftSketch.ts'
import { carriedOn } from '../../hull/aboard/aboard.ts'
import { craftLines } from './craftLines.ts'

/** Forward of the transom, to port, up from its foot; m. */
type Point = readonly [number, number, number]

export interface OnCraft {
  at: Point
  /** the view that shows it best */
  from: 'side' | 'above'
}

/** The place of a path (`jet.rotor.pitch`, `deck.bays.1.skin`); undefined for what is nowhere on board, such as the water's depth. */
export function placeOnCraft(craft: Craft, path: string): OnCraft | undefined {
  const [section = '', key = ''] = path.split('.')
  return sections[section]?.(craft, key, path)
}

const side = (at: Point): OnCraft => ({ at, from: 'side' })
const above = (at: Point): OnCraft => ({ at, from: 'above' })

const middleOf = (points: readonly Point[]): Point | undefined => {
  if (points.length === 0) return undefined
  const mean = (k: 0 | 1 | 2) => points.reduce((sum, p) => sum + p[k], 0) / points.length
  return [mean(0), mean(1), mean(2)]
}

type PlaceIn = (craft: Craft, key: string, path: string) => OnCraft | undefined

const sections: Readonly<Record<string, PlaceIn>> = {
  engines: (craft, key, path) =>
    side(/\boutlet\b/.test(path) ? outletOf(craft) : engineAt(craft, Number(key))),
  drive: (craft) => {
    const [x, , z] = engineAt(craft, Number.NaN)
    const rotor = rotorAt(craft)
    return side([(x + rotor[0]) / 2, 0, (z + rotor[2]) / 2])
  },
  jet: (craft, key) => side(jetAt(craft, key)),
  rider: (craft) => {
    const { rider } = carriedOn(craft)
    return side([rider.x, rider.y, heightAt(craftLines(craft).deck, rider.x) + 0.35 * seen(rider.stature)])
  },
  weights: (craft, key) => {
    const item = carriedOn(craft).items[Number(key)]
    return item && side(item.at)
  },
  tanks: (craft, key) => {
    const tank = carriedOn(craft).tanks[Number(key)]
    return tank && side([tank.foot[0], tank.foot[1], tank.foot[2] + 0.05])
  },
  openings: (craft, key) => {
    const at = craft.openings[Number(key)]?.at
    return at && side([at[0].value, at[1].value, at[2].value])
  },
  foam: (craft, key) => {
    const blocks = craft.foam.map(
      ({ from, to }): Point => [
        (from[0].value + to[0].value) / 2,
        (from[1].value + to[1].value) / 2,
        (from[2].value + to[2].value) / 2,
      ],
    )
    // foam at large is told at its first block, or where a first one would go: in the nose
    const { length, depth } = craftLines(craft)
    return above(blocks[Number(key)] ?? blocks[0] ?? [0.85 * length, 0, 0.6 * depth])
  },
  compartments: (craft, key) => {
    const space = craft.compartments[Number(key)] ?? craft.compartments[0]
    const { length, depth } = craftLines(craft)
    return side([space ? (space.from.value + space.to.value) / 2 : 0.5 * length, 0, 0.5 * depth])
  },
  deck: (craft, key, path) => above(deckAt(craft, key === 'bays' ? Number(path.split('.')[2]) : Number.NaN)),
  'hot parts': (craft) => {
    const [engine, outlet] = [engineAt(craft, Number.NaN), outletOf(craft)]
    return side([(engine[0] + outlet[0]) / 2, (engine[1] + outlet[1]) / 2, (engine[2] + outlet[2]) / 2])
  },
  hull: (craft) => {
    const lines = craftLines(craft)
    return side([0.7 * lines.length, 0, heightAt(lines.keel, 0.7 * lines.length)])
  },
}

/** no taller than people are: a slip in the file must not throw the number off the sheet */
const seen = (stature: number) => Math.min(2.2, Math.max(0.5, stature))

/** The engine of an index by the weights that are engines, in their order; the middle of all where it has none of its own. */
function engineAt(craft: Craft, index: number): Point {
  const items = carriedOn(craft).items.filter((i) => i.kind === 'engine')
  const own = items.length === craft.engines.length ? items[index]?.at : undefined
  const middle = own ?? middleOf(items.map((i) => i.at))
  if (!middle) {
    const { length, depth } = craftLines(craft)
    return [0.4 * length, 0, 0.8 * depth]
  }
  if (own || craft.engines.length < 2 || !Number.isInteger(index)) return middle
  // engines that are one weight stand in line, the first in front
  return [middle[0] + 0.12 * ((craft.engines.length - 1) / 2 - index), middle[1], middle[2]]
}

function outletOf(craft: Craft): Point {
  const at = craft.openings.find((o) => o.kind === 'exhaust outlet')?.at
  return at ? [at[0].value, at[1].value, at[2].value] : [0, 0, 0.7 * craftLines(craft).depth]
}

const rotorAt = (craft: Craft): Point => jetAt(craft, 'rotor')

function jetAt({ jet }: Craft, key: string): Point {
  const front = jet.intake.front.value
  const rotor = Math.max(0.08, front - jet.duct.length.value)
  const height = jet.nozzle.height.value
  switch (key) {
    case 'nozzle':
      return [0, 0, height]
    case 'intake':
    case 'grate':
      return [front - jet.intake.length.value / 2, 0, 0]
    case 'duct':
      return [(front + rotor) / 2, 0, height / 2]
    case 'stator':
      return [rotor / 2, 0, height]
    default:
      return [rotor, 0, height]
  }
}

const words = (name: string): string[] => name.toLowerCase().match(/[a-z]{3,}/g) ?? []

/** A bay of the deck: at the opening that shares most words with its name, else where the rider is, beside one another. */
function deckAt(craft: Craft, index: number): Point {
  const { deck } = craftLines(craft)
  const on = (x: number, y: number): Point => [x, y, heightAt(deck, x)]
  const { rider } = carriedOn(craft)
  const bay = craft.deck.bays[index]
  if (!bay) return on(rider.x, 0)
  const own = new Set(words(bay.name))
  const shared = (name: string) => words(name).filter((w) => own.has(w)).length
  const opening = [...craft.openings]
    .filter((o) => o.kind === 'hatch' || shared(o.name) > 1)
    .sort((a, b) => shared(b.name) - shared(a.name))[0]
  if (opening && shared(opening.name) > 0) return on(opening.at[0].value, opening.at[1].value)
  return on(rider.x, 0)
}
