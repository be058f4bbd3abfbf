/**
 * A developable surface as a strip of straight elements (rulings), flat and in space point for point. Neighbouring rulings span a
 * flat facet, so a strip is what a brake makes of a sheet: rigid facets turned about straight lines.
 * G. Monge, Géométrie descriptive (1799): a surface rolls out flat when neighbouring rulings lie in one plane.
 */
import type { FlatPoint } from '../base/answers/madePart.ts'
import { type Place, put, type Vec } from './placing.ts'

/** Drawn as seen from outside: rulings run from the near rim (a) to the far rim (b), and follow each other to the right of that. */
export interface Strip {
  readonly count: number
  /** ax, ay, bx, by of each ruling, m */
  readonly flat: Float64Array
  /** ax, ay, az, bx, by, bz of each ruling, m */
  readonly space: Float64Array
  /** the last ruling is the first again: a seam */
  readonly ring: boolean
}

export type Rim = 'near' | 'far'

/** An empty strip of so many rulings. */
export function newStrip(count: number, ring: boolean): Strip {
  return { count, flat: new Float64Array(4 * count), space: new Float64Array(6 * count), ring }
}

export function flatAt(strip: Strip, i: number, rim: Rim): FlatPoint {
  const o = 4 * i + (rim === 'far' ? 2 : 0)
  return [strip.flat[o]!, strip.flat[o + 1]!]
}

export function spaceAt(strip: Strip, i: number, rim: Rim): Vec {
  const o = 6 * i + (rim === 'far' ? 3 : 0)
  return [strip.space[o]!, strip.space[o + 1]!, strip.space[o + 2]!]
}

/** Points of a rim of the flat pattern, from the first ruling to the last. */
export const flatRim = (strip: Strip, rim: Rim): FlatPoint[] =>
  Array.from({ length: strip.count }, (_, i) => flatAt(strip, i, rim))

/** Points of a rim in space. */
export const spaceRim = (strip: Strip, rim: Rim): Vec[] =>
  Array.from({ length: strip.count }, (_, i) => spaceAt(strip, i, rim))

/** The same strip elsewhere in space. */
export function placed(strip: Strip, place: Place): Strip {
  const space = new Float64Array(strip.space.length)
  for (let o = 0; o < space.length; o += 3)
    space.set(put(place, [strip.space[o]!, strip.space[o + 1]!, strip.space[o + 2]!]), o)
  return { ...strip, space }
}

/** Length of a rim of the flat pattern, m. */
export function rimLength(strip: Strip, rim: Rim): number {
  let sum = 0
  for (let i = 1; i < strip.count; i++) {
    const [x, y] = flatAt(strip, i, rim)
    const [u, v] = flatAt(strip, i - 1, rim)
    sum += Math.hypot(x - u, y - v)
  }
  return sum
}

/** Area of the flat strip, m²; positive where the pattern is drawn as seen from outside. */
export function stripArea(strip: Strip): number {
  const f = strip.flat
  let twice = 0
  for (let i = 0; i + 1 < strip.count; i++) {
    const [a, b] = [4 * i, 4 * i + 4]
    // the two diagonals of a facet, crossed
    twice += (f[b + 2]! - f[a]!) * (f[a + 3]! - f[b + 1]!) - (f[b + 3]! - f[a + 1]!) * (f[a + 2]! - f[b]!)
  }
  return twice / 2
}

const gap = (s: Float64Array, a: number, b: number, n: number): number => {
  let sum = 0
  for (let k = 0; k < n; k++) sum += (s[a + k]! - s[b + k]!) ** 2
  return Math.sqrt(sum)
}

/** How far the flat pattern keeps the lengths of the surface. All m. */
export interface Isometry {
  /** largest difference of a ruling's length */
  ruling: number
  /** largest difference of a facet's edge on a rim or of its diagonal */
  facet: number
  /** difference of the whole rims' lengths */
  rim: number
}

/** Compares every ruling, edge and diagonal of the flat strip with the same one in space. */
export function isometry(strip: Strip): Isometry {
  const out = { ruling: 0, facet: 0, rim: 0 }
  const { flat, space } = strip
  let [near, far] = [0, 0]
  for (let i = 0; i < strip.count; i++) {
    const [p, q] = [4 * i, 6 * i]
    out.ruling = Math.max(out.ruling, Math.abs(gap(flat, p, p + 2, 2) - gap(space, q, q + 3, 3)))
    if (i + 1 === strip.count) break
    const edge = (a: number, b: number) =>
      gap(flat, p + 2 * a, p + 2 * b, 2) - gap(space, q + 3 * a, q + 3 * b, 3)
    const [a, b] = [edge(0, 2), edge(1, 3)]
    near += a
    far += b
    out.facet = Math.max(out.facet, Math.abs(a), Math.abs(b), Math.abs(edge(0, 3)), Math.abs(edge(1, 2)))
  }
  out.rim = Math.max(Math.abs(near), Math.abs(far))
  return out
}
