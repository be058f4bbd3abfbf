/**
 * A protractor held to a finished rotor: level cuts meet a circle of one radius at both faces of each blade; the mean of two meeting points walked up
 * the blade gives its angle from the plane of rotation, tan β = dz/(r dθ). It knows nothing of how the rotor was drawn. Lengths m, angles rad.
 */
import type { Rings, Solid, Workbench } from './kernel.ts'

export interface BladeReading {
  /** heights of the lower and upper place read, m, and the blade's angle there, rad */
  z: readonly [number, number]
  beta: readonly [number, number]
  /** across the blade in the middle between them, m */
  thickness: number
  /** 1 for a right-hand screw, -1 for a left-hand one */
  hand: 1 | -1
}

/** Where outlines cross a circle: angles, and whether going up in angle one enters the solid there. */
function crossings(rings: Rings, r: number): { angle: number; enters: boolean }[] {
  const out: { angle: number; enters: boolean }[] = []
  for (const ring of rings)
    for (let i = 0; i < ring.length; i++) {
      const [x0, y0] = ring[i]!
      const [x1, y1] = ring[(i + 1) % ring.length]!
      const [dx, dy] = [x1 - x0, y1 - y0]
      const a = dx * dx + dy * dy
      const b = x0 * dx + y0 * dy
      const root = b * b - a * (x0 * x0 + y0 * y0 - r * r)
      if (!(root > 0 && a > 0)) continue
      for (const t of [(-b - Math.sqrt(root)) / a, (-b + Math.sqrt(root)) / a]) {
        if (t < 0 || t >= 1) continue
        const [x, y] = [x0 + t * dx, y0 + t * dy]
        // solid lies left of an outline: going round anticlockwise (-y, x) enters where it crosses from right to left
        out.push({ angle: Math.atan2(y, x), enters: -dy * -y + dx * x > 0 })
      }
    }
  return out.sort((p, q) => p.angle - q.angle)
}

/** The crossing nearest to where the line is going, unwound. */
function follow(angles: readonly number[], expected: number): number | undefined {
  let best: number | undefined
  for (const a of angles) {
    const near = a - 2 * Math.PI * Math.round((a - expected) / (2 * Math.PI))
    if (best === undefined || Math.abs(near - expected) < Math.abs(best - expected)) best = near
  }
  return best
}

/** Value of the line through (x, y) at a place; x ascends. */
function between(x: Float64Array, y: Float64Array, at: number): number {
  let i = 1
  while (i < x.length - 1 && x[i]! < at) i++
  const u = (at - x[i - 1]!) / (x[i]! - x[i - 1]!)
  return y[i - 1]! + u * (y[i]! - y[i - 1]!)
}

/**
 * Reads one blade between two heights; undefined where a cut meets none. Both faces are laid out flat, turned by the mean angle, and their middle
 * is taken square to the blade, so that its thickness cannot tilt what is read.
 */
export function readBlade(
  bench: Workbench,
  rotor: Solid,
  radius: number,
  low: number,
  high: number,
  steps = 32,
): BladeReading | undefined {
  const faces = [new Float64Array(steps + 1), new Float64Array(steps + 1)] as const
  const z = Float64Array.from({ length: steps + 1 }, (_, i) => low + ((high - low) * i) / steps)
  for (let i = 0; i <= steps; i++) {
    const met = crossings(bench.level(rotor, z[i]!), radius)
    const first = met.findIndex((c) => c.enters)
    if (first < 0) return undefined
    for (const k of [0, 1] as const) {
      const face = faces[k]
      const start = k === 0 ? met[first]!.angle : met[(first + 1) % met.length]!.angle
      const after = k === 0 ? start : start + (start < faces[0][0]! ? 2 * Math.PI : 0)
      const expected = i === 0 ? after : i === 1 ? face[0]! : 2 * face[i - 1]! - face[i - 2]!
      const of = met.filter((c) => c.enters === (k === 0)).map((c) => c.angle)
      const angle = i === 0 ? after : follow(of, expected)
      if (angle === undefined) return undefined
      face[i] = angle
    }
  }
  // laid out so that the blade rises to the right, either hand
  const hand = faces[0][steps]! > faces[0][0]! ? 1 : -1
  const run = (hand * radius * (faces[0][steps]! + faces[1][steps]! - faces[0][0]! - faces[1][0]!)) / 2
  const mean = Math.atan2(high - low, run)
  const [c, s] = [Math.cos(mean), Math.sin(mean)]
  const along = faces.map((f) => f.map((a, i) => hand * radius * a * c + z[i]! * s))
  const across = faces.map((f) => f.map((a, i) => -hand * radius * a * s + z[i]! * c))
  const from = Math.max(along[0]![0]!, along[1]![0]!)
  const to = Math.min(along[0]![steps]!, along[1]![steps]!)
  if (!(to > from)) return undefined
  const x = Float64Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)
  const face = (k: number, at: number) => between(along[k]!, across[k]!, at)
  const middle = x.map((at) => (face(0, at) + face(1, at)) / 2)
  const [, b, q] = parabola(x, middle)
  const ends = [from, to] as const
  const half = (from + to) / 2
  return {
    z: ends.map((at, k) => at * s + middle[k * steps]! * c) as [number, number],
    beta: ends.map((at) => mean + Math.atan(b + 2 * q * at)) as [number, number],
    thickness: Math.abs(face(0, half) - face(1, half)),
    hand,
  }
}

/** Least squares of y = a + b x + c x². */
function parabola(x: Float64Array, y: Float64Array): readonly [number, number, number] {
  const n = x.length
  const mean = x.reduce((s, v) => s + v, 0) / n
  let [s2, s3, s4, y0, y1, y2] = [0, 0, 0, 0, 0, 0]
  for (let i = 0; i < n; i++) {
    const u = x[i]! - mean
    s2 += u * u
    s3 += u ** 3
    s4 += u ** 4
    y0 += y[i]!
    y1 += u * y[i]!
    y2 += u * u * y[i]!
  }
  // normal equations with Σu = 0
  const c = (y2 - (s3 / s2) * y1 - (s2 / n) * y0) / (s4 - (s3 * s3) / s2 - (s2 * s2) / n)
  const b = (y1 - c * s3) / s2
  const a = (y0 - c * s2) / n
  return [a - b * mean + c * mean * mean, b - 2 * c * mean, c]
}
