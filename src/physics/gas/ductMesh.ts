/**
 * From cones and tubes to the cells of a duct. Cell volumes are exact integrals of the cones they cover
 * (frustum volume, elementary geometry), so the pipe's volume does not depend on the cell length.
 * Bend loss: K per 90 degrees spread over the bend's length, f = K D / (4 L) (definition of the loss factor).
 * Fully rough friction: S. E. Haaland, J. Fluids Eng. 105 (1983) 89, high Reynolds number limit.
 */
import type { DuctShape } from './arena.ts'

/** One cone or tube, metres; `bend` in radians over its length. */
export interface Segment {
  length: number
  d0: number
  d1: number
  bend?: number
}

/** Where each segment ends along the centreline, m, starting with 0. */
export function stations(segments: readonly Segment[]): number[] {
  const at = [0]
  for (const s of segments) at.push(at[at.length - 1]! + s.length)
  return at
}

/** Bore at distance x from the first segment's start, m; ends are held beyond. A step belongs to the segment after it. */
export function boreAt(segments: readonly Segment[], x: number): number {
  let from = 0
  for (const s of segments) {
    if (x < from + s.length) return s.d0 + (s.d1 - s.d0) * Math.max(0, (x - from) / s.length)
    from += s.length
  }
  return segments[segments.length - 1]!.d1
}

/** Volume between 0 and x, m3. */
export function volumeTo(segments: readonly Segment[], x: number): number {
  let from = 0
  let volume = 0
  for (const s of segments) {
    const l = Math.min(s.length, x - from)
    if (l <= 0) break
    const d = s.d0 + ((s.d1 - s.d0) * l) / s.length
    volume += ((Math.PI * l) / 12) * (s.d0 * s.d0 + s.d0 * d + d * d)
    from += s.length
  }
  return volume
}

/** Loss factor of one 90 degree bend of a hand-made pipe; common practice 0.1 to 0.25, no source. */
const bendLoss = 0.18

/**
 * Cells of about `dx` metres for a run of segments. Throws RangeError with the segment's number when a
 * length or a bore is not above 0.
 */
export function meshDuct(
  segments: readonly Segment[],
  dx: number,
  more: Pick<DuctShape, 'viscous' | 'heatFactor' | 'roughFriction'> = {},
): DuctShape {
  if (segments.length === 0) throw new RangeError('segments: none given')
  segments.forEach((s, i) => {
    for (const key of ['length', 'd0', 'd1'] as const)
      if (!(s[key] > 0)) throw new RangeError(`segments[${i}].${key}: ${s[key]}; must be above 0`)
  })
  const ends = stations(segments)
  const total = ends[ends.length - 1]!
  const n = Math.max(4, Math.round(total / dx))
  const h = total / n
  const faceArea = new Float64Array(n + 1)
  const cellArea = new Float64Array(n)
  const bendFriction = new Float64Array(n)
  for (let c = 0; c <= n; c++) {
    const d = c === n ? segments[segments.length - 1]!.d1 : boreAt(segments, c * h)
    faceArea[c] = (Math.PI / 4) * d * d
  }
  for (let c = 0; c < n; c++) {
    cellArea[c] = (volumeTo(segments, (c + 1) * h) - volumeTo(segments, c * h)) / h
    const mid = (c + 0.5) * h
    const k = segments.findIndex((_, i) => mid < ends[i + 1]!)
    const s = segments[k === -1 ? segments.length - 1 : k]!
    if (s.bend)
      bendFriction[c] = (bendLoss * (s.bend / (Math.PI / 2)) * boreAt(segments, mid)) / (4 * s.length)
  }
  return { dx: h, faceArea, cellArea, bendFriction, ...more }
}
