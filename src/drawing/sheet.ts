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

/** A finished drawing. `title` and `says` are read out to people who cannot see it. */
export interface Sheet {
  width: number
  height: number
  title: string
  says: string
  marks: Mark[]
}
