/** Preparing long lines for drawing: gaps, clipping and thinning. Points are x0, y0, x1, y1 … */
export interface Box {
  left: number
  right: number
  bottom: number
  top: number
}

/** Runs of consecutive points with both coordinates finite. */
export function finiteRuns(x: ArrayLike<number>, y: ArrayLike<number>): number[][] {
  const runs: number[][] = []
  let run: number[] = []
  const n = Math.min(x.length, y.length)
  for (let i = 0; i < n; i++) {
    if (Number.isFinite(x[i]) && Number.isFinite(y[i])) run.push(x[i]!, y[i]!)
    else if (run.length > 0) {
      runs.push(run)
      run = []
    }
  }
  if (run.length > 0) runs.push(run)
  return runs
}

/**
 * The parts of a line inside a box. Each segment is cut by the four half-planes in turn
 * (Liang and Barsky, "A new concept and method for line clipping", ACM Trans. Graphics 3 (1984) 1).
 */
export function clipLine(run: ArrayLike<number>, box: Box): number[][] {
  const parts: number[][] = []
  let part: number[] = []
  const close = () => {
    if (part.length > 0) parts.push(part)
    part = []
  }
  if (run.length === 2) {
    const [x, y] = [run[0]!, run[1]!]
    return x >= box.left && x <= box.right && y >= box.bottom && y <= box.top ? [[x, y]] : []
  }
  for (let i = 0; i + 3 < run.length; i += 2) {
    const [x0, y0, x1, y1] = [run[i]!, run[i + 1]!, run[i + 2]!, run[i + 3]!]
    const [dx, dy] = [x1 - x0, y1 - y0]
    let t0 = 0
    let t1 = 1
    // p < 0 enters the half-plane, p > 0 leaves it
    const cut = (p: number, q: number) => {
      if (p === 0) return q >= 0
      if (p < 0) t0 = Math.max(t0, q / p)
      else t1 = Math.min(t1, q / p)
      return true
    }
    const seen =
      cut(-dx, x0 - box.left) &&
      cut(dx, box.right - x0) &&
      cut(-dy, y0 - box.bottom) &&
      cut(dy, box.top - y0) &&
      t0 <= t1
    if (!seen) {
      close()
      continue
    }
    if (part.length === 0 || t0 > 0) {
      close()
      part.push(x0 + t0 * dx, y0 + t0 * dy)
    }
    part.push(x0 + t1 * dx, y0 + t1 * dy)
    if (t1 < 1) close()
  }
  close()
  return parts
}

/**
 * Thins a line to at most four points in each column of the given width: the first, the lowest, the highest
 * and the last, in their own order, so that no peak is lost.
 */
export function thinLine(run: ArrayLike<number>, column: number): Float64Array {
  const n = run.length / 2
  const out: number[] = []
  let i = 0
  while (i < n) {
    const cell = Math.floor(run[2 * i]! / column)
    let end = i
    let low = i
    let high = i
    while (end + 1 < n && Math.floor(run[2 * (end + 1)]! / column) === cell) {
      end++
      if (run[2 * end + 1]! < run[2 * low + 1]!) low = end
      if (run[2 * end + 1]! > run[2 * high + 1]!) high = end
    }
    let last = -1
    for (const k of [i, Math.min(low, high), Math.max(low, high), end]) {
      if (k <= last) continue
      out.push(run[2 * k]!, run[2 * k + 1]!)
      last = k
    }
    i = end + 1
  }
  return Float64Array.from(out)
}

/** The part of a polygon inside a box, cut side by side (Sutherland and Hodgman, 1974). */
export function clipPolygon(points: ArrayLike<number>, box: Box): number[] {
  let now = Array.from(points)
  const sides: readonly [0 | 1, number, 1 | -1][] = [
    [0, box.left, 1],
    [0, box.right, -1],
    [1, box.bottom, 1],
    [1, box.top, -1],
  ]
  for (const [axis, limit, sign] of sides) {
    const next: number[] = []
    for (let i = 0; i < now.length; i += 2) {
      const j = (i + 2) % now.length
      const a = sign * (now[i + axis]! - limit)
      const b = sign * (now[j + axis]! - limit)
      if (a >= 0) next.push(now[i]!, now[i + 1]!)
      if (a >= 0 !== b >= 0) {
        const t = a / (a - b)
        next.push(now[i]! + t * (now[j]! - now[i]!), now[i + 1]! + t * (now[j + 1]! - now[i + 1]!))
      }
    }
    now = next
  }
  return now
}
