import { alongAxis, axisMarks, axisName, letterSize, roomForNames, ticksOf } from './axes.ts'
import { line, rectangle, text } from './marks.ts'
import { ink, levelColour, quiet, signedColour } from './palette.ts'
import type { Box } from './polylines.ts'
import type { Mark, Plot, PlotAxis, Sheet } from './sheet.ts'

/** A table of values drawn as colours: a spectrogram, or pressure along a pipe over the crank's turn. */
export interface HeatSpec {
  title: string
  says: string
  width?: number
  height?: number
  x: PlotAxis
  y: PlotAxis
  /** what the colour means, with its ends; values beyond them take the end colour */
  level: PlotAxis
  /** row by row, the first row lowest in y; NaN is left paper-white */
  values: ArrayLike<number>
  cols: number
  rows: number
  /** two colours about nought instead of one that darkens */
  signed?: boolean
  /** lines over the picture, numbers in the axes' units */
  over?: readonly { name: string; x: ArrayLike<number>; y: ArrayLike<number>; colour: string }[]
}

/** The picture with axes, a key of its colours, and the axes' numbers for read-outs. Throws RangeError on a wrong size. */
export function heatChart(spec: HeatSpec): Sheet {
  const { cols, rows, values, x, y, level } = spec
  if (values.length !== cols * rows)
    throw new RangeError(`values: ${values.length} numbers, not ${cols} × ${rows}`)
  const width = spec.width ?? 180
  const height = spec.height ?? 90
  const yTicks = ticksOf(y, height - 18, 13)
  const keyTicks = ticksOf(level, height - 18, 13)
  const frame: Box = {
    left: roomForNames(yTicks.names),
    right: width - roomForNames(keyTicks.names) - 7,
    bottom: 11.2,
    top: height - 6.2,
  }
  const marks: Mark[] = [picture(spec, frame)]
  const xTicks = ticksOf(x, frame.right - frame.left, 18)
  marks.push(...axisMarks(frame, x, y, xTicks, yTicks).filter((m) => m.layer !== 'grid'))
  for (const o of spec.over ?? []) marks.push(...overLine(o, x, y, frame))
  marks.push(...key(spec, frame, width, keyTicks))
  const plot: Plot = { ...frame, x, y, series: [] }
  return { width, height, title: spec.title, says: spec.says, marks, plots: [plot] }
}

function colourOf(spec: HeatSpec, value: number): readonly number[] {
  if (!Number.isFinite(value)) return [255, 255, 255]
  const { min, max } = spec.level
  if (spec.signed) return signedColour(value / Math.max(Math.abs(min), Math.abs(max)))
  return levelColour((value - min) / (max - min))
}

function picture(spec: HeatSpec, frame: Box): Mark {
  const { cols, rows, values } = spec
  const rgb = new Uint8Array(cols * rows * 3)
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < cols; c++) {
      const at = ((rows - 1 - r) * cols + c) * 3
      const [red, green, blue] = colourOf(spec, values[r * cols + c]!)
      rgb[at] = red!
      rgb[at + 1] = green!
      rgb[at + 2] = blue!
    }
  const { left, right, bottom, top } = frame
  return {
    kind: 'image',
    x: left,
    y: bottom,
    w: right - left,
    h: top - bottom,
    rgb,
    cols,
    rows,
    layer: 'data',
  }
}

function overLine(o: NonNullable<HeatSpec['over']>[number], x: PlotAxis, y: PlotAxis, frame: Box): Mark[] {
  const [xAt, yAt] = [alongAxis(x, frame.left, frame.right), alongAxis(y, frame.bottom, frame.top)]
  const points: number[] = []
  for (let i = 0; i < o.x.length; i++)
    if (Number.isFinite(o.x[i]! + o.y[i]!)) points.push(xAt(o.x[i]!), yAt(o.y[i]!))
  if (points.length < 4) return []
  const mark = (colour: string, width: number): Mark => ({
    kind: 'polyline',
    points: Float64Array.from(points),
    style: { stroke: colour, width },
    layer: 'data',
    name: o.name,
  })
  return [mark('#ffffff', 1.1), mark(o.colour, 0.5)]
}

function key(spec: HeatSpec, frame: Box, width: number, ticks: { at: number[]; names: string[] }): Mark[] {
  const { level } = spec
  const at = alongAxis(level, frame.bottom, frame.top)
  const left = frame.right + 3
  const n = 64
  const rgb = new Uint8Array(n * 3)
  for (let i = 0; i < n; i++)
    rgb.set(colourOf(spec, level.min + ((level.max - level.min) * (n - 0.5 - i)) / n).map(Math.round), i * 3)
  const tall = frame.top - frame.bottom
  const marks: Mark[] = [
    { kind: 'image', x: left, y: frame.bottom, w: 3, h: tall, rgb, cols: 1, rows: n, layer: 'data' },
    rectangle(left, frame.bottom, 3, tall, { stroke: ink, width: 0.2 }, 'axis'),
    text(width - 0.5, frame.top + 2.4, axisName(level), { anchor: 'end' }),
  ]
  ticks.at.forEach((v, i) => {
    marks.push(line(left + 3, at(v), left + 3.8, at(v), { stroke: ink, width: 0.2 }, 'axis'))
    marks.push(text(left + 4.4, at(v) - 0.35 * letterSize, ticks.names[i]!, { colour: quiet }))
  })
  return marks
}
