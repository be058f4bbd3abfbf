import { type MarkerShape, paper } from './palette.ts'
import type { Anchor, Layer, Mark, Style } from './sheet.ts'

/** Short ways to make marks. All lengths mm on the sheet, y up. */
export function polyline(points: ArrayLike<number>, style: Style, layer: Layer, name?: string): Mark {
  const mark: Mark = { kind: 'polyline', points: Float64Array.from(points), style, layer }
  return name === undefined ? mark : { ...mark, name }
}

export function polygon(points: ArrayLike<number>, style: Style, layer: Layer, name?: string): Mark {
  const mark: Mark = { kind: 'polygon', points: Float64Array.from(points), style, layer }
  return name === undefined ? mark : { ...mark, name }
}

export function line(x0: number, y0: number, x1: number, y1: number, style: Style, layer: Layer): Mark {
  return polyline([x0, y0, x1, y1], style, layer)
}

export function rectangle(x: number, y: number, w: number, h: number, style: Style, layer: Layer): Mark {
  return polygon([x, y, x + w, y, x + w, y + h, x, y + h], style, layer)
}

export function circle(cx: number, cy: number, r: number, style: Style, layer: Layer): Mark {
  return { kind: 'arc', cx, cy, r, from: 0, to: 2 * Math.PI, style, layer }
}

export interface Lettering {
  size?: number
  anchor?: Anchor
  angle?: number
  colour?: string
  bold?: boolean
  halo?: boolean
  layer?: Layer
}

/** A line of text; `y` is its baseline. */
export function text(x: number, y: number, words: string, how: Lettering = {}): Mark {
  const style: Style = { fill: how.colour ?? '#1b1b1b' }
  if (how.bold) style.bold = true
  if (how.halo) style.halo = true
  const mark: Mark = {
    kind: 'text',
    x,
    y,
    text: words,
    size: how.size ?? 3,
    anchor: how.anchor ?? 'start',
    style,
    layer: how.layer ?? 'axis',
  }
  return how.angle === undefined ? mark : { ...mark, angle: how.angle }
}

/** A point's sign: shape, colour, half size in mm; hollow ones have a paper inside. */
export function pointSign(
  shape: MarkerShape,
  x: number,
  y: number,
  r: number,
  colour: string,
  hollow = false,
): Mark {
  const style: Style = { stroke: colour, fill: hollow ? paper : colour, width: 0.5 }
  switch (shape) {
    case 'circle':
      return circle(x, y, r, style, 'data')
    case 'square':
      return rectangle(x - r * 0.9, y - r * 0.9, r * 1.8, r * 1.8, style, 'data')
    case 'triangle':
      return polygon([x - r, y - 0.7 * r, x + r, y - 0.7 * r, x, y + 1.1 * r], style, 'data')
    case 'diamond':
      return polygon([x, y - 1.25 * r, x + 1.25 * r, y, x, y + 1.25 * r, x - 1.25 * r, y], style, 'data')
    case 'cross':
      return polyline(
        [x - r, y - r, x, y, x - r, y + r, x, y, x + r, y + r, x, y, x + r, y - r],
        { stroke: colour, width: 0.6 },
        'data',
      )
    case 'plus':
      return polyline(
        [x, y - 1.2 * r, x, y, x - 1.2 * r, y, x, y, x, y + 1.2 * r, x, y, x + 1.2 * r, y],
        { stroke: colour, width: 0.6 },
        'data',
      )
  }
}
