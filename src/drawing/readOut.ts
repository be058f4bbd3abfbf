import { tickStep } from 'd3-array'
import { partAlong, tickText } from './axes.ts'
import type { Plot, PlotAxis, PlotSeries } from './sheet.ts'

export interface Reading {
  name: string
  colour: string
  value: number
  /** sheet place of the point, mm */
  x: number
  y: number
  says: string
}

/** Linear between the two points that bracket `at`; NaN in a gap and beyond the ends. */
export function valueAt(series: Pick<PlotSeries, 'x' | 'y'>, at: number): number {
  const { x, y } = series
  for (let i = 0; i + 1 < x.length; i++) {
    const [a, b] = [x[i]!, x[i + 1]!]
    if (!((a <= at && at <= b) || (b <= at && at <= a)) || a === b) continue
    const [ya, yb] = [y[i]!, y[i + 1]!]
    if (at === a && Number.isFinite(ya)) return ya
    if (at === b && Number.isFinite(yb)) return yb
    const v = ya + ((yb - ya) * (at - a)) / (b - a)
    if (Number.isFinite(v)) return v
  }
  return x.length === 1 && x[0] === at ? y[0]! : Number.NaN
}

/** A value as a read-out shows it: about a three hundredth of the axis' span. */
export function readingText(axis: PlotAxis, value: number): string {
  const step = axis.log ? value / 100 : tickStep(axis.min, axis.max, 300)
  const unit = axis.unit === '' || axis.unit === '1' ? '' : ` ${axis.unit}`
  return tickText(Math.round(value / step) * step, step) + unit
}

/** Every line's value at one place along the x axis of a plot; lines with a gap there are left out. */
export function readAt(plot: Plot, at: number): Reading[] {
  const fx = partAlong(plot.x, at)
  return plot.series.flatMap((s) => {
    const value = valueAt(s, at)
    if (!Number.isFinite(value)) return []
    const fy = partAlong(plot.y, value)
    return [
      {
        name: s.name,
        colour: s.colour,
        value,
        x: plot.left + fx * (plot.right - plot.left),
        y: plot.bottom + Math.min(1, Math.max(0, fy)) * (plot.top - plot.bottom),
        says: `${s.name} ${readingText(plot.y, value)}`,
      },
    ]
  })
}
