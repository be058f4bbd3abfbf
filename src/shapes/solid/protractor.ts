/**
 * A protractor held to a finished rotor: level cuts meet a circle of one radius at both faces of each blade; the mean of two meeting points walked up
 * the blade gives its angle from the plane of rotation, tan β = dz/(r dθ). It knows nothing of how the rotor was drawn. Lengths m, angles rad.
 */
import type { Rings, Solid, Workbench } from './kernel.ts'

export interface BladeReading {
  /** heights read, and the way round of the blade's middle at each, rad, unwound */
  z: Float64Array
  angle: Float64Array
  /** pitch at the lower and upper end of what was read, m a turn, by a parabola through all; and there the blade's angle */
  pitch: readonly [number, number]
  beta: readonly [number, number]
  /** thickness across the blade in the middle of what was read, m */
  thickness: number
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

/** Reads the blade that the first cut meets, between two heights; undefined where a cut meets none. */
export function readBlade(
  bench: Workbench,
  rotor: Solid,
  radius: number,
  low: number,
  high: number,
  steps = 24,
): BladeReading | undefined {
  const z = Float64Array.from({ length: steps + 1 }, (_, i) => low + ((high - low) * i) / steps)
  const angle = new Float64Array(steps + 1)
  let wide = 0
  for (let i = 0; i <= steps; i++) {
    const met = crossings(bench.level(rotor, z[i]!), radius)
    const middles = met.flatMap((from, k) => {
      const to = met[(k + 1) % met.length]!
      if (!from.enters || to.enters) return []
      const width = (to.angle - from.angle + 4 * Math.PI) % (2 * Math.PI)
      return [{ middle: from.angle + width / 2, width }]
    })
    if (middles.length === 0) return undefined
    const before = i === 0 ? middles[0]!.middle : i === 1 ? angle[0]! : 2 * angle[i - 1]! - angle[i - 2]!
    let best = Number.POSITIVE_INFINITY
    for (const m of middles) {
      const off = m.middle - before - 2 * Math.PI * Math.round((m.middle - before) / (2 * Math.PI))
      if (Math.abs(off) < Math.abs(best)) {
        best = off
        angle[i] = before + off
        if (i === steps >> 1) wide = m.width
      }
    }
  }
  const [, b, c] = parabola(angle, z)
  const at = (k: number) => 2 * Math.PI * Math.abs(b + 2 * c * angle[k]!)
  const pitch = [at(0), at(steps)] as const
  const beta = pitch.map((p) => Math.atan2(p, 2 * Math.PI * radius)) as [number, number]
  return { z, angle, pitch, beta, thickness: wide * radius * Math.sin((beta[0]! + beta[1]!) / 2) }
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
