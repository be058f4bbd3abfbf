/**
 * Sheet bent along parallel lines: angles, hats, channels, round boxes, wraps of mufflers. The strip is that of the neutral layer, so the flat's
 * length is the sum of the straights and the bend allowances (bends.ts).
 */
import { inDegrees, inMm } from '../base/answers/amounts.ts'
import { type Sentence, say } from '../base/answers/sentence.ts'
import { bendAllowance } from './bends.ts'
import { type Development, developed, type Sheeting } from './development.ts'
import { line } from './patternMarks.ts'
import { extremes, mustLie, ShapeFault } from './shapeFault.ts'
import { flatAt, newStrip } from './strip.ts'

/** One leg, and the bend behind it: m, rad; a positive angle bends toward the back of the sheet, the face that is not marked. */
export interface Leg {
  straight: number
  angle?: number
  inside?: number
}

/** Rulings a bend is drawn with: an even number, one a degree. */
const stepsOf = (angle: number): number => 2 * Math.max(6, Math.ceil((angle * 90) / Math.PI))

export interface ProfileShape {
  legs: readonly Leg[]
  /** along the bends, m */
  width: number
  /** neutral layer, part of the thickness from the inside of a bend */
  k: number
  /** the last leg meets the first */
  closed: boolean
}

/** Pattern of a bent profile. ShapeFault naming legs.k, width or k, or `legs` where a closed profile does not close. */
export function developProfile(p: ProfileShape, sheeting: Sheeting): Development {
  mustLie('width', p.width, extremes.least, extremes.most)
  const { thickness } = sheeting
  const rows: { s: number; x: number; y: number }[] = []
  const bends: { from: number; to: number; angle: number; inside: number }[] = []
  let [s, x, y, way] = [0, 0, 0, 0]
  const put = () => rows.push({ s, x, y })
  put()
  p.legs.forEach((leg, i) => {
    mustLie(`legs.${i}.straight`, leg.straight, 0, extremes.most)
    if (leg.straight > 0) {
      s += leg.straight
      x += leg.straight * Math.cos(way)
      y += leg.straight * Math.sin(way)
      put()
    }
    if (leg.angle === undefined || leg.angle === 0) return
    const size = Math.abs(leg.angle)
    const inside = leg.inside ?? thickness
    const arc = bendAllowance({ angle: size, inside, thickness, k: p.k })
    const radius = arc / size
    const from = rows.length - 1
    const [x0, y0, way0, s0] = [x, y, way, s]
    const side = Math.sign(leg.angle)
    const steps = stepsOf(size)
    for (let j = 1; j <= steps; j++) {
      const a = (j / steps) * size
      way = way0 + side * a
      x = x0 + radius * side * (Math.sin(way) - Math.sin(way0))
      y = y0 - radius * side * (Math.cos(way) - Math.cos(way0))
      s = s0 + radius * a
      put()
    }
    bends.push({ from, to: rows.length - 1, angle: leg.angle, inside })
  })
  if (rows.length < 2)
    throw new ShapeFault('legs', p.legs.length, 1, 'A profile without legs is no part.', 'Give it a leg.')
  const open = Math.hypot(x, y)
  if (p.closed && open > 1e-6)
    throw new ShapeFault(
      'legs',
      open,
      1e-6,
      say`The profile’s ends lie ${inMm(open, 0.1)} apart.`,
      'Make its legs and bends come round to where they began.',
    )
  const strip = newStrip(rows.length, p.closed)
  rows.forEach((r, i) => {
    strip.flat.set([r.s, 0, r.s, p.width], 4 * i)
    // seen from outside the profile turns away from the reader: y of the drawing is z in space
    strip.space.set([r.x, r.y, 0, r.x, r.y, p.width], 6 * i)
  })
  const said: Sentence[] = bends.map(
    (b, i) =>
      say`bend ${String(i + 1)}: ${inDegrees(Math.abs(b.angle))} ${b.angle > 0 ? 'back' : 'forward'}, inside ${inMm(b.inside, 0.1)}`,
  )
  const made = developed(strip, sheeting, said, { rolls: [], near: [], far: [] })
  // a brake is set on the middle of the bend; its ends show how far the radius goes
  const folds = bends.flatMap(({ from, to }) =>
    [from, (from + to) / 2, to].map((i) =>
      line(i === (from + to) / 2 ? 'fold' : 'match', [flatAt(strip, i, 'near'), flatAt(strip, i, 'far')]),
    ),
  )
  // sheet is bent across its rolling direction: along it the least radius is half as much again
  const grain = folds.length > 0 ? { grain: 0 } : {}
  return { ...made, piece: { ...made.piece, lines: [...made.piece.lines, ...folds], ...grain } }
}

/** Length of sheet round a box of outside size a × b with four equal bends, without its seam, m. */
export function wrapLength(a: number, b: number, inside: number, thickness: number, k: number): number {
  const round = 2 * (inside + thickness)
  const least = Math.min(a, b)
  if (!(least >= round))
    throw new ShapeFault(
      'inside',
      inside,
      least / 2 - thickness,
      say`Bends of ${inMm(inside, 0.1)} inside do not go into a box ${inMm(least, 0.1)} wide.`,
      say`Bend to at most ${inMm(Math.max(0, least / 2 - thickness), 0.1)} inside.`,
    )
  return 2 * (a + b) - 4 * round + 4 * bendAllowance({ angle: Math.PI / 2, inside, thickness, k })
}

/** Pattern of a box of outside size a × b and a width along its bends, its seam in the middle of a side a; m. Errors as wrapLength and developProfile. */
export function developBox(
  box: { a: number; b: number; width: number; inside: number; k: number },
  sheeting: Sheeting,
): Development {
  wrapLength(box.a, box.b, box.inside, sheeting.thickness, box.k)
  const off = 2 * (box.inside + sheeting.thickness)
  const bend = { angle: Math.PI / 2, inside: box.inside }
  const [a, b] = [box.a - off, box.b - off]
  const legs: Leg[] = [
    { straight: a / 2, ...bend },
    { straight: b, ...bend },
    { straight: a, ...bend },
    { straight: b, ...bend },
    { straight: a / 2 },
  ]
  return developProfile({ legs, width: box.width, k: box.k, closed: true }, sheeting)
}

/** Pattern of an oval body: two straights of a length joined by half circles of a mean radius, its seam in the middle of a straight; m. */
export function developOval(
  oval: { straight: number; radius: number; width: number },
  sheeting: Sheeting,
): Development {
  mustLie('radius', oval.radius, sheeting.thickness, extremes.most)
  mustLie('straight', oval.straight, extremes.least, extremes.most)
  const half = { angle: Math.PI, inside: oval.radius - sheeting.thickness / 2 }
  const legs: Leg[] = [
    { straight: oval.straight / 2, ...half },
    { straight: oval.straight, ...half },
    { straight: oval.straight / 2 },
  ]
  // rolled, not folded: the middle of the sheet keeps its length
  const made = developProfile({ legs, width: oval.width, k: 0.5, closed: true }, sheeting)
  const lines = made.piece.lines.map((l) => (l.use === 'fold' ? { ...l, use: 'roll' as const } : l))
  const { grain: _, ...rolled } = made.piece
  return { ...made, piece: { ...rolled, lines } }
}
