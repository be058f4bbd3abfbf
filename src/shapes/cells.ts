/**
 * Outlines on a grid of square cells, always on the careful side: a cell counts as taken when any part of it may lie within `reach` of the shape. So
 * two shapes whose cells are apart are themselves at least twice their reach apart, wherever whole cells move them.
 */
import type { FlatPoint } from '../base/answers/madePart.ts'

/** A shape's cells from its lower left corner: in each row the taken runs, as [from, to) pairs. */
export interface Cells {
  cols: number
  rows: number
  runs: readonly Int32Array[]
  /** where the shape's own origin lies from the grid's corner, m */
  x: number
  y: number
}

/** Taken cells of a whole grid, one byte each: the inside of the outlines (even–odd) and all within reach of a line, m. */
export function taken(
  outlines: readonly (readonly FlatPoint[])[],
  cell: number,
  cols: number,
  rows: number,
  reach: number,
): Uint8Array {
  const grid = new Uint8Array(cols * rows)
  fillInside(outlines, cell, cols, rows, grid)
  // samples lie at most half a cell apart, a cell's corner 0.71 of it from its middle
  const r = reach + 0.97 * cell
  for (const outline of outlines)
    for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
      const [ax, ay] = outline[j]!
      const [bx, by] = outline[i]!
      const steps = Math.max(1, Math.ceil((2 * Math.hypot(bx - ax, by - ay)) / cell))
      for (let k = 0; k < steps; k++) {
        const x = ax + ((bx - ax) * k) / steps
        const y = ay + ((by - ay) * k) / steps
        const top = Math.min(rows - 1, Math.floor((y + r) / cell))
        for (let row = Math.max(0, Math.floor((y - r) / cell)); row <= top; row++) {
          const dy = (row + 0.5) * cell - y
          if (dy * dy > r * r) continue
          const half = Math.sqrt(r * r - dy * dy)
          const from = Math.max(0, Math.ceil((x - half) / cell - 0.5))
          const to = Math.min(cols - 1, Math.floor((x + half) / cell - 0.5))
          if (to >= from) grid.fill(1, row * cols + from, row * cols + to + 1)
        }
      }
    }
  return grid
}

/** Marks cells whose middles lie inside an odd number of outlines. */
function fillInside(
  outlines: readonly (readonly FlatPoint[])[],
  cell: number,
  cols: number,
  rows: number,
  grid: Uint8Array,
): void {
  const crossings: number[][] = Array.from({ length: rows }, () => [])
  for (const outline of outlines)
    for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
      const [a, b] = outline[i]![1] < outline[j]![1] ? [outline[i]!, outline[j]!] : [outline[j]!, outline[i]!]
      const from = Math.max(0, Math.ceil(a[1] / cell - 0.5))
      const to = Math.min(rows, Math.ceil(b[1] / cell - 0.5))
      for (let row = from; row < to; row++)
        crossings[row]!.push(a[0] + (((row + 0.5) * cell - a[1]) * (b[0] - a[0])) / (b[1] - a[1]))
    }
  crossings.forEach((xs, row) => {
    xs.sort((a, b) => a - b)
    for (let k = 0; k + 1 < xs.length; k += 2) {
      const from = Math.max(0, Math.ceil(xs[k]! / cell - 0.5))
      const to = Math.min(cols, Math.ceil(xs[k + 1]! / cell - 0.5))
      if (to > from) grid.fill(1, row * cols + from, row * cols + to)
    }
  })
}

/** Cells of a shape, its outlines moved so that all of what it takes lies on the grid. */
export function cellsOf(outlines: readonly (readonly FlatPoint[])[], cell: number, reach: number): Cells {
  let [left, right, low, high] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const outline of outlines)
    for (const [x, y] of outline) {
      left = Math.min(left, x)
      right = Math.max(right, x)
      low = Math.min(low, y)
      high = Math.max(high, y)
    }
  const off = reach + cell
  const [x, y] = [off - left, off - low]
  const cols = Math.ceil((right - left + 2 * off) / cell)
  const rows = Math.ceil((high - low + 2 * off) / cell)
  const moved = outlines.map((o) => o.map(([u, v]): FlatPoint => [u + x, v + y]))
  const grid = taken(moved, cell, cols, rows, reach)
  const runs = Array.from({ length: rows }, (_, row) => {
    const out: number[] = []
    for (let k = row * cols, end = k + cols; k < end; ) {
      if (grid[k] === 0) {
        k++
        continue
      }
      const from = k
      while (k < end && grid[k] === 1) k++
      out.push(from - row * cols, k - row * cols)
    }
    return Int32Array.from(out)
  })
  return { cols, rows, runs, x, y }
}

/** A sheet being filled. */
export class CellBoard {
  readonly cols: number
  readonly rows: number
  /** of each cell the next taken one in its row, itself among them; and the next free one */
  private readonly nextTaken: Int32Array
  private readonly nextFree: Int32Array
  private readonly grid: Uint8Array

  constructor(grid: Uint8Array, cols: number, rows: number) {
    this.grid = grid
    this.cols = cols
    this.rows = rows
    this.nextTaken = new Int32Array(cols * rows)
    this.nextFree = new Int32Array(cols * rows)
    for (let row = 0; row < rows; row++) this.look(row)
  }

  private look(row: number): void {
    const { grid, nextTaken, nextFree, cols } = this
    let [t, f] = [cols, cols]
    for (let x = cols - 1, k = row * cols + x; x >= 0; x--, k--) {
      if (grid[k] === 1) t = x
      else f = x
      nextTaken[k] = t
      nextFree[k] = f
    }
  }

  /** The lowest, then leftmost place that is free for a shape whose top stays at or below `most` rows; undefined where there is none. */
  place(shape: Cells, most: number): { x: number; y: number } | undefined {
    const { cols, nextTaken, nextFree } = this
    const last = Math.min(this.rows, most) - shape.rows
    for (let y = 0; y <= last; y++) {
      let x = 0
      // rows that just blocked the shape are asked first: they are the likeliest to block it again
      let first = 0
      place: while (x + shape.cols <= cols) {
        for (let n = 0; n < shape.rows; n++) {
          const row = (first + n) % shape.rows
          const runs = shape.runs[row]!
          const base = (y + row) * cols
          for (let k = 0; k < runs.length; k += 2) {
            const from = x + runs[k]!
            const hit = nextTaken[base + from]!
            if (hit >= x + runs[k + 1]!) continue
            first = row
            x += Math.max(1, nextFree[base + hit]! - from)
            continue place
          }
        }
        return { x, y }
      }
    }
    return undefined
  }

  /** Takes the cells of a shape. */
  take(shape: Cells, x: number, y: number): void {
    shape.runs.forEach((runs, row) => {
      const base = (y + row) * this.cols + x
      for (let k = 0; k < runs.length; k += 2) this.grid.fill(1, base + runs[k]!, base + runs[k + 1]!)
      this.look(y + row)
    })
  }
}
