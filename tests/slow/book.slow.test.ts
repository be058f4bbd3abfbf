import { expect, test } from 'vitest'
import { bookPdf } from '../../src/book/bookFiles.ts'
import { bookPages } from '../../src/book/bookPages.ts'
import { bookSource } from '../../src/book/bookSource.ts'
import { fontsHere } from '../../src/faces/cli/fontsHere.ts'
import { craftLog } from '../../src/whole/log/craftLog.ts'
import { readPdf } from '../pdfReader.ts'
import { wrongCrafts } from '../unit/wrongCrafts.ts'

const fonts = fontsHere()

test.each(wrongCrafts())('the book of a craft that is %s has no broken page', async (_, craft) => {
  const date = '2026-06-01'
  const book = bookPages(bookSource(craft, { log: craftLog(craft, ''), date }))
  const bytes = await bookPdf(book, { fonts, date })
  expect(bytes.length).toBeLessThan(3e6)
  const { pages } = await readPdf(bytes)
  expect(pages.length).toBe(book.chapters.reduce((sum, c) => sum + c.pages.length, 0))
  for (const [i, { words, width, height, paths }] of pages.entries()) {
    const text = words.map((w) => w.text).join(' ')
    expect(text, `page ${i + 1}`).toContain(`page ${i + 1} of ${pages.length}`)
    expect(text, `page ${i + 1}`).not.toMatch(/NaN|undefined|Infinity|\[object|page –|\d\.\d{7}/)
    for (const w of words) {
      expect(w.x + w.width, w.text).toBeLessThan(width)
      expect(w.y, w.text).toBeLessThan(height)
      expect(Math.min(w.x, w.y), w.text).toBeGreaterThan(0)
    }
    for (const box of paths) expect(box.every(Number.isFinite)).toBe(true)
  }
})
