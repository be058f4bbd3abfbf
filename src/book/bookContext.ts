/** What a chapter writes with: the page it is on, the craft's answers, numbers in the reader's units, boxes, and where other things stand. */

import { type Piece, printed, printedAmount, type Sentence } from '../base/answers/sentence.ts'
import { proseIn } from '../base/units/prose.ts'
import type { Sheet } from '../drawing/sheet.ts'
import type { WrittenPages } from '../drawing/writtenPage.ts'
import type { NumberTable } from '../trades/trade.ts'
import type { BoxList } from './bookBoxes.ts'
import type { BookSource } from './bookSource.ts'

/** Drawings and tables of a book by name: drawn once, however often pages are laid out, and written as files of their own. */
export interface BookStore {
  figures: Map<string, Sheet>
  tables: Map<string, readonly (readonly string[])[]>
}

/** Sources in the order in which they are first named. */
export interface SourceList {
  /** "[3]" */
  of(source: string): string
  all(): readonly string[]
}

export function sourceList(): SourceList {
  const known = new Map<string, number>()
  return {
    of(source) {
      if (!known.has(source)) known.set(source, known.size + 1)
      return `[${known.get(source)}]`
    },
    all: () => [...known.keys()],
  }
}

export interface BookContext {
  source: BookSource
  page: WrittenPages
  boxes: BoxList
  /** where figures come from, each with a number that stands in brackets where it is used */
  cited: SourceList
  store: BookStore
  /** "page 14" of a place; "page –" while pages are first laid out, undefined for a place that is nowhere */
  pageOf(name: string): string | undefined
}

export interface Chapter {
  id: string
  title: string
  write(book: BookContext): void
}

/** A sentence, or words of the project's own, in the reader's units. */
export const shown = ({ source }: Pick<BookContext, 'source'>, says: Sentence): string =>
  typeof says === 'string' ? proseIn(says, source.units) : printed(says, source.units)

/** A drawing, drawn when first asked for and shrunk to the room there is. */
export function figure(book: BookContext, name: string, most: number, draw: () => Sheet | undefined): void {
  const { figures } = book.store
  let sheet = figures.get(name)
  if (!sheet) {
    sheet = draw()
    if (!sheet) return
    figures.set(name, sheet)
  }
  book.page.drawing(sheet, most)
}

/** A table on the page and among the files. */
export function tableOf(
  book: BookContext,
  name: string,
  heads: readonly string[],
  rows: readonly (readonly (string | Piece | Sentence)[])[],
  to?: readonly (string | undefined)[],
): void {
  if (rows.length === 0) return
  const cells = rows.map((r) => r.map((cell) => cellText(book, cell)))
  book.store.tables.set(name, [heads, ...cells])
  book.page.table(heads, cells, to ? { to } : {})
}

function cellText(book: BookContext, cell: string | Piece | Sentence): string {
  if (typeof cell === 'string') return proseIn(cell, book.source.units)
  if (Array.isArray(cell)) return shown(book, cell as Sentence)
  return printedAmount(cell as Exclude<Piece, string>, book.source.units)
}

/** A trade's table of numbers under its caption. */
export function numberTable(book: BookContext, name: string, { caption, heads, rows }: NumberTable): void {
  if (rows.length === 0) return
  book.page.heading(proseIn(caption, book.source.units), { depth: 3 })
  tableOf(book, name, heads, rows)
}

/** Lines with a sign before each. */
export function lines(book: BookContext, says: readonly Sentence[], sign = '·'): void {
  for (const one of says) book.page.words(shown(book, one), { indent: 5, sign })
}

/** Cautions where the act is. */
export function cautions(book: BookContext, says: readonly string[]): void {
  if (says.length === 0) return
  for (const one of says) book.page.words(proseIn(one, book.source.units), { indent: 6, sign: '!' })
  book.page.gap(1)
}

/** "Full size: page 14.", leading there; nothing for a place that is nowhere. */
export function seePage(book: BookContext, before: string, name: string, indent = 0): void {
  const at = book.pageOf(name)
  if (at) book.page.words(`${before}: ${at}.`, { quiet: true, to: name, indent })
}
