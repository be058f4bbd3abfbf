import { Buffer } from 'node:buffer'
import { XMLParser, XMLValidator } from 'fast-xml-parser'
import { unzlibSync } from 'fflate'
import { expect, test } from 'vitest'
import { circle, polygon, polyline, text } from './marks.ts'
import { base64Of, pngOf } from './png.ts'
import type { Sheet } from './sheet.ts'
import { svgOf } from './svg.ts'

const sheetOf = (marks: Sheet['marks'], words = 'a'): Sheet => ({
  width: 100,
  height: 50,
  title: words,
  says: words,
  marks,
})

test('words with marks in them stay words: no element, attribute or script comes out of a label', () => {
  const evil = '"><script>alert(1)</script><x y=\'&amp;\u0000'
  const svg = svgOf(
    sheetOf([text(1, 1, evil), polyline([0, 0, 1, 1], { stroke: '"><script>' }, 'data', evil)], evil),
  )
  expect(XMLValidator.validate(svg)).toBe(true)
  expect(svg).not.toContain('<script')
  expect(svg).not.toContain('\u0000')
  const read = new XMLParser({ processEntities: true }).parse(svg)
  expect(read.svg.text).toContain('<script>alert(1)</script>')
})

test('the page is in millimetres and y runs up', () => {
  const svg = svgOf(sheetOf([polyline([0, 0, 100, 50], { stroke: '#000000', width: 0.3 }, 'cut')]))
  expect(svg).toContain('width="100mm" height="50mm" viewBox="0 0 100 50"')
  expect(svg).toContain('d="M0 50L100 0"')
})

test('a full turn is a circle and a half turn an arc of the same radius', () => {
  const half = { ...circle(10, 10, 5, { stroke: '#000000' }, 'cut'), to: Math.PI } as Sheet['marks'][number]
  const svg = svgOf(sheetOf([circle(10, 10, 5, { stroke: '#000000' }, 'cut'), half]))
  expect(svg).toContain('<circle cx="10" cy="40" r="5"')
  expect(svg).toContain('d="M15 40A5 5 0 0 0 5 40"')
})

test('a polygon is closed and filled, a polyline is neither', () => {
  const svg = svgOf(
    sheetOf([
      polygon([0, 0, 1, 0, 1, 1], { fill: '#abcdef' }, 'fill'),
      polyline([0, 0, 1, 1], { fill: '#abcdef', stroke: '#000000' }, 'data'),
    ]),
  )
  expect(svg).toMatch(/d="M0 50L1 50L1 49Z" fill="#abcdef"/)
  expect(svg).toMatch(/d="M0 50L1 49" fill="none"/)
})

test('a PNG holds the pixels it was given', () => {
  const rgb = Uint8Array.from({ length: 3 * 2 * 3 }, (_, i) => i * 7)
  const png = pngOf(rgb, 3, 2)
  const body = Buffer.from(png)
  const at = body.indexOf('IDAT')
  const raw = unzlibSync(png.subarray(at + 4, at + 4 + body.readUInt32BE(at - 4)))
  expect([...raw.subarray(1, 10), ...raw.subarray(11)]).toEqual([...rgb])
  expect(() => pngOf(rgb, 3, 3)).toThrow(RangeError)
})

test('base 64 agrees with the platform for every length', () => {
  for (let n = 0; n < 9; n++) {
    const bytes = Uint8Array.from({ length: n }, (_, i) => 251 - i * 29)
    expect(base64Of(bytes)).toBe(Buffer.from(bytes).toString('base64'))
  }
})
