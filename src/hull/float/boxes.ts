/** Boxes along the craft's axes: what of one is left free by others, as boxes that do not overlap. */
import type { Vec3 } from '../../solid/mesh.ts'

export interface Box {
  low: Vec3
  high: Vec3
}

/** A box that something has already. */
export interface Taken extends Box {
  name: string
}

const meets = (a: Box, b: Box): boolean =>
  [0, 1, 2].every((k) => a.low[k]! < b.high[k]! && b.low[k]! < a.high[k]!)

const withEnd = (box: Box, end: 'low' | 'high', k: number, at: number): Box => {
  const moved = [...box[end]] as [number, number, number]
  moved[k] = at
  return { ...box, [end]: moved }
}

/** What of a box lies outside another: up to six boxes, whole slabs along first, then across, then up. */
function outside(box: Box, hole: Box): Box[] {
  if (!meets(box, hole)) return [box]
  const out: Box[] = []
  let rest = box
  for (let k = 0; k < 3; k++) {
    if (rest.low[k]! < hole.low[k]!) {
      out.push(withEnd(rest, 'high', k, hole.low[k]!))
      rest = withEnd(rest, 'low', k, hole.low[k]!)
    }
    if (rest.high[k]! > hole.high[k]!) {
      out.push(withEnd(rest, 'low', k, hole.high[k]!))
      rest = withEnd(rest, 'high', k, hole.high[k]!)
    }
  }
  return out
}

/** What of a box all of `holes` leave free, m, as boxes that do not overlap; those thinner than `thinnest` any way are left out. */
export function freeOf(box: Box, holes: readonly Box[], thinnest = 0): Box[] {
  const free = holes.reduce<Box[]>((left, hole) => left.flatMap((b) => outside(b, hole)), [box])
  return free.filter((b) => [0, 1, 2].every((k) => b.high[k]! - b.low[k]! > thinnest))
}

/** The same box on the other side of the centreline. */
export const mirroredBox = <B extends Box>(b: B): B => ({
  ...b,
  low: [b.low[0], -b.high[1], b.low[2]],
  high: [b.high[0], -b.low[1], b.high[2]],
})
