import { extent } from 'd3-array'
import { scaleLinear } from 'd3-scale'
import { alongAxis, axisMarks, letterSize, roomForNames, ticksOf } from './axes.ts'
import {
  bandMarks,
  type Drawn,
  dress,
  endLabels,
  endsAtRight,
  partMark,
  partsOf,
  plotSeries,
  signMarks,
} from './chartLines.ts'
import { around, lineEnds, lineMarks, markerMarks, zoneMarks } from './chartMarks.ts'
import type { ChartAxis, ChartSeries, ChartSpec } from './chartSpec.ts'
import { Occupied } from './labels.ts'
import { rectangle, text } from './marks.ts'
import { quiet } from './palette.ts'
import type { Box } from './polylines.ts'
import type { Mark, Plot, PlotAxis, Sheet } from './sheet.ts'
import { textWidth, wrapText } from './textWidth.ts'

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
