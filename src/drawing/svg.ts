/** Draw list to SVG: W3C, Scalable Vector Graphics 1.1 (second edition, 2011). One user unit is one millimetre. */
import { base64Of, pngOf } from './png.ts'
import type { Mark, Sheet, Style } from './sheet.ts'
import { textWidth } from './textWidth.ts'

/** Text for XML: the five reserved letters escaped, control letters XML 1.0 forbids left out. */
function escapeXml(words: string): string {
  return (
    words
      // biome-ignore lint/suspicious/noControlCharactersInRegex: XML forbids exactly these
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
      .replace(/&/g, '&amp;')
      .replace(/</g, '&lt;')
      .replace(/>/g, '&gt;')
      .replace(/"/g, '&quot;')
      .replace(/'/g, '&#39;')
  )
}

/** A length as SVG writes it: a thousandth of a millimetre, no trailing noughts. */
export function num(v: number): string {
  const s = v.toFixed(3).replace(/\.?0+$/, '')
  return s === '-0' ? '0' : s
}

/** Path data of a line of points, y turned to run down from the sheet's top. */
function pathOf(points: ArrayLike<number>, height: number, closed: boolean): string {
  let d = ''
  for (let i = 0; i + 1 < points.length; i += 2)
    d += `${i === 0 ? 'M' : 'L'}${num(points[i]!)} ${num(height - points[i + 1]!)}`
  return closed ? `${d}Z` : d
}

/** Path data of an arc that is not a full turn. */
function arcPath(mark: Extract<Mark, { kind: 'arc' }>, height: number): string {
  const { cx, cy, r, from, to } = mark
  const at = (a: number) => `${num(cx + r * Math.cos(a))} ${num(height - cy - r * Math.sin(a))}`
  return `M${at(from)}A${num(r)} ${num(r)} 0 ${Math.abs(to - from) > Math.PI ? 1 : 0} ${to > from ? 0 : 1} ${at(to)}`
}

const isFullTurn = (mark: Extract<Mark, { kind: 'arc' }>): boolean =>
  Math.abs(mark.to - mark.from) >= 2 * Math.PI - 1e-9

/** Presentation attributes of a style as name and value, the same for a file and for the screen. */
function styleAttributes(style: Style, filled: boolean): [string, string][] {
  const out: [string, string][] = [['fill', filled ? (style.fill ?? 'none') : 'none']]
  if (style.stroke) {
    out.push(['stroke', style.stroke], ['stroke-width', num(style.width ?? 0.25)])
    out.push(['stroke-linejoin', 'round'], ['stroke-linecap', style.dash ? 'butt' : 'round'])
    if (style.dash) out.push(['stroke-dasharray', style.dash.map(num).join(' ')])
  }
  if (style.opacity !== undefined) out.push(['opacity', num(style.opacity)])
  return out
}

/** Attributes of letters; the halo is painted first, under the letters. */
function letterAttributes(mark: Extract<Mark, { kind: 'text' }>, height: number): [string, string][] {
  const [x, y] = [num(mark.x), num(height - mark.y)]
  const out: [string, string][] = [
    ['x', x],
    ['y', y],
    ['font-size', num(mark.size)],
    ['text-anchor', mark.anchor],
    ['fill', mark.style.fill ?? '#1b1b1b'],
  ]
  if (mark.style.bold) out.push(['font-weight', '700'])
  if (mark.style.halo)
    out.push(
      ['stroke', '#ffffff'],
      ['stroke-width', '0.8'],
      ['stroke-linejoin', 'round'],
      ['paint-order', 'stroke'],
    )
  // letters keep the width the layout counted on, whatever font the reader's machine has
  if (mark.text.length > 1)
    out.push(
      ['textLength', num(textWidth(mark.text, mark.size, mark.style.bold))],
      ['lengthAdjust', 'spacingAndGlyphs'],
    )
  if (mark.angle) out.push(['transform', `rotate(${num((-mark.angle * 180) / Math.PI)} ${x} ${y})`])
  return out
}

const attributes = (pairs: readonly [string, string][]) =>
  pairs.map(([name, value]) => ` ${name}="${escapeXml(value)}"`).join('')

/** A mark as an SVG element: tag and attributes in order, for whoever writes, renders or paints it. */
export interface SvgShape {
  tag: 'path' | 'circle' | 'text' | 'image'
  attributes: [string, string][]
}

/** The element of a mark on a sheet of a height, mm; at height 0 the sheet's own height is left to the view box. */
export function shapeOf(mark: Mark, height: number): SvgShape {
  switch (mark.kind) {
    case 'polyline':
    case 'polygon': {
      const closed = mark.kind === 'polygon'
      const d = pathOf(mark.points, height, closed)
      return { tag: 'path', attributes: [['d', d], ...styleAttributes(mark.style, closed)] }
    }
    case 'arc': {
      const style = styleAttributes(mark.style, true)
      const { cx, cy, r } = mark
      return isFullTurn(mark)
        ? {
            tag: 'circle',
            attributes: [['cx', num(cx)], ['cy', num(height - cy)], ['r', num(r)], ...style],
          }
        : { tag: 'path', attributes: [['d', arcPath(mark, height)], ...style] }
    }
    case 'text':
      return { tag: 'text', attributes: letterAttributes(mark, height) }
    case 'image':
      return {
        tag: 'image',
        attributes: [
          ['x', num(mark.x)],
          ['y', num(height - mark.y - mark.h)],
          ['width', num(mark.w)],
          ['height', num(mark.h)],
          ['preserveAspectRatio', 'none'],
          ['href', imageAddress(mark)],
        ],
      }
  }
}

function element(mark: Mark, height: number): string {
  const shape = shapeOf(mark, height)
  const open = `<${shape.tag}${attributes(shape.attributes)}`
  if (mark.kind === 'text') return `${open}>${escapeXml(mark.text)}</text>`
  return mark.kind === 'image' ? `${open}/>` : `${open} class="${mark.layer}"/>`
}

/** A picture mark as a data address. */
function imageAddress(mark: Extract<Mark, { kind: 'image' }>): string {
  return `data:image/png;base64,${base64Of(pngOf(mark.rgb, mark.cols, mark.rows))}`
}

export const fontStack = 'Helvetica, Arial, "Liberation Sans", sans-serif'

/** A whole SVG file at 1:1, with a title and a description for people who cannot see it. */
export function svgOf(sheet: Sheet): string {
  const { width, height } = sheet
  const size = `width="${num(width)}mm" height="${num(height)}mm" viewBox="0 0 ${num(width)} ${num(height)}"`
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} role="img" font-family="${escapeXml(fontStack)}">`,
    `<title>${escapeXml(sheet.title)}</title>`,
    `<desc>${escapeXml(sheet.says)}</desc>`,
    `<rect width="${num(width)}" height="${num(height)}" fill="#ffffff"/>`,
    ...sheet.marks.map((m) => element(m, height)),
    '</svg>',
    '',
  ].join('\n')
}
