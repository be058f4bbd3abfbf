import type { MarkerShape } from './palette.ts'

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
export interface ChartLine {
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

export interface ChartAxis {
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
