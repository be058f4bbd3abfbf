/**
 * A pipe set onto another pipe, the hole for it, and a pipe through a flat plate: cylinders met by cylinders and planes, elementary;
 * handbooks of sheet-metal pattern drafting (parallel-line development). The curve is where the branch's middle meets the header's outside.
 */
import { inDegrees, inMm } from '../base/answers/amounts.ts'
import type { FlatPoint } from '../base/answers/madePart.ts'
import { say } from '../base/answers/sentence.ts'
import { coneStrip } from './cone.ts'
import { type Development, developed, type Sheeting } from './development.ts'
import { after, turnAbout } from './placing.ts'
import { extremes, mustLie, ShapeFault } from './shapeFault.ts'
import { placed, spaceAt } from './strip.ts'

export interface SaddleShape {
  /** mean radius of the branch, m */
  branchRadius: number
  /** outside radius of the header, m */
  headerRadius: number
  /** between the two axes, rad */
  angle: number
  /** by which the branch's axis passes beside the header's, m */
  offset: number
  /** of the branch, from where its axis comes nearest to the header's axis to its square end, m */
  length: number
}

/** ShapeFault naming the value that leaves no saddle. */
function checkSaddle(s: SaddleShape): void {
  mustLie('branchRadius', s.branchRadius, extremes.least, extremes.most)
  mustLie('headerRadius', s.headerRadius, extremes.least, extremes.most)
  mustLie('angle', s.angle, Math.PI / 18, (Math.PI * 17) / 18, inDegrees)
  mustLie('length', s.length, extremes.least, extremes.most)
  const reach = s.branchRadius + Math.abs(s.offset)
  if (!(reach <= s.headerRadius))
    throw new ShapeFault(
      'branchRadius',
      s.branchRadius,
      s.headerRadius - Math.abs(s.offset),
      say`A branch of ${inMm(s.branchRadius, 0.1)} radius, ${inMm(Math.abs(s.offset), 0.1)} off the axis, is wider than the header of ${inMm(s.headerRadius, 0.1)}.`,
      say`Make the branch ${inMm(Math.max(0, s.headerRadius - Math.abs(s.offset)), 0.1)} in radius or less, or set it nearer to the axis.`,
    )
}

/** Distance along the branch from the header axis plane to the header's skin at turn ψ, m; ψ = 0 on the obtuse side. RangeError as checkSaddle. */
export function saddleLength(s: SaddleShape, psi: number): number {
  checkSaddle(s)
  return lengthAt(s, psi)
}

function lengthAt(s: SaddleShape, psi: number): number {
  const across = s.branchRadius * Math.sin(psi) + s.offset
  const up = Math.sqrt(Math.max(0, s.headerRadius ** 2 - across ** 2))
  return (up - s.branchRadius * Math.cos(psi) * Math.cos(s.angle)) / Math.sin(s.angle)
}

/** Where the skin is met at turn ψ, m: along the header, and round its outside from the top. */
function holeAt(s: SaddleShape, psi: number): FlatPoint {
  const along = lengthAt(s, psi) * Math.cos(s.angle) - s.branchRadius * Math.cos(psi) * Math.sin(s.angle)
  return [
    s.headerRadius *
      Math.asin(Math.max(-1, Math.min(1, (s.branchRadius * Math.sin(psi) + s.offset) / s.headerRadius))),
    along,
  ]
}

/**
 * The hole in the header's flat, m: x round the header from its top, y along it from where the axes come nearest; to be drawn on the
 * pattern of the header, whose own radius there is `flatRadius` (its mean). Begun at turn `from` (rad) round the branch.
 */
export function saddleHole(s: SaddleShape, flatRadius = s.headerRadius, steps = 180, from = 0): FlatPoint[] {
  checkSaddle(s)
  return Array.from({ length: steps }, (_, i): FlatPoint => {
    const [x, y] = holeAt(s, from + (2 * Math.PI * i) / steps)
    return [(x * flatRadius) / s.headerRadius, y]
  })
}

/** Pattern of the branch, its seam on the side away from the acute angle. Its axis lies in the plane x = offset, the header along y. */
export function developSaddle(s: SaddleShape, sheeting: Sheeting): Development {
  checkSaddle(s)
  const pipe = { startRadius: s.branchRadius, endRadius: s.branchRadius, height: s.length }
  const strip = coneStrip(
    pipe,
    () => 0,
    (psi) => s.length - lengthAt(s, -psi),
  )
  for (let i = 0; i < strip.count; i++) {
    const left = spaceAt(strip, i, 'far')[2]
    if (!(left > extremes.least))
      throw new ShapeFault(
        'length',
        s.length,
        s.length - left,
        say`A branch of ${inMm(s.length)} ends inside the header on one side.`,
        say`Make it at least ${inMm(s.length - left + 5e-3)} long.`,
      )
  }
  // from the free end toward the header: z down along the branch, the pattern's middle on the obtuse side
  const down = turnAbout([0, 0, 0], [1, 0, 0], Math.PI)
  const there = [
    ...[0, -Math.sin(s.angle), Math.cos(s.angle)],
    ...[1, 0, 0],
    ...[0, Math.cos(s.angle), Math.sin(s.angle)],
    ...[s.offset, s.length * Math.cos(s.angle), s.length * Math.sin(s.angle)],
  ]
  return developed(placed(strip, after(there, down)), sheeting)
}

/** Half axes, m, of the hole for a pipe of a radius (m) through a flat plate, the axis leaning by `lean` rad from square; `clearance` m all round. */
export function plateHole(radius: number, lean: number, clearance: number): { minor: number; major: number } {
  mustLie('radius', radius, extremes.least, extremes.most)
  mustLie('lean', lean, 0, (Math.PI * 4) / 9, inDegrees)
  mustLie('clearance', clearance, 0, 0.02)
  return { minor: radius + clearance, major: radius / Math.cos(lean) + clearance }
}
