/** A book as files: one PDF, or a folder with a PDF for each chapter, its drawings as SVG and its tables as CSV (RFC 4180). */
import { strToU8 } from 'fflate'
import { type FontFiles, type PdfHow, pdfOf } from '../drawing/pdf.ts'
import type { Sheet } from '../drawing/sheet.ts'
import { svgOf } from '../drawing/svg.ts'
import type { Book } from './bookPages.ts'

/** What a file is written with: letters to carry, and the date of the book, year-month-day. */
export interface BookWriting {
  fonts: FontFiles
  date: string
}

const howOf = ({ fonts, date }: BookWriting): PdfHow => ({ fonts, date: new Date(`${date}T00:00:00Z`) })

/** The whole as one PDF; the same book, letters and date give the same bytes. */
export function bookPdf(book: Book, writing: BookWriting): Promise<Uint8Array> {
  return pdfOf(
    book.chapters.flatMap((c) => c.pages),
    book.title,
    howOf(writing),
  )
}

/** Files of the folder by name. */
export async function bookFolder(book: Book, writing: BookWriting): Promise<Record<string, Uint8Array>> {
  const files: Record<string, Uint8Array> = {}
  for (const [i, { id, title, pages }] of book.chapters.entries())
    files[`${String(i).padStart(2, '0')}-${fileName(id)}.pdf`] = await pdfOf(
      alone(pages),
      `${book.title}: ${title}`,
      howOf(writing),
    )
  for (const [name, sheet] of book.figures) files[`drawings/${fileName(name)}.svg`] = strToU8(svgOf(sheet))
  for (const [name, rows] of book.tables) files[`tables/${fileName(name)}.csv`] = strToU8(csvOf(rows))
  return files
}

/** Pages whose links lead only to each other. */
function alone(pages: readonly Sheet[]): Sheet[] {
  const here = new Set(pages.flatMap((p) => (p.places ?? []).map(({ name }) => name)))
  return pages.map((page) => ({
    ...page,
    tags: (page.tags ?? []).map((tag) => {
      if (!tag.leads || here.has(tag.leads.to)) return tag
      const { leads: _, alt: __, ...rest } = tag
      return rest
    }),
  }))
}

const fileName = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')

/** Rows as comma-separated values, quoted where they have to be, with the line ends of the standard. */
export const csvOf = (rows: readonly (readonly string[])[]): string =>
  rows
    .map((row) => row.map((c) => (/[",\r\n]/.test(c) ? `"${c.replaceAll('"', '""')}"` : c)).join(','))
    .join('\r\n')
    .concat('\r\n')
