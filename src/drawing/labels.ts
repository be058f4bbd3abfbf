import type { Box } from './polylines.ts'
import type { Anchor } from './sheet.ts'
import { textWidth } from './textWidth.ts'

/**
 * Moves wished-for heights apart so that neighbours are at least `gap` apart, staying as close to the wishes as
 * they can (least squares: pool neighbours that collide into one block around their mean), inside low … high when
 * they fit there. The order of equal wishes is kept.
 */
export function spreadApart(wishes: readonly number[], gap: number, low: number, high: number): number[] {
  const order = wishes.map((_, i) => i).sort((a, b) => wishes[a]! - wishes[b]! || a - b)
  // with the k-th neighbour's share of the gaps taken off, "apart" becomes "not falling"
  const blocks: { sum: number; count: number }[] = []
  order.forEach((index, k) => {
    blocks.push({ sum: wishes[index]! - k * gap, count: 1 })
    while (blocks.length > 1) {
      const [a, b] = [blocks[blocks.length - 2]!, blocks[blocks.length - 1]!]
      if (a.sum / a.count <= b.sum / b.count) break
      blocks.splice(-2, 2, { sum: a.sum + b.sum, count: a.count + b.count })
    }
  })
  const flat = blocks.flatMap((b) => Array<number>(b.count).fill(b.sum / b.count))
  const most = Math.max(low, high - (wishes.length - 1) * gap)
  const out = Array<number>(wishes.length)
  order.forEach((index, k) => {
    out[index] = Math.min(most, Math.max(low, flat[k]!)) + k * gap
  })
  return out
}

/** Which millimetre squares of a sheet something is already drawn in. */
export class Occupied {
  readonly cols: number
  readonly rows: number
  readonly cells: Uint8Array

  constructor(width: number, height: number) {
    this.cols = Math.ceil(width) + 1
    this.rows = Math.ceil(height) + 1
    this.cells = new Uint8Array(this.cols * this.rows)
  }

  line(points: ArrayLike<number>): void {
    for (let i = 0; i + 1 < points.length; i += 2) {
      const [x0, y0] = [points[i]!, points[i + 1]!]
      const [x1, y1] = i + 3 < points.length ? [points[i + 2]!, points[i + 3]!] : [x0, y0]
      const steps = Math.min(2000, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / 0.7)) || 1
      for (let k = 0; k <= steps; k++) this.dot(x0 + ((x1 - x0) * k) / steps, y0 + ((y1 - y0) * k) / steps, 3)
    }
  }

  /** Takes a box for a label; labels weigh more than lines. */
  box(b: Box): void {
    for (let y = Math.floor(b.bottom); y <= b.top; y++)
      for (let x = Math.floor(b.left); x <= b.right; x++) this.dot(x, y, 12)
  }

  /** How much is already drawn inside a box. */
  weight(b: Box): number {
    let sum = 0
    for (let y = Math.floor(b.bottom); y <= b.top; y++)
      for (let x = Math.floor(b.left); x <= b.right; x++)
        if (x >= 0 && y >= 0 && x < this.cols && y < this.rows) sum += this.cells[y * this.cols + x]!
    return sum
  }

  private dot(x: number, y: number, weight: number): void {
    const [c, r] = [Math.floor(x), Math.floor(y)]
    if (c < 0 || r < 0 || c >= this.cols || r >= this.rows) return
    const k = r * this.cols + c
    this.cells[k] = Math.max(this.cells[k]!, weight)
  }
}

/** A place a label could stand: `x`, `y` is the baseline point, `cost` how little we like it empty. */
export interface Place {
  x: number
  y: number
  anchor: Anchor
  cost: number
}

/** The paper a line of text covers. */
export function textBox(x: number, y: number, words: string, size: number, anchor: Anchor): Box {
  const w = textWidth(words, size)
  const left = anchor === 'start' ? x : anchor === 'end' ? x - w : x - w / 2
  return { left, right: left + w, bottom: y - 0.25 * size, top: y + 0.8 * size }
}

/**
 * The best of several places for a label: inside `frame`, over as little ink as possible. The chosen paper is taken.
 * Undefined only when no place lies inside the frame.
 */
export function choosePlace(
  words: string,
  size: number,
  places: readonly Place[],
  frame: Box,
  taken: Occupied,
): Place | undefined {
  let best: Place | undefined
  let least = Number.POSITIVE_INFINITY
  for (const place of places) {
    const b = textBox(place.x, place.y, words, size, place.anchor)
    if (b.left < frame.left || b.right > frame.right || b.bottom < frame.bottom || b.top > frame.top) continue
    const cost = place.cost + taken.weight(b)
    if (cost < least) {
      least = cost
      best = place
    }
  }
  if (best) taken.box(textBox(best.x, best.y, words, size, best.anchor))
  return best
}

/** Places round a point: right, left, above, below and the corners. */
export function placesRound(x: number, y: number, size: number, off: number, cost = 0): Place[] {
  const mid = y - 0.3 * size
  const up = y + off
  const down = y - off - 0.75 * size
  return [
    { x: x + off, y: mid, anchor: 'start', cost },
    { x: x - off, y: mid, anchor: 'end', cost: cost + 1 },
    { x, y: up, anchor: 'middle', cost: cost + 1 },
    { x, y: down, anchor: 'middle', cost: cost + 1.5 },
    { x: x + off * 0.7, y: up - 0.2 * size, anchor: 'start', cost: cost + 0.5 },
    { x: x - off * 0.7, y: up - 0.2 * size, anchor: 'end', cost: cost + 1 },
    { x: x + off * 0.7, y: down, anchor: 'start', cost: cost + 1 },
    { x: x - off * 0.7, y: down, anchor: 'end', cost: cost + 1.5 },
  ]
}
