import { decodePDFRawStream, PDFArray, PDFDocument, PDFRawStream } from '@cantoo/pdf-lib'
import { expect, test } from 'vitest'
import { circle, line, polygon, text } from './marks.ts'
import { pdfOf, winAnsi } from './pdf.ts'
import type { Sheet } from './sheet.ts'

const sheet: Sheet = {
  width: 210,
  height: 297,
  title: 'Bar',
  says: 'A bar of 100 mm.',
  marks: [
    line(50, 100, 150, 100, { stroke: '#000000', width: 0.5 }, 'cut'),
    polygon([10, 10, 20, 10, 20, 20], { fill: '#0072b2', opacity: 0.2 }, 'fill'),
    circle(100, 200, 25, { stroke: '#d55e00', dash: [2, 1] }, 'cut'),
    text(105, 150, '100 mm − 20 °C, µ ² ½ ≤ Ω ✗', { anchor: 'middle', halo: true }),
    text(30, 150, 'upright', { angle: Math.PI / 2 }),
    {
      kind: 'image',
      x: 10,
      y: 250,
      w: 20,
      h: 10,
      rgb: new Uint8Array(12).fill(200),
      cols: 2,
      rows: 2,
      layer: 'data',
    },
  ],
}

async function contentOf(bytes: Uint8Array): Promise<string> {
  const document = await PDFDocument.load(bytes)
  const contents = document.getPage(0).node.Contents()
  const streams =
    contents instanceof PDFArray ? contents.asArray().map((r) => document.context.lookup(r)) : [contents]
  return streams
    .map((s) =>
      s instanceof PDFRawStream ? new TextDecoder('latin1').decode(decodePDFRawStream(s).decode()) : '',
    )
    .join('\n')
}

test('the same drawing gives the same bytes', async () => {
  const [a, b] = [await pdfOf([sheet], 'Bar'), await pdfOf([sheet], 'Bar')]
  expect(Buffer.from(a).equals(Buffer.from(b))).toBe(true)
})

test('the page is exactly the sheet, and a line of 100 mm runs from 50 to 150 mm at 1:1', async () => {
  const bytes = await pdfOf([sheet], 'Bar')
  const page = (await PDFDocument.load(bytes)).getPage(0)
  expect(page.getWidth()).toBeCloseTo((210 * 72) / 25.4, 6)
  expect(page.getHeight()).toBeCloseTo((297 * 72) / 25.4, 6)
  const content = await contentOf(bytes)
  const mm = 25.4 / 72
  const ends = content.match(/([\d.]+) ([\d.]+) m ([\d.]+) ([\d.]+) l S/)!
  const [x0, y0, x1, y1] = ends.slice(1).map((v) => Number(v) * mm) as [number, number, number, number]
  expect([x0, y0, x1, y1].map((v) => Math.round(v * 1000) / 1000)).toEqual([50, 100, 150, 100])
})

test('letters the standard fonts lack get a stand-in', () => {
  expect(winAnsi('−5 ≤ Ω → ²½µ ✗')).toBe('-5 <= ohm -> ²½µ ?')
})
