import { extent } from 'd3-array'
import { scaleLinear } from 'd3-scale'
import { alongAxis, axisMarks, letterSize, roomForNames, smallSize, ticksOf } from './axes.ts'
import { choosePlace, Occupied, type Place, placesRound, spreadApart } from './labels.ts'
import { type Box, clipLine, clipPolygon, finiteRuns, thinLine } from './lines.ts'
import { line, pointSign, polygon, polyline, rectangle, text } from './marks.ts'
import { inkOf, type MarkerShape, markerShapes, quiet, seriesColours } from './palette.ts'
import type { Mark, Plot, PlotAxis, PlotSeries, Sheet, Style } from './sheet.ts'
import { textWidth, wrapText } from './textWidth.ts'

/** One line of a chart. Numbers are in the units the axes name; NaN leaves a gap. */
export interface ChartSeries {
  name: string
  x: ArrayLike<number>
  y: ArrayLike<number>
  /** likely range, drawn as a band */
  low?: ArrayLike<number>
  high?: ArrayLike<number>
  colour?: string
  /** the tried state of the series before it: dashed, in the same colour */
  tried?: boolean
  /** dash lengths, mm, for lines that are neither now nor tried */
  dash?: readonly number[]
  width?: number
  /** words at the line's end; the name when left out, none when false */
  label?: string | false
  /** signs along the line, so that it is told by shape as well as colour; on unless false */
  signs?: boolean
}

export interface ChartMarker {
  x: number
  y: number
  shape: MarkerShape
  colour: string
  label?: string
  hollow?: boolean
}

/** A straight line across the plot at one value. */
interface ChartLine {
  axis: 'x' | 'y'
  at: number
  label?: string
  colour?: string
  dash?: readonly number[]
}

/** A tinted stretch of one axis. */
export interface ChartZone {
  axis: 'x' | 'y'
  from: number
  to: number
  label?: string
  colour: string
}

interface ChartAxis {
  label: string
  unit: string
  /** fixed ends; found from the data when left out */
  min?: number
  max?: number
  /** values that must be on the axis */
  include?: readonly number[]
  log?: boolean
}

export interface ChartSpec {
  title: string
  says: string
  /** sheet, mm; 180 × 95 when left out */
  width?: number
  height?: number
  x: ChartAxis
  y: ChartAxis
  series: readonly ChartSeries[]
  markers?: readonly ChartMarker[]
  lines?: readonly ChartLine[]
  zones?: readonly ChartZone[]
  /** what to show when there is nothing to draw */
  empty?: string
}

interface Drawn {
  spec: ChartSeries
  colour: string
  shape: MarkerShape
  style: Style
  /** visible parts, mm */
  parts: Float64Array[]
}

function* finite(values: ArrayLike<number> | undefined): Generator<number> {
  for (let i = 0; i < (values?.length ?? 0); i++) if (Number.isFinite(values![i])) yield values![i]!
}

/** The ends of an axis from its data; a single value gets room either side. */
function axisOf(axis: ChartAxis, data: Iterable<number>, round: boolean): PlotAxis {
  const [low, high] = extent([...data, ...(axis.include ?? [])])
  let min = axis.min ?? low ?? 0
  let max = axis.max ?? high ?? 1
  if (axis.log) {
    min = Math.max(min, Number.MIN_VALUE)
    max = Math.max(max, min * 10)
  }
  if (!(max > min)) [min, max] = [min - (Math.abs(min) * 0.1 || 1), max + (Math.abs(max) * 0.1 || 1)]
  if (round && !axis.log) {
    const [a, b] = scaleLinear().domain([min, max]).nice(6).domain() as [number, number]
    min = axis.min ?? a
    max = axis.max ?? b
  }
  const out: PlotAxis = { label: axis.label, unit: axis.unit, min, max }
  return axis.log ? { ...out, log: true } : out
}

/** Gives each line its colour, sign and dash; a tried line takes those of the line before it. */
function dress(series: readonly ChartSeries[]): Omit<Drawn, 'parts'>[] {
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

/** A line chart as a draw list: axes with round ticks, ranges, direct labels, marks, lines and zones. */
export function lineChart(spec: ChartSpec): Sheet {
  const width = spec.width ?? 180
  const height = spec.height ?? 95
  const { series, markers = [], lines = [], zones = [] } = spec
  const xs = [...series.flatMap((s) => [...finite(s.x)]), ...finite(markers.map((m) => m.x))]
  const ys = [
    ...series.flatMap((s) => [...finite(s.y), ...finite(s.low), ...finite(s.high)]),
    ...finite(markers.map((m) => m.y)),
  ]
  const sheet: Sheet = { width, height, title: spec.title, says: spec.says, marks: [] }
  if (xs.length === 0 || ys.length === 0) return emptyChart(sheet, spec.empty ?? 'Nothing to draw yet.')

  // frame: room for the numbers on the left and, where the sheet is wide, for the names on the right
  const x = axisOf(spec.x, xs, false)
  const y = axisOf(spec.y, ys, true)
  const bottom = 11.2
  const top = height - 6.2
  const yTicks = ticksOf(y, top - bottom, 13)
  const dressed = dress(series)
  const wide = width >= 125
  const nameOf = (s: ChartSeries) => (s.label === false ? '' : (s.label ?? s.name))
  const names = wide
    ? dressed.map((d) => (endsAtRight(d.spec, x, y) ? textWidth(nameOf(d.spec), letterSize) : 0))
    : []
  const right = width - Math.min(width * 0.3, Math.max(3, ...names.map((n) => (n > 0 ? n + 5 : 0))))
  const frame: Box = { left: roomForNames(yTicks.names), right, bottom, top }
  const xTicks = ticksOf(x, frame.right - frame.left, 18)
  const xAt = alongAxis(x, frame.left, frame.right)
  const yAt = alongAxis(y, frame.bottom, frame.top)

  const drawn: Drawn[] = dressed.map((d) => ({ ...d, parts: partsOf(d.spec, xAt, yAt, frame) }))
  const taken = new Occupied(width, height)
  for (const d of drawn) for (const part of d.parts) taken.line(part)
  for (const l of lines) taken.line(lineEnds(l, l.axis === 'x' ? xAt : yAt, frame))

  const back: Mark[] = []
  const front: Mark[] = []
  for (const z of zones) back.push(...zoneMarks(z, z.axis === 'x' ? xAt : yAt, frame, taken))
  for (const d of drawn) back.push(...bandMarks(d, xAt, yAt, frame))
  back.push(...axisMarks(frame, x, y, xTicks, yTicks))
  for (const d of drawn) for (const part of d.parts) front.push(partMark(d, part))
  for (const d of drawn) front.push(...signMarks(d))
  for (const m of markers) taken.box(around(xAt(m.x), yAt(m.y), 1.6))
  for (const l of lines) front.push(...lineMarks(l, l.axis === 'x' ? xAt : yAt, frame, taken))
  for (const m of markers) front.push(...markerMarks(m, xAt, yAt, frame, taken))
  front.push(...endLabels(drawn, nameOf, frame, wide ? width : 0, taken))

  const plot: Plot = { ...frame, x, y, series: drawn.map(plotSeries) }
  return { ...sheet, marks: [...back, ...front], plots: [plot] }
}

/** True when a line reaches the right side of the frame, where its name can stand outside. */
function endsAtRight(s: ChartSeries, x: PlotAxis, y: PlotAxis): boolean {
  for (let i = Math.min(s.x.length, s.y.length) - 1; i >= 0; i--) {
    const [u, v] = [s.x[i]!, s.y[i]!]
    if (Number.isFinite(u + v)) return x.max - u < 0.03 * (x.max - x.min) && v >= y.min && v <= y.max
  }
  return false
}

function plotSeries(d: Drawn): PlotSeries {
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

function emptyChart(sheet: Sheet, words: string): Sheet {
  const { width, height } = sheet
  sheet.marks.push(
    rectangle(0.5, 0.5, width - 1, height - 1, { stroke: quiet, width: 0.2, dash: [1.5, 1.5] }, 'axis'),
  )
  const rows = wrapText(words, 3.4, width - 16)
  rows.forEach((row, i) => {
    sheet.marks.push(
      text(width / 2, height / 2 + (rows.length / 2 - i - 0.8) * 5, row, {
        size: 3.4,
        anchor: 'middle',
        colour: quiet,
      }),
    )
  })
  return sheet
}

type Along = (value: number) => number

/** column width that holds a line at no more than about 2000 points whatever the sheet's width */
const columnOf = (frame: Box) => Math.max(0.2, (frame.right - frame.left) / 480)

function partsOf(s: ChartSeries, xAt: Along, yAt: Along, frame: Box): Float64Array[] {
  const mapped = finiteRuns(
    Float64Array.from({ length: s.x.length }, (_, i) => xAt(s.x[i]!)),
    Float64Array.from({ length: s.y.length }, (_, i) => yAt(s.y[i]!)),
  )
  return mapped.flatMap((run) =>
    clipLine(thinLine(run, columnOf(frame)), frame).map((p) => Float64Array.from(p)),
  )
}

function partMark(d: Drawn, part: Float64Array): Mark {
  if (part.length === 2) return pointSign('circle', part[0]!, part[1]!, 0.7, d.colour)
  return { kind: 'polyline', points: part, style: d.style, layer: 'data', name: d.spec.name }
}

function bandMarks(d: Drawn, xAt: Along, yAt: Along, frame: Box): Mark[] {
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
function signMarks(d: Drawn): Mark[] {
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

const around = (x: number, y: number, r: number): Box => ({
  left: x - r,
  right: x + r,
  bottom: y - r,
  top: y + r,
})

function zoneMarks(z: ChartZone, at: Along, frame: Box, taken: Occupied): Mark[] {
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

function lineEnds(l: ChartLine, at: Along, frame: Box): number[] {
  const v = at(l.at)
  return l.axis === 'x' ? [v, frame.bottom, v, frame.top] : [frame.left, v, frame.right, v]
}

function lineMarks(l: ChartLine, at: Along, frame: Box, taken: Occupied): Mark[] {
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

function markerMarks(m: ChartMarker, xAt: Along, yAt: Along, frame: Box, taken: Occupied): Mark[] {
  const [x, y] = [xAt(m.x), yAt(m.y)]
  if (!(x >= frame.left && x <= frame.right && y >= frame.bottom && y <= frame.top)) return []
  const marks = [pointSign(m.shape, x, y, 1.3, m.colour, m.hollow)]
  if (m.label) {
    const places = [...placesRound(x, y, smallSize, 2.2), ...placesRound(x, y, smallSize, 5, 6)]
    marks.push(...placed(m.label, places, frame, taken, inkOf(m.colour), smallSize))
  }
  return marks
}

function placed(
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
function endLabels(
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
