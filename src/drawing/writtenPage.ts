/**
 * Written sheets of paper as draw lists: headings, wrapped words, lists, tables, boxes to write in and drawings flowing down pages, each
 * with what it is for somebody it is read out to. Paper: ISO 216 (A4) and ANSI/ASME Y14.1 (Letter).
 */
import { moved } from './compose.ts'
import { line, rectangle, text } from './marks.ts'
import { faint, ink, quiet } from './palette.ts'
import { type PaperName, papers } from './papers.ts'
import type { Mark, PagePlace, PageRole, PageTag, Sheet } from './sheet.ts'
import { columnWidths } from './tableWidths.ts'
import { textWidth, wrapText } from './textWidth.ts'

/** white round a page, mm */
export const pageMargin = 14
const footSize = 2.4
/** from one line to the next, times the size of its letters */
const lead = 1.35

export interface WordsHow {
  /** mm */
  size?: number
  bold?: boolean
  quiet?: boolean
  /** mm from the left margin */
  indent?: number
  /** stands before the first line, in the indent */
  sign?: string
  role?: PageRole
  /** the name of a place it leads to */
  to?: string
}

export interface HeadingHow {
  /** 1 a chapter, 2 a part of it, 3 within that */
  depth?: 1 | 2 | 3
  /** a name that others can lead to; it then stands in the outline */
  name?: string
  /** how deep it stands there, where that is not how large it is written */
  under?: 2 | 3
}

export interface TableHow {
  size?: number
  /** widths of the columns, mm; by what stands in them where left out */
  widths?: readonly number[]
  /** rows that lead somewhere: a name of a place for each row */
  to?: readonly (string | undefined)[]
}

export interface WrittenPages {
  words(words: string, how?: WordsHow): void
  heading(words: string, how?: HeadingHow): void
  gap(mm: number): void
  /** what follows begins on a page of its own */
  newPage(): void
  /** a square to tick, and words beside it */
  tick(words: string): void
  /** empty boxes to write in, so many in a row, each with its words */
  boxes(labels: readonly string[], inRow?: number): void
  /** a drawing, shrunk to the room there is */
  drawing(sheet: Sheet, most: number): void
  /** a row of a table without a head; widths in mm */
  row(cells: readonly string[], widths: readonly number[], how?: WordsHow): void
  /** a table whose head stands again on each page it takes */
  table(heads: readonly string[], rows: readonly (readonly string[])[], how?: TableHow): void
  /** a page that is drawn already, as large as it is */
  page(sheet: Sheet): void
  /** room across, mm */
  readonly across: number
  /** mm left on this page */
  left(): number
  /** the page being written, from 1 */
  count(): number
  /** finished; with the number of the first page, of so many, both printed at the foot */
  pages(numbers?: { first: number; of: number }): Sheet[]
}

export interface PagesHow {
  paper?: PaperName
  /** letters larger than usual, times */
  letters?: number
}

interface Draft {
  marks: Mark[]
  tags: PageTag[]
  places: PagePlace[]
  size: { width: number; height: number }
}

/** tables of a document are told apart by a number */
let tables = 0

/** Starts a written sheet; `title` is read out, `foot` stands small at the bottom of every page. */
export function writtenPages(title: string, foot: string, how: PagesHow = {}): WrittenPages {
  const paper = papers[how.paper ?? 'A4']
  const inner = paper.width - 2 * pageMargin
  const letters = how.letters ?? 1
  const usual = 3.2 * letters
  const pages: Draft[] = []
  let now: Draft
  let y = 0
  const said: string[] = []
  const begin = (size: { width: number; height: number } = paper) => {
    now = { marks: [], tags: [], places: [], size }
    pages.push(now)
    y = paper.height - pageMargin
  }
  const room = (mm: number) => {
    // what is taller than a page is begun at its top and runs over: nothing here is
    if (y - mm < pageMargin && y < paper.height - pageMargin) begin()
  }
  begin()
  /** what is drawn meanwhile is one thing to a reader */
  const tagged = (role: PageRole, more: Partial<PageTag>, draw: () => void) => {
    const from = now.marks.length
    draw()
    if (now.marks.length > from) now.tags.push({ role, from, to: now.marks.length, ...more })
  }
  const put = (x: number, width: number, words: string, how: WordsHow): number => {
    const size = how.size ?? usual
    const lines = wrapText(words, size, width, how.bold)
    lines.forEach((piece, i) => {
      now.marks.push(
        text(x, y - (i + 1) * size * lead, piece, {
          size,
          bold: how.bold ?? false,
          colour: how.quiet ? quiet : ink,
        }),
      )
    })
    return lines.length * size * lead
  }
  const words = (what: string, how: WordsHow = {}) => {
    const size = how.size ?? usual
    const indent = how.indent ?? 0
    const lines = wrapText(what, size, inner - indent, how.bold).length
    const high = lines * size * lead
    said.push(what)
    room(high)
    const leads = how.to && { to: how.to, x: pageMargin + indent, y: y - high, w: inner - indent, h: high }
    const role = how.role ?? (how.sign ? 'LI' : 'P')
    tagged(role, leads ? { leads, alt: what } : {}, () => {
      if (how.sign)
        now.marks.push(
          text(pageMargin + indent - 5, y - size * lead, how.sign, { size, bold: true, colour: ink }),
        )
      put(pageMargin + indent, inner - indent, what, how)
    })
    y -= high
  }
  const row = (
    cells: readonly string[],
    widths: readonly number[],
    how: WordsHow,
    tag: Partial<PageTag> & { head?: boolean },
  ) => {
    const size = how.size ?? 3 * letters
    const { head, ...more } = tag
    const tall =
      Math.max(...cells.map((c, i) => wrapText(c, size, widths[i]! - 2, how.bold).length)) * size * lead
    let x = pageMargin
    cells.forEach((cell, i) => {
      const leads = how.to && i === 0 && { to: how.to, x: pageMargin, y: y - tall, w: sum(widths), h: tall }
      tagged(head ? 'TH' : 'TD', { ...more, ...(leads ? { leads, alt: cells.join(' ') } : {}) }, () => {
        put(x, widths[i]! - 2, cell, { ...how, size })
      })
      x += widths[i]!
    })
    y -= tall + 0.8
    now.marks.push(
      line(pageMargin, y, pageMargin + inner, y, { stroke: head ? quiet : faint, width: 0.2 }, 'grid'),
    )
    said.push(cells.join(' '))
    return tall
  }
  const tallOf = (cells: readonly string[], widths: readonly number[], size: number, bold = false) =>
    Math.max(...cells.map((c, i) => wrapText(c, size, widths[i]! - 2, bold).length)) * size * lead + 1
  return {
    across: inner,
    words,
    heading(what, { depth = 2, name, under } = {}) {
      const size = [6.4, 4.2, 3.5][depth - 1]! * letters
      // a heading never stands alone at the foot
      room(size * lead * wrapText(what, size, inner, true).length + (depth === 1 ? 40 : 14) * letters)
      if (y < paper.height - pageMargin) y -= depth === 3 ? 1.5 : 3
      if (name) now.places.push({ name, y: y + 1, title: what, depth: under ?? depth })
      words(what, { size, bold: true, role: `H${depth}` })
      y -= 1
    },
    gap(mm) {
      y -= mm
    },
    newPage() {
      if (y < paper.height - pageMargin) begin()
    },
    tick(what) {
      const high = wrapText(what, usual, inner - 5.5).length * usual * lead
      room(high + 0.8)
      now.marks.push(rectangle(pageMargin, y - 1.3 * usual, 3, 3, { stroke: ink, width: 0.3 }, 'mark'))
      words(what, { indent: 5.5, role: 'LI' })
      y -= 0.8
    },
    boxes(labels, inRow = labels.length) {
      room(14)
      y -= 2
      const width = inner / inRow
      labels.forEach((label, i) => {
        const x = pageMargin + i * width
        now.marks.push(rectangle(x, y - 11, width - 2, 11, { stroke: quiet, width: 0.3 }, 'mark'))
        tagged('P', {}, () => {
          now.marks.push(text(x + 1, y - 3.3, label, { size: 2.4 * letters, colour: quiet }))
        })
      })
      y -= 13
    },
    drawing(sheet, most) {
      const high = Math.min(most, paper.height - 2 * pageMargin - 4)
      const scale = Math.min(inner / sheet.width, high / sheet.height)
      const height = sheet.height * scale
      room(height + 4)
      y -= height + 2
      tagged('Figure', { alt: sheet.says || sheet.title }, () => {
        now.marks.push(...moved(sheet.marks, pageMargin + (inner - sheet.width * scale) / 2, y, scale))
      })
      y -= 2
    },
    row(cells, widths, how = {}) {
      room(tallOf(cells, widths, how.size ?? 3 * letters, how.bold))
      // rows that follow one another are one table
      const table = now.tags.at(-1)?.table ?? tables++
      row(cells, widths, how, { table, row: now.tags.length })
    },
    table(heads, rows, { size = 2.9 * letters, widths, to } = {}) {
      if (rows.length === 0) return
      const wide = widths ?? columnWidths([heads, ...rows], inner, (s) => textWidth(s, size, false))
      const table = tables++
      let n = 0
      const top = () => row(heads, wide, { size, bold: true }, { table, row: n++, head: true })
      room(tallOf(heads, wide, size, true) + tallOf(rows[0]!, wide, size))
      top()
      rows.forEach((cells, i) => {
        const before = now
        room(tallOf(cells, wide, size))
        if (now !== before) top()
        row(cells, wide, { size, ...(to?.[i] ? { to: to[i]! } : {}) }, { table, row: n++ })
      })
      y -= 1
    },
    page(sheet) {
      begin({ width: sheet.width, height: sheet.height })
      now.places.push(...(sheet.places ?? []))
      if (sheet.tags) {
        now.marks.push(...sheet.marks)
        now.tags.push(...sheet.tags)
      } else
        tagged('Figure', { alt: sheet.says || sheet.title }, () => {
          now.marks.push(...sheet.marks)
        })
      y = pageMargin
    },
    left: () => y - pageMargin,
    count: () => pages.length,
    pages: (numbers) =>
      pages.map((draft, i) => {
        const own = draft.size === paper
        const marks = [
          ...draft.marks,
          ...(own ? footMarks(foot, inner) : []),
          ...(numbers ? [numberMark(numbers.first + i, numbers.of, draft.size.width, own)] : []),
        ]
        return {
          ...draft.size,
          title: pages.length > 1 ? `${title}, page ${i + 1} of ${pages.length}` : title,
          says: said.join(' ').slice(0, 600),
          marks,
          tags: draft.tags,
          places: draft.places,
        }
      }),
  }
}

const sum = (widths: readonly number[]) => widths.reduce((a, b) => a + b, 0)

function footMarks(foot: string, inner: number): Mark[] {
  return wrapText(foot, footSize, inner - 30).map((piece, i, all) =>
    text(pageMargin, pageMargin - 4 + (all.length - 2 - i) * footSize * lead, piece, {
      size: footSize,
      colour: quiet,
    }),
  )
}

/** Lower still on a page that was drawn already: what is printed at its own foot stays clear. */
const numberMark = (n: number, of: number, width: number, own: boolean): Mark =>
  text(width - pageMargin, own ? pageMargin - 4 - footSize * lead : 3.5, `page ${n} of ${of}`, {
    size: footSize,
    colour: quiet,
    anchor: 'end',
  })
