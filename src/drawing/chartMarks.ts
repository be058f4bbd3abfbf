/** What stands in a chart besides its lines: zones, straight lines and markers, each with its words. */
import { smallSize } from './axes.ts'
import { type Along, placed } from './chartLines.ts'
import type { ChartLine, ChartMarker, ChartZone } from './chartSpec.ts'
import { type Occupied, type Place, placesRound } from './labels.ts'
import { pointSign, polyline, rectangle } from './marks.ts'
import { inkOf, quiet } from './palette.ts'
import type { Box } from './polylines.ts'
import type { Mark, Style } from './sheet.ts'

export const around = (x: number, y: number, r: number): Box => ({
  left: x - r,
  right: x + r,
  bottom: y - r,
  top: y + r,
})

export function zoneMarks(z: ChartZone, at: Along, frame: Box, taken: Occupied): Mark[] {
  const upright = z.axis === 'x'
  const [low, high] = upright ? [frame.left, frame.right] : [frame.bottom, frame.top]
  const a = Math.max(low, Math.min(at(z.from), at(z.to)))
  const b = Math.min(high, Math.max(at(z.from), at(z.to)))
  if (!(b > a)) return []
  const style = { fill: z.colour, opacity: 0.13 }
  const marks = [
    upright
      ? rectangle(a, frame.bottom, b - a, frame.top - frame.bottom, style, 'fill')
      : rectangle(frame.left, a, frame.right - frame.left, b - a, style, 'fill'),
  ]
  if (z.label) {
    const places: Place[] = upright
      ? [frame.top - 3.4, frame.bottom + 1.6].map((y, i) => ({
          x: (a + b) / 2,
          y,
          anchor: 'middle',
          cost: i,
        }))
      : [frame.left + 1.5].map((x) => ({ x, y: (a + b) / 2 - 1, anchor: 'start', cost: 0 }))
    marks.push(...placed(z.label, places, frame, taken, inkOf(z.colour)))
  }
  return marks
}

export function lineEnds(l: ChartLine, at: Along, frame: Box): number[] {
  const v = at(l.at)
  return l.axis === 'x' ? [v, frame.bottom, v, frame.top] : [frame.left, v, frame.right, v]
}

export function lineMarks(l: ChartLine, at: Along, frame: Box, taken: Occupied): Mark[] {
  const upright = l.axis === 'x'
  const v = at(l.at)
  const [low, high] = upright ? [frame.left, frame.right] : [frame.bottom, frame.top]
  if (!(v >= low && v <= high)) return []
  const colour = l.colour ?? quiet
  const style: Style = { stroke: colour, width: 0.3, dash: l.dash ?? [1.2, 0.9] }
  const ends = lineEnds(l, at, frame)
  const marks = [polyline(ends, style, 'axis', l.label)]
  if (!l.label) return marks
  const places: Place[] = []
  for (let k = 0; k < 12; k++) {
    const f = k / 11
    if (upright) {
      const y = frame.top - 3 - f * (frame.top - frame.bottom - 5)
      places.push(
        { x: v + 1, y, anchor: 'start', cost: k * 0.6 },
        { x: v - 1, y, anchor: 'end', cost: k * 0.6 + 0.3 },
      )
    } else {
      const x = frame.right - 1 - f * (frame.right - frame.left) * 0.8
      places.push(
        { x, y: v + 1, anchor: 'end', cost: k * 0.6 },
        { x, y: v - 3.2, anchor: 'end', cost: k * 0.6 + 0.3 },
      )
    }
  }
  marks.push(...placed(l.label, places, frame, taken, inkOf(colour)))
  return marks
}

export function markerMarks(m: ChartMarker, xAt: Along, yAt: Along, frame: Box, taken: Occupied): Mark[] {
  const [x, y] = [xAt(m.x), yAt(m.y)]
  if (!(x >= frame.left && x <= frame.right && y >= frame.bottom && y <= frame.top)) return []
  const marks = [pointSign(m.shape, x, y, 1.3, m.colour, m.hollow)]
  if (m.label) {
    const places = [...placesRound(x, y, smallSize, 2.2), ...placesRound(x, y, smallSize, 5, 6)]
    marks.push(...placed(m.label, places, frame, taken, inkOf(m.colour), smallSize))
  }
  return marks
}
