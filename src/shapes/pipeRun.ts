/**
 * A whole pipe of straight and bent sections one behind the other, in place: each begins where the one before ends, its clock carried along without
 * twist; and the proof that all its patterns, rolled up from their drawings, meet.
 */
import { inMm } from '../base/answers/amounts.ts'
import { say } from '../base/answers/sentence.ts'
import type { ConeShape } from './cone.ts'
import type { Development, Sheeting } from './development.ts'
import { type Mitre, type MitredPipe, mitredPipe } from './mitredPipe.ts'
import { after, atHome, type Place } from './placing.ts'
import { jointGap, proveFold } from './refold.ts'
import { ShapeFault } from './shapeFault.ts'
import { placed } from './strip.ts'

/** One section: a cone or cylinder, its bends measured from its own start. */
export interface PipeSection {
  cone: ConeShape
  mitres: readonly Mitre[]
  sheeting: Sheeting
}

export interface PipeRun {
  /** every piece in order, its strip in place */
  pieces: readonly Development[]
  /** of each section: all its pieces in one drawing, and the numbers of its cuts; in its own place */
  sections: readonly MitredPipe[]
  /** of each section, its start's middle with the axis along z; one more for the end */
  places: readonly Place[]
}

/** radii of neighbours may differ by this, m: less than a sheet's corner */
const step = 5e-4

/**
 * Strings sections together from a place. ShapeFault naming sections.k.cone where it does not begin as wide as the one before ends, or what the section
 * itself cannot.
 */
export function pipeRun(sections: readonly PipeSection[], from: Place = atHome): PipeRun {
  const places: Place[] = [from]
  const made: MitredPipe[] = []
  const pieces: Development[] = []
  sections.forEach(({ cone, mitres, sheeting }, k) => {
    const before = sections[k - 1]?.cone.endRadius
    if (before !== undefined && !(Math.abs(before - cone.startRadius) <= step))
      throw new ShapeFault(
        `sections.${k}.cone.startRadius`,
        cone.startRadius,
        before,
        say`It begins ${inMm(2 * cone.startRadius, 0.1)} wide where the one before ends ${inMm(2 * before, 0.1)} wide.`,
        say`Begin it at ${inMm(2 * before, 0.1)}, or put a cone between.`,
      )
    // the seam goes to the other side from section to section, so that welds do not run in line
    const pipe = mitredPipe(cone, mitres, sheeting, (mitres[0]?.clock ?? 0) + (k % 2) * Math.PI)
    const place = places[k]!
    made.push(pipe)
    places.push(after(place, pipe.end))
    for (const piece of pipe.pieces)
      pieces.push({ ...piece, strips: piece.strips.map((strip) => placed(strip, place)) })
  })
  return { pieces, sections: made, places }
}

/** The worst of a run's patterns when each is rolled up from its drawing, m: off its place, open at its seam, apart at a joint. */
export function proveRun(run: PipeRun): { edge: number; seam: number; joint: number } {
  const worst = { edge: 0, seam: 0, joint: 0 }
  run.pieces.forEach((piece, k) => {
    const strip = piece.strips[0]!
    const { edge, seam } = proveFold(strip)
    worst.edge = Math.max(worst.edge, edge)
    worst.seam = Math.max(worst.seam, seam)
    const next = run.pieces[k + 1]?.strips[0]
    if (next) worst.joint = Math.max(worst.joint, jointGap(strip, 'far', next, 'near'))
  })
  return worst
}
