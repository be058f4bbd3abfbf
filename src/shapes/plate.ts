/** Flat parts that stay flat, or are dished by hammer: an outline with holes, marks and words. */
import type { FlatLine, FlatPiece, FlatPoint } from '../base/answers/madePart.ts'
import type { Sentence } from '../base/answers/sentence.ts'
import { areaOf, distanceTo, isInside } from './outlines.ts'
import { line, mirrorMark } from './patternMarks.ts'
import { extremes, mustLie } from './shapeFault.ts'

export interface PlateShape {
  id: string
  title: string
  thickness: number
  count?: number
  /** anticlockwise, m */
  outline: readonly FlatPoint[]
  holes?: readonly (readonly FlatPoint[])[]
  lines?: readonly FlatLine[]
  said?: readonly Sentence[]
  /** rolling direction, rad from x */
  grain?: number
}

/** Net area of a flat piece, m²: outlines less holes. */
export function netArea(piece: Pick<FlatPiece, 'lines'>): number {
  let sum = 0
  for (const { use, points, closed } of piece.lines)
    if (closed && (use === 'cut' || use === 'hole'))
      sum += (use === 'cut' ? 1 : -1) * Math.abs(areaOf(points))
  return sum
}

/** Where there is most room inside an outline and outside its holes, of a coarse grid, and how much, m. */
function roomiest(outline: readonly FlatPoint[], holes: readonly (readonly FlatPoint[])[]) {
  const xs = outline.map((p) => p[0])
  const ys = outline.map((p) => p[1])
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  let best = { at: outline[0]!, room: 0 }
  const grid = 14
  for (let i = 1; i < grid; i++)
    for (let j = 1; j < grid; j++) {
      const at: FlatPoint = [left + ((right - left) * i) / grid, low + ((high - low) * j) / grid]
      if (!isInside(at, outline) || holes.some((h) => isInside(at, h))) continue
      const room = Math.min(distanceTo(at, outline), ...holes.map((h) => distanceTo(at, h)))
      if (room > best.room) best = { at, room }
    }
  return best
}

/** A flat piece from its outline: holes, lines, the letter R and its words where there is most room. ShapeFault for a thickness out of range. */
export function plate(p: PlateShape): FlatPiece {
  mustLie('thickness', p.thickness, extremes.thinnest, extremes.thickest)
  const holes = p.holes ?? []
  const { at, room } = roomiest(p.outline, holes)
  const height = Math.min(0.012, Math.max(1e-3, room))
  return {
    id: p.id,
    title: p.title,
    thickness: p.thickness,
    count: p.count ?? 1,
    lines: [
      line('cut', p.outline, true),
      ...holes.map((h) => line('hole', h, true)),
      ...(p.lines ?? []),
      mirrorMark([at[0] - 0.3 * height, at[1] - 0.5 * height], height),
    ],
    words: [p.title, ...(p.said ?? [])].map((says, k) => ({
      at: [at[0] - 0.3 * height, at[1] - 0.5 * height - (k + 1) * 4e-3] as FlatPoint,
      says,
    })),
    ...(p.grain === undefined ? {} : { grain: p.grain }),
  }
}
