/**
 * What is added to or taken off a pattern for its seam. Gaps and laps: common practice of light gauge welding, no source;
 * the longer way round of the lapped layer is geometry.
 */
import type { FlatPoint } from '../base/answers/madePart.ts'
import { mustLie } from './shapeFault.ts'
import { flatRim, type Strip } from './strip.ts'

export type Seam =
  /** the edges meet, `gap` m apart at the root */
  | { kind: 'butt'; gap: number }
  /** one edge lies on the other by `width` m */
  | { kind: 'lap'; width: number }

/** edges that meet without a gap: what thin sheet welded without filler wants */
export const tight: Seam = { kind: 'butt', gap: 0 }

/** Points of a closed outline, and the seam line inside it where there is a lap. */
export interface SeamedOutline {
  outline: FlatPoint[]
  line?: readonly [FlatPoint, FlatPoint]
}

const direction = (a: FlatPoint, b: FlatPoint): FlatPoint => {
  const l = Math.hypot(b[0] - a[0], b[1] - a[1])
  return [(b[0] - a[0]) / l, (b[1] - a[1]) / l]
}

/** The rim without what lies within `by` of the line from p along u; `side` is +1 where the pattern lies to the right of that line. */
function trimmed(rim: FlatPoint[], p: FlatPoint, u: FlatPoint, side: 1 | -1, by: number): FlatPoint[] {
  const inside = (q: FlatPoint) => side * ((q[0] - p[0]) * u[1] - (q[1] - p[1]) * u[0]) - by
  const first = rim.findIndex((q) => inside(q) > 0)
  if (first <= 0) return rim
  const [a, b] = [rim[first - 1]!, rim[first]!]
  const [da, db] = [inside(a), inside(b)]
  const t = da / (da - db)
  return [[a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])], ...rim.slice(first)]
}

/**
 * The outline of a strip with its seam: near rim, last ruling, far rim back, first ruling; anticlockwise. `thickness` and `radius`, m:
 * the outer layer of a lap goes round a larger circle. ShapeFault for a gap or a lap that is wider than half the pattern.
 */
export function seamed(strip: Strip, seam: Seam, thickness: number, radius: number): SeamedOutline {
  const { outline, ...rest } = joinedRims(strip, seam, thickness, radius)
  // the corners of a transition belong to many rulings
  const distinct = outline.filter((p, i) => {
    const q = outline[(i + outline.length - 1) % outline.length]!
    return Math.hypot(p[0] - q[0], p[1] - q[1]) > 1e-9
  })
  return { outline: distinct, ...rest }
}

function joinedRims(strip: Strip, seam: Seam, thickness: number, radius: number): SeamedOutline {
  const near = flatRim(strip, 'near')
  const far = flatRim(strip, 'far')
  const [n0, n1, f0, f1] = [near[0]!, near.at(-1)!, far[0]!, far.at(-1)!]
  const across = Math.max(Math.hypot(n1[0] - n0[0], n1[1] - n0[1]), Math.hypot(f1[0] - f0[0], f1[1] - f0[1]))
  if (seam.kind === 'butt') {
    mustLie('seam.gap', seam.gap, 0, across / 4)
    const by = seam.gap / 2
    if (by === 0) return { outline: [...near, ...far.reverse()] }
    const [u, v] = [direction(n0, f0), direction(n1, f1)]
    const cut = (rim: FlatPoint[], start: FlatPoint, end: FlatPoint) =>
      trimmed(trimmed(rim, start, u, 1, by).reverse(), end, v, -1, by).reverse()
    return { outline: [...cut(near, n0, n1), ...cut(far, f0, f1).reverse()] }
  }
  mustLie('seam.width', seam.width, 0, across / 2)
  if (seam.width === 0) return { outline: [...near, ...far.reverse()] }
  const w = seam.width * (1 + thickness / Math.max(radius, thickness))
  const u = direction(n1, f1)
  const out: FlatPoint = [u[1], -u[0]]
  // corners are snipped at 45 degrees so that the lap does not stand in the joint with the next part
  const long = Math.hypot(f1[0] - n1[0], f1[1] - n1[1])
  const snip = Math.min(w, long / 3)
  const tab = (p: FlatPoint, along: number): FlatPoint => [
    p[0] + w * out[0] + along * u[0],
    p[1] + w * out[1] + along * u[1],
  ]
  return { outline: [...near, tab(n1, snip), tab(f1, -snip), ...far.reverse()], line: [n1, f1] }
}
