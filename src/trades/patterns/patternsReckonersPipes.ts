/** Reckoners of rolled parts: cones, cylinders, elbows, oblique cones, saddles. */
import { cm2, count, degrees, mm } from '../../base/answers/portMakers.ts'
import { defineReckoner, type Reckoner } from '../../base/answers/reckoner.ts'
import { coneFlat, coneSlope } from '../../shapes/cone.ts'
import { elbowMitres, elbowNumbers } from '../../shapes/elbow.ts'
import { type Measured, meanDiameter, meanEnds } from '../../shapes/meanFibre.ts'
import { mitredPipe } from '../../shapes/mitredPipe.ts'
import { developOblique, elementLength } from '../../shapes/obliqueCone.ts'
import { plateHole, saddleHole, saddleLength } from '../../shapes/saddle.ts'
import { tight } from '../../shapes/seam.ts'
import { ShapeFault } from '../../shapes/shapeFault.ts'
import { rimLength } from '../../shapes/strip.ts'
import { measured, sharp, sheet, src, trade } from './patternPorts.ts'

const cone = defineReckoner({
  id: 'cone-pattern',
  title: 'Flat pattern of a cone',
  trade,
  says: 'The sector to cut for a right cone, drawn for the middle of the sheet; without its seam. Equal ends are a cylinder: ask pipe-blank.',
  inputs: [
    mm('start', 'diameter of the wide end', 2e-3, 2),
    mm('end', 'diameter of the narrow end', 0, 2),
    mm('height', 'along the axis', 2e-3, 3),
    sheet,
    measured,
  ],
  outputs: [
    degrees('halfAngle', 'of the cone'),
    mm('slant', 'length along the sheet'),
    mm('outer', 'radius of the wide arc'),
    mm('inner', 'radius of the narrow arc'),
    degrees('angle', 'of the sector'),
    mm('width', 'of sheet it takes across'),
    cm2('area', 'of the sector'),
  ],
  reckon: (g, w) => {
    const mean = meanEnds(g.start, g.end, g.height, w.measured as Measured, g.thickness)
    if (!(mean.start > mean.end * (1 + 1e-9)))
      throw new ShapeFault(
        'end',
        g.end,
        g.start,
        'The end must be narrower than the start.',
        'Turn the cone round, or ask pipe-blank where they are equal.',
      )
    const shape = { startRadius: mean.start, endRadius: mean.end, height: g.height }
    const { slant, outer, inner, angle, width, area } = coneFlat(shape)
    return { halfAngle: Math.asin(coneSlope(shape).sine), slant, outer, inner, angle, width, area }
  },
  cautions: [sharp],
  sources: [src.drafting, src.mean],
})

const pipe = defineReckoner({
  id: 'pipe-blank',
  title: 'Blank of a pipe or an oval body',
  trade,
  says: 'Length of sheet round a pipe, or round an oval body of two half circles joined by straights; without its seam.',
  inputs: [
    mm('diameter', 'of the pipe or of the round ends', 2e-3, 2),
    mm('straight', 'of each side of an oval; none for a pipe', 0, 2, 0),
    sheet,
    measured,
  ],
  outputs: [mm('mean', 'diameter of the middle of the sheet'), mm('round', 'length of the blank')],
  reckon: (g, w) => {
    const mean = meanDiameter(g.diameter, w.measured as Measured, g.thickness, 0)
    if (!(mean > g.thickness))
      throw new ShapeFault(
        'diameter',
        g.diameter,
        2 * g.thickness,
        'The sheet is thicker than the pipe.',
        'Give a larger diameter.',
      )
    return { mean, round: Math.PI * mean + 2 * g.straight }
  },
  cautions: [sharp],
  sources: [src.mean],
})

const elbowInputs = [
  mm('start', 'mean diameter at the start', 2e-3, 0.5),
  mm('end', 'mean diameter at the end; the same for a cylinder', 2e-3, 0.5),
  mm('bendRadius', 'of the axis', 2e-3, 3),
  degrees('turn', 'of the whole elbow', 0.02, 2 * Math.PI, Math.PI / 2),
  count('joints', 'that share it', 1, 24, 4),
] as const

const elbowOf = (g: { start: number; end: number; bendRadius: number; turn: number; joints: number }) => ({
  startRadius: g.start / 2,
  endRadius: g.end / 2,
  bendRadius: g.bendRadius,
  turn: g.turn,
  joints: Math.round(g.joints),
})

const elbow = defineReckoner({
  id: 'elbow-pieces',
  title: 'Pieces of an elbow',
  trade,
  says: 'Lengths of the straight pieces of an elbow, in a cylinder or through a cone. The gas goes along the pieces, not along the arc.',
  inputs: elbowInputs,
  outputs: [
    degrees('half', 'half the turn at one joint'),
    mm('endPiece', 'along the axis'),
    mm('middlePiece', 'along the axis'),
    mm('throat', 'of a middle piece on the inside of the bend'),
    mm('back', 'of a middle piece on its outside'),
    mm('length', 'along the pieces'),
    mm('arc', 'along the round axis they stand for'),
  ],
  reckon: (g) => elbowNumbers(elbowOf(g)),
  cautions: [sharp],
  sources: [src.drafting],
})

const elbowCut = defineReckoner({
  id: 'elbow-cut',
  title: 'One cut of an elbow',
  trade,
  says: 'Where a cut runs on the flat of the straight pipe that an elbow is cut from, and the ellipse it makes. Each piece behind a cut is given half a turn.',
  inputs: [...elbowInputs, count('cut', 'which, from the start', 1, 24, 1)],
  outputs: [
    mm('least', 'from the start along the sheet, where the cut comes nearest'),
    mm('most', 'from the start along the sheet, where it is farthest'),
    mm('major', 'half axis of the ellipse'),
    mm('minor', 'the other half axis'),
    mm('round', 'length of the cut'),
  ],
  reckon: (g) => {
    const e = elbowOf(g)
    const { length } = elbowNumbers(e)
    const shape = { startRadius: e.startRadius, endRadius: e.endRadius, height: length }
    const made = mitredPipe(shape, elbowMitres(e), { id: 'e', title: '', thickness: 1e-3, seam: tight })
    const k = Math.round(g.cut) - 1
    const at = made.cuts[k]
    if (!at)
      throw new ShapeFault('cut', g.cut, e.joints, 'The elbow has no such cut.', 'Ask for one of its joints.')
    return { ...at, round: rimLength(made.pieces[k]!.strips[0]!, 'far') }
  },
  cautions: [sharp],
  sources: [src.drafting, src.dandelin],
})

const oblique = defineReckoner({
  id: 'oblique-cone',
  title: 'Elements of an oblique cone',
  trade,
  says: 'True lengths of a cone whose round ends lie parallel and beside each other; mean diameters.',
  inputs: [
    mm('base', 'diameter', 2e-3, 2),
    mm('top', 'diameter', 0, 2),
    mm('height', 'between the ends', 2e-3, 3),
    mm('offset', 'of the top beside the base', 0, 2),
    degrees('azimuth', 'of an element, from the side toward which the top lies', 0, 2 * Math.PI, 0),
  ],
  outputs: [
    mm('element', 'true length there'),
    mm('shortest', 'element'),
    mm('longest', 'element'),
    cm2('area', 'of the pattern'),
  ],
  reckon: (g) => {
    const c = { baseRadius: g.base / 2, topRadius: g.top / 2, height: g.height, offset: g.offset }
    const { area } = developOblique(c, { id: 'o', title: '', thickness: 1e-3, seam: tight })
    const ends = [elementLength(c, 0), elementLength(c, Math.PI)]
    return {
      element: elementLength(c, g.azimuth),
      shortest: Math.min(...ends),
      longest: Math.max(...ends),
      area,
    }
  },
  cautions: [sharp],
  sources: [src.drafting],
})

const saddle = defineReckoner({
  id: 'saddle-cut',
  title: 'Cut of a pipe set on a pipe',
  trade,
  says: 'Length of a branch from the plane of the header’s axis to its skin at a turn round the branch, and where that lies on the header’s own flat.',
  inputs: [
    mm('branch', 'mean diameter of the branch', 2e-3, 0.5),
    mm('header', 'outside diameter of the header', 2e-3, 1),
    degrees('angle', 'between the axes', Math.PI / 9, (Math.PI * 8) / 9, Math.PI / 2),
    mm('offset', 'of the branch’s axis beside the header’s', 0, 0.5, 0),
    degrees('turn', 'round the branch, from its obtuse side', 0, 2 * Math.PI, 0),
  ],
  outputs: [
    mm('length', 'of the branch there, from the header’s axis plane'),
    mm('round', 'on the header’s flat, from its top'),
    mm('along', 'on the header’s flat, from where the axes come nearest'),
  ],
  reckon: (g) => {
    const s = {
      branchRadius: g.branch / 2,
      headerRadius: g.header / 2,
      angle: g.angle,
      offset: g.offset,
      length: 1,
    }
    const length = saddleLength(s, g.turn)
    const [round, along] = saddleHole(s, s.headerRadius, 1, g.turn)[0]!
    return { length, round, along }
  },
  cautions: [sharp],
  sources: [src.drafting],
})

const through = defineReckoner({
  id: 'hole-for-pipe',
  title: 'Hole for a pipe through a flat end',
  trade,
  says: 'The ellipse to cut where a pipe goes through a flat plate, leaning or square.',
  inputs: [
    mm('diameter', 'outside, of the pipe', 2e-3, 0.5),
    degrees('lean', 'from square', 0, (Math.PI * 7) / 18, 0),
    mm('clearance', 'all round, to slip it through', 0, 5e-3, 2e-4),
  ],
  outputs: [mm('across', 'the ellipse'), mm('along', 'the ellipse, the way it leans')],
  reckon: (g) => {
    const { minor, major } = plateHole(g.diameter / 2, g.lean, g.clearance)
    return { across: 2 * minor, along: 2 * major }
  },
  cautions: [sharp],
  sources: [src.drafting, 'clearance 0.1 to 0.25 mm all round: common practice, no source'],
})

export const pipeReckoners: readonly Reckoner[] = [cone, pipe, elbow, elbowCut, oblique, saddle, through]
