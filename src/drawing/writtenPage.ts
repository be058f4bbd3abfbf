/** Written sheets of paper as draw lists: headings, wrapped words, lists, boxes and drawings flowing down A4 pages (ISO 216). */
import { moved } from './compose.ts'
import { line, rectangle, text } from './marks.ts'
import { faint, ink, quiet } from './palette.ts'
import type { Mark, Sheet } from './sheet.ts'
import { wrapText } from './textWidth.ts'

/** mm */
export const a4 = { width: 210, height: 297, margin: 14 } as const
const inner = a4.width - 2 * a4.margin
const footSize = 2.4

export interface WordsHow {
  /** mm */
  size?: number
  bold?: boolean
  quiet?: boolean
  /** mm from the left margin */
  indent?: number
  /** stands before the first line, in the indent */
  sign?: string
}

export interface WrittenPages {
  words(words: string, how?: WordsHow): void
  heading(words: string): void
  gap(mm: number): void
  /** a square to tick, and words beside it */
  tick(words: string): void
  /** empty boxes to write in, so many in a row, each with its words */
  boxes(labels: readonly string[]): void
  /** a drawing, shrunk to the room there is */
  drawing(sheet: Sheet, most: number): void
  /** columns of words, widths in mm */
  row(cells: readonly string[], widths: readonly number[], how?: WordsHow): void
  /** mm left on this page */
  left(): number
  pages(): Sheet[]
}

/** Starts a written sheet; `title` is read out, `foot` stands small at the bottom of every page. */
export function writtenPages(title: string, foot: string): WrittenPages {
  const pages: Mark[][] = []
  let marks: Mark[] = []
  let y = 0
  const said: string[] = []
  const begin = () => {
    marks = []
    pages.push(marks)
    y = a4.height - a4.margin
    wrapText(foot, footSize, inner).forEach((piece, i, all) => {
      marks.push(
        text(a4.margin, a4.margin - 4 + (all.length - 2 - i) * footSize * 1.35, piece, {
          size: footSize,
          colour: quiet,
        }),
      )
    })
  }
  const room = (mm: number) => {
    if (y - mm < a4.margin) begin()
  }
  begin()
  const put = (x: number, width: number, words: string, how: WordsHow): number => {
    const size = how.size ?? 3.2
    const lines = wrapText(words, size, width, how.bold)
    lines.forEach((piece, i) => {
      marks.push(
        text(x, y - (i + 1) * size * 1.35, piece, {
          size,
          bold: how.bold ?? false,
          colour: how.quiet ? quiet : ink,
        }),
      )
    })
    return lines.length * size * 1.35
  }
  const words = (what: string, how: WordsHow = {}) => {
    const size = how.size ?? 3.2
    const indent = how.indent ?? 0
    said.push(what)
    room(wrapText(what, size, inner - indent, how.bold).length * size * 1.35)
    if (how.sign)
      marks.push(text(a4.margin + indent - 5, y - size * 1.35, how.sign, { size, bold: true, colour: ink }))
    y -= put(a4.margin + indent, inner - indent, what, how)
  }
  return {
    words,
    heading(what) {
      room(14)
      y -= 3
      words(what, { size: 4.2, bold: true })
      y -= 1
    },
    gap(mm) {
      y -= mm
    },
    tick(what) {
      room(5)
      marks.push(rectangle(a4.margin, y - 4.1, 3, 3, { stroke: ink, width: 0.3 }, 'mark'))
      words(what, { indent: 5.5 })
      y -= 0.8
    },
    boxes(labels) {
      room(13)
      y -= 1
      const width = inner / labels.length
      labels.forEach((label, i) => {
        const x = a4.margin + i * width
        marks.push(rectangle(x, y - 11, width - 2, 11, { stroke: quiet, width: 0.3 }, 'mark'))
        marks.push(text(x + 1, y - 3, label, { size: 2.4, colour: quiet }))
      })
      y -= 13
    },
    drawing(sheet, most) {
      const scale = Math.min(inner / sheet.width, most / sheet.height)
      const height = sheet.height * scale
      room(height + 2)
      y -= height
      marks.push(...moved(sheet.marks, a4.margin + (inner - sheet.width * scale) / 2, y, scale))
      y -= 2
    },
    row(cells, widths, how = {}) {
      const size = how.size ?? 3
      const tall =
        Math.max(...cells.map((c, i) => wrapText(c, size, widths[i]! - 2, how.bold).length)) * size * 1.35
      room(tall + 1)
      let x = a4.margin
      cells.forEach((cell, i) => {
        put(x, widths[i]! - 2, cell, { ...how, size })
        x += widths[i]!
      })
      y -= tall + 0.8
      marks.push(line(a4.margin, y, a4.margin + inner, y, { stroke: faint, width: 0.2 }, 'grid'))
      said.push(cells.join(' '))
    },
    left: () => y - a4.margin,
    pages: () =>
      pages.map((own, i) => ({
        width: a4.width,
        height: a4.height,
        title: pages.length > 1 ? `${title}, page ${i + 1} of ${pages.length}` : title,
        says: said.join(' ').slice(0, 600),
        marks: own,
      })),
  }
}
