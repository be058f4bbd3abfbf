/** Draw lists to PDF at 1:1; the writer is loaded only when asked for. ISO 32000-1:2008; a point is 1/72 inch. */
import type { PDFDocument, PDFFont, PDFPage } from '@cantoo/pdf-lib'
import { inkIn, num, point, putShape } from './pdfShapes.ts'
import { type PdfTags, pdfTags } from './pdfTags.ts'
import { pngOf } from './png.ts'
import type { Mark, PageTag, Sheet } from './sheet.ts'
import { textWidth } from './textWidth.ts'

/** one fixed date in every file, so that the same drawing gives the same bytes */
const fixedDate = new Date(Date.UTC(2000, 0, 1))

interface PdfFonts {
  plain: PDFFont
  bold: PDFFont
  /** a text with only letters the fonts have */
  letters: (words: string) => string
}

/** Font files (TrueType) as wide as Helvetica, letter by letter, to be carried in the document. */
export interface FontFiles {
  plain: Uint8Array
  bold: Uint8Array
}

export interface PdfHow {
  /** carried in the document; the reader's own Helvetica where left out */
  fonts?: FontFiles
  /** when it was made, to the document's own account */
  date?: Date
}

interface PdfBook {
  document: PDFDocument
  fonts: PdfFonts
  /** a page of a size in mm with drawings on it, each with its lower left corner at x, y mm */
  addPage(
    width: number,
    height: number,
    sheets: readonly { sheet: Sheet; x: number; y: number }[],
  ): Promise<void>
  save(): Promise<Uint8Array>
}

/** letters Helvetica in a PDF has not got, and what stands for them */
const standIns: Record<string, string> = {
  '−': '-',
  '\u202f': ' ',
  '\u2009': ' ',
  '≤': '<=',
  '≥': '>=',
  '→': '->',
  '≈': '~',
  Ω: 'ohm',
  μ: 'µ',
  '₂': '2',
  '√': 'root ',
  π: 'pi',
  φ: 'phi',
  '′': "'",
  '″': '"',
}

/** Text with only letters the standard fonts can set (Windows code page 1252). */
export function winAnsi(words: string): string {
  return [...words]
    .map((l) => standIns[l] ?? (/[\u0020-\u007e\u00a0-\u00ff–—‘’“”•…€†]/.test(l) ? l : '?'))
    .join('')
}

/** A new PDF; add pages to it, then save. @public */
export async function startPdf(title: string, how: PdfHow = {}): Promise<PdfBook> {
  const lib = await import('@cantoo/pdf-lib')
  const document = await lib.PDFDocument.create({ updateMetadata: false })
  document.setTitle(title)
  document.setProducer('Wakewright')
  document.setCreator('Wakewright')
  document.setCreationDate(how.date ?? fixedDate)
  document.setModificationDate(how.date ?? fixedDate)
  document.setLanguage('en')
  // a drawing at 1:1 is not to be fitted to the page
  const shows = document.catalog.getOrCreateViewerPreferences()
  shows.setPrintScaling(lib.PrintScaling.None)
  shows.setDisplayDocTitle(true)
  const fonts = await fontsOf(lib, document, how.fonts)
  const tags = pdfTags(lib, document)
  let tagged = false
  return {
    document,
    fonts,
    async addPage(width, height, sheets) {
      const page = document.addPage([width * point, height * point])
      for (const { sheet, x, y } of sheets) {
        tagged ||= sheet.tags !== undefined
        await putSheet(lib, document, page, fonts, sheet, x, y, sheet.tags && tags)
      }
    },
    save() {
      if (tagged) tags.finish()
      return document.save({ useObjectStreams: false })
    },
  }
}

async function fontsOf(lib: Lib, document: PDFDocument, files: FontFiles | undefined): Promise<PdfFonts> {
  if (!files)
    return {
      plain: await document.embedFont(lib.StandardFonts.Helvetica),
      bold: await document.embedFont(lib.StandardFonts.HelveticaBold),
      letters: winAnsi,
    }
  const { default: fontkit } = await import('@cantoo/fontkit')
  document.registerFontkit(fontkit)
  // letters stay where the draw list put them: no kerning, no letters run together
  const how = { subset: true, features: { kern: false, liga: false } }
  const plain = await document.embedFont(files.plain, how)
  const has = new Set(plain.getCharacterSet())
  return {
    plain,
    bold: await document.embedFont(files.bold, how),
    letters: (words) =>
      [...words].map((l) => (has.has(l.codePointAt(0)!) ? l : (standIns[l] ?? '?'))).join(''),
  }
}

/** One page for each drawing, the page as large as the drawing. */
export async function pdfOf(sheets: readonly Sheet[], title: string, how: PdfHow = {}): Promise<Uint8Array> {
  const book = await startPdf(title, how)
  for (const sheet of sheets) await book.addPage(sheet.width, sheet.height, [{ sheet, x: 0, y: 0 }])
  return book.save()
}

type Lib = typeof import('@cantoo/pdf-lib')

async function putSheet(
  lib: Lib,
  document: PDFDocument,
  page: PDFPage,
  fonts: PdfFonts,
  sheet: Sheet,
  x: number,
  y: number,
  tree: PdfTags | undefined,
): Promise<void> {
  for (const place of tree ? (sheet.places ?? []) : []) tree!.place(page, { ...place, y: place.y + y })
  const runs = tree ? runsOf(sheet) : [{ from: 0, to: sheet.marks.length, tag: undefined }]
  for (const { from, to, tag } of runs) {
    tree?.begin(page, tag)
    await putMarks(lib, document, page, fonts, sheet.marks.slice(from, to), x, y)
    tree?.end(page)
  }
}

/** The marks of a page in runs: tagged ones, and decoration between them. */
function runsOf({ marks, tags = [] }: Sheet): { from: number; to: number; tag: PageTag | undefined }[] {
  const runs: { from: number; to: number; tag: PageTag | undefined }[] = []
  let at = 0
  for (const tag of tags) {
    if (tag.from > at) runs.push({ from: at, to: tag.from, tag: undefined })
    runs.push({ from: tag.from, to: tag.to, tag })
    at = tag.to
  }
  if (at < marks.length) runs.push({ from: at, to: marks.length, tag: undefined })
  return runs
}

async function putMarks(
  lib: Lib,
  document: PDFDocument,
  page: PDFPage,
  fonts: PdfFonts,
  marks: readonly Mark[],
  x: number,
  y: number,
): Promise<void> {
  for (const mark of marks) {
    if (mark.kind === 'image') {
      const image = await document.embedPng(pngOf(mark.rgb, mark.cols, mark.rows))
      page.drawImage(image, {
        x: (x + mark.x) * point,
        y: (y + mark.y) * point,
        width: mark.w * point,
        height: mark.h * point,
      })
    } else if (mark.kind === 'text') putText(lib, page, fonts, mark, x, y)
    else putShape(lib, page, mark, x, y)
  }
}

function putText(
  lib: Lib,
  page: PDFPage,
  fonts: PdfFonts,
  mark: Extract<Mark, { kind: 'text' }>,
  x: number,
  y: number,
): void {
  const words = fonts.letters(mark.text)
  const font = mark.style.bold ? fonts.bold : fonts.plain
  const size = mark.size * point
  const letters = lettersIn(font, words)
  const width = mark.size * letters.reduce((sum, l) => sum + l.width, 0)
  const back = mark.anchor === 'start' ? 0 : width * (mark.anchor === 'end' ? 1 : 0.5)
  const angle = mark.angle ?? 0
  if (mark.style.halo && angle === 0)
    page.drawRectangle({
      x: (x + mark.x - back - 0.3) * point,
      y: (y + mark.y - 0.25 * mark.size) * point,
      width: (textWidth(mark.text, mark.size, mark.style.bold) + 0.6) * point,
      height: mark.size * 1.05 * point,
      color: lib.rgb(1, 1, 1),
      opacity: 0.75,
    })
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  const at = [x + mark.x - back * c, y + mark.y - back * s].map((v) => num(v * point)).join(' ')
  const turn = [c, s, -s, c].map(num).join(' ')
  const how = `BT ${inkIn(mark.style.fill ?? '#1b1b1b', 'rg')}${fontName(page, font)} ${num(size)} Tf ${turn} ${at} Tm <${letters.map((l) => l.hex).join('')}> Tj`
  page.pushOperators(lib.PDFOperator.of(lib.PDFOperatorNames.EndText, [how]))
}

interface Letter {
  /** its code in the font, as hexadecimal digits */
  hex: string
  /** over the size of the text */
  width: number
}

/** Letters stand where the draw list put them, so each is turned into the font's own once: shaping every line would take seconds. */
const known = new WeakMap<PDFFont, Map<string, Letter>>()

function lettersIn(font: PDFFont, words: string): Letter[] {
  const own = known.get(font) ?? new Map<string, Letter>()
  known.set(font, own)
  return [...words].map((letter) => {
    let made = own.get(letter)
    if (!made) {
      const hex = font.encodeText(letter).asString()
      made = { hex, width: font.widthOfTextAtSize(letter, 1000) / 1000 }
      own.set(letter, made)
    }
    return made
  })
}

/** The name a font goes by on a page, given when it is first written with there. */
const named = new WeakMap<PDFPage, Map<PDFFont, string>>()

function fontName(page: PDFPage, font: PDFFont): string {
  const known = named.get(page) ?? new Map<PDFFont, string>()
  named.set(page, known)
  let name = known.get(font)
  if (name === undefined) {
    name = page.node.newFontDictionary(font.name, font.ref).toString()
    known.set(font, name)
  }
  return name
}
