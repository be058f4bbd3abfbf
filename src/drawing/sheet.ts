/**
 * The draw list: one drawing for the screen, paper, terminal and cutting files.
 * Lengths are millimetres on the sheet, x to the right, y up.
 */
export type Anchor = 'start' | 'middle' | 'end'

/** What a line is for; cutting files keep only the geometry layers. */
export type Layer = 'cut' | 'bend' | 'mark' | 'dimension' | 'data' | 'axis' | 'grid' | 'fill' | 'water'

export interface Style {
  stroke?: string
  fill?: string
  /** line width, mm */
  width?: number
  /** dash lengths, mm */
  dash?: readonly number[]
  opacity?: number
  /** text only */
  bold?: boolean
  /** text only: a ground-coloured outline under the letters, so that they read across lines */
  halo?: boolean
}

export type Mark =
  /** points are x0, y0, x1, y1 … */
  | { kind: 'polyline'; points: Float64Array; style: Style; layer: Layer; name?: string }
  | { kind: 'polygon'; points: Float64Array; style: Style; layer: Layer; name?: string }
  /** angles in radians, anticlockwise from +x */
  | { kind: 'arc'; cx: number; cy: number; r: number; from: number; to: number; style: Style; layer: Layer }
  | {
      kind: 'text'
      x: number
      y: number
      text: string
      size: number
      anchor: Anchor
      angle?: number
      style: Style
      layer: Layer
    }
  | {
      kind: 'image'
      x: number
      y: number
      w: number
      h: number
      rgb: Uint8Array
      cols: number
      rows: number
      layer: Layer
    }

/** One axis of a chart as it was laid out; `unit` is already the unit of the numbers. */
export interface PlotAxis {
  label: string
  unit: string
  min: number
  max: number
  /** logarithmic when true */
  log?: boolean
}

/** Numbers behind one drawn line, for read-outs and for copying as a table. */
export interface PlotSeries {
  name: string
  x: ArrayLike<number>
  y: ArrayLike<number>
  low?: ArrayLike<number>
  high?: ArrayLike<number>
  colour: string
  tried: boolean
}

/** Where a chart's data sit on the sheet, mm, and the numbers drawn there. */
export interface Plot {
  left: number
  right: number
  bottom: number
  top: number
  x: PlotAxis
  y: PlotAxis
  series: PlotSeries[]
}

/** A number on a drawing, mm on the sheet: a face may make it something to press. */
export interface Spot {
  n: number
  x: number
  y: number
  r: number
  /** the place it belongs to */
  to: readonly [number, number]
}

/** What a run of marks of a page is to somebody it is read out to. ISO 32000-1:2008, 14.8.4: standard structure types. */
export type PageRole = 'H1' | 'H2' | 'H3' | 'P' | 'LI' | 'TH' | 'TD' | 'Figure'

/** Marks `from` up to `to` of a page are one thing; marks in none are decoration. In the order of the marks, none over another. */
export interface PageTag {
  role: PageRole
  from: number
  to: number
  /** what a picture shows, in words */
  alt?: string
  /** cells: which table of the document, and which row of it */
  table?: number
  row?: number
  /** a name of `places` that it leads to, and the part of the page to press, mm */
  leads?: { to: string; x: number; y: number; w: number; h: number }
}

/** A place of a page that something leads to. */
export interface PagePlace {
  name: string
  /** mm from the foot of the page */
  y: number
  /** in the list of contents under this title, so deep */
  title?: string
  depth?: number
}

/** A finished drawing. `title` and `says` are read out to people who cannot see it. */
export interface Sheet {
  width: number
  height: number
  title: string
  says: string
  marks: Mark[]
  /** present on charts */
  plots?: Plot[]
  /** numbers drawn on it */
  spots?: Spot[]
  /** pages of writing: what its marks are, and what leads to them */
  tags?: PageTag[]
  places?: PagePlace[]
}
