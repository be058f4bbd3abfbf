/** Lines, areas and arcs of a drawing as a PDF page's own operators. ISO 32000-1:2008, 8.4 (graphics state), 8.5 (paths); a point is 1/72 inch. */
import type { PDFPage } from '@cantoo/pdf-lib'
import { rgbOf } from './palette.ts'
import type { Mark, Style } from './sheet.ts'

/** points a millimetre */
export const point = 72 / 25.4

/** Numbers of a page are points, to a thousandth: a third of a micron. */
export const num = (v: number) => String(Math.round(v * 1000) / 1000)

/** A path in points with its lower left corner at x, y mm, as a page's own operators. */
function pathFor(
  mark: Extract<Mark, { kind: 'polyline' | 'polygon' | 'arc' }>,
  x: number,
  y: number,
): string {
  const at = (px: number, py: number) => `${num((x + px) * point)} ${num((y + py) * point)}`
  if (mark.kind !== 'arc') {
    const { points } = mark
    let path = ''
    // a number that is none breaks the line there
    let pen = false
    for (let i = 0; i + 1 < points.length; i += 2) {
      const [px, py] = [points[i]!, points[i + 1]!]
      if (!(Number.isFinite(px) && Number.isFinite(py))) {
        pen = false
        continue
      }
      path += `${at(px, py)} ${pen ? 'l' : 'm'} `
      pen = true
    }
    return mark.kind === 'polygon' && path !== '' ? `${path}h ` : path
  }
  // arcs of at most a quarter turn as cubic curves; the error is 3e-4 of the radius at most
  const { cx, cy, r, from, to } = mark
  const n = Math.max(1, Math.ceil(Math.abs(to - from) / (Math.PI / 2) - 1e-9))
  const step = (to - from) / n
  const k = (4 / 3) * Math.tan(step / 4) * r
  let path = `${at(cx + r * Math.cos(from), cy + r * Math.sin(from))} m `
  for (let i = 0; i < n; i++) {
    const a = from + i * step
    const b = a + step
    const [ax, ay] = [cx + r * Math.cos(a) - k * Math.sin(a), cy + r * Math.sin(a) + k * Math.cos(a)]
    const [bx, by] = [cx + r * Math.cos(b) + k * Math.sin(b), cy + r * Math.sin(b) - k * Math.cos(b)]
    path += `${at(ax, ay)} ${at(bx, by)} ${at(cx + r * Math.cos(b), cy + r * Math.sin(b))} c `
  }
  return Math.abs(to - from) >= 2 * Math.PI - 1e-9 ? `${path}h ` : path
}

/** A colour as the operator that fills or strokes with it. */
export const inkIn = (colour: string, operator: 'rg' | 'RG'): string =>
  `${rgbOf(colour)
    .map((v) => num(v / 255))
    .join(' ')} ${operator} `

/** One shape as one run of operators: drawings have thousands, and an object for each number of them would take seconds. */
export function putShape(
  lib: Pick<typeof import('@cantoo/pdf-lib'), 'PDFOperator' | 'PDFOperatorNames'>,
  page: PDFPage,
  mark: Extract<Mark, { kind: 'polyline' | 'polygon' | 'arc' }>,
  x: number,
  y: number,
): void {
  const style: Style = mark.style
  const fill = mark.kind === 'polyline' ? undefined : style.fill
  if (!fill && !style.stroke) return
  const path = pathFor(mark, x, y)
  if (path === '') return
  const dash = style.stroke && style.dash
  const how = [
    'q ',
    style.opacity === undefined || style.opacity === 1 ? '' : `/${seeThrough(page, style.opacity)} gs `,
    fill ? inkIn(fill, 'rg') : '',
    style.stroke ? `${inkIn(style.stroke, 'RG')}${num((style.width ?? 0.25) * point)} w ` : '',
    dash ? `[${dash.map((d) => num(d * point)).join(' ')}] 0 d ` : '1 J ',
    path,
    fill ? (style.stroke ? 'B' : 'f') : 'S',
  ]
  page.pushOperators(lib.PDFOperator.of(lib.PDFOperatorNames.PopGraphicsState, [how.join('')]))
}

const veils = new WeakMap<PDFPage, Map<number, string>>()

/** The name of a graphics state of an opacity, made once a page. */
function seeThrough(page: PDFPage, opacity: number): string {
  const known = veils.get(page) ?? new Map<number, string>()
  veils.set(page, known)
  let name = known.get(opacity)
  if (name === undefined) {
    const state = page.doc.context.obj({ Type: 'ExtGState', ca: opacity, CA: opacity })
    name = page.node.newExtGState('GS', state).asString().slice(1)
    known.set(opacity, name)
  }
  return name
}
