/**
 * Rolls a flat strip up again, to prove a pattern: the facets are taken from the drawing alone and turned about their common
 * rulings by the angles a brake would set; where that ends is compared with the neighbour's edge. Elementary kinematics of rigid
 * facets; the angles are those between neighbouring facets of the surface wanted.
 */
import { cross, dot, minus, unit, type Vec } from './placing.ts'
import { flatAt, type Isometry, isometry, type Rim, type Strip, spaceAt, spaceRim } from './strip.ts'

/** Outward normal of the facet behind ruling i, from its longer diagonal so that a triangle has one too. */
function normalOf(s: Strip, i: number): Vec {
  const [a, b, c, d] = [
    spaceAt(s, i, 'near'),
    spaceAt(s, i, 'far'),
    spaceAt(s, i + 1, 'near'),
    spaceAt(s, i + 1, 'far'),
  ]
  return unit(cross(minus(d, a), minus(b, c)))
}

/** Turn of the sheet at each ruling between two facets, rad; positive closes round the inside. */
export function foldAngles(strip: Strip): Float64Array {
  const out = new Float64Array(strip.count)
  let before = normalOf(strip, 0)
  for (let i = 1; i + 1 < strip.count; i++) {
    const next = normalOf(strip, i)
    const along = unit(minus(spaceAt(strip, i, 'far'), spaceAt(strip, i, 'near')))
    out[i] = Math.atan2(dot(cross(before, next), along), dot(before, next))
    before = next
  }
  return out
}

/** The strip in space as its flat drawing and its fold angles make it, begun at its first ruling's place. */
export function refold(strip: Strip, angles: Float64Array = foldAngles(strip)): Strip {
  const space = new Float64Array(strip.space.length)
  const n = normalOf(strip, 0)
  let origin = spaceAt(strip, 0, 'near')
  let along = unit(minus(spaceAt(strip, 0, 'far'), origin))
  let out = unit([
    n[0] - dot(n, along) * along[0],
    n[1] - dot(n, along) * along[1],
    n[2] - dot(n, along) * along[2],
  ])
  let across = cross(along, out)
  for (let i = 0; i < strip.count; i++) {
    const [a, b] = [flatAt(strip, i, 'near'), flatAt(strip, i, 'far')]
    if (i === 0) {
      space.set(origin, 0)
      space.set(far(Math.hypot(b[0] - a[0], b[1] - a[1]), 0), 3)
      continue
    }
    // the facet's far corners in the frame of the ruling before
    const [pa, pb] = [flatAt(strip, i - 1, 'near'), flatAt(strip, i - 1, 'far')]
    const l = Math.hypot(pb[0] - pa[0], pb[1] - pa[1])
    const [ux, uy] = [(pb[0] - pa[0]) / l, (pb[1] - pa[1]) / l]
    const local = ([x, y]: readonly [number, number]): [number, number] => [
      (x - pa[0]) * ux + (y - pa[1]) * uy,
      (x - pa[0]) * uy - (y - pa[1]) * ux,
    ]
    const near = far(...local(a))
    const other = far(...local(b))
    space.set(near, 6 * i)
    space.set(other, 6 * i + 3)
    // the frame goes on to this ruling and is turned about it
    origin = near
    along = unit(minus(other, near))
    across = unit(cross(along, out))
    const [c, s] = [Math.cos(angles[i]!), Math.sin(angles[i]!)]
    out = [c * out[0] + s * across[0], c * out[1] + s * across[1], c * out[2] + s * across[2]]
    across = cross(along, out)
  }
  return { ...strip, space }

  /** a point so far along the ruling and across it in the facet's plane */
  function far(u: number, w: number): Vec {
    return [
      origin[0] + u * along[0] + w * across[0],
      origin[1] + u * along[1] + w * across[1],
      origin[2] + u * along[2] + w * across[2],
    ]
  }
}

const apart = (a: Vec, b: Vec): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])

/** Largest distance of a point of one curve from another curve, both taken as chains of straight pieces, m. */
export function curveGap(a: readonly Vec[], b: readonly Vec[]): number {
  let worst = 0
  for (const p of a) {
    let best = Number.POSITIVE_INFINITY
    for (let i = 0; i + 1 < b.length; i++) {
      const [q, r] = [b[i]!, b[i + 1]!]
      const d = minus(r, q)
      const l = dot(d, d)
      const t = l > 0 ? Math.min(1, Math.max(0, dot(minus(p, q), d) / l)) : 0
      best = Math.min(best, apart(p, [q[0] + t * d[0], q[1] + t * d[1], q[2] + t * d[2]]))
    }
    worst = Math.max(worst, best)
  }
  return worst
}

/** How well a pattern comes out when it is rolled up again. All m. */
export interface FoldProof {
  /** largest distance of a rim from where the surface wants it */
  edge: number
  /** gap between the two edges of the seam; 0 without a seam */
  seam: number
  /** how far the lengths of rulings, rims and facets differ from the surface's */
  kept: Isometry
}

/** Rolls a pattern up and measures it. */
export function proveFold(strip: Strip): FoldProof {
  const folded = refold(strip)
  let edge = 0
  for (let i = 0; i < strip.count; i++)
    for (const rim of ['near', 'far'] as const)
      edge = Math.max(edge, apart(spaceAt(folded, i, rim), spaceAt(strip, i, rim)))
  const last = strip.count - 1
  const seam = strip.ring
    ? Math.max(
        apart(spaceAt(folded, 0, 'near'), spaceAt(folded, last, 'near')),
        apart(spaceAt(folded, 0, 'far'), spaceAt(folded, last, 'far')),
      )
    : 0
  return { edge, seam, kept: isometry(strip) }
}

/** Largest gap, m, where a rim of one folded pattern meets a rim of the next, each rolled up from its own drawing. */
export function jointGap(a: Strip, rimA: Rim, b: Strip, rimB: Rim): number {
  return curveGap(spaceRim(refold(a), rimA), spaceRim(refold(b), rimB))
}
