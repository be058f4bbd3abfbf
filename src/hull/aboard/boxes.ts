/** Boxes along the craft's axes: what of one is left free by others, as boxes that do not overlap. */
import type { Vec3 } from '../../physics/solid/mesh.ts'

export interface Box {
  low: Vec3
  high: Vec3
}

/** A box that something has already. */
export interface Taken extends Box {
  name: string
}

/** The box round a centre (m) with the given sides (m). */
export function boxOf(at: Vec3, size: Vec3): Box {
  const end = (turn: 1 | -1) =>
    [0, 1, 2].map((k) => at[k]! + (turn * size[k]!) / 2) as [number, number, number]
  return { low: end(-1), high: end(1) }
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

/** What of a box all of `holes` leave free, m, as boxes that do not overlap. */
export function freeOf(box: Box, holes: readonly Box[]): Box[] {
  const free = holes.reduce<Box[]>((left, hole) => left.flatMap((b) => outside(b, hole)), [box])
  return free.filter((b) => [0, 1, 2].every((k) => b.high[k]! > b.low[k]!))
}

/**
 * The same free room as blocks to cut foam from, the biggest first: the greatest box that fits, then the greatest in what is left,
 * and so on. Blocks thinner than `thinnest` any way, m, or smaller than `smallest`, m³, are left out.
 */
export function freeBlocks(box: Box, holes: readonly Box[], thinnest: number, smallest: number): Box[] {
  // the planes of all faces part the box into cells, each wholly free or wholly taken
  const planes = [0, 1, 2].map((k) => {
    const [low, high] = [box.low[k]!, box.high[k]!]
    const inside = holes.flatMap((h) => [h.low[k]!, h.high[k]!]).filter((v) => v > low && v < high)
    return [...new Set([low, ...inside, high])].sort((a, b) => a - b)
  })
  const [px, py, pz] = planes as [number[], number[], number[]]
  const size = [px.length - 1, py.length - 1, pz.length - 1] as const
  const taken = new Uint8Array(size[0] * size[1] * size[2])
  const cell = (i: number, j: number, k: number) => (i * size[1] + j) * size[2] + k
  const mark = (b: Box) => {
    for (let i = 0; i < size[0]; i++)
      for (let j = 0; j < size[1]; j++)
        for (let k = 0; k < size[2]; k++)
          if (meets(b, { low: [px[i]!, py[j]!, pz[k]!], high: [px[i + 1]!, py[j + 1]!, pz[k + 1]!] }))
            taken[cell(i, j, k)] = 1
  }
  for (const hole of holes) mark(hole)
  const out: Box[] = []
  for (;;) {
    const found = greatestFree([px, py, pz], (i, j, k) => taken[cell(i, j, k)] === 0, thinnest)
    if (found === undefined || volumeOf(found) < smallest) return out
    out.push(found)
    mark(found)
  }
}

const volumeOf = ({ low, high }: Box): number => (high[0] - low[0]) * (high[1] - low[1]) * (high[2] - low[2])

/** The greatest box of free cells, at least `thinnest` every way; undefined when there is none. */
function greatestFree(
  [px, py, pz]: readonly [number[], number[], number[]],
  free: (i: number, j: number, k: number) => boolean,
  thinnest: number,
): Box | undefined {
  let best: Box | undefined
  let most = 0
  for (let i0 = 0; i0 < px.length - 1; i0++)
    for (let j0 = 0; j0 < py.length - 1; j0++) {
      // heights free in every column so far, for each end across; it only shrinks as the box grows along
      const open = Array.from({ length: py.length - 1 - j0 }, () => new Uint8Array(pz.length - 1).fill(1))
      for (let i1 = i0; i1 < px.length - 1; i1++)
        for (let j1 = j0; j1 < py.length - 1; j1++) {
          const column = open[j1 - j0]!
          for (let k = 0; k < column.length; k++) {
            const below = j1 > j0 ? open[j1 - j0 - 1]![k]! : 1
            if (!below || !free(i1, j1, k)) column[k] = 0
          }
          const [long, wide] = [px[i1 + 1]! - px[i0]!, py[j1 + 1]! - py[j0]!]
          if (!(long > thinnest && wide > thinnest)) continue
          for (let k0 = 0; k0 < column.length; k0++) {
            let k1 = k0
            while (k1 < column.length && column[k1]) k1++
            const high = pz[k1]! - pz[k0]!
            if (k1 > k0 && high > thinnest && long * wide * high > most) {
              most = long * wide * high
              best = { low: [px[i0]!, py[j0]!, pz[k0]!], high: [px[i1 + 1]!, py[j1 + 1]!, pz[k1]!] }
            }
          }
        }
    }
  return best
}

/** The same box on the other side of the centreline. */
export const mirroredBox = <B extends Box>(b: B): B => ({
  ...b,
  low: [b.low[0], -b.high[1], b.low[2]],
  high: [b.high[0], -b.low[1], b.high[2]],
})
