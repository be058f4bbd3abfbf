/** Flat pieces as a drawing at 1:1: what is cut, bent and marked in colours that also read in grey, and the words on them. */
import type { FlatLine, FlatPiece, FlatPoint, FlatUse } from '../base/answers/madePart.ts'
import { printed } from '../base/answers/sentence.ts'
import type { DisplaySystem } from '../base/units/format.ts'
import { okabeIto } from './palette.ts'
import type { Layer, Mark, Sheet, Style } from './sheet.ts'

const styles: Record<FlatUse, { layer: Layer; style: Style }> = {
  cut: { layer: 'cut', style: { stroke: '#000000', width: 0.3 } },
  hole: { layer: 'cut', style: { stroke: '#000000', width: 0.3 } },
  fold: { layer: 'bend', style: { stroke: okabeIto.vermillion, width: 0.25, dash: [6, 2] } },
  roll: { layer: 'bend', style: { stroke: okabeIto.blue, width: 0.13, dash: [2, 2] } },
  weld: { layer: 'mark', style: { stroke: okabeIto.vermillion, width: 0.2, dash: [1, 1] } },
  match: { layer: 'mark', style: { stroke: okabeIto.green, width: 0.25 } },
  centre: { layer: 'mark', style: { stroke: '#5c5c5c', width: 0.13, dash: [8, 2, 1, 2] } },
}

const mm = 1e3
/** letters on a pattern, mm */
const letters = 3

/** Moves a flat point to where it is laid: metres in, metres out. */
export type Laid = (p: FlatPoint) => FlatPoint

/** Where it was drawn. */
export const whereDrawn: Laid = (p) => p

/** A piece and where it lies; where it was drawn if left out. */
export interface LaidPiece {
  piece: FlatPiece
  laid?: Laid
}

interface Bounds {
  left: number
  right: number
  bottom: number
  top: number
}

/** The box round all lines of some pieces, m. RangeError where there is nothing to draw. */
export function boundsOf(pieces: readonly LaidPiece[]): Bounds {
  const box = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity }
  for (const { piece, laid = whereDrawn } of pieces)
    for (const { points } of piece.lines)
      for (const p of points) {
        const [x, y] = laid(p)
        box.left = Math.min(box.left, x)
        box.right = Math.max(box.right, x)
        box.bottom = Math.min(box.bottom, y)
        box.top = Math.max(box.top, y)
      }
  if (!(box.right >= box.left && Number.isFinite(box.right - box.left + box.top - box.bottom)))
    throw new RangeError('pieces: nothing to draw, expected lines of finite points')
  return box
}

/** A drawing of pieces at 1:1, `margin` mm of paper round them. */
export function flatSheet(
  pieces: readonly LaidPiece[],
  title: string,
  system: DisplaySystem = 'metric',
  margin = 5,
): Sheet {
  const box = boundsOf(pieces)
  const at = (p: FlatPoint, laid: Laid): [number, number] => {
    const [x, y] = laid(p)
    return [(x - box.left) * mm + margin, (y - box.bottom) * mm + margin]
  }
  const marks = pieces.flatMap(({ piece, laid = whereDrawn }): Mark[] => [
    ...piece.lines.map((l) => markOf(l, (p) => at(p, laid))),
    ...piece.words.map((w): Mark => {
      const [x, y] = at(w.at, laid)
      return {
        kind: 'text',
        x,
        y,
        text: printed(w.says, system),
        size: letters,
        anchor: 'start',
        style: {},
        layer: 'mark',
      }
    }),
  ])
  return {
    width: (box.right - box.left) * mm + 2 * margin,
    height: (box.top - box.bottom) * mm + 2 * margin,
    title,
    says: `${title}, at 1:1.`,
    marks,
  }
}

function markOf(line: FlatLine, at: (p: FlatPoint) => [number, number]): Mark {
  const points = Float64Array.from(line.points.flatMap(at))
  const { layer, style } = styles[line.use]
  return { kind: line.closed ? 'polygon' : 'polyline', points, style, layer }
}
