import { PDFDocument, StandardFonts } from '@cantoo/pdf-lib'
import { expect, test } from 'vitest'
import { textWidth, wrapText } from './textWidth.ts'

test('letter widths agree with the Helvetica metrics that a PDF writer carries, without pair kerning', async () => {
  const document = await PDFDocument.create()
  const font = await document.embedFont(StandardFonts.Helvetica)
  for (let code = 32; code < 127; code++) {
    const letter = String.fromCharCode(code)
    expect(textWidth(letter, 1000), letter).toBeCloseTo(font.widthOfTextAtSize(letter, 1000), 6)
  }
  for (const letter of ['°', '·', '±', '×', '²', '³', '–', '—', '…', '½'])
    expect(textWidth(letter, 1000), letter).toBeCloseTo(font.widthOfTextAtSize(letter, 1000), 6)
})

test('wrapText keeps every word and no line of several words is too wide', () => {
  const words = 'clear the intake grate before the engine is started again'
  const lines = wrapText(words, 3, 30)
  expect(lines.join(' ')).toBe(words)
  for (const l of lines) expect(textWidth(l, 3)).toBeLessThanOrEqual(30)
  expect(wrapText('', 3, 30)).toEqual([])
  expect(wrapText('unbreakablewordthatistoolong a', 3, 10)).toEqual(['unbreakablewordthatistoolong', 'a'])
})
