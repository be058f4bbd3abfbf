/** The lines of a chart: their looks, ranges and signs, and where their names stand. */
import { letterSize, smallSize } from './axes.ts'
import type { ChartSeries } from './chartSpec.ts'
import { choosePlace, type Occupied, type Place, placesRound, spreadApart } from './labels.ts'
import { line, pointSign, polygon, text } from './marks.ts'
import { inkOf, type MarkerShape, markerShapes, seriesColours } from './palette.ts'
import { type Box, clipLine, clipPolygon, finiteRuns, thinLine } from './polylines.ts'
import type { Mark, PlotAxis, PlotSeries, Style } from './sheet.ts'
import { textWidth } from './textWidth.ts'

export interface Drawn {
  spec: ChartSeries
  colour: string
  shape: MarkerShape
  style: Style
  /** visible parts, mm */
  parts: Float64Array[]
}

/** Gives each line its colour, sign and dash; a tried line takes those of the line before it. */
export function dress(series: readonly ChartSeries[]): Omit<Drawn, 'parts'>[] {
  let count = -1
  let before: string | undefined
  return series.map((spec) => {
    if (!spec.tried || count < 0) {
      count++
      before = undefined
    }
    const colour = spec.colour ?? before ?? seriesColours[count % seriesColours.length]!
    before = colour
    const style: Style = { stroke: colour, width: spec.width ?? (spec.tried ? 0.6 : 0.7) }
    if (spec.tried) style.dash = [2.4, 1.2]
    else if (spec.dash) style.dash = spec.dash
    return { spec, colour, shape: markerShapes[count % markerShapes.length]!, style }
  })
}

/** True when a line reaches the right side of the frame, where its name can stand outside. */
export function endsAtRight(s: ChartSeries, x: PlotAxis, y: PlotAxis): boolean {
  for (let i = Math.min(s.x.length, s.y.length) - 1; i >= 0; i--) {
    const [u, v] = [s.x[i]!, s.y[i]!]
    if (Number.isFinite(u + v)) return x.max - u < 0.03 * (x.max - x.min) && v >= y.min && v <= y.max
  }
  return false
}

export function plotSeries(d: Drawn): PlotSeries {
  const out: PlotSeries = {
    name: d.spec.name,
    x: d.spec.x,
    y: d.spec.y,
    colour: d.colour,
    tried: d.spec.tried ?? false,
  }
  if (d.spec.low && d.spec.high) {
    out.low = d.spec.low
    out.high = d.spec.high
  }
  return out
}

export type Along = (value: number) => number

/** column width that holds a line at no more than about 2000 points whatever the sheet's width */
const columnOf = (frame: Box) => Math.max(0.2, (frame.right - frame.left) / 480)

export function partsOf(s: ChartSeries, xAt: Along, yAt: Along, frame: Box): Float64Array[] {
  const mapped = finiteRuns(
    Float64Array.from({ length: s.x.length }, (_, i) => xAt(s.x[i]!)),
    Float64Array.from({ length: s.y.length }, (_, i) => yAt(s.y[i]!)),
  )
  return mapped.flatMap((run) =>
    clipLine(thinLine(run, columnOf(frame)), frame).map((p) => Float64Array.from(p)),
  )
}

export function partMark(d: Drawn, part: Float64Array): Mark {
  if (part.length === 2) return pointSign('circle', part[0]!, part[1]!, 0.7, d.colour)
  return { kind: 'polyline', points: part, style: d.style, layer: 'data', name: d.spec.name }
}

export function bandMarks(d: Drawn, xAt: Along, yAt: Along, frame: Box): Mark[] {
  const { low, high, x } = d.spec
  if (!low || !high) return []
  const n = Math.min(x.length, low.length, high.length)
  const both = Float64Array.from({ length: n }, (_, i) =>
    Number.isFinite(low[i]! + high[i]!) ? xAt(x[i]!) : Number.NaN,
  )
  const column = columnOf(frame)
  const lower = finiteRuns(
    both,
    Float64Array.from({ length: n }, (_, i) => yAt(low[i]!)),
  )
  const upper = finiteRuns(
    both,
    Float64Array.from({ length: n }, (_, i) => yAt(high[i]!)),
  )
  return lower.flatMap((run, k) => {
    const up = thinLine(upper[k]!, column)
    const back: number[] = []
    for (let i = up.length - 2; i >= 0; i -= 2) back.push(up[i]!, up[i + 1]!)
    const shape = clipPolygon([...thinLine(run, column), ...back], frame)
    const style = { fill: d.colour, opacity: d.spec.tried ? 0.1 : 0.16 }
    return shape.length < 6 ? [] : [polygon(shape, style, 'fill', `${d.spec.name}, range`)]
  })
}

/** A sign about every 28 mm of a line, never on a short piece. */
export function signMarks(d: Drawn): Mark[] {
  if (d.spec.signs === false) return []
  const marks: Mark[] = []
  let since = 18
  for (const part of d.parts)
    for (let i = 2; i + 1 < part.length; i += 2) {
      const [x0, y0, x1, y1] = [part[i - 2]!, part[i - 1]!, part[i]!, part[i + 1]!]
      const step = Math.hypot(x1 - x0, y1 - y0)
      while (since + step > 28 && step > 0 && marks.length < 40) {
        const t = Math.max(0, Math.min(1, (28 - since) / step))
        marks.push(pointSign(d.shape, x0 + t * (x1 - x0), y0 + t * (y1 - y0), 0.8, d.colour, d.spec.tried))
        since -= 28
      }
      since += step
    }
  return marks
}

export function placed(
  words: string,
  places: readonly Place[],
  frame: Box,
  taken: Occupied,
  colour: string,
  size = smallSize,
): Mark[] {
  const place = choosePlace(words, size, places, frame, taken)
  return place ? [text(place.x, place.y, words, { size, anchor: place.anchor, colour, halo: true })] : []
}

/** Names at the lines' ends: beside the frame where a line reaches its right side, else along the line inside. */
export function endLabels(
  drawn: readonly Drawn[],
  nameOf: (s: ChartSeries) => string,
  frame: Box,
  sheetWidth: number,
  taken: Occupied,
): Mark[] {
  const marks: Mark[] = []
  const outside: { d: Drawn; y: number }[] = []
  for (const d of drawn) {
    const name = nameOf(d.spec)
    const last = d.parts.at(-1)
    if (name === '' || !last) continue
    const [x, y] = [last.at(-2)!, last.at(-1)!]
    if (sheetWidth > 0 && frame.right - x < 0.03 * (frame.right - frame.left)) {
      outside.push({ d, y })
      continue
    }
    const places = d.parts.flatMap((part, k) =>
      [1, 0.92, 0.84, 0.72, 0.6, 0.45, 0.3, 0.15, 0].flatMap((f) => {
        const i = 2 * Math.round(f * (part.length / 2 - 1))
        return placesRound(
          part[i]!,
          part[i + 1]!,
          letterSize,
          1.6,
          (1 - f) * 5 + (d.parts.length - 1 - k) * 3,
        )
      }),
    )
    marks.push(...placed(name, places, frame, taken, inkOf(d.colour), letterSize))
  }
  const gap = letterSize * 1.25
  const heights = spreadApart(
    outside.map((o) => o.y),
    gap,
    frame.bottom + 1,
    frame.top - 1,
  )
  outside.forEach(({ d, y }, i) => {
    const at = heights[i]!
    const x = frame.right
    if (Math.abs(at - y) > 0.6)
      marks.push(line(x + 0.3, y, x + 2.6, at, { stroke: d.colour, width: 0.2 }, 'axis'))
    const room = sheetWidth - x - 3.2
    const size = Math.min(
      letterSize,
      (letterSize * room) / Math.max(1, textWidth(nameOf(d.spec), letterSize)),
    )
    marks.push(
      text(x + 3, at - 0.35 * size, nameOf(d.spec), { size, colour: inkOf(d.colour), layer: 'axis' }),
    )
  })
  return marks
}
