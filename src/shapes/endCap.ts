/**
 * Ends of mufflers and tanks: flat with a flange turned over a former, or dished, so that they neither warp nor drum. Blanks keep the area:
 * D² = d² + 4 s² + 4 d f for a dish of rise s and a flange f on the mean diameter d; deep-drawing handbooks, blank of a flanged cup, from memory; the
 * dish is the area of a spherical cap.
 */
import { inMm } from '../base/answers/amounts.ts'
import type { FlatPiece, FlatPoint } from '../base/answers/madePart.ts'
import { type Sentence, say } from '../base/answers/sentence.ts'
import { bendAllowance } from './bends.ts'
import { circle, distanceTo, ellipse, isInside, roundedRectangle } from './outlines.ts'
import { line } from './patternMarks.ts'
import { plate } from './plate.ts'
import { plateHole } from './saddle.ts'
import { extremes, mustLie, ShapeFault } from './shapeFault.ts'

export interface EndCap {
  id: string
  title: string
  thickness: number
  count?: number
  /** mean diameter of the flange's wall, m; of the edge where there is no flange */
  diameter: number
  /** height of the flange, m; 0 for none */
  flange: number
  /** rise of the dish, m; 0 for a flat end */
  rise: number
  /** pipes through it: mean radius, place from the middle, lean from square (rad), room all round, m */
  pipes: readonly { radius: number; x: number; y: number; lean: number; clearance: number }[]
}

/** Diameter of the blank of a cap, m. ShapeFault naming diameter, flange or rise. */
export function capBlank(diameter: number, flange: number, rise: number): number {
  mustLie('diameter', diameter, extremes.least, extremes.most)
  mustLie('flange', flange, 0, diameter / 2)
  // beyond a third the sheet is drawn, not dished by hand
  mustLie('rise', rise, 0, diameter / 3)
  return Math.sqrt(diameter ** 2 + 4 * rise ** 2 + 4 * diameter * flange)
}

/** Holes of the pipes through a cap, checked against each other and by `room`, how far a place is from the wall; `stretched` moves them outward. */
function pipeHoles(
  pipes: EndCap['pipes'],
  room: (x: number, y: number) => number,
  stretched: number,
): FlatPoint[][] {
  return pipes.map(({ radius, lean, clearance, x, y }, k) => {
    const { minor, major } = plateHole(radius, lean, clearance)
    const most = room(x, y)
    if (!(major < most))
      throw new ShapeFault(
        `pipes.${k}.radius`,
        major,
        most,
        say`Its hole reaches ${inMm(major - most, 0.1)} beyond the cap’s wall.`,
        say`Move the pipe inward by more than ${inMm(major - most, 0.1)}, or make it smaller.`,
      )
    pipes.slice(0, k).forEach((other, j) => {
      const apart = Math.hypot(x - other.x, y - other.y)
      const least = major + plateHole(other.radius, other.lean, other.clearance).major
      if (apart <= least)
        throw new ShapeFault(
          `pipes.${k}.x`,
          apart,
          least,
          say`Its hole cuts that of pipe ${String(j + 1)}, ${inMm(apart, 0.1)} away.`,
          say`Set them more than ${inMm(least + 5e-3)} apart.`,
        )
    })
    return ellipse(x * stretched, y * stretched, major, minor)
  })
}

/** Pattern of a round cap. ShapeFault as capBlank, or pipes.k where a pipe does not go through it or two meet. */
export function endCap(cap: EndCap): FlatPiece {
  const blank = capBlank(cap.diameter, cap.flange, cap.rise)
  const flat = Math.sqrt(cap.diameter ** 2 + 4 * cap.rise ** 2) / 2
  // the dish is hammered before the holes are cut, so they lie farther out on it by as much as it stretches
  const holes = pipeHoles(cap.pipes, (x, y) => cap.diameter / 2 - Math.hypot(x, y), (2 * flat) / cap.diameter)
  const centre = (r: number): FlatPoint[][] => [
    [
      [-r, 0],
      [r, 0],
    ],
    [
      [0, -r],
      [0, r],
    ],
  ]
  const said: Sentence[] = [
    ...(cap.flange > 0 ? [say`turn a flange of ${inMm(cap.flange, 0.1)} over a former`] : []),
    ...(cap.rise > 0 ? [say`dish it ${inMm(cap.rise, 0.1)}, then cut the holes`] : []),
  ]
  return plate({
    id: cap.id,
    title: cap.title,
    thickness: cap.thickness,
    count: cap.count ?? 1,
    outline: circle(0, 0, blank / 2),
    holes,
    lines: [
      ...(cap.flange > 0 ? [line('fold', circle(0, 0, flat), true)] : []),
      ...centre(blank / 2).map((points) => line('centre', points)),
    ],
    said,
  })
}

export interface ShapedCap extends Omit<EndCap, 'diameter' | 'rise'> {
  /** outside size of the flange, m: the inside of the body it closes; and the radius of its corners: half the width makes an oval */
  length: number
  width: number
  corner: number
  /** inside radius of the flange's bend, m, and where the sheet keeps its length there */
  inside: number
  k: number
}

/**
 * Pattern of a flat cap with a flange that lies against the inside of a box or an oval body; on the straight sides it is a bend, at the corners the edge is
 * beaten in and trimmed. ShapeFault naming flange, corner, inside or pipes.k.
 */
export function shapedCap(cap: ShapedCap): FlatPiece {
  const t = cap.thickness
  const off = cap.inside + t
  mustLie('corner', cap.corner, off, Math.min(cap.length, cap.width) / 2)
  mustLie('flange', cap.flange, off, Math.min(cap.length, cap.width) / 2)
  const bend = bendAllowance({ angle: Math.PI / 2, inside: cap.inside, thickness: t, k: cap.k })
  // from where the bend begins: the bend itself and what stands beyond it
  const grow = bend + cap.flange - off
  const shape = (wider: number) =>
    roundedRectangle(0, 0, cap.length + 2 * wider, cap.width + 2 * wider, cap.corner + wider)
  const wall = shape(0)
  const room = (x: number, y: number) => (isInside([x, y], wall) ? distanceTo([x, y], wall) - off : 0)
  return plate({
    id: cap.id,
    title: cap.title,
    thickness: t,
    count: cap.count ?? 1,
    outline: shape(grow - off),
    holes: pipeHoles(cap.pipes, room, 1),
    lines: [line('fold', shape(bend / 2 - off), true)],
    said: [say`turn a flange of ${inMm(cap.flange, 0.1)} over a former; trim the corners`],
  })
}
