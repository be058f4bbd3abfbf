/**
 * Dimensions for shop sketches, in the manner of ISO 129-1:2018 (extension lines with a gap, closed filled
 * arrow heads, figures above the line and readable from below or from the right). From memory.
 */
import { line, polygon, text } from './marks.ts'
import { ink } from './palette.ts'
import type { Mark, Style } from './sheet.ts'
import { textWidth } from './textWidth.ts'

const thin: Style = { stroke: ink, width: 0.18 }
const headLength = 2.4
const headHalf = 0.4

/** A filled arrow head with its tip at x, y, pointing along the direction given by an angle, radians. */
function arrowHead(x: number, y: number, angle: number): Mark {
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  const [bx, by] = [x - headLength * c, y - headLength * s]
  return polygon(
    [x, y, bx - headHalf * s, by + headHalf * c, bx + headHalf * s, by - headHalf * c],
    { fill: ink },
    'dimension',
  )
}

/** The same angle, turned by half a turn when letters along it would stand on their head. */
function readable(angle: number): number {
  const turn = Math.atan2(Math.sin(angle), Math.cos(angle))
  return turn > Math.PI / 2 + 1e-9 ? turn - Math.PI : turn <= -Math.PI / 2 + 1e-9 ? turn + Math.PI : turn
}

/**
 * The distance between two points of a drawing. `offset` is how far the dimension line stands off, mm on the sheet, to the
 * left of the way from the first point to the second (negative: to the right). Short distances get their arrows and figures outside.
 */
export function dimension(
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  offset: number,
  words: string,
  size = 2.8,
): Mark[] {
  const length = Math.hypot(x1 - x0, y1 - y0)
  if (!(length > 0)) return []
  const [c, s] = [(x1 - x0) / length, (y1 - y0) / length]
  const angle = Math.atan2(s, c)
  const side = Math.sign(offset) || 1
  const shift = (x: number, y: number, by: number): [number, number] => [x - s * by, y + c * by]
  const [ax, ay] = shift(x0, y0, offset)
  const [bx, by] = shift(x1, y1, offset)
  const marks: Mark[] = []
  if (Math.abs(offset) > 1.5)
    for (const [x, y] of [
      [x0, y0],
      [x1, y1],
    ] as const) {
      const from = shift(x, y, side * 1)
      const to = shift(x, y, offset + side * 1.5)
      marks.push(line(...from, ...to, thin, 'dimension'))
    }
  const wide = textWidth(words, size)
  const inside = length > 2 * headLength + 2
  const fits = length > wide + 1
  if (inside) {
    marks.push(
      line(ax, ay, bx, by, thin, 'dimension'),
      arrowHead(ax, ay, angle + Math.PI),
      arrowHead(bx, by, angle),
    )
  } else {
    const out = 5
    marks.push(line(ax - c * out, ay - s * out, bx + c * out, by + s * out, thin, 'dimension'))
    marks.push(arrowHead(ax, ay, angle), arrowHead(bx, by, angle + Math.PI))
  }
  const turn = readable(angle)
  // figures stand above their line as they are read
  const up: [number, number] = [-Math.sin(turn) * 0.8, Math.cos(turn) * 0.8]
  const [mx, my] = fits
    ? [(ax + bx) / 2, (ay + by) / 2]
    : [bx + c * ((inside ? 1 : 6) + wide / 2), by + s * ((inside ? 1 : 6) + wide / 2)]
  marks.push(
    text(mx + up[0], my + up[1], words, {
      size,
      anchor: 'middle',
      angle: turn,
      layer: 'dimension',
      halo: true,
    }),
  )
  return marks
}

/** A centre line: long and short dashes, run past both ends. */
export function centreLine(x0: number, y0: number, x1: number, y1: number, past = 3): Mark {
  const length = Math.hypot(x1 - x0, y1 - y0) || 1
  const [c, s] = [((x1 - x0) / length) * past, ((y1 - y0) / length) * past]
  return line(x0 - c, y0 - s, x1 + c, y1 + s, { stroke: ink, width: 0.18, dash: [5, 1, 1, 1] }, 'mark')
}
