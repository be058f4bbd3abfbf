/** A pipe that was found, as values for the parts that the craft file already has. */

import type { Segment } from '../../physics/gas/ductMesh.ts'
import type { Pipe } from '../../trades/exhaust/proportions.ts'

export interface FoundValues {
  /** one for each part of the file's pipe, from the flange on */
  parts: Segment[]
  stinger: { bore: number; length: number }
  /** what had to be done to make the numbers of parts agree */
  fit: 'same' | 'split' | 'joined'
}

/**
 * The found pipe cut into `count` parts: long parts are split in two, which changes nothing; where the file has fewer parts,
 * neighbours that bend least between them become one cone, which changes a little. RangeError for a count below one.
 */
export function foundValues(pipe: Pipe, count: number): FoundValues {
  if (!(count >= 1)) throw new RangeError(`count is ${count}: the file's pipe needs at least one part`)
  const parts: Segment[] = pipe.segments.map(({ length, d0, d1, bend }) => ({
    length,
    d0,
    d1,
    bend: bend ?? 0,
  }))
  const had = parts.length
  while (parts.length < count) {
    const longest = parts.reduce((best, s, i) => (s.length > parts[best]!.length ? i : best), 0)
    const s = parts[longest]!
    const half = { length: s.length / 2, bend: (s.bend ?? 0) / 2 }
    const middle = (s.d0 + s.d1) / 2
    parts.splice(longest, 1, { ...half, d0: s.d0, d1: middle }, { ...half, d0: middle, d1: s.d1 })
  }
  while (parts.length > count) {
    let [best, least] = [0, Number.POSITIVE_INFINITY]
    for (let i = 0; i + 1 < parts.length; i++) {
      const lost = volumeLost(parts[i]!, parts[i + 1]!)
      if (lost < least) [best, least] = [i, lost]
    }
    parts.splice(best, 2, joined(parts[best]!, parts[best + 1]!))
  }
  return {
    parts,
    stinger: { ...pipe.stinger },
    fit: count === had ? 'same' : count > had ? 'split' : 'joined',
  }
}

function joined(a: Segment, b: Segment): Segment {
  return { length: a.length + b.length, d0: a.d0, d1: b.d1, bend: (a.bend ?? 0) + (b.bend ?? 0) }
}

/** volume of a cone, m³ (elementary geometry) */
const volume = (s: Segment) => ((Math.PI * s.length) / 12) * (s.d0 * s.d0 + s.d0 * s.d1 + s.d1 * s.d1)

function volumeLost(a: Segment, b: Segment): number {
  return Math.abs(volume(a) + volume(b) - volume(joined(a, b)))
}

/** Values by craft path, SI, that put a found pipe into engine `index`; `hasStinger` when the file has one. */
export function pathsOfFound(found: FoundValues, index: number, hasStinger: boolean): [string, number][] {
  const at = `engines.${index}.exhaust`
  const rows = found.parts.flatMap((s, i): [string, number][] => [
    [`${at}.pipe.${i}.length`, s.length],
    [`${at}.pipe.${i}.from`, s.d0],
    [`${at}.pipe.${i}.to`, s.d1],
  ])
  if (!hasStinger) return rows
  return [...rows, [`${at}.stinger.bore`, found.stinger.bore], [`${at}.stinger.length`, found.stinger.length]]
}
