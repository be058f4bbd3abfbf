/**
 * Flat pieces as a cutting file: drawing interchange of release 12 (AC1009), ASCII group pairs, lines and texts only, millimetres. That release has no
 * word for its unit, so a text in the drawing says it. Group codes: published DXF reference of release 12, from memory; read back by another
 * library in the tests.
 */
import type { FlatUse } from '../base/answers/madePart.ts'
import { printed } from '../base/answers/sentence.ts'
import type { DisplaySystem } from '../base/units/format.ts'
import { boundsOf, type LaidPiece, whereDrawn } from './flatSheet.ts'
import { winAnsi } from './pdf.ts'

/** layer and its colour number: 7 black or white, 1 red, 5 blue, 3 green, 8 grey */
const layerOf: Record<FlatUse, string> = {
  cut: 'CUT',
  hole: 'CUT',
  fold: 'BEND',
  roll: 'BEND',
  weld: 'SEAM',
  match: 'MARK',
  centre: 'REF',
}
const colours = { CUT: 7, BEND: 5, SEAM: 1, MARK: 3, REF: 8, TEXT: 8 } as const

/** Letters of this format: ASCII, with its own words for degree, diameter and plus or minus. */
const plain = (words: string): string =>
  winAnsi(words)
    .replace(/°/g, '%%d')
    .replace(/Ø/g, '%%c')
    .replace(/±/g, '%%p')
    .replace(/×/g, 'x')
    .replace(/[–—]/g, '-')
    .normalize('NFKD')
    .replace(/[^\u0020-\u007e]/g, '')

const pair = (code: number, value: string | number): string => `${String(code).padStart(3)}\r\n${value}\r\n`
const number = (v: number): string => (Object.is(v, -0) ? 0 : v).toFixed(6)
const at = (x: number, y: number): string => pair(10, number(x)) + pair(20, number(y)) + pair(30, number(0))
const section = (name: string): string => pair(0, 'SECTION') + pair(2, name)
const end = pair(0, 'ENDSEC')

/** The file in pieces, as it is written; the drawing's lower left corner is at 0, 0. RangeError where there is nothing to draw. */
export function* dxfText(pieces: readonly LaidPiece[], system: DisplaySystem = 'metric'): Generator<string> {
  const box = boundsOf(pieces)
  const mm = 1e3
  const [width, height] = [(box.right - box.left) * mm, (box.top - box.bottom) * mm]
  yield section('HEADER') + pair(9, '$ACADVER') + pair(1, 'AC1009')
  yield pair(9, '$EXTMIN') + at(0, 0) + pair(9, '$EXTMAX') + at(width, height) + end
  yield section('TABLES') + pair(0, 'TABLE') + pair(2, 'LTYPE') + pair(70, 1)
  yield pair(0, 'LTYPE') +
    pair(2, 'CONTINUOUS') +
    pair(70, 64) +
    pair(3, 'Solid line') +
    pair(72, 65) +
    pair(73, 0)
  yield pair(40, number(0)) + pair(0, 'ENDTAB')
  yield pair(0, 'TABLE') + pair(2, 'LAYER') + pair(70, Object.keys(colours).length)
  for (const [name, colour] of Object.entries(colours))
    yield pair(0, 'LAYER') + pair(2, name) + pair(70, 64) + pair(62, colour) + pair(6, 'CONTINUOUS')
  yield pair(0, 'ENDTAB') + end + section('ENTITIES')
  const text = (x: number, y: number, words: string) =>
    pair(0, 'TEXT') + pair(8, 'TEXT') + at(x, y) + pair(40, number(3)) + pair(1, plain(words))
  yield text(0, -6, `units: mm; overall ${width.toFixed(3)} x ${height.toFixed(3)}`)
  for (const { piece, laid = whereDrawn } of pieces) {
    for (const { use, points, closed } of piece.lines) {
      const layer = pair(8, layerOf[use])
      const put = (p: readonly [number, number]) => {
        const [x, y] = laid(p)
        return at((x - box.left) * mm, (y - box.bottom) * mm)
      }
      yield pair(0, 'POLYLINE') + layer + pair(66, 1) + at(0, 0) + pair(70, closed ? 1 : 0)
      for (const p of points) yield pair(0, 'VERTEX') + layer + put(p)
      yield pair(0, 'SEQEND') + layer
    }
    for (const { at: place, says } of piece.words) {
      const [x, y] = laid(place)
      yield text((x - box.left) * mm, (y - box.bottom) * mm, printed(says, system))
    }
  }
  yield end + pair(0, 'EOF')
}
