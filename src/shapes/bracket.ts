/** An angle bracket with holes: a leg, a bend, a leg, sizes taken outside as a builder measures them. */
import { inDegrees, inMm } from '../base/answers/amounts.ts'
import { say } from '../base/answers/sentence.ts'
import type { Development, Sheeting } from './development.ts'
import { circle } from './outlines.ts'
import { line } from './patternMarks.ts'
import { developProfile } from './profile.ts'
import { extremes, mustLie, ShapeFault } from './shapeFault.ts'

export interface BracketShape {
  /** outside length of both legs from the corner their outsides would make, m */
  legs: readonly [number, number]
  /** rad, and inside radius, m */
  angle: number
  inside: number
  width: number
  k: number
  /** on a leg: from the outside corner, and from the edge at the left of the flat; diameter; m */
  holes: readonly { leg: 0 | 1; along: number; across: number; diameter: number }[]
}

/** Pattern of an angle bracket. ShapeFault naming legs.k, angle, inside, width or holes.k. */
export function developBracket(b: BracketShape, sheeting: Sheeting): Development {
  mustLie('angle', b.angle, Math.PI / 36, (Math.PI * 5) / 6, inDegrees)
  mustLie('inside', b.inside, 0, extremes.most)
  const setback = (b.inside + sheeting.thickness) * Math.tan(b.angle / 2)
  const straight = b.legs.map((leg, k) => {
    if (!(leg > setback))
      throw new ShapeFault(
        `legs.${k}`,
        leg,
        setback,
        say`A leg of ${inMm(leg, 0.1)} lies wholly in its bend, which takes ${inMm(setback, 0.1)}.`,
        say`Make it longer than ${inMm(setback, 0.1)}.`,
      )
    return leg - setback
  }) as [number, number]
  const made = developProfile(
    {
      legs: [{ straight: straight[0], angle: b.angle, inside: b.inside }, { straight: straight[1] }],
      width: b.width,
      k: b.k,
      closed: false,
    },
    sheeting,
  )
  const whole = made.area / b.width
  const holes = b.holes.map((h, k) => {
    const r = h.diameter / 2
    mustLie(`holes.${k}.diameter`, h.diameter, extremes.least, b.width)
    mustLie(`holes.${k}.along`, h.along, setback + r, b.legs[h.leg] - r)
    mustLie(`holes.${k}.across`, h.across, r, b.width - r)
    // both legs' ends keep their place: lengths run inward from the free ends
    const end = b.legs[h.leg] - h.along
    return line('hole', circle(h.leg === 0 ? end : whole - end, h.across, r), true)
  })
  return { ...made, piece: { ...made.piece, lines: [...made.piece.lines, ...holes] } }
}
