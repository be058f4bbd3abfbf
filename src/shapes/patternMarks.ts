/** What is drawn inside a pattern: roll lines, quarter marks, and a letter that reads wrong in a mirrored print. */
import type { FlatLine, FlatPoint, FlatUse } from '../base/answers/madePart.ts'
import { flatAt, type Strip } from './strip.ts'

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
  const [a, b] = ends(strip, round)
  return [a[0] + up * (b[0] - a[0]), a[1] + up * (b[1] - a[1])]
}

function ends(strip: Strip, round: number): [FlatPoint, FlatPoint] {
  const at = Math.min(strip.count - 1, Math.max(0, round * (strip.count - 1)))
  const i = Math.min(strip.count - 2, Math.floor(at))
  const t = at - i
  const between = (rim: 'near' | 'far'): FlatPoint => {
    const [p, q] = [flatAt(strip, i, rim), flatAt(strip, i + 1, rim)]
    return [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]
  }
  return [between('near'), between('far')]
}

/** Numbers of the rulings that share a strip into so many equal steps, both edges among them. */
export const evenRulings = (strip: Strip, steps: number): number[] =>
  Array.from({ length: steps + 1 }, (_, k) => Math.round((k * (strip.count - 1)) / steps))

/** Rulings to bend along. */
export const rollLines = (strip: Strip, rulings: readonly number[]): FlatLine[] =>
  rulings.map((i) => line('roll', [flatAt(strip, i, 'near'), flatAt(strip, i, 'far')]))

/** Short ticks on both rims at some rulings, which meet the neighbour's ticks; m long. */
export function rimTicks(strip: Strip, rulings: readonly number[], long = 6e-3): FlatLine[] {
  return rulings.flatMap((i) => {
    const [a, b] = [flatAt(strip, i, 'near'), flatAt(strip, i, 'far')]
    const l = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (!(l > 0)) return []
    const t = Math.min(long, l / 3) / l
    const part = (p: FlatPoint, q: FlatPoint): FlatPoint => [
      p[0] + t * (q[0] - p[0]),
      p[1] + t * (q[1] - p[1]),
    ]
    return [line('match', [a, part(a, b)]), line('match', [b, part(b, a)])]
  })
}
