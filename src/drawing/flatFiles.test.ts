import { decodePDFRawStream, PDFArray, PDFDocument, PDFRawStream } from '@cantoo/pdf-lib'
import DxfParser from 'dxf-parser'
import fc from 'fast-check'
import { XMLParser } from 'fast-xml-parser'
import { describe, expect, test } from 'vitest'
import { inDegrees } from '../base/answers/amounts.ts'
import type { FlatPiece, FlatPoint } from '../base/answers/madePart.ts'
import { say } from '../base/answers/sentence.ts'
import { dxfText } from './dxf.ts'
import { flatSheet } from './flatSheet.ts'
import { papers } from './papers.ts'
import { pdfOf } from './pdf.ts'
import { printScale, typedScale } from './printScale.ts'
import type { Mark, Sheet } from './sheet.ts'
import { svgOf } from './svg.ts'
import { tiled, tileMargin, tileOverlap } from './tiles.ts'

/** 100 mm square with a hole of 20 mm square, and a letter that is no mirror image of itself */
const piece: FlatPiece = {
  id: 'p',
  title: 'Plate',
  thickness: 1e-3,
  count: 1,
  lines: [
    {
      use: 'cut',
      closed: true,
      points: [
        [0.3, 0.1],
        [0.4, 0.1],
        [0.4, 0.2],
        [0.3, 0.2],
      ],
    },
    {
      use: 'hole',
      closed: true,
      points: [
        [0.34, 0.14],
        [0.36, 0.14],
        [0.36, 0.16],
        [0.34, 0.16],
      ],
    },
    {
      use: 'match',
      closed: false,
      points: [
        [0.31, 0.11],
        [0.31, 0.13],
        [0.316, 0.125],
        [0.31, 0.12],
        [0.316, 0.11],
      ],
    },
    {
      use: 'roll',
      closed: false,
      points: [
        [0.35, 0.1],
        [0.35, 0.2],
      ],
    },
  ],
  words: [{ at: [0.32, 0.11], says: say`turn ${inDegrees(Math.PI / 2, 1)} – Ø` }],
}

const span = (points: readonly FlatPoint[]): [number, number] => [
  Math.max(...points.map((p) => p[0])) - Math.min(...points.map((p) => p[0])),
  Math.max(...points.map((p) => p[1])) - Math.min(...points.map((p) => p[1])),
]

/** the letter's foot leans right and its back lies left, in a plane with y up */
const readsRight = (letter: readonly FlatPoint[]) =>
  letter[4]![0] > letter[0]![0] && letter[1]![1] > letter[0]![1] && letter[4]![1] < letter[2]![1]

test('SVG read by another library: 100 mm is 100.000 mm, the page is in millimetres, nothing is mirrored', () => {
  const read = new XMLParser({ ignoreAttributes: false }).parse(svgOf(flatSheet([{ piece }], 'Plate'))) as {
    svg: Record<string, string> & { path: Record<string, string>[] }
  }
  expect(read.svg['@_width']).toBe('110mm')
  expect(read.svg['@_viewBox']).toBe('0 0 110 110')
  const points = (k: number): FlatPoint[] =>
    [...read.svg.path[k]!['@_d']!.matchAll(/[ML](\S+) ([^\sMLZ]+)/g)].map((m) => [Number(m[1]), Number(m[2])])
  expect(span(points(0))).toEqual([100, 100])
  expect(span(points(1))).toEqual([20, 20])
  // y runs down in the file, so it is turned once to read
  expect(readsRight(points(2).map(([x, y]) => [x, -y]))).toBe(true)
})

describe('DXF', () => {
  const text = [...dxfText([{ piece }])].join('')
  const read = new DxfParser().parseSync(text)!
  const lines = read.entities.filter((e) => e.type === 'POLYLINE') as unknown as {
    layer: string
    shape: boolean
    vertices: { x: number; y: number }[]
  }[]
  test('read by another library: 100 mm is 100.000 mm on its layer, closed, nothing mirrored', () => {
    expect(read.header['$ACADVER']).toBe('AC1009')
    const points = (k: number) => lines[k]!.vertices.map((v): FlatPoint => [v.x, v.y])
    expect(span(points(0))).toEqual([100, 100])
    expect(lines.map((l) => l.layer)).toEqual(['CUT', 'CUT', 'MARK', 'BEND'])
    expect(lines.map((l) => l.shape)).toEqual([true, true, false, false])
    expect(readsRight(points(2))).toBe(true)
    expect(Object.keys(read.tables.layer.layers)).toContain('SEAM')
  })
  test('says its unit, and is plain ASCII with lines that end as the format wants', () => {
    expect(text).toMatch(/units: mm; overall 100\.000 x 100\.000/)
    expect(text).toMatch(/^[\r\n\u0020-\u007e]*$/)
    expect(text.split('\r\n').length).toBe(text.split('\n').length)
    expect(text).toContain('90%%d - %%c')
  })
  test('of nothing, or of what is no number, is refused', () => {
    expect(() => [...dxfText([])]).toThrow(/nothing to draw/)
    const bad = {
      ...piece,
      lines: [
        {
          ...piece.lines[0]!,
          points: [
            [Number.NaN, 0],
            [1, 1],
          ] as FlatPoint[],
        },
      ],
    }
    expect(() => flatSheet([{ piece: { ...bad, lines: [...bad.lines] } }], 'x')).toThrow(
      /nothing to draw|finite/,
    )
  })
})

const big: Sheet = {
  width: 700,
  height: 500,
  title: 'Big',
  says: '',
  marks: [
    {
      kind: 'polyline',
      points: Float64Array.of(3, 4, 690, 480),
      style: { stroke: '#000000', width: 0.37 },
      layer: 'cut',
    },
  ],
}
type Line = Extract<Mark, { kind: 'polyline' }>
const strokes = (page: Sheet, width: number) =>
  page.marks.filter((m): m is Line => m.kind === 'polyline' && m.style.width === width)

describe('tiles', () => {
  const place = (page: Sheet) => {
    const [, r, c] = page.title.match(/R(\d+)C(\d+)/)!
    return { r: Number(r) - 1, c: Number(c) - 1 }
  }
  test('every part of the drawing is on some page, and neighbours carry the same strokes in their overlap', () => {
    for (const paper of ['A4', 'Letter'] as const) {
      const pages = tiled(big, { paper })
      const { width, height } = pages[0]!
      const step = [width - 2 * tileMargin - tileOverlap, height - 2 * tileMargin - tileOverlap] as const
      const inDrawing = pages.flatMap((page) => {
        const { r, c } = place(page)
        return strokes(page, 0.37).map(({ points }) =>
          [...points].map((v, i) => v - tileMargin + (i % 2 === 0 ? c * step[0] : r * step[1])),
        )
      })
      fc.assert(
        fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (t) => {
          const x = 3 + t * 687
          expect(inDrawing.some((s) => x >= s[0]! - 1e-9 && x <= s[2]! + 1e-9)).toBe(true)
        }),
      )
      // each piece lies on the one straight line
      for (const s of inDrawing)
        for (let i = 0; i < s.length; i += 2) expect(s[i + 1]!).toBeCloseTo(4 + ((s[i]! - 3) * 476) / 687, 9)
    }
  })
  test('join marks lie at the same place of the drawing on both sides of a joint', () => {
    const pages = tiled(big, { paper: 'A4' })
    const { width, height } = pages[0]!
    const step = [width - 30, height - 30] as const
    const seen = new Map<string, number>()
    for (const page of pages) {
      const { r, c } = place(page)
      for (const { points } of strokes(page, 0.13)) {
        if (points.length !== 10) continue
        const key = `${(points[2]! + c * step[0]).toFixed(6)} ${(points[1]! + r * step[1]).toFixed(6)}`
        seen.set(key, (seen.get(key) ?? 0) + 1)
      }
    }
    expect(seen.size).toBeGreaterThan(0)
    expect([...seen.values()].every((n) => n === 2)).toBe(true)
  })
  test('the tape’s lengths printed on the pages are those between the outermost crosses', () => {
    const pages = tiled(big, { paper: 'A4' })
    const { width, height } = pages[0]!
    const step = [width - 30, height - 30] as const
    const xs: number[] = []
    for (const page of pages) {
      const { c } = place(page)
      for (const { points } of strokes(page, 0.13))
        if (points.length === 4 && points[1] === points[3])
          xs.push((points[0]! + points[2]!) / 2 - tileMargin + c * step[0])
    }
    const words = pages[0]!.marks.find((m) => m.kind === 'text' && m.text.includes('tape')) as Extract<
      Mark,
      { kind: 'text' }
    >
    const told = Number(words.text.match(/are ([\d.]+) mm/)![1])
    expect(told).toBeCloseTo(Math.max(...xs) - Math.min(...xs), 1)
  })
  test('a print measured at 97 mm is drawn larger by as much, and then comes out at 100 mm', () => {
    const scale = printScale(0.097, 0.098)
    const ring = tiled(big, { paper: 'A4', scale })[0]!.marks.find((m) => m.kind === 'polygon') as Extract<
      Mark,
      { kind: 'polygon' }
    >
    expect((ring.points[2]! - ring.points[0]!) * 0.97).toBeCloseTo(100, 9)
    expect((ring.points[5]! - ring.points[3]!) * 0.98).toBeCloseTo(100, 9)
    for (const page of tiled(big, { paper: 'A4', scale }))
      for (const m of page.marks)
        if (m.kind === 'polyline')
          for (let i = 0; i < m.points.length; i += 2) {
            expect(m.points[i]!).toBeLessThanOrEqual(page.width - tileMargin + 1e-9)
            expect(m.points[i + 1]!).toBeLessThanOrEqual(page.height - tileMargin + 1e-9)
          }
  })
  test('a print that is right is left alone, one that is far off is refused with its limits', () => {
    expect(printScale(0.1001, 0.0999)).toEqual({ x: 1, y: 1 })
    for (const typed of ['97x98', '97 × 98', '97, 98', '97 98'])
      expect(typedScale(typed)).toEqual(printScale(0.097, 0.098))
    expect(typedScale('97')).toEqual(printScale(0.097, 0.097))
    for (const bad of ['', 'abc', '97x', '97x98x99']) expect(() => typedScale(bad), bad).toThrow(RangeError)
    expect(() => printScale(0.1, 0.0254)).toThrow(/measured\.y: 25\.4 mm, expected 90 to 110/)
    expect(() => printScale(Number.NaN, 0.1)).toThrow(/measured\.x/)
    expect(() => tiled({ ...big, width: 1e5 }, { paper: 'A4' })).toThrow(/Big: .* pages/)
  })
})

test('PDF read back: A4 pages, a square of 100.000 mm on each, printing without scaling', async () => {
  const sheet = flatSheet([{ piece }], 'Plate')
  const bytes = await pdfOf(tiled(sheet, { paper: 'A4' }), 'Plate')
  const document = await PDFDocument.load(bytes)
  expect(document.catalog.getViewerPreferences()?.getPrintScaling()).toBe('None')
  const page = document.getPage(0)
  expect(page.getWidth()).toBeCloseTo(595.2756, 3)
  expect(page.getHeight()).toBeCloseTo(841.8898, 3)
  const contents = page.node.Contents()
  const streams =
    contents instanceof PDFArray ? contents.asArray().map((r) => document.context.lookup(r)) : [contents]
  const text = streams
    .map((s) =>
      s instanceof PDFRawStream ? new TextDecoder('latin1').decode(decodePDFRawStream(s).decode()) : '',
    )
    .join('\n')
  // lengths on paper: path numbers under the matrices in force, a point being 1/72 inch
  const shapes = pathsOf(text)
  const square = shapes.find(
    (s) => s.length >= 4 && Math.abs(span(s)[0] - 100) < 1e-3 && Math.abs(span(s)[1] - 100) < 1e-3,
  )
  expect(square).toBeDefined()
  expect(shapes.filter((s) => s.length >= 4 && Math.abs(span(s)[0] - 100) < 1e-3).length).toBeGreaterThan(1)
  expect(papers.A4.width).toBe(210)
})

/** Paths of a content stream in millimetres on the page. */
function pathsOf(text: string): FlatPoint[][] {
  const out: FlatPoint[][] = []
  const kept: number[][] = []
  let m = [1, 0, 0, 1, 0, 0]
  let held: number[] = []
  let path: FlatPoint[] = []
  for (const word of text.split(/\s+/)) {
    const v = Number(word)
    if (word !== '' && Number.isFinite(v)) {
      held.push(v)
      continue
    }
    const [a, b, c, d, e, f] = held.slice(-6) as [number, number, number, number, number, number]
    if (word === 'q') kept.push(m)
    if (word === 'Q') m = kept.pop() ?? m
    if (word === 'cm')
      m = [
        a * m[0]! + b * m[2]!,
        a * m[1]! + b * m[3]!,
        c * m[0]! + d * m[2]!,
        c * m[1]! + d * m[3]!,
        e * m[0]! + f * m[2]! + m[4]!,
        e * m[1]! + f * m[3]! + m[5]!,
      ]
    if (word === 'm' || word === 'l') {
      const [x, y] = held.slice(-2) as [number, number]
      if (word === 'm') out.push((path = []))
      path.push([
        ((x * m[0]! + y * m[2]! + m[4]!) * 25.4) / 72,
        ((x * m[1]! + y * m[3]! + m[5]!) * 25.4) / 72,
      ])
    }
    held = []
  }
  return out
}
