/**
 * A skin over curved sections: whether it can be laid of flat sheet, how tightly it is rolled, and where it must be slit. Each band between two
 * lines along the hull is laid flat by true lengths; bands that are neighbours on the hull are laid edge to edge, and the gap that stays open
 * or overlaps is what the sheet would have to stretch (C. F. Gauss 1827: only a surface of no total curvature lies flat without).
 */
import { inMm } from '../base/answers/amounts.ts'
import type { FlatPoint } from '../base/answers/madePart.ts'
import { say } from '../base/answers/sentence.ts'
import { type Development, developed, type Sheeting } from './development.ts'
import { cross, dot, minus, type Vec } from './placing.ts'
import { mustLie, ShapeFault } from './shapeFault.ts'
import { flatRim, newStrip, rimLength, type Strip, stripArea } from './strip.ts'
import { type Ruling, twistOf, unrolled } from './unroll.ts'

/** Points of the skin: rows across at increasing x, each of the same count of points from starboard (y least) to port; m. Its pattern is seen from above. */
export type SkinGrid = readonly (readonly Vec[])[]

export interface SkinAnswer {
  /** least radius it is rolled to anywhere, m; infinite where it is flat */
  leastRadius: number
  /** at each inner line along the hull, the largest gap or overlap of the two bands when both lie flat, m */
  gaps: readonly number[]
  /** largest twist of a facet, rad */
  twist: number
  /** inner lines along which it must be slit */
  slits: readonly number[]
  /** lies flat in one piece */
  developable: boolean
  pieces: readonly Development[]
}

/** bands narrower than this are a point, m */
const leastBand = 2e-4

/** Radius of the circle through three points, m; infinite where they lie in line. */
function radiusThrough(a: Vec, b: Vec, c: Vec): number {
  const [u, v, w] = [minus(b, a), minus(c, b), minus(c, a)]
  const n = cross(u, v)
  const twice = Math.sqrt(dot(n, n))
  const product = Math.sqrt(dot(u, u) * dot(v, v) * dot(w, w))
  return twice > 1e-9 * product ? product / (2 * twice) : Number.POSITIVE_INFINITY
}

/** Turns and shifts a strip's flat so that its near rim lies on given points, as well as it can (least squares), and the gap that stays, m. */
function laidOn(strip: Strip, onto: readonly FlatPoint[]): { strip: Strip; gap: number } {
  const rim = flatRim(strip, 'near')
  const mean = (p: readonly FlatPoint[], k: 0 | 1) => p.reduce((s, q) => s + q[k], 0) / p.length
  const [cx, cy, dx, dy] = [mean(rim, 0), mean(rim, 1), mean(onto, 0), mean(onto, 1)]
  let [c, s] = [0, 0]
  rim.forEach(([x, y], i) => {
    const [u, v] = [onto[i]![0] - dx, onto[i]![1] - dy]
    c += (x - cx) * u + (y - cy) * v
    s += (x - cx) * v - (y - cy) * u
  })
  const l = Math.hypot(c, s)
  const flat = new Float64Array(strip.flat.length)
  for (let o = 0; o < flat.length; o += 2) {
    const [x, y] = [strip.flat[o]! - cx, strip.flat[o + 1]! - cy]
    flat[o] = dx + (c * x - s * y) / l
    flat[o + 1] = dy + (s * x + c * y) / l
  }
  const laid = { ...strip, flat }
  const gap = flatRim(laid, 'near').reduce(
    (worst, p, i) => Math.max(worst, Math.hypot(p[0] - onto[i]![0], p[1] - onto[i]![1])),
    0,
  )
  return { strip: laid, gap }
}

/**
 * Lays a skin flat; `bears` is the gap in m that the sheet takes up by itself between two bands. ShapeFault naming grid or bears.
 */
export function deckSkin(grid: SkinGrid, bears: number, sheeting: Sheeting): SkinAnswer {
  mustLie('bears', bears, 0, 0.05)
  const across = grid[0]?.length ?? 0
  const sound = grid.every((row) => row.length === across && row.every((p) => p.every(Number.isFinite)))
  if (grid.length < 2 || across < 2 || !sound)
    throw new ShapeFault(
      'grid',
      grid.length,
      2,
      'A skin is given by at least two rows of at least two points, as many in each.',
      'Give rows of equal counts of points, all of them numbers.',
    )
  for (const [i, row] of grid.entries())
    for (let k = 0; k + 1 < across; k++) {
      const wide = Math.hypot(...minus(row[k + 1]!, row[k]!))
      if (wide < leastBand)
        throw new ShapeFault(
          `grid.${i}`,
          wide,
          leastBand,
          'The skin runs to a point here, and a row of no width has no direction.',
          say`End it at a row whose points lie ${inMm(leastBand, 0.1)} apart or more.`,
        )
    }
  let leastRadius = Number.POSITIVE_INFINITY
  for (const [i, row] of grid.entries())
    for (const [k, p] of row.entries()) {
      const [before, after] = [grid[i - 1]?.[k], grid[i + 1]?.[k]]
      if (row[k - 1] && row[k + 1])
        leastRadius = Math.min(leastRadius, radiusThrough(row[k - 1]!, p, row[k + 1]!))
      if (before && after) leastRadius = Math.min(leastRadius, radiusThrough(before, p, after))
    }
  let twist = 0
  const gaps: number[] = []
  const runs: Strip[][] = [[]]
  for (let k = 0; k + 1 < across; k++) {
    const rulings = grid.map((row): Ruling => [row[k]!, row[k + 1]!])
    twist = Math.max(twist, twistOf(rulings))
    const band = unrolled(rulings, false)
    const before = runs.at(-1)!.at(-1)
    if (!before) {
      runs.at(-1)!.push(band)
      continue
    }
    const { strip, gap } = laidOn(band, flatRim(before, 'far'))
    gaps.push(gap)
    if (gap > bears) runs.push([band])
    else runs.at(-1)!.push(strip)
  }
  const slits = gaps.flatMap((gap, i) => (gap > bears ? [i + 1] : []))
  const pieces = runs.map((run, i) => pieceOf(run, i, runs.length, sheeting))
  return { leastRadius, gaps, twist, slits, developable: slits.length === 0, pieces }
}

/** Bands that lie edge to edge, as one piece; its rim lines are the first band's near and the last one's far rim. */
function pieceOf(run: readonly Strip[], i: number, of: number, sheeting: Sheeting): Development {
  const [first, last] = [run[0]!, run.at(-1)!]
  const outer = newStrip(first.count, false)
  for (let k = 0; k < first.count; k++) {
    outer.flat.set(first.flat.subarray(4 * k, 4 * k + 2), 4 * k)
    outer.flat.set(last.flat.subarray(4 * k + 2, 4 * k + 4), 4 * k + 2)
    outer.space.set(first.space.subarray(6 * k, 6 * k + 3), 6 * k)
    outer.space.set(last.space.subarray(6 * k + 3, 6 * k + 6), 6 * k + 3)
  }
  const name =
    of > 1 ? { id: `${sheeting.id}-${i + 1}`, title: `${sheeting.title}, strip ${i + 1} of ${of}` } : {}
  const made = developed(outer, { ...sheeting, ...name }, [say`${inMm(rimLength(outer, 'near'))} long`], {
    rolls: [],
  })
  // it is rolled along the lines between its bands, which run along the hull
  const rolls = run
    .slice(1)
    .map((band) => ({ use: 'roll' as const, closed: false, points: flatRim(band, 'near') }))
  return {
    ...made,
    piece: { ...made.piece, lines: [...made.piece.lines, ...rolls] },
    strips: run,
    area: run.reduce((sum, band) => sum + stripArea(band), 0),
  }
}
