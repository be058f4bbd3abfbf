/** The files of a part made of sheet: its pieces side by side at 1:1, as pages to print, SVG and DXF. */
import { strToU8 } from 'fflate'
import type { FlatPiece, FlatPoint, MadePart } from '../../base/answers/madePart.ts'
import type { DisplaySystem } from '../../base/units/format.ts'
import { dxfText } from '../../drawing/dxf.ts'
import { boundsOf, flatSheet, type LaidPiece } from '../../drawing/flatSheet.ts'
import type { PaperName } from '../../drawing/papers.ts'
import { pdfOf } from '../../drawing/pdf.ts'
import type { PrintScale } from '../../drawing/printScale.ts'
import type { Sheet } from '../../drawing/sheet.ts'
import { svgOf } from '../../drawing/svg.ts'
import { tiled } from '../../drawing/tiles.ts'

/** metal left between pieces of one drawing, m */
const between = 8e-3

/** Pieces one above the other, none over another. */
export function stacked(pieces: readonly FlatPiece[]): LaidPiece[] {
  let top = 0
  return pieces.map((piece) => {
    const box = boundsOf([{ piece }])
    const [left, up] = [box.left, top - box.bottom]
    top += box.top - box.bottom + between
    return { piece, laid: ([x, y]: FlatPoint): FlatPoint => [x - left, y + up] }
  })
}

/** The drawing of a part, or none where it cannot be drawn. */
export function partSheet(part: MadePart, system: DisplaySystem = 'metric'): Sheet | undefined {
  const pieces = part.flats?.() ?? []
  return pieces.length > 0 ? flatSheet(stacked(pieces), part.title, system) : undefined
}

export interface PatternPaper {
  paper: PaperName
  scale?: PrintScale
  system?: DisplaySystem
}

export type PatternFormat = 'pdf' | 'svg' | 'dxf'

/** One file of a part, as bytes; none where it cannot be drawn. RangeError where its print takes more pages than can be joined. */
export async function patternFile(
  part: MadePart,
  format: PatternFormat,
  on: PatternPaper,
): Promise<Uint8Array | undefined> {
  const sheet = partSheet(part, on.system)
  if (!sheet) return undefined
  if (format === 'pdf') return pdfOf(tiled(sheet, on), part.title)
  const text =
    format === 'svg' ? svgOf(sheet) : [...dxfText(stacked(part.flats?.() ?? []), on.system)].join('')
  return strToU8(text)
}
