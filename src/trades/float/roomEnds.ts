/**
 * How far the rider may move, without the whole map of envelope.ts: the ends along the middle by halving, then how far out. Places are
 * those of the map's grid, and the room along the middle is taken to be one piece.
 */
import { floaterOf } from '../../hull/afloat/load.ts'
import type { Attitude } from '../../hull/afloat/settle.ts'
import { alikeBothSides, type EnvelopeInput, isInside, type Place, placeAt } from './envelope.ts'

export interface RoomEnds {
  /** m, ends of the room along the middle, half a grid beyond the last places; absent where there is none */
  along?: { aft: number; fore: number }
  /** m off the middle, the farthest place within the limits; 0 when only the middle is */
  wide: number
  /** the place asked for is within it */
  inside: boolean
}

/** columns looked at for the widest place */
const columns = 5

/** The room of a rider who stands at `riderAt` m forward. About twenty places are settled. */
export function roomEnds(input: EnvelopeInput, riderAt: number): RoomEnds {
  const grid = input.grid ?? 0.05
  const count = Math.floor(input.hull.length / grid)
  const half = Math.floor(input.hull.beam / 2 / grid)
  const base = floaterOf(input.craft)
  const middle = new Map<number, Place | undefined>()
  let near: Attitude | undefined
  const look = (i: number, j: number): Place | undefined => {
    const got = placeAt(input, base, input.rider, grid * (i + 0.5), grid * j, near)
    if (got && !got.over) near = got.attitude
    return got
  }
  const at = (i: number): Place | undefined => {
    if (!middle.has(i)) middle.set(i, look(i, 0))
    return middle.get(i)
  }
  const fine = (got: Place | undefined) => got !== undefined && isInside(got, got.opening, input)
  if (count < 1) return { wide: 0, inside: false }
  const here = Math.min(count - 1, Math.max(0, Math.round(riderAt / grid - 0.5)))
  const seed = fine(at(here)) ? here : levelPlace(at, count)
  if (!fine(at(seed))) return { wide: 0, inside: false }
  const aft = lastFine(seed, -1, (i) => fine(at(i)))
  const fore = lastFine(seed, count, (i) => fine(at(i)))
  const sides = alikeBothSides(input) ? [1] : [1, -1]
  let out = 0
  for (let k = 0; k < columns; k++) {
    const i = Math.round(aft + ((fore - aft) * (k + 0.5)) / columns)
    near = at(i)?.attitude
    while (out < half && sides.some((side) => fine(look(i, side * (out + 1))))) out++
  }
  return {
    along: { aft: grid * aft, fore: grid * (fore + 1) },
    wide: grid * out,
    inside: here >= aft && here <= fore,
  }
}

/** The column where the craft lies most level: the bow goes down as the rider moves forward. */
function levelPlace(at: (i: number) => Place | undefined, count: number): number {
  let low = 0
  let high = count - 1
  while (high - low > 1) {
    const i = (low + high) >> 1
    const got = at(i)
    // off the deck forward, or gone over: the middle of the craft is the better half
    const bowUp = got === undefined || got.over ? i < count / 2 : got.attitude.trim > 0
    if (bowUp) low = i
    else high = i
  }
  const lean = (i: number) => {
    const got = at(i)
    return got === undefined || got.over ? Infinity : Math.abs(got.attitude.trim)
  }
  return lean(low) < lean(high) ? low : high
}

/** The last place towards `end` (which is out) that is fine, by halving from one that is. */
function lastFine(from: number, end: number, fine: (i: number) => boolean): number {
  let good = from
  let bad = end
  while (Math.abs(bad - good) > 1) {
    const i = (good + bad) >> 1
    if (fine(i)) good = i
    else bad = i
  }
  return good
}
