import { expect, test } from 'vitest'
import { readPdf } from '../../tests/pdfReader.ts'
import { fontsHere } from '../faces/cli/fontsHere.ts'
import { craftLog } from '../whole/log/craftLog.ts'
import { demoCraft } from '../whole/push/demo.testkit.ts'
import { bookFolder, bookPdf, csvOf } from './bookFiles.ts'
import { bookPages } from './bookPages.ts'
import { bookSource } from './bookSource.ts'

const logText = `- at: 2026-05-02
  kind: run
  says: tied up at the jetty
  readings: { pull: 52 kg, rpm: 6100 rpm }
`
const heron = demoCraft('heron')
const log = craftLog(heron, logText)
const source = bookSource(heron, { log, date: '2026-06-01' })
const book = bookPages(source)
const writing = { fonts: fontsHere(), date: '2026-06-01' }
const pdf = await bookPdf(book, writing)
const read = await readPdf(pdf)
const textOf = (page: (typeof read.pages)[number]) => page.words.map((w) => w.text).join(' ')
const count = book.chapters.reduce((sum, c) => sum + c.pages.length, 0)

test('the same craft, log and date give the same bytes, in less than 3 MB', async () => {
  const again = bookPages(bookSource(demoCraft('heron'), { log, date: '2026-06-01' }))
  const bytes = await bookPdf(again, writing)
  expect(Buffer.from(bytes).equals(Buffer.from(pdf))).toBe(true)
  expect(pdf.length).toBeLessThan(3e6)
})

test('every page has words, its number, and no number that is none', () => {
  expect(read.pages.length).toBe(count)
  read.pages.forEach((page, i) => {
    const text = textOf(page)
    expect(text).toContain(`page ${i + 1} of ${count}`)
    expect(text, `page ${i + 1}`).not.toMatch(/NaN|undefined|Infinity|\[object|page –/)
  })
})

test('nothing is written off its page', () => {
  for (const page of read.pages)
    for (const { text, x, y, width } of page.words) {
      expect(x, text).toBeGreaterThan(0)
      expect(y, text).toBeGreaterThan(0)
      expect(y, text).toBeLessThan(page.height)
      expect(x + width, text).toBeLessThan(page.width)
    }
})

test('contents name the page on which each chapter begins, and lead there', () => {
  const contents = book.chapters[0]!.pages.length
  const told = read.pages.slice(0, contents).map(textOf).join(' ')
  for (const { title, first } of book.chapters.slice(1)) {
    expect(told).toContain(`${title}, page ${first}`)
    const heading = read.pages[first - 1]!.words.slice(0, 6).map((w) => w.text)
    expect(heading.join(' ')).toContain(title.split(' ')[0])
  }
  expect(read.pages.slice(0, contents).reduce((sum, p) => sum + p.links, 0)).toBeGreaterThan(10)
  expect(read.outline).toEqual(book.chapters.slice(1).map((c) => c.title))
})

test('it is tagged: headings, lists, tables, and pictures that say what they show', () => {
  const roles = read.pages.flatMap((p) => p.roles)
  for (const role of ['H1', 'H2', 'P', 'LI', 'Table', 'TH', 'TD', 'Link'])
    expect(
      roles.some((r) => r.role === role),
      role,
    ).toBe(true)
  const figures = roles.filter((r) => r.role === 'Figure')
  expect(figures.length).toBeGreaterThan(8)
  for (const { alt } of figures) expect(alt?.length).toBeGreaterThan(10)
  const text = Buffer.from(pdf).toString('latin1')
  expect(text).toContain('/MarkInfo')
  // letters are carried: no font of the reader's own
  expect(text).toContain('/FontFile2')
  expect(text).not.toMatch(/\/Subtype \/Type1\b/)
})

test('patterns are at full size: the square of 100 mm is 100 mm to another reader', () => {
  const patterns = book.chapters.find((c) => c.id === 'patterns')!
  // the first page of the chapter says how to print
  const tiles = read.pages
    .slice(patterns.first, patterns.first - 1 + patterns.pages.length)
    .filter((page) => /R\d+C\d+ of/.test(textOf(page)))
  expect(tiles.length).toBeGreaterThan(3)
  for (const { paths } of tiles) {
    const sides = paths.map(([x0, y0, x1, y1]) => [(x1 - x0) * (25.4 / 72), (y1 - y0) * (25.4 / 72)] as const)
    expect(sides.some(([w, h]) => Math.abs(w - 100) < 0.005 && Math.abs(h - 100) < 0.005)).toBe(true)
  }
})

test('in inches no metric figure is left', async () => {
  const inches = bookPages(bookSource(heron, { log, date: '2026-06-01', units: 'inch', paper: 'Letter' }))
  const pages = inches.chapters.flatMap((c) => (c.id === 'sources' ? [] : c.pages))
  for (const page of pages)
    for (const mark of page.marks) {
      if (mark.kind !== 'text' || /full-throttle|100 cc|52 kg|kPa·s|^\d+ kg$/.test(mark.text)) continue
      expect(mark.text).not.toMatch(/\d\s?(mm|cm|km\/h|kg|N|kPa|bar|°C|kW|N·m|m\/s)(?![\w·/²³])/)
    }
  const tiles = inches.chapters.find((c) => c.id === 'contents')!.pages[0]!
  expect([tiles.width, tiles.height]).toEqual([215.9, 279.4])
})

test('every decision, finding, part and run of the look stands in it', () => {
  const all = read.pages.map(textOf).join(' ').replace(/\s+/g, ' ')
  for (const part of source.parts) expect(all.toLowerCase()).toContain(part.title.toLowerCase())
  expect(all).toContain('tied up at the jetty')
  expect(book.tables.get('cut list')!.length).toBeGreaterThan(1)
  expect(book.tables.get('buy list')!.length).toBeGreaterThan(1)
  const boxes = new Set(book.boxes.map((b) => b.to))
  expect(boxes.has('run:pull')).toBe(true)
  expect(boxes.size).toBe(book.boxes.length)
})

test('the folder has a PDF a chapter, every drawing and every table', async () => {
  const files = await bookFolder(book, writing)
  const names = Object.keys(files)
  expect(names.filter((n) => n.endsWith('.pdf')).length).toBe(book.chapters.length)
  expect(names.filter((n) => n.endsWith('.svg')).length).toBe(book.figures.size)
  expect(names.filter((n) => n.endsWith('.csv')).length).toBe(book.tables.size)
  const first = await readPdf(files['01-decisions.pdf']!)
  expect(first.pages.length).toBe(book.chapters[1]!.pages.length)
})

test('a cell with a comma, a quote or a line break is quoted', () => {
  expect(csvOf([['a,b', 'c"d', 'e\nf', 'g']])).toBe('"a,b","c""d","e\nf",g\r\n')
})
