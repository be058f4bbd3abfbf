/** Closed outlines of flat parts: circles, rounded rectangles, hulls round circles, areas, insets. Elementary plane geometry. */
import type { FlatPoint } from '../base/answers/madePart.ts'

/** chord error of curves drawn as straight pieces, m */
const chord = 1e-5

/** Pieces a circle of a radius (m) is drawn with. */
const piecesOf = (radius: number): number =>
  radius > chord ? Math.max(16, 4 * Math.ceil(Math.PI / Math.acos(1 - chord / radius) / 4)) : 16

/** A circle, anticlockwise; m. */
export function circle(x: number, y: number, radius: number): FlatPoint[] {
  return ellipse(x, y, radius, radius)
}

/** An ellipse with half axes along x and y; m. */
export function ellipse(x: number, y: number, rx: number, ry: number): FlatPoint[] {
  const n = piecesOf(Math.max(rx, ry))
  return Array.from({ length: n }, (_, i): FlatPoint => {
    const a = (2 * Math.PI * i) / n
    return [x + rx * Math.cos(a), y + ry * Math.sin(a)]
  })
}

/** A rectangle about its middle with rounded corners, anticlockwise; m. */
export function roundedRectangle(
  x: number,
  y: number,
  length: number,
  width: number,
  radius: number,
): FlatPoint[] {
  const r = Math.min(radius, length / 2, width / 2)
  const quarter = r > 0 ? Math.max(4, piecesOf(r) / 4) : 0
  const [a, b] = [length / 2 - r, width / 2 - r]
  return [
    [a, b],
    [-a, b],
    [-a, -b],
    [a, -b],
  ].flatMap(([cx, cy], q) =>
    Array.from({ length: quarter + 1 }, (_, i): FlatPoint => {
      const t = ((q + (quarter > 0 ? i / quarter : 0)) * Math.PI) / 2
      return [x + cx! + r * Math.cos(t), y + cy! + r * Math.sin(t)]
    }),
  )
}

/** Area inside a closed outline, m²; positive where it runs anticlockwise. */
export function areaOf(points: readonly FlatPoint[]): number {
  let twice = 0
  for (let i = 0; i < points.length; i++) {
    const [x, y] = points[i]!
    const [u, v] = points[(i + 1) % points.length]!
    twice += x * v - u * y
  }
  return twice / 2
}

/** Length of a line, m; of a closed outline all round. */
export function lengthOf(points: readonly FlatPoint[], closed: boolean): number {
  let sum = 0
  for (let i = closed ? 0 : 1; i < points.length; i++) {
    const [x, y] = points[i]!
    const [u, v] = points[(i + points.length - 1) % points.length]!
    sum += Math.hypot(x - u, y - v)
  }
  return sum
}

/** Convex hull, anticlockwise. A. M. Andrew, Information Processing Letters 9 (1979) 216. */
export function hullOf(points: readonly FlatPoint[]): FlatPoint[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (run: readonly FlatPoint[]): FlatPoint[] => {
    const out: FlatPoint[] = []
    for (const p of run) {
      while (out.length > 1) {
        const [a, b] = [out[out.length - 2]!, out[out.length - 1]!]
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break
        out.pop()
      }
      out.push(p)
    }
    return out.slice(0, -1)
  }
  return [...half(sorted), ...half(sorted.reverse())]
}

/** Whether a point lies inside a closed outline (even–odd). */
export function isInside([x, y]: FlatPoint, outline: readonly FlatPoint[]): boolean {
  let inside = false
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [ax, ay] = outline[i]!
    const [bx, by] = outline[j]!
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside
  }
  return inside
}

/** Distance of a point from a closed outline, m. */
export function distanceTo([x, y]: FlatPoint, outline: readonly FlatPoint[]): number {
  let best = Number.POSITIVE_INFINITY
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const [ax, ay] = outline[i]!
    const [dx, dy] = [outline[j]![0] - ax, outline[j]![1] - ay]
    const l = dx * dx + dy * dy
    const t = l > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / l)) : 0
    best = Math.min(best, Math.hypot(x - ax - t * dx, y - ay - t * dy))
  }
  return best
}

/** An anticlockwise outline moved inward by `by` m (outward where negative), corners mitred to at most three times as far. */
export function inset(outline: readonly FlatPoint[], by: number): FlatPoint[] {
  const n = outline.length
  return outline.map((p, i): FlatPoint => {
    const [a, b] = [outline[(i + n - 1) % n]!, outline[(i + 1) % n]!]
    const [u, v] = [unitOf(a, p), unitOf(p, b)]
    const [nx, ny] = [-u[1] - v[1], u[0] + v[0]]
    // the two sides' normals summed, so long that its part along either is `by`
    const scale = Math.min(3, 2 / Math.max(1e-9, nx * nx + ny * ny)) * by
    return [p[0] + nx * scale, p[1] + ny * scale]
  })
}

function unitOf(a: FlatPoint, b: FlatPoint): FlatPoint {
  const l = Math.hypot(b[0] - a[0], b[1] - a[1])
  return l > 0 ? [(b[0] - a[0]) / l, (b[1] - a[1]) / l] : [0, 0]
}

/** Points along a closed line, evenly between its corners (turns above 30°) and at the corners themselves, at most `pitch` m apart. */
export function evenlyAlong(outline: readonly FlatPoint[], pitch: number): FlatPoint[] {
  const n = outline.length
  const isCorner = outline.map((p, i) => {
    const [u, v] = [unitOf(outline[(i + n - 1) % n]!, p), unitOf(p, outline[(i + 1) % n]!)]
    return u[0] * v[0] + u[1] * v[1] < Math.cos(Math.PI / 6)
  })
  const start = Math.max(0, isCorner.indexOf(true))
  const out: FlatPoint[] = []
  let run: FlatPoint[] = [outline[start]!]
  for (let k = 1; k <= n; k++) {
    const i = (start + k) % n
    run.push(outline[i]!)
    if (!isCorner[i] && k < n) continue
    const whole = lengthOf(run, false)
    const steps = Math.max(1, Math.ceil(whole / pitch - 1e-9))
    for (let j = 0; j < steps; j++) out.push(along(run, (whole * j) / steps))
    run = [outline[i]!]
  }
  return out
}

function along(run: readonly FlatPoint[], distance: number): FlatPoint {
  let left = distance
  for (let i = 1; i < run.length; i++) {
    const [a, b] = [run[i - 1]!, run[i]!]
    const l = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (left <= l && l > 0) return [a[0] + (left / l) * (b[0] - a[0]), a[1] + (left / l) * (b[1] - a[1])]
    left -= l
  }
  return run.at(-1)!
}
