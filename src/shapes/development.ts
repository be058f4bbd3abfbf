/** A surface developed: the piece to cut, and the strips that prove it when they are rolled up again. */
import type { FlatPiece, FlatPoint } from '../base/answers/madePart.ts'
import type { Sentence } from '../base/answers/sentence.ts'
import { evenRulings, line, mirrorMark, placeOn, rimTicks, rollLines } from './patternMarks.ts'
import { type Seam, seamed } from './seam.ts'
import { extremes, mustLie } from './shapeFault.ts'
import { flatAt, rimLength, type Strip, stripArea } from './strip.ts'

/** What a pattern needs besides its shape. */
export interface Sheeting {
  id: string
  title: string
  /** of the sheet, m */
  thickness: number
  seam: Seam
  /** how many are wanted; one where left out */
  count?: number
}

export interface Development {
  piece: FlatPiece
  /** in place, each flat and in space */
  strips: readonly Strip[]
  /** of the surface itself, without laps, m² */
  area: number
}

/** roll lines about this far apart, m: a brake or a bar takes a step about so wide */
const rollStep = 8e-3

/** Height of the letter that shows a mirrored print, m: between 3 and 12 mm, an eighth of the piece. */
const letterHeight = (across: number): number => Math.min(0.012, Math.max(0.003, across / 8))

/** Which rulings are drawn to bend along, and where the rims carry ticks (also between rulings); evenly spread where left out. */
export interface Ruled {
  rolls?: readonly number[]
  near?: readonly number[]
  far?: readonly number[]
}

/** One strip as a piece to cut: outline with its seam, roll lines, ticks at the quarters, the letter R, the title. */
export function developed(
  strip: Strip,
  sheeting: Sheeting,
  said: readonly Sentence[] = [],
  ruled: Ruled = {},
): Development {
  const { id, title, thickness, seam, count = 1 } = sheeting
  mustLie('thickness', thickness, extremes.thinnest, extremes.thickest)
  const round = Math.max(rimLength(strip, 'near'), rimLength(strip, 'far'))
  const { outline, line: lapLine } = seamed(strip, seam, thickness, round / (2 * Math.PI))
  const rolls = Math.min(48, Math.max(12, Math.round(round / rollStep)))
  const [a, b] = [placeOn(strip, 0.5, 0), placeOn(strip, 0.5, 1)]
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  const height = letterHeight(Math.min(long, round / 2))
  const from = placeOn(strip, 0.5, 0.55)
  const words = [title, 'this face out', ...said].map((says, k) => ({
    at: [from[0] - 0.15 * round, from[1] - 1.4 * k * Math.min(4e-3, long / 8)] as FlatPoint,
    says,
  }))
  return {
    piece: {
      id,
      title,
      thickness,
      count,
      words,
      lines: [
        line('cut', outline, true),
        ...rollLines(strip, ruled.rolls ?? evenRulings(strip, rolls).slice(1, -1)),
        ...(lapLine ? [line('weld', lapLine)] : []),
        ...rimTicks(strip, 'near', ruled.near ?? evenRulings(strip, 4)),
        ...rimTicks(strip, 'far', ruled.far ?? evenRulings(strip, 4)),
        mirrorMark(placeOn(strip, 0.58, 0.6), height),
      ],
    },
    strips: [strip],
    area: stripArea(strip),
  }
}

/** A run of a strip's rulings, from one to another, its flat turned so that its middle ruling stands upright. */
function partOf(strip: Strip, from: number, to: number): Strip {
  const count = to - from + 1
  const flat = strip.flat.slice(4 * from, 4 * (to + 1))
  const mid = from + (count >> 1)
  const [p, q] = [flatAt(strip, mid, 'near'), flatAt(strip, mid, 'far')]
  const l = Math.hypot(q[0] - p[0], q[1] - p[1])
  const [s, c] = [(q[0] - p[0]) / l, (q[1] - p[1]) / l]
  for (let o = 0; o < flat.length; o += 2) {
    const [x, y] = [flat[o]! - p[0], flat[o + 1]! - p[1]]
    flat[o] = c * x - s * y
    flat[o + 1] = s * x + c * y
  }
  return { count, flat, space: strip.space.slice(6 * from, 6 * (to + 1)), ring: false }
}

/** The same surface in so many gores with a seam each, for what is larger than the sheet: 2 or more. */
export function inGores(whole: Development, gores: number, sheeting: Sheeting): Development[] {
  mustLie('gores', gores, 2, 16)
  const strip = whole.strips[0]!
  const step = (strip.count - 1) / gores
  return Array.from({ length: gores }, (_, k) =>
    developed(partOf(strip, Math.round(k * step), Math.round((k + 1) * step)), {
      ...sheeting,
      id: `${sheeting.id}-${k + 1}`,
      title: `${sheeting.title}, gore ${k + 1} of ${gores}`,
    }),
  )
}
