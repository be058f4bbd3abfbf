/** A part of sheet with its sizes, shrunk to a page: each piece in its box, how wide and how tall it is cut. */
import { inMm } from '../base/answers/amounts.ts'
import type { MadePart } from '../base/answers/madePart.ts'
import { printed, say } from '../base/answers/sentence.ts'
import type { DisplaySystem } from '../base/units/format.ts'
import { moved } from '../drawing/compose.ts'
import { dimension } from '../drawing/dimension.ts'
import { boundsOf, flatSheet, type LaidPiece } from '../drawing/flatSheet.ts'
import type { Mark, Sheet } from '../drawing/sheet.ts'
import { stacked } from '../whole/make/patternFiles.ts'

/** room for the dimensions, mm on the sheet */
const room = 14

/** Pieces as they are cut, at so wide a scale, with overall sizes; none where the part cannot be drawn. */
export function partDrawing(
  part: MadePart,
  width: number,
  most: number,
  system: DisplaySystem,
): Sheet | undefined {
  const pieces = part.flats?.() ?? []
  if (pieces.length === 0) return undefined
  const laid = stacked(pieces)
  const whole = flatSheet(laid, part.title, system, 0)
  const scale = Math.min((width - 2 * room) / whole.width, (most - 2 * room) / whole.height)
  const box = boundsOf(laid)
  const at = ([x, y]: readonly [number, number]): [number, number] => [
    room + (x - box.left) * 1e3 * scale,
    room + (y - box.bottom) * 1e3 * scale,
  ]
  // letters on a piece are for the pattern: shrunk with it they would not be read
  const drawn = moved(
    whole.marks.filter((m) => m.kind !== 'text'),
    room,
    room,
    scale,
  )
  return {
    width: whole.width * scale + 2 * room,
    height: whole.height * scale + 2 * room,
    title: part.title,
    says: `${part.title}: ${pieces.length === 1 ? 'its piece' : `its ${pieces.length} pieces`} as cut, shrunk to the page, with overall sizes.`,
    marks: [...drawn, ...laid.flatMap((one) => sizesOf(one, at, system))],
  }
}

function sizesOf(
  one: LaidPiece,
  at: (p: readonly [number, number]) => [number, number],
  system: DisplaySystem,
): Mark[] {
  const { left, right, bottom, top } = boundsOf([one])
  const [x0, y0] = at([left, bottom])
  const [x1, y1] = at([right, top])
  const size = (v: number) => printed(say`${inMm(v, 0.1)}`, system)
  return [
    ...dimension(x0, y0, x1, y0, -6, size(right - left)),
    ...dimension(x1, y0, x1, y1, -6, size(top - bottom)),
  ]
}
