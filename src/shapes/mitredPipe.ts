/**
 * Bends of straight pieces cut from one straight pipe, cylinder or cone: the pipe is cut by planes and every piece behind a cut is
 * given half a turn about the plane's normal through the middle of the cut, which is an ellipse and so meets itself.
 * That two equal cones round one sphere meet in a plane: G. Monge; J. P. Dandelin (1822); the plane lies sin α cos α/cos² φ of the
 * radius beyond the sphere's centre toward the small end. Elbows of cylinders: any handbook of sheet-metal pattern drafting.
 * Patterns are those of the middle of the sheet; where the sheet is thicker than 3 % of the radius the corners of the edges want filing.
 */

import { inDegrees, inMm } from '../base/answers/amounts.ts'
import type { FlatLine } from '../base/answers/madePart.ts'
import { say } from '../base/answers/sentence.ts'
import { type ConeShape, checkCone, coneSlope, coneStrip, roundSteps } from './cone.ts'
import { type Development, developed, type Sheeting } from './development.ts'
import { line } from './patternMarks.ts'
import { after, atHome, type Place, put, shift, turnAbout, type Vec } from './placing.ts'
import { mustLie, ShapeFault } from './shapeFault.ts'
import { flatRim, placed } from './strip.ts'

/** One bend of the pipe's axis. */
export interface Mitre {
  /** where the axis bends, m along its straight pieces from the start */
  at: number
  /** by how much, rad */
  turn: number
  /** toward which side, rad about the axis from x; carried along the bends without twist */
  clock: number
}

/** The numbers of one cut. All m. */
export interface MitreCut {
  /** half axes of the ellipse */
  major: number
  minor: number
  /** slant distance from the start, least and most */
  least: number
  most: number
}

export interface MitredPipe {
  pieces: readonly Development[]
  /** least and largest length of each piece between its rims, m: in the throat of a bend and on its back */
  lengths: readonly { least: number; most: number }[]
  cuts: readonly MitreCut[]
  /** where each piece lies, the first with its axis along z from the origin */
  places: readonly Place[]
  /** the end's middle, its axis along z, x carried along without twist */
  end: Place
  /** all pieces in one drawing, their cuts in common: cut from one straight pipe's flat */
  nested: Development
}

interface Cut extends MitreCut {
  /** slant distance of the cut at a turn about the straight pipe's axis */
  along: (psi: number) => number
  half: Place
}

/** The plane of a bend in the straight pipe. ShapeFault naming mitres.k where no plane cuts the pipe through. */
function cutOf(cone: ConeShape, mitre: Mitre, k: number): Cut {
  const { sine, cosine } = coneSlope(cone)
  const tan = sine / cosine
  mustLie(`mitres.${k}.at`, mitre.at, 0, cone.height)
  mustLie(`mitres.${k}.turn`, mitre.turn, 1e-6, (2 * Math.PI) / 3, inDegrees)
  mustLie(`mitres.${k}.clock`, mitre.clock, -100, 100, inDegrees)
  const lean = Math.tan(mitre.turn / 2)
  if (Math.abs(tan) * lean >= 1)
    throw new ShapeFault(
      `mitres.${k}.turn`,
      mitre.turn,
      2 * Math.atan(1 / Math.abs(tan)),
      say`A bend of ${inDegrees(mitre.turn)} does not go through a cone that opens ${inDegrees(2 * Math.atan(Math.abs(tan)))}.`,
      say`Bend by less than ${inDegrees(2 * Math.atan(1 / Math.abs(tan)))} here.`,
    )
  const radius = cone.startRadius - mitre.at * tan
  const middle = mitre.at + (radius * sine * cosine) / Math.cos(mitre.turn / 2) ** 2
  // each cut turns what lies behind it by half a turn, so every second one leans the other way in the straight pipe
  const toward = mitre.clock + k * Math.PI
  const height = (psi: number) => {
    const c = Math.cos(psi - toward)
    return (middle - lean * cone.startRadius * c) / (1 - lean * tan * c)
  }
  const [zIn, zOut] = [height(toward), height(toward + Math.PI)]
  const [rIn, rOut] = [cone.startRadius - zIn * tan, cone.startRadius - zOut * tan]
  const x = (rIn - rOut) / 2
  const centre: Vec = [x * Math.cos(toward), x * Math.sin(toward), (zIn + zOut) / 2]
  const s = Math.sin(mitre.turn / 2)
  const normal: Vec = [s * Math.cos(toward), s * Math.sin(toward), Math.cos(mitre.turn / 2)]
  return {
    along: (psi) => height(psi) / cosine,
    half: turnAbout(centre, normal, Math.PI),
    major: Math.hypot(rIn + rOut, zOut - zIn) / 2,
    minor: Math.sqrt(Math.max(0, rIn * rOut)),
    least: zIn / cosine,
    most: zOut / cosine,
  }
}

/**
 * Pieces of a pipe with bends, mean radii in m, the cone's height measured along its straight pieces. The seam lies at turn `seamAt` (rad) of
 * the first piece and changes sides by itself at every cut. ShapeFault naming the cone's values or mitres.k.
 */
export function mitredPipe(
  cone: ConeShape,
  mitres: readonly Mitre[],
  sheeting: Sheeting,
  seamAt = mitres[0]?.clock ?? 0,
): MitredPipe {
  checkCone(cone)
  const { slant } = coneSlope(cone)
  const cuts = mitres.map((m, k) => cutOf(cone, m, k))
  const facing = seamAt + Math.PI
  const ends = [() => 0, ...cuts.map((c) => (psi: number) => c.along(psi + facing)), () => slant]
  const places: Place[] = [atHome]
  for (const cut of cuts) places.push(after(places.at(-1)!, cut.half))
  const lengths = places.map((_, k) => lengthsOf(ends[k]!, ends[k + 1]!, k, cuts.length))
  const pieces = places.map((place, k) => {
    const strip = placed(coneStrip(cone, ends[k]!, ends[k + 1]!, facing), place)
    const many = places.length > 1
    const name = many
      ? { id: `${sheeting.id}-${k + 1}`, title: `${sheeting.title}, piece ${k + 1} of ${places.length}` }
      : {}
    const to = mitres[k] && say`next: ${inDegrees(mitres[k].turn)}, tick on tick`
    const before = cuts[k - 1]
    const near = before ? { near: ticksAcross(cone, before, facing) } : {}
    return developed(strip, { ...sheeting, ...name }, to ? [to] : [], near)
  })
  const last = places.at(-1)!
  return {
    pieces,
    lengths,
    cuts: cuts.map(({ major, minor, least, most }) => ({ major, minor, least, most })),
    places,
    end: after(
      after(last, shift([0, 0, cone.height])),
      turnAbout([0, 0, 0], [0, 0, 1], cuts.length * Math.PI),
    ),
    nested: nestedOf(cone, ends, sheeting, facing),
  }
}

/**
 * Where the quarter ticks of the piece before a cut lie on the piece behind it, in rulings: each goes through the half turn with the cut. On a
 * cone that is not a quarter of the turn there.
 */
function ticksAcross(cone: ConeShape, cut: Cut, facing: number): number[] {
  const { sine, cosine } = coneSlope(cone)
  return [0, 1, 2, 3].map((quarter) => {
    const psi = facing - Math.PI + (quarter * Math.PI) / 2
    const v = cut.along(psi)
    const r = cone.startRadius - v * sine
    const [x, y] = put(cut.half, [r * Math.cos(psi), r * Math.sin(psi), v * cosine])
    const turn = (Math.atan2(y, x) - facing + Math.PI) / (2 * Math.PI)
    return (turn - Math.floor(turn)) * roundSteps
  })
}

/** Least and largest distance of two cuts along the sheet; ShapeFault where they cross. */
function lengthsOf(from: (psi: number) => number, to: (psi: number) => number, k: number, cuts: number) {
  let [least, most] = [Number.POSITIVE_INFINITY, 0]
  for (let i = 0; i < 360; i++) {
    const psi = (Math.PI * i) / 180
    const l = to(psi) - from(psi)
    least = Math.min(least, l)
    most = Math.max(most, l)
  }
  if (!(least > 0)) {
    const which = Math.min(k, cuts - 1)
    throw new ShapeFault(
      `mitres.${which}.at`,
      least,
      0,
      say`Piece ${String(k + 1)} is ${inMm(-least, 0.1)} too short in the throat of its bend: its cuts cross.`,
      say`Set the bends at least ${inMm(-least + 5e-3)} farther apart, or turn less at each.`,
    )
  }
  return { least, most }
}

/** The straight pipe's flat with every cut drawn across it. */
function nestedOf(
  cone: ConeShape,
  ends: readonly ((psi: number) => number)[],
  sheeting: Sheeting,
  facing: number,
): Development {
  const whole = developed(coneStrip(cone, ends[0]!, ends.at(-1)!, facing), {
    ...sheeting,
    id: `${sheeting.id}-nested`,
    title: `${sheeting.title}, all pieces in one`,
  })
  const lap = sheeting.seam.kind === 'lap' ? sheeting.seam.width : 0
  const { sine } = coneSlope(cone)
  // at the last ruling the pattern has turned by half the sector; a cut goes on through the lap, square to the seam
  const [c, s] = [Math.cos(Math.PI * sine), Math.sin(Math.PI * sine)]
  const across: FlatLine[] = ends.slice(1, -1).map((cut) => {
    const rim = flatRim(coneStrip(cone, cut, ends.at(-1)!, facing), 'near')
    const [x, y] = rim.at(-1)!
    return line('cut', lap > 0 ? [...rim, [x + lap * c, y + lap * s]] : rim)
  })
  return { ...whole, piece: { ...whole.piece, lines: [...whole.piece.lines, ...across] } }
}
