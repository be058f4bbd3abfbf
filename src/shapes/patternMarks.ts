/** What is drawn inside a pattern: roll lines, quarter marks, and a letter that reads wrong in a mirrored print. */
import type { FlatLine, FlatPoint, FlatUse } from '../base/answers/madePart.ts'
import { flatAt, type Rim, type Strip } from './strip.ts'

export const line = (use: FlatUse, points: readonly FlatPoint[], closed = false): FlatLine => ({
  use,
  points,
  closed,
})

/** a capital R on a unit height: it has no mirror image that is itself */
const letter: readonly FlatPoint[] = [
  [0, 0],
  [0, 1],
  [0.45, 1],
  [0.6, 0.9],
  [0.6, 0.65],
  [0.45, 0.55],
  [0, 0.55],
  [0.25, 0.55],
  [0.6, 0],
]

/** The letter R at a place, m; where it reads wrong the print is mirrored and the part would come out inside out. */
export function mirrorMark(at: FlatPoint, height: number): FlatLine {
  return line(
    'match',
    letter.map(([x, y]) => [at[0] + height * x, at[1] + height * y]),
  )
}

/** A place on the strip: part of the way round and from the near to the far rim. */
export function placeOn(strip: Strip, round: number, up: number): FlatPoint {
  const at = round * (strip.count - 1)
  const [a, b] = [alongRim(strip, at, 'near'), alongRim(strip, at, 'far')]
  return [a[0] + up * (b[0] - a[0]), a[1] + up * (b[1] - a[1])]
}

/** Numbers of the rulings that share a strip into so many equal steps, both edges among them. */
export const evenRulings = (strip: Strip, steps: number): number[] =>
  Array.from({ length: steps + 1 }, (_, k) => Math.round((k * (strip.count - 1)) / steps))

/** Rulings to bend along. */
export const rollLines = (strip: Strip, rulings: readonly number[]): FlatLine[] =>
  rulings.map((i) => line('roll', [flatAt(strip, i, 'near'), flatAt(strip, i, 'far')]))

/** A point on a rim at a ruling that may lie between two. */
export function alongRim(strip: Strip, at: number, rim: Rim): FlatPoint {
  const i = Math.min(strip.count - 2, Math.max(0, Math.floor(at)))
  const t = Math.min(1, Math.max(0, at - i))
  const [p, q] = [flatAt(strip, i, rim), flatAt(strip, i + 1, rim)]
  return [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]
}

/**
 * Short ticks inward from a rim at some rulings, which meet the neighbour's ticks; m long. The second of them has a shorter one beside it, so that
 * four alike cannot be mistaken for each other.
 */
export function rimTicks(strip: Strip, rim: Rim, rulings: readonly number[], long = 6e-3): FlatLine[] {
  const other = rim === 'near' ? 'far' : 'near'
  const tick = (at: number, most: number): FlatLine[] => {
    const [a, b] = [alongRim(strip, at, rim), alongRim(strip, at, other)]
    const l = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (!(l > 0)) return []
    const t = Math.min(most, l / 3) / l
    return [line('match', [a, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]])]
  }
  return rulings.flatMap((at, k) => [
    ...tick(at, long),
    ...(k === 1 ? tick(beside(strip, at, rim), long / 2) : []),
  ])
}

/** The ruling two millimetres farther along a rim, or the same one where the rim does not go on. */
function beside(strip: Strip, at: number, rim: Rim): number {
  let i = at
  let left = 2e-3
  while (i < strip.count - 1) {
    const next = Math.min(strip.count - 1, Math.floor(i) + 1)
    const [a, b] = [alongRim(strip, i, rim), alongRim(strip, next, rim)]
    const l = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (l >= left) return i + (left / l) * (next - i)
    left -= l
    i = next
  }
  return at
}
