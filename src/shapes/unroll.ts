/**
 * Lays a ruled surface flat, facet by facet, each by the true lengths of its edges and one diagonal: triangulation as handbooks of
 * sheet-metal pattern drafting draw it. Done on a finer set of rulings than is kept, so that chords stand for arcs to a micrometre.
 */
import { cross, dot, minus, type Vec } from './placing.ts'
import { newStrip, type Strip } from './strip.ts'

/** The two ends of a ruling. */
export type Ruling = readonly [near: Vec, far: Vec]

const length = (a: Vec, b: Vec): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])

/** The point at distances da, db from flat points a and b, to the right of the way from a to b. */
function corner(ax: number, ay: number, bx: number, by: number, da: number, db: number): [number, number] {
  const l = Math.hypot(bx - ax, by - ay)
  const [ux, uy] = [(bx - ax) / l, (by - ay) / l]
  const u = (l * l + da * da - db * db) / (2 * l)
  const w = Math.sqrt(Math.max(0, da * da - u * u))
  return [ax + u * ux + w * uy, ay + u * uy - w * ux]
}

/**
 * Flat strip of the rulings of a surface, in the order that goes to the right as seen from outside with near below far. `kept` tells
 * whether ruling i is kept; the first and the last must be. The first ruling lies on the y axis.
 */
export function unrolled(
  rulings: readonly Ruling[],
  ring: boolean,
  kept: (i: number) => boolean = () => true,
): Strip {
  const keep = rulings.map((_, i) => i).filter(kept)
  const strip = newStrip(keep.length, ring)
  let [a, b] = rulings[0]!
  let [ax, ay, bx, by] = [0, 0, 0, length(a, b)]
  let at = 0
  const put = (near: Vec, far: Vec) => {
    strip.flat.set([ax, ay, bx, by], 4 * at)
    strip.space.set([...near, ...far], 6 * at)
    at++
  }
  put(a, b)
  for (let i = 1; i < rulings.length; i++) {
    const [c, d] = rulings[i]!
    const still = length(a, c) < 1e-12
    // the facet's shorter diagonal decides nothing on a developable surface and errs least on another
    if (still || length(a, d) <= length(b, c)) {
      const [dx, dy] = corner(ax, ay, bx, by, length(a, d), length(b, d))
      const [cx, cy] = still ? [ax, ay] : corner(ax, ay, dx, dy, length(a, c), length(d, c))
      ;[ax, ay, bx, by] = [cx, cy, dx, dy]
    } else {
      const [cx, cy] = corner(ax, ay, bx, by, length(a, c), length(b, c))
      const [dx, dy] = length(b, d) < 1e-12 ? [bx, by] : corner(cx, cy, bx, by, length(c, d), length(b, d))
      ;[ax, ay, bx, by] = [cx, cy, dx, dy]
    }
    ;[a, b] = [c, d]
    if (kept(i)) put(c, d)
  }
  return strip
}

/** Largest twist of a facet, rad: the angle between the planes on either side of its diagonal; 0 where the surface is developable. */
export function twistOf(rulings: readonly Ruling[]): number {
  let worst = 0
  for (let i = 0; i + 1 < rulings.length; i++) {
    const [[a, b], [c, d]] = [rulings[i]!, rulings[i + 1]!]
    const one = cross(minus(d, a), minus(b, a))
    const other = cross(minus(c, a), minus(d, a))
    // a triangle has no twist
    if (dot(one, one) * dot(other, other) < 1e-32) continue
    const sine = cross(one, other)
    worst = Math.max(worst, Math.atan2(Math.sqrt(dot(sine, sine)), dot(one, other)))
  }
  return worst
}
